#include "sitting/event.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "refusal.h"
#include "seal/canonical_json.h"
#include "stats/random.h"

namespace sitting {
namespace {

/// As `seal::canonical_text` would write it.
std::string canonical(const Event& event) {
  nlohmann::json value = nlohmann::json::object();
  const auto put = [&](const char* key, const auto& field) {
    if (field != std::decay_t<decltype(field)>{}) value[key] = field;
  };
  put("type", event.type), put("time", event.time), put("trial", event.trial), put("tag", event.tag);
  put("presentation", event.presentation), put("who", event.who), put("word", event.word);
  put("sureness", event.sureness), put("text", event.text), put("flag", event.flag);
  return seal::canonical_text(value);
}

// Golden: the text of a kept event never changes, or old chains could no longer be followed.
TEST(EventText, IsAsReleased) {
  EXPECT_EQ(text_of({.type = "spoiled",
                     .time = "2031-05-01T19:30:00.250Z",
                     .trial = 7,
                     .who = "helper",
                     .word = "other",
                     .text = "a \"door\"\\\n\x01 é",
                     .flag = true}),
            R"({"flag":true,"text":"a \"door\"\\\n\u0001 é","time":"2031-05-01T19:30:00.250Z","trial":7,)"
            R"("type":"spoiled","who":"helper","word":"other"})");
  EXPECT_EQ(text_of({.type = "presented", .trial = 3, .presentation = 2, .tag = 417, .sureness = "guess"}),
            R"({"presentation":2,"sureness":"guess","tag":417,"trial":3,"type":"presented"})");
  EXPECT_EQ(text_of({.type = "began"}), R"({"type":"began"})");
}

TEST(EventText, IsCanonicalAndReadsBackWhateverItHolds) {
  stats::Random random(11);
  const std::vector<std::string> pieces = {"a",    "\"",   "\\", "/", "\b\t\n\f\r", std::string(1, '\0'),
                                           "\x1f", "\x7f", "é",  "€", "\U0001F3A7", "\\u0041",
                                           " "};
  const auto words = [&] {
    std::string text;
    for (auto length = random.below(6); length > 0; --length)
      text += pieces[random.below(static_cast<std::uint32_t>(pieces.size()))];
    return text;
  };
  const auto number = [&] { return random.below(2) == 0 ? 0 : static_cast<int>(random.below(3000)) - 1000; };
  for (int i = 0; i < 2000; ++i) {
    Event event{"t" + words(), words(), number(), number(), number(),
                words(),       words(), words(),  words(),  random.below(2) == 1};
    const std::string text = text_of(event);
    ASSERT_EQ(text, canonical(event));
    ASSERT_EQ(text_of(event_of(text)), text);
    ASSERT_EQ(event_of(text).text, event.text);
    ASSERT_EQ(event_of(text).tag, event.tag);
  }
}

TEST(EventText, RefusesBytesThatAreNotUtf8) {
  EXPECT_EQ(refusal([] { text_of({.type = "noted", .text = "caf\xe9"}); }),
            "an event holds text that is not valid UTF-8");
}

TEST(EventText, OnlyWhatItWritesIsReadBack) {
  const std::string good = R"({"trial":7,"type":"answered","who":"ann","word":"A"})";
  EXPECT_EQ(event_of(good).trial, 7);
  for (const std::string bad : {R"()",
                                R"({})",
                                R"([])",
                                R"({"trial":7})",
                                R"({"type":""})",
                                R"({"type":"began"} )",
                                R"( {"type":"began"})",
                                R"({"type": "began"})",
                                R"({"type":"began","flag":true})",
                                R"({"flag":false,"type":"began"})",
                                R"({"trial":0,"type":"began"})",
                                R"({"trial":07,"type":"began"})",
                                R"({"trial":1.9,"type":"began"})",
                                R"({"trial":4294967297,"type":"began"})",
                                R"({"trial":true,"type":"began"})",
                                R"({"trial":"7","type":"began"})",
                                R"({"type":"began","type":"began"})",
                                R"({"type":"began","zeal":1})",
                                R"({"type":"beg\u0061n"})",
                                R"({"type":"began\/"})",
                                R"({"type":"\u00E9"})",
                                R"({"type":"a\u0001"},)",
                                R"({"type":"a)",
                                R"({"type":"a\)",
                                R"({"type":"a\u)",
                                R"({"type":"a\u00)",
                                R"({"type":null})",
                                R"({"who":{"a":1},"type":"x"})",
                                "{\"type\":\"a\nb\"}",
                                "{\"type\":\"\xff\"}",
                                R"({"type":"\uzzzz"})",
                                R"({"type":"\u00zz"})"})
    EXPECT_TRUE(refusal([&] {
                  event_of(bad);
                }).starts_with("an event has no type, or is not as this program writes it: "))
        << bad;
}

}  // namespace
}  // namespace sitting
