#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "refusal.h"
#include "seal/canonical_json.h"
#include "seal/chain.h"
#include "seal/commitment.h"
#include "seal/digest.h"

namespace seal {
namespace {

using nlohmann::json;

TEST(Digest, AgreesWithThePublishedExamples) {
  // NIST, FIPS 180-4 example computations for SHA-256: "abc", and the 448-bit message (memory).
  EXPECT_EQ(to_hex(sha256("abc")), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(to_hex(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(to_hex(sha256("")), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST(Digest, HexGoesBothWaysAndNothingElseIsHex) {
  const Digest digest = sha256("abc");
  EXPECT_EQ(from_hex(to_hex(digest)), digest);
  const std::string hex = to_hex(digest);
  EXPECT_FALSE(from_hex(hex.substr(1)));
  EXPECT_FALSE(from_hex(hex + "0"));
  EXPECT_FALSE(from_hex("g" + hex.substr(1)));
  EXPECT_FALSE(from_hex(" " + hex.substr(1)));
}

TEST(Digest, RandomOnesDiffer) { EXPECT_NE(random_digest(), random_digest()); }

TEST(CanonicalText, SortsKeysAndEscapesAsRfc8785Does) {
  // RFC 8785, 3.2.2.2 and 3.2.3: the string of its example and sorting (memory); numbers are left to integers here.
  const json value =
      json::parse(R"({"b":[true,-5,"\u20ac$\u000f\u000aA'\u0042\u0022\u005c\\\"\u002f"],"a":{}})");
  EXPECT_EQ(canonical_text(value), "{\"a\":{},\"b\":[true,-5,\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"]}");
  EXPECT_EQ(parse_canonical(canonical_text(value)), value);
}

TEST(CanonicalText, RefusesWhatIsOutsideTheSubset) {
  EXPECT_EQ(refusal([] {
              canonical_text(json{{"a", 0.5}});
            }),
            "sealed text: /a is a fraction; it may hold objects with ASCII keys, arrays, booleans, UTF-8 "
            "strings and "
            "integers within 2^53, at most 32 deep");
  EXPECT_THROW(canonical_text(json{{"a", nullptr}}), std::domain_error);
  EXPECT_THROW(canonical_text(json{{"ä", 1}}), std::domain_error);
  EXPECT_THROW(canonical_text(json("\xff")), std::domain_error);
  EXPECT_THROW(canonical_text(json(std::int64_t{9007199254740993})), std::domain_error);
  EXPECT_THROW(canonical_text(json(std::int64_t{-9007199254740993})), std::domain_error);
  EXPECT_THROW(canonical_text(json(std::numeric_limits<std::int64_t>::min())), std::domain_error);
  EXPECT_THROW(canonical_text(json(std::uint64_t{18446744073709551615u})), std::domain_error);
  EXPECT_NO_THROW(canonical_text(json(std::int64_t{9007199254740992})));
  json deep = 1;
  for (int i = 0; i < 40; ++i) deep = json::array({deep});
  EXPECT_THROW(canonical_text(deep), std::domain_error);
}

TEST(CanonicalText, OnlyTheCanonicalFormIsReadBack) {
  EXPECT_THROW(parse_canonical(R"({"a": 1})"), std::domain_error);
  EXPECT_THROW(parse_canonical(R"({"b":1,"a":2})"), std::domain_error);
  EXPECT_THROW(parse_canonical(R"({"a":1,"a":1})"), std::domain_error);
  EXPECT_THROW(parse_canonical(R"({"a":1.0})"), std::domain_error);
  EXPECT_THROW(parse_canonical(std::string(100000, '[')), std::domain_error);
  EXPECT_THROW(parse_canonical(""), std::domain_error);
}

TEST(Commitment, IsTheHashOfPlanAndSeed) {
  Digest seed{};
  seed[31] = 1;
  std::string bytes = "{}";
  bytes.append(31, '\0').append(1, '\1');
  EXPECT_EQ(commitment("{}", seed), sha256(bytes));
}

TEST(OrderSeed, HangsOnEveryPart) {
  const Digest seed = sha256("seed");
  const std::vector<std::string> characters = {"k7", "ü!"};
  std::string bytes(bytes_of(seed));
  bytes += "[\"k7\",\"ü!\"]3";
  EXPECT_EQ(order_seed(seed, characters, 3), sha256(bytes));
  EXPECT_NE(order_seed(seed, characters, 2), order_seed(seed, characters, 3));
  EXPECT_NE(order_seed(seed, std::vector<std::string>{"k7ü!", ""}, 3), order_seed(seed, characters, 3));
  EXPECT_THROW(order_seed(seed, characters, 0), std::domain_error);
}

TEST(Chain, EachHeadHangsOnTheOneBefore) {
  const Digest start = chain_start(sha256("plan"), 2);
  EXPECT_EQ(start, sha256(to_hex(sha256("plan")) + "/2"));
  const Digest one = chain_next(start, "{}");
  EXPECT_EQ(one, sha256(std::string(bytes_of(start)) + "{}"));
  EXPECT_NE(chain_next(one, "{}"), one);
}

}  // namespace
}  // namespace seal
