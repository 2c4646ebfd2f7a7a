// Markup that cannot be malformed: every text and attribute is escaped here, every element is closed by its
// destructor's order or by end(), and characters that XML does not allow never get out.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace mainbore::report {

struct Attribute {
  std::string_view name;
  std::string value;
};
using Attributes = std::initializer_list<Attribute>;

// Names of elements and attributes are literals of ours; texts and values may be anybody's.
class HtmlWriter {
 public:
  explicit HtmlWriter(std::string& out) : out_(out) {}

  // <name a="b"> ... to be closed by end().
  HtmlWriter& start(std::string_view name, Attributes attributes = {});
  HtmlWriter& start(std::string_view name, const std::vector<Attribute>& attributes);
  HtmlWriter& end();
  // <name a="b"/>
  HtmlWriter& empty(std::string_view name, Attributes attributes = {});
  HtmlWriter& text(std::string_view text);
  // The same, each number on one line with its fraction and its unit.
  HtmlWriter& prose(std::string_view text);
  // <name a="b">text</name>
  HtmlWriter& element(std::string_view name, std::string_view text, Attributes attributes = {});
  HtmlWriter& prose_element(std::string_view name, std::string_view text, Attributes attributes = {});
  // A line break of the source, for readers of the source.
  HtmlWriter& line();

  [[nodiscard]] std::size_t depth() const { return open_.size(); }

 private:
  template <typename List>
  void tag(std::string_view name, const List& attributes);

  std::string& out_;
  std::vector<std::string_view> open_;
};

// The text as it may be printed (see text_page.hpp), with & < > " escaped.
void append_escaped(std::string& out, std::string_view text);

}  // namespace mainbore::report
