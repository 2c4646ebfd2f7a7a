#include <string>

#include "report/sheet_lines.hpp"
#include "support/approx.hpp"

namespace mainbore::report {
namespace {

TEST_CASE("widths of a condensed face", "[lines]") {
  CHECK(condensed_width("0") == Approx(0.456));
  CHECK(condensed_width("mi ") == Approx(0.683 + 0.182 + 0.228));
  CHECK(condensed_width("\xC3\xA9") == Approx(0.6));  // a character counts once, however many bytes it has
  CHECK(condensed_width("word", true) > condensed_width("word"));
}

TEST_CASE("lines break between words, and a word longer than a line is broken", "[lines]") {
  const auto count = [](std::string_view text, double column) {
    Lines lines(column);
    lines.add(text);
    return lines.count();
  };
  CHECK(count("", 10.0) == 1);
  CHECK(count("00000 00000", 10.0) == 1);
  CHECK(count("00000 00000", 5.0) == 1);  // 2.28 + 0.228 + 2.28
  CHECK(count("00000 00000", 4.7) == 2);
  CHECK(count("00000-00000", 4.7) == 2);
  CHECK(count("00000000000", 2.0) == 3);
  CHECK(count(std::string(40, ' '), 4.0) == 1);
}

TEST_CASE("paragraphs that run on share a line", "[lines]") {
  Lines lines(5.2);
  lines.add("00000 ");
  CHECK(lines.count() == 1);
  lines.add("00000 ");
  CHECK(lines.count() == 1);
  lines.add("0");
  CHECK(lines.count() == 2);
}

}  // namespace
}  // namespace mainbore::report
