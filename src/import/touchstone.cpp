#include "import/touchstone.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <optional>

#include "import/curves.h"
#include "import/kinds.h"
#include "text/lines.h"
#include "text/number.h"
#include "text/utf8.h"

namespace imported {
namespace {

using Complex = std::complex<double>;

constexpr double degrees_per_radian = 180 / std::numbers::pi;

struct Options {
  text::Place place;
  int power_of_ten = 9;  ///< of the frequency unit
  char parameter = 's';
  std::string format = "ma";
  double resistance_ohm = 50;
};

struct Word {
  std::string text;
  text::Place place;
};

/// The words of a line up to a comment.
std::vector<Word> words_of(std::string_view line, int number) {
  line = line.substr(0, line.find('!'));
  std::vector<Word> words;
  for (std::size_t at = line.find_first_not_of(" \t"); at < line.size();
       at = line.find_first_not_of(" \t", at)) {
    const std::size_t end = std::min(line.find_first_of(" \t", at), line.size());
    const std::string_view word = line.substr(at, end - at);
    words.push_back({std::string(word),
                     {number, static_cast<int>(text::length_in_characters(line.substr(0, at))) + 1,
                      static_cast<int>(text::length_in_characters(word))}});
    at = end;
  }
  return words;
}

/// The option line; `words` without its leading "#".
Options options_of(const std::vector<Word>& words, const text::Place& place, text::Problems& problems) {
  Options options;
  options.place = place;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string word = text::lower_case(words[i].text);
    if (word == "hz" || word == "khz" || word == "mhz" || word == "ghz")
      options.power_of_ten = word == "hz" ? 0 : word == "khz" ? 3 : word == "mhz" ? 6 : 9;
    else if (word == "s" || word == "z" || word == "y")
      options.parameter = word[0];
    else if (word == "ma" || word == "db" || word == "ri")
      options.format = word;
    else if (word == "r" && i + 1 < words.size() && text::number(words[i + 1].text).value_or(0) > 0)
      options.resistance_ohm = *text::number(words[++i].text);
    else
      problems.add(words[i].place, "\"" + words[i].text + "\" is no option of a file of one port",
                   "expected # [Hz|kHz|MHz|GHz] [S|Z|Y] [RI|MA|DB] [R ohm], R above 0");
  }
  return options;
}

Complex complex_of(double first, double second, const std::string& format) {
  if (format == "ri") return {first, second};
  const double magnitude = format == "db" ? std::pow(10.0, first / 20) : first;
  const double angle = second / degrees_per_radian;
  return {magnitude * std::cos(angle), magnitude * std::sin(angle)};
}

Complex impedance_of(const Complex& value, const Options& options) {
  if (options.parameter == 'z') return options.resistance_ohm * value;
  if (options.parameter == 'y') return options.resistance_ohm / value;
  return options.resistance_ohm * (1.0 + value) / (1.0 - value);
}

struct Point {
  double frequency_hz;
  Complex impedance_ohm;
};

std::optional<Point> point_of(const std::vector<Word>& words, const Options& options,
                              text::Problems& problems) {
  if (words.size() != 3) {
    problems.add(words.front().place,
                 std::to_string(words.size()) + (words.size() == 1 ? " number" : " numbers") +
                     " in this row, a file of one port has 3",
                 "frequency and two numbers, separated by spaces");
    return std::nullopt;
  }
  const auto frequency = text::number(words[0].text, options.power_of_ten);
  const auto first = text::number(words[1].text);
  const auto second = text::number(words[2].text);
  const std::optional<double> numbers[] = {frequency, first, second};
  for (std::size_t i = 0; i < 3; ++i)
    if (!numbers[i]) problems.add(words[i].place, "\"" + words[i].text + "\" is not a number");
  if (!frequency || !first || !second) return std::nullopt;
  if (!(*frequency > 0)) {
    problems.add(words[0].place, "frequency must be above 0, got " + words[0].text, "leave this row out");
    return std::nullopt;
  }
  const Complex impedance = impedance_of(complex_of(*first, *second, options.format), options);
  const double magnitude = std::abs(impedance);
  if (std::isfinite(magnitude) && magnitude > 0) return Point{*frequency, impedance};
  problems.add(words[1].place, "these numbers give no finite impedance above 0");
  return std::nullopt;
}

/// Rows read so far.
struct Curve {
  std::vector<double> frequency_hz, magnitude_ohm, phase_deg;
  std::vector<CurvePlaces> places;
};

Curve curve_of(std::optional<Options>& options, text::Problems& problems) {
  Curve curve;
  int number = 0;
  std::string_view rest = text::without_byte_order_mark(problems.content());
  while (const auto line = text::next_line(rest)) {
    std::vector<Word> words = words_of(*line, ++number);
    if (words.empty()) continue;
    if (words.front().text.starts_with('[')) {
      text::refuse_file(problems,
                        {words.front().place, "Touchstone 2 is not read", "save it as version 1.1"});
    } else if (words.front().text.starts_with('#')) {
      const text::Place place = words.front().place;
      words.front().text.erase(0, 1);
      if (words.front().text.empty()) words.erase(words.begin());
      if (!options) options = options_of(words, place, problems);
    } else if (!options) {
      text::refuse_file(problems, {words.front().place, "a row before the option line",
                                   "expected # Hz S RI R 50 or alike"});
    } else if (const auto point = point_of(words, *options, problems)) {
      curve.frequency_hz.push_back(point->frequency_hz);
      curve.magnitude_ohm.push_back(std::abs(point->impedance_ohm));
      curve.phase_deg.push_back(std::arg(point->impedance_ohm) * degrees_per_radian);
      curve.places.push_back({words[0].place, words[1].place});
    }
  }
  return curve;
}

}  // namespace

Parsed parse_touchstone(const Source& source, const Assignment& assignment) {
  text::Problems problems(source.name, source.content);
  text::refuse_unless_plain_text(problems);
  Reading reading = named_reading(kind_named("impedance"), assignment, problems);
  std::optional<Options> options;
  Curve curve = curve_of(options, problems);
  if (curve.places.empty() && problems.empty())
    problems.add({}, "holds no rows", "expected a Touchstone 1.1 file of one port");
  check_order(curve.frequency_hz, curve.places, problems);
  problems.refuse_if_any();
  Warnings warnings(problems);
  if (options->parameter != 's' && options->resistance_ohm != 1)
    warnings.add(options->place, "read as normalised to " + text::shortest(options->resistance_ohm) + " ohm",
                 "Touchstone 1.1 has it so; if the numbers are plain ohm or siemens, write R 1");
  reading.columns = {"frequency_hz", "magnitude_ohm", "phase_deg"};
  reading.values = {std::move(curve.frequency_hz), std::move(curve.magnitude_ohm),
                    std::move(curve.phase_deg)};
  warn_of_unlikely(reading, curve.places, warnings);
  return {{std::move(reading)}, warnings.all()};
}

}  // namespace imported
