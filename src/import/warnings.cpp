#include "import/warnings.h"

namespace imported {
namespace {

constexpr std::size_t most_shown = 20;

}  // namespace

void Warnings::add(const text::Place& place, const std::string& message, const std::string& hint) {
  if (shown_.size() >= most_shown) {
    ++more_;
    return;
  }
  std::string text = file_.formatted({place, message, hint});
  text.pop_back();
  shown_.push_back(text);
}

std::vector<std::string> Warnings::all() const {
  std::vector<std::string> all = shown_;
  if (more_ > 0)
    all.push_back(file_.file() + ": and " + std::to_string(more_) +
                  (more_ == 1 ? " more warning" : " more warnings"));
  return all;
}

}  // namespace imported
