// What others wrote, as people may see it.
#include "text/foreign.hpp"

#include <random>

#include "support/catch.hpp"
#include "support/painted.hpp"
#include "support/reference_table.hpp"

using namespace mainbore;
using namespace mainbore::text;
using namespace mainbore::test;

namespace {

std::string utf8(char32_t code) {
  std::string out;
  const auto byte = [&](char32_t value) { out += static_cast<char>(static_cast<unsigned char>(value)); };
  if (code < 0x80) {
    byte(code);
  } else if (code < 0x800) {
    byte(0xC0 | code >> 6), byte(0x80 | (code & 0x3F));
  } else if (code < 0x10000) {
    byte(0xE0 | code >> 12), byte(0x80 | (code >> 6 & 0x3F)), byte(0x80 | (code & 0x3F));
  } else {
    byte(0xF0 | code >> 18), byte(0x80 | (code >> 12 & 0x3F)), byte(0x80 | (code >> 6 & 0x3F)),
        byte(0x80 | (code & 0x3F));
  }
  return out;
}

}  // namespace

TEST_CASE("what has no ink and is no space is hidden, as Unicode has it") {
  const ReferenceTable table("text_unicode_categories.csv");
  int hidden = 0;
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    const bool space = row.text("category") == "Zs";
    const bool ink = row.text("ink") == "yes";
    for (auto code = static_cast<char32_t>(row.number("first")); code <= row.number("last"); ++code) {
      CHECK(is_hidden(code) == (!space && !ink));
      CHECK(is_blank(utf8(code)) == !ink);
      hidden += is_hidden(code) ? 1 : 0;
    }
  }
  CHECK(hidden > 200);
  for (const char32_t letter : {U'a', U'\u00E9', U'\u05D0', U'\u4E2D', U'\U0001F6B0'}) CHECK_FALSE(is_hidden(letter));
}

TEST_CASE("every character is shown as it is or by its number, and twice shown is the same") {
  for (char32_t code = 0; code <= 0x10FFFF; ++code) {
    if (code >= 0xD800 && code <= 0xDFFF) continue;
    const std::string one = utf8(code);
    const Character read = first_character(one);
    const std::string shown = visible(one);
    const bool kept = shown == one;
    if (!read.good || read.code != code || read.size != one.size() || kept == is_hidden(code) ||
        visible(shown) != shown || (!kept && !shown.starts_with("<U+"))) {
      FAIL("U+" << std::hex << static_cast<unsigned>(code) << " is shown as " << shown);
    }
  }
  CHECK(visible("a\x1b[2Jb") == "a<U+001B>[2Jb");
  CHECK(visible("\xF3\xA0\x81\x87") == "<U+E0047>");
  CHECK(visible("\xFF"
                "a\xC3") == "<FF>a<C3>");
  CHECK(visible_lines("a\n\tb") == "a\n<U+0009>b");
}

TEST_CASE("whatever the bytes, what is shown is UTF-8 that moves no cursor") {
  std::mt19937 random(7);
  for (int round = 0; round < 200000; ++round) {
    std::string bytes(random() % 90, ' ');
    for (char& c : bytes) {
      static const std::string lively = "\x1b\n\r\x07\xC2\x9B\xE2\x80\xAE\xEF\xBB\xBF\xF3\xA0\x81\xC3\xA9x\xFF";
      c = random() % 3 == 0 ? static_cast<char>(random()) : lively[random() % lively.size()];
    }
    for (const std::string& shown : {visible(bytes), quoted(bytes)}) {
      if (not_fit(shown) != "" || shown.find('\n') != std::string::npos) FAIL(visible(bytes) << ": " << not_fit(shown));
    }
    const std::size_t most = random() % 90;
    const std::string_view kept = cut(bytes, most);
    if (kept.size() > most || (!first_not_utf8(bytes) && first_not_utf8(kept))) FAIL(visible(bytes));
  }
}

TEST_CASE("a value is cut between characters") {
  std::string text = "x";
  for (int i = 0; i < 40; ++i) text += "\xC3\xA9";
  for (std::size_t most = 0; most <= text.size(); ++most) {
    CHECK(cut(text, most).size() == (most == 0 ? 0 : most - (most + 1) % 2));
  }
  CHECK(quoted(text).size() == 1 + 59 + 4);
  CHECK(quoted("short") == "\"short\"");
  CHECK(cut("\x80\x80\x80\x80\x80\x80", 5).size() == 5);  // bytes of no character
}

TEST_CASE("a text in which there is nothing to read is blank") {
  for (const std::string_view blank : {"", " ", "\t\r\n", "\xC2\xA0\xE3\x80\x80", "\xE2\x80\x8B", "\xEF\xBB\xBF",
                                       "\xE2\xA0\x80", "\xE3\x85\xA4", "\xC2\xAD \xE2\x81\xA0"}) {
    CHECK(is_blank(blank));
  }
  for (const std::string_view ink : {".", " x ", "\xE2\x80\x8B-", "\xFF"}) CHECK_FALSE(is_blank(ink));
}
