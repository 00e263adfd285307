#include "sitting/event.h"

#include <charconv>
#include <stdexcept>

#include "text/utf8.h"

namespace sitting {
namespace {

/// Every field once, for both directions; in the order of their names, as the canonical text has them.
template <typename AnyEvent, typename Visit>
void visit_fields(AnyEvent& event, Visit visit) {
  visit("flag", event.flag);
  visit("presentation", event.presentation);
  visit("sureness", event.sureness);
  visit("tag", event.tag);
  visit("text", event.text);
  visit("time", event.time);
  visit("trial", event.trial);
  visit("type", event.type);
  visit("who", event.who);
  visit("word", event.word);
}

constexpr std::string_view named_controls = "\b\t\n\f\r", control_names = "btnfr",
                           hex_digits = "0123456789abcdef";

void write_control(std::string& out, char control) {
  const auto code = static_cast<std::size_t>(control);
  const auto name = named_controls.find(control);
  if (name != std::string_view::npos) {
    out += {'\\', control_names[name]};
  } else {
    out += {'\\', 'u', '0', '0', hex_digits[code >> 4], hex_digits[code & 15]};
  }
}

void write(std::string& out, const std::string& words) {
  if (!text::is_valid_utf8(words)) throw std::domain_error("an event holds text that is not valid UTF-8");
  out += '"';
  for (const char c : words) {
    if (static_cast<unsigned char>(c) < 0x20) {
      write_control(out, c);
    } else {
      if (c == '"' || c == '\\') out += '\\';
      out += c;
    }
  }
  out += '"';
}

void write(std::string& out, int number) { out += std::to_string(number); }

void write(std::string& out, bool flag) { out += flag ? "true" : "false"; }

bool take(std::string_view& rest, std::string_view token) {
  if (!rest.starts_with(token)) return false;
  rest.remove_prefix(token.size());
  return true;
}

/// The readers take what `write` writes; whatever else they meet does not come out again as it went in.
char read_escaped(std::string_view& rest) {
  if (rest.starts_with('u') && rest.size() >= 5) {
    const std::size_t high = hex_digits.find(rest[3]), low = hex_digits.find(rest[4]);
    rest.remove_prefix(5);
    return high < 2 && low < 16 ? static_cast<char>(16 * high + low) : '\0';
  }
  const char name = rest.front();
  rest.remove_prefix(1);
  const auto control = control_names.find(name);
  return control == std::string_view::npos ? name : named_controls[control];
}

void read(std::string_view& rest, std::string& words) {
  take(rest, "\"");
  while (!rest.empty() && rest.front() != '"') {
    const char c = rest.front();
    rest.remove_prefix(1);
    words += c == '\\' && !rest.empty() ? read_escaped(rest) : c;
  }
  take(rest, "\"");
}

void read(std::string_view& rest, int& number) {
  const auto result = std::from_chars(rest.data(), rest.data() + rest.size(), number);
  rest.remove_prefix(static_cast<std::size_t>(result.ptr - rest.data()));
}

void read(std::string_view& rest, bool& flag) { flag = take(rest, "true"); }

}  // namespace

std::string text_of(const Event& event) {
  std::string out = "{";
  visit_fields(event, [&]<typename Field>(const char* key, const Field& field) {
    if (field == Field{}) return;
    out += out.size() > 1 ? ",\"" : "\"";
    out += key;
    out += "\":";
    write(out, field);
  });
  return out + "}";
}

Event event_of(std::string_view text) {
  Event event;
  std::string_view rest = text;
  take(rest, "{");
  visit_fields(event, [&]<typename Field>(const char* key, Field& field) {
    if (take(rest, "\"" + std::string(key) + "\":")) {
      read(rest, field);
      take(rest, ",");
    }
  });
  if (event.type.empty() || !text::is_valid_utf8(text) || text_of(event) != text)
    throw std::domain_error("an event has no type, or is not as this program writes it: " +
                            text::printable(text));
  return event;
}

}  // namespace sitting
