#include "report/svg/label_places.h"

#include <algorithm>

namespace report {
namespace {

double area_of(const Box& box) {
  return std::max(0.0, box.right - box.left) * std::max(0.0, box.bottom - box.top);
}

double shared_area(const Box& one, const Box& other) {
  return area_of({std::max(one.left, other.left), std::max(one.top, other.top),
                  std::min(one.right, other.right), std::min(one.bottom, other.bottom)});
}

/// How much of other things a label would cover, and how much of it would lie outside.
double harm_of(const Box& label, const std::vector<Box>& taken, const Box& within) {
  double harm = area_of(label) - shared_area(label, within);
  for (const Box& box : taken) harm += shared_area(label, box);
  return harm;
}

}  // namespace

std::vector<Box> label_places(const std::vector<std::vector<Box>>& wishes, std::vector<Box> taken,
                              const Box& within) {
  std::vector<Box> places;
  for (const std::vector<Box>& wished : wishes) {
    Box best = wished.front();
    double least = harm_of(best, taken, within);
    for (const Box& box : wished) {
      if (least == 0) break;
      if (const double harm = harm_of(box, taken, within); harm < least) {
        least = harm;
        best = box;
      }
    }
    places.push_back(best);
    taken.push_back(best);
  }
  return places;
}

}  // namespace report
