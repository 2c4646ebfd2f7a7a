#include "report/html_writer.hpp"

#include <algorithm>

#include "report/text_page.hpp"
#include "report/unbroken.hpp"

namespace mainbore::report {
void append_escaped(std::string& out, std::string_view raw) {
  const std::string clean = printable(raw);
  for (const char c : clean) {
    if (c == '&') out += "&amp;";
    else if (c == '<') out += "&lt;";
    else if (c == '>') out += "&gt;";
    else if (c == '"') out += "&quot;";
    else out += c;
  }
}

template <typename List>
void HtmlWriter::tag(std::string_view name, const List& attributes) {
  (out_ += '<') += name;
  for (const Attribute& attribute : attributes) {
    ((out_ += ' ') += attribute.name) += "=\"";
    append_escaped(out_, attribute.value);
    out_ += '"';
  }
}

HtmlWriter& HtmlWriter::start(std::string_view name, Attributes attributes) {
  tag(name, attributes);
  out_ += '>';
  open_.push_back(name);
  return *this;
}

HtmlWriter& HtmlWriter::start(std::string_view name, const std::vector<Attribute>& attributes) {
  tag(name, attributes);
  out_ += '>';
  open_.push_back(name);
  return *this;
}

HtmlWriter& HtmlWriter::end() {
  ((out_ += "</") += open_.back()) += '>';
  open_.pop_back();
  return *this;
}

HtmlWriter& HtmlWriter::empty(std::string_view name, Attributes attributes) {
  tag(name, attributes);
  out_ += "/>";
  return *this;
}

HtmlWriter& HtmlWriter::text(std::string_view text) {
  append_escaped(out_, text);
  return *this;
}

HtmlWriter& HtmlWriter::prose(std::string_view words) {
  std::size_t written = 0;
  for (std::size_t at = words.find_first_not_of(' '); at < words.size();) {
    const std::size_t end = unbroken_end(words, at);
    const std::string_view piece = words.substr(at, end - at);
    if (would_break(piece)) {
      text(words.substr(written, at - written));
      element("span", piece, {{"class", "number"}});
      written = end;
    }
    at = words.find_first_not_of(' ', end);
  }
  return text(words.substr(std::min(written, words.size())));
}

HtmlWriter& HtmlWriter::prose_element(std::string_view name, std::string_view content, Attributes attributes) {
  return start(name, attributes).prose(content).end();
}

HtmlWriter& HtmlWriter::element(std::string_view name, std::string_view content, Attributes attributes) {
  return start(name, attributes).text(content).end();
}

HtmlWriter& HtmlWriter::line() {
  out_ += '\n';
  return *this;
}

}  // namespace mainbore::report
