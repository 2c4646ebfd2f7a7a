#include "report/html_writer.hpp"

#include <cstdint>

#include "report/text_page.hpp"

namespace mainbore::report {
namespace {

// Bytes of the well-formed UTF-8 character the text starts with; 0 where there is none that XML allows.
std::size_t good_character(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  if (byte(0) < 0x80) return 1;
  const std::size_t length = byte(0) >= 0xF0 ? 4 : byte(0) >= 0xE0 ? 3 : 2;
  if (byte(0) < 0xC2 || byte(0) > 0xF4 || text.size() < length) return 0;
  std::uint32_t point = byte(0) & (0xFFU >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0U) != 0x80U) return 0;
    point = point << 6U | (byte(i) & 0x3FU);
  }
  const std::uint32_t least = length == 2 ? 0x80 : length == 3 ? 0x800 : 0x10000;
  const bool surrogate = point >= 0xD800 && point <= 0xDFFF;
  if (point < least || point > 0x10FFFF || surrogate || point == 0xFFFE || point == 0xFFFF) return 0;
  return length;
}

}  // namespace

void append_escaped(std::string& out, std::string_view raw) {
  const std::string clean = printable(raw);
  for (std::string_view text = clean; !text.empty();) {
    const std::size_t length = good_character(text);
    if (length == 0) out += "\xEF\xBF\xBD";
    else if (text.front() == '&') out += "&amp;";
    else if (text.front() == '<') out += "&lt;";
    else if (text.front() == '>') out += "&gt;";
    else if (text.front() == '"') out += "&quot;";
    else out += text.substr(0, length);
    text.remove_prefix(length == 0 ? 1 : length);
  }
}

void HtmlWriter::tag(std::string_view name, Attributes attributes) {
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
