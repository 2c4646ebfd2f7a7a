#include "io/text/source_text.hpp"

#include <algorithm>
#include <set>

#include "support/catch.hpp"
#include "support/painted.hpp"

using namespace mainbore;
using namespace mainbore::io;

TEST_CASE("a diagnostic points at its line, column and stretch") {
  const std::string text = "{\r\n  \"größe\": \"8\"\r\n}\r\n";
  const SourceText source(text, "job.json", 1);
  const std::size_t begin = text.find("\"8\"");
  const Diagnostic d =
      source.at({begin, begin + 3}, "/main/size", {"job.no-unit", "\"8\" has no unit", "write \"8 in\"\nor"});
  CHECK(d.line == 2);
  CHECK(d.column == 12);  // characters, not bytes
  CHECK(format_diagnostic(d) ==
        "job.json:2:12: error[job.no-unit]: /main/size: \"8\" has no unit\n"
        "  |  \"größe\": \"8\"\n"
        "  |           ^^^\n"
        "  = write \"8 in\"\n"
        "  = or\n");
}

TEST_CASE("lines are numbered from the first line of the file they are part of") {
  const SourceText source("a\nb", "orders.ndjson", 17);
  CHECK(source.at({0, 1}, "", {"x", "y", ""}).line == 17);
  CHECK(source.at({2, 3}, "", {"x", "y", ""}).line == 18);
}

TEST_CASE("of a long line the part round the place is shown, at every place") {
  std::string text(700, 'x');
  text[600] = '!';
  const SourceText source(text, "f", 1);
  for (std::size_t at = 0; at < text.size(); at += 7) {
    const Diagnostic d = source.at({at, at + 5}, "", {"x", "y", ""});
    CHECK(d.excerpt.size() <= 100);
    CHECK(d.caret + d.caret_length <= static_cast<int>(d.excerpt.size()));
    CHECK(d.column == static_cast<int>(at) + 1);
  }
  const Diagnostic there = source.at({600, 601}, "", {"x", "y", ""});
  CHECK(there.excerpt[static_cast<std::size_t>(there.caret)] == '!');
}

TEST_CASE("a place behind the end of the text is its end") {
  const SourceText source("ab", "f", 1);
  const Diagnostic d = source.at({50, 60}, "", {"x", "y", ""});
  CHECK(d.column == 3);
  CHECK(d.caret_length == 1);
}

TEST_CASE("no control character of a file reaches a message") {
  CHECK(text::quoted("a\x1b[31mb") == "\"a<U+001B>[31mb\"");
  CHECK(text::quoted("a\xC2\x9B"
                     "b") == "\"a<U+009B>b\"");
  CHECK(text::quoted("\xff\xfe") == "\"<FF><FE>\"");
  CHECK(text::quoted(std::string(59, 'a') + "\xC3\xA9\xC3\xA9") == '"' + std::string(59, 'a') + "...\"");
}

TEST_CASE("UTF-8 is checked as RFC 3629 has it") {
  for (const std::string_view good :
       {"", "plain", "\xC3\xA9", "\xE2\x82\xAC", "\xF0\x9F\x98\x80", "\xED\x9F\xBF", "\xF4\x8F\xBF\xBF"}) {
    CHECK_FALSE(first_not_utf8(good));
  }
  for (const std::string_view bad :
       {"a\x80", "a\xC0\x80", "a\xC1\xBF", "a\xE0\x80\x80", "a\xED\xA0\x80", "a\xF0\x80\x80\x80", "a\xF4\x90\x80\x80",
        "a\xF5\x80\x80\x80", "a\xC3", "a\xE2\x82", "a\xF0\x9F\x98"}) {
    CHECK(first_not_utf8(bad) == 1);
  }
}

TEST_CASE("every code of a diagnostic is explained once") {
  std::set<std::string_view> codes;
  for (const DiagnosticText& text : diagnostic_texts()) {
    CHECK(codes.insert(text.code).second);
    CHECK_FALSE(text.title.empty());
    CHECK_FALSE(text.about.empty());
  }
}

TEST_CASE("a caret stands under its stretch, however what comes before is shown") {
  const std::string text = "\"a\x1b\t\xE2\x80\xAE\": 8";
  const SourceText source(text, "f", 1);
  const Diagnostic d = source.at({text.size() - 1, text.size()}, "", {"x", "y", ""});
  CHECK(d.excerpt == "\"a<U+001B> <U+202E>\": 8");
  CHECK(d.excerpt[static_cast<std::size_t>(d.caret)] == '8');
  CHECK(d.column == 9);
}

TEST_CASE("nothing of a diagnostic can be painted with") {
  for (const std::string& paint : mainbore::test::painting) {
    Diagnostic d;
    d.code = "json.syntax";
    d.file = d.pointer = d.message = d.excerpt = paint;
    d.line = 1;
    const std::string shown = format_diagnostic(d);
    CHECK(mainbore::test::not_fit(shown) == "");
    CHECK(std::count(shown.begin(), shown.end(), '\n') == 3);
  }
}

TEST_CASE("lines are counted beyond what 32 bits hold") {
  const std::int64_t far = std::int64_t{5} << 32;
  const SourceText source("a\nb", "orders.ndjson", far);
  CHECK(source.at({2, 3}, "", {"x", "y", ""}).line == far + 1);
  static_assert(sizeof(Diagnostic::line) == 8);
}
