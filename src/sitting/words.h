#pragma once

#include <span>
#include <string>
#include <string_view>

namespace sitting {

/// The closed list of reasons for which a trial may be spoiled; "other" needs words.
std::span<const std::string_view> spoil_reasons();

/// How sure a listener may say to be.
std::span<const std::string_view> sureness_words();

/// What a look may say.
inline constexpr std::string_view continue_word = "continue", stop_word = "stop";

/// A fact of the sitting that decides its result.
struct FactKind {
  std::string_view name;   ///< as typed
  std::string_view title;  ///< as printed
  bool repeats = false;    ///< there may be more than one
};

/// Every fact that is asked for, in the order in which it is printed.
std::span<const FactKind> fact_kinds();

/// The longest text that an event keeps.
inline constexpr std::size_t most_bytes = 4000;

/// @param what  begins the message, such as "the reason".
/// @throws text::BadInput unless `words` are UTF-8 of `least` to `most_bytes` bytes.
void require_words(const std::string& what, const std::string& words, std::size_t least);

/// Whether `word` stands in `list`.
bool is_one_of(std::string_view word, std::span<const std::string_view> list);

}  // namespace sitting
