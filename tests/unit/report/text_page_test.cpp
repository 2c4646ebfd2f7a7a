#include "report/text_page.hpp"

#include "report/unbroken.hpp"
#include "support/catch.hpp"

namespace mainbore::report {
namespace {

std::string page_of(int width, std::string_view text, int indent = 0, std::string_view lead = {}) {
  TextPage page(width, false);
  page.paragraph(text, indent, lead);
  return std::move(page).take();
}

}  // namespace

TEST_CASE("words are wrapped and hang under their lead") {
  CHECK(page_of(40, "Gauge the wall at the tap and beside it, twice.", 4, " 1. ") ==
        " 1. Gauge the wall at the tap and beside\n    it, twice.\n");
}

TEST_CASE("a number keeps its unit") {
  CHECK(page_of(40, "The pipe must measure no less than 6.84 in outside.") ==
        "The pipe must measure no less than\n6.84 in outside.\n");
}

TEST_CASE("feet keep their inches, and a blank its unit") {
  CHECK(page_of(40, "Measure from the tap to the joint 4 ft 6-1/2 in or more.") ==
        "Measure from the tap to the joint\n4 ft 6-1/2 in or more.\n");
  CHECK(page_of(40, "The bar is marked where it is drawn ____ in back.") ==
        "The bar is marked where it is drawn\n____ in back.\n");
}

TEST_CASE("what a browser would break is told from words and from long texts") {
  CHECK(would_break("28-11/16 in"));
  CHECK(would_break("1/4"));
  CHECK_FALSE(would_break("cutting-grease"));
  CHECK_FALSE(would_break("AV-1041-of-a-very-long-list-of-orders"));
}

TEST_CASE("a word longer than a line is broken") {
  const std::string text = page_of(40, std::string(95, 'x'));
  CHECK(text == std::string(40, 'x') + "\n" + std::string(40, 'x') + "\n" + std::string(15, 'x') + "\n");
}

TEST_CASE("columns are counted in characters, not in bytes") {
  CHECK(columns("caf\xC3\xA9") == 4);
  // 40 two-byte letters fill a line of 40.
  std::string wide;
  for (int i = 0; i < 40; ++i) wide += "\xC3\xA9";
  CHECK(page_of(40, wide) == wide + "\n");
}

TEST_CASE("control characters of the job's own words do not reach the page") {
  CHECK(printable("a\x1b[2Jb\nc\td\x7f") == "a<U+001B>[2Jb c d<U+007F>");
  CHECK(printable("a\x1f"
                  "b") == "a<U+001F>b");
  CHECK(page_of(40, "a\x1b[2Jb") == "a<U+001B>[2Jb\n");
  CHECK(printable("a\xC2\x9b"
                  "b") == "a<U+009B>b");  // a one-character control sequence introducer
  CHECK(printable("a\xE2\x80\xAE"
                  "b") == "a<U+202E>b");  // right-to-left override
  CHECK(printable("Str\xC3\xB6m, 5\xE2\x80\x93"
                  "7") ==
        "Str\xC3\xB6m, 5\xE2\x80\x93"
        "7");
  CHECK(printable("\xff\xfe") == "<FF><FE>");
}

TEST_CASE("a code stands at the end of the line, or on its own") {
  TextPage page(40, false);
  page.coded("Short.", "a.code");
  page.coded("This one leaves no room for the code.", "another.code");
  CHECK(std::move(page).take() ==
        "Short.                          [a.code]\n"
        "This one leaves no room for the code.\n"
        "                          [another.code]\n");
}

TEST_CASE("fields stand in a column") {
  TextPage page(60, false);
  page.field("Tap", "1 in");
  page.field("Outside diameter", "6.9 in");
  CHECK(std::move(page).take() ==
        "  Tap .................... 1 in\n"
        "  Outside diameter ....... 6.9 in\n");
}

TEST_CASE("widths outside the range are drawn in") {
  CHECK(TextPage(1, false).width() == 40);
  CHECK(TextPage(5000, false).width() == 200);
}

}  // namespace mainbore::report
