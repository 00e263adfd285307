#include "desk/shelf/measurement.h"

namespace desk {

findings::Measurement measurement_of(const store::NumberedReading& numbered) {
  const imported::Reading& reading = numbered.reading;
  return {numbered.number,    reading.kind,
          reading.cable,      reading.rig,
          reading.piece,      reading.condition,
          reading.instrument, reading.feature,
          reading.state,      reading.file,
          reading.repeat,     reading.columns,
          reading.values,     numbered.correction.has_value()};
}

}  // namespace desk
