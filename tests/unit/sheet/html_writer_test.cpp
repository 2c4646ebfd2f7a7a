#include "report/html_writer.hpp"

#include "support/catch.hpp"

namespace mainbore::report {
namespace {

std::string escaped(std::string_view text) {
  std::string out;
  append_escaped(out, text);
  return out;
}

TEST_CASE("texts and attributes are escaped", "[html]") {
  CHECK(escaped(R"(a < b & c > "d")") == "a &lt; b &amp; c &gt; &quot;d&quot;");
  std::string out;
  HtmlWriter writer(out);
  writer.start("p", {{"class", "x\" onclick=\"y"}}).text("</p><script>").end();
  CHECK(out == "<p class=\"x&quot; onclick=&quot;y\">&lt;/p&gt;&lt;script&gt;</p>");
}

TEST_CASE("elements are closed in the order in which they were opened", "[html]") {
  std::string out;
  HtmlWriter writer(out);
  writer.start("ul").element("li", "one").empty("br").start("li").element("b", "two").end().end();
  CHECK(out == "<ul><li>one</li><br/><li><b>two</b></li></ul>");
  CHECK(writer.depth() == 0);
}

TEST_CASE("characters that XML does not allow do not get out", "[html]") {
  using namespace std::string_view_literals;
  CHECK(escaped("a\nb\tc\x01"
                "d\x00"
                "e\x7F"sv) == "a b c&lt;U+0001&gt;d&lt;U+0000&gt;e&lt;U+007F&gt;");
  CHECK(escaped("\xE2\x80\xAE"
                "reversed") == "&lt;U+202E&gt;reversed");  // a mark that turns the direction of writing
  CHECK(escaped("Stra\xC3\x9F"
                "e") ==
        "Stra\xC3\x9F"
        "e");
  CHECK(escaped("\xF0\x9F\x9A\xB0") == "\xF0\x9F\x9A\xB0");
  CHECK(escaped("\xFF") == "&lt;FF&gt;");
  CHECK(escaped("\xC3") == "&lt;C3&gt;");                              // cut off
  CHECK(escaped("\xC0\xAF") == "&lt;C0&gt;&lt;AF&gt;");                // overlong
  CHECK(escaped("\xED\xA0\x80") == "&lt;ED&gt;&lt;A0&gt;&lt;80&gt;");  // a surrogate
  CHECK(escaped("\xEF\xBF\xBF") == "&lt;U+FFFF&gt;");                  // no character
}

}  // namespace
}  // namespace mainbore::report
