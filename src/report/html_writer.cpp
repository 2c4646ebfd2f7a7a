#include "report/html_writer.hpp"

#include "report/text_page.hpp"

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

HtmlWriter& HtmlWriter::element(std::string_view name, std::string_view content, Attributes attributes) {
  return start(name, attributes).text(content).end();
}

HtmlWriter& HtmlWriter::line() {
  out_ += '\n';
  return *this;
}

}  // namespace mainbore::report
