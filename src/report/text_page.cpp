#include "report/text_page.hpp"

#include <algorithm>

#include "report/unbroken.hpp"
#include "text/foreign.hpp"

namespace mainbore::report {
namespace {

constexpr bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

// Bytes of the character that starts the text.
std::size_t character(std::string_view text) {
  std::size_t n = 1;
  while (n < text.size() && continues(text[n])) ++n;
  return n;
}

// Bytes of the first `limit` columns.
std::size_t prefix(std::string_view text, std::size_t limit) {
  std::size_t bytes = 0;
  for (std::size_t i = 0; i < limit && bytes < text.size(); ++i) bytes += character(text.substr(bytes));
  return bytes;
}

// Printable, but for the hard spaces that the reports themselves put in.
std::string cleaned(std::string_view text) {
  std::string out;
  for (;;) {
    const std::size_t hard = text.find(hard_space);
    out += printable(text.substr(0, hard));
    if (hard == std::string_view::npos) return out;
    out += hard_space;
    text.remove_prefix(hard + 1);
  }
}

}  // namespace

std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return !continues(c); }));
}

std::string printable(std::string_view text) {
  std::string line(text);
  std::replace_if(
      line.begin(), line.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
  return text::visible(line);
}

TextPage::TextPage(int width, bool emphasis) : width_(std::clamp(width, 40, 200)), emphasis_(emphasis) {}

void TextPage::blank() { out_ += '\n'; }

void TextPage::emphasised(std::string_view text, std::string_view on) {
  if (!emphasis_) {
    out_ += text;
    return;
  }
  out_ += on;
  out_ += text;
  out_ += "\x1b[0m";
}

void TextPage::title(std::string_view text, bool strong) {
  const std::size_t start = out_.size();
  wrap(text, 0, {}, {});
  const std::string wrapped = out_.substr(start);
  out_.resize(start);
  for (std::size_t begin = 0; begin < wrapped.size();) {
    const std::size_t end = wrapped.find('\n', begin);
    emphasised(std::string_view(wrapped).substr(begin, end - begin), strong ? "\x1b[1;7m" : "\x1b[1m");
    out_ += '\n';
    begin = end + 1;
  }
}

void TextPage::heading(std::string_view text, std::string_view beside) {
  blank();
  plain_heading(text, beside);
}

void TextPage::plain_heading(std::string_view text, std::string_view beside) {
  if (beside.empty()) {
    title(text);
    return;
  }
  emphasised(cleaned(text), "\x1b[1m");
  if (columns(text) + 3 + columns(beside) <= static_cast<std::size_t>(width_)) {
    (out_ += " - ").append(cleaned(beside)) += '\n';
  } else {
    out_ += '\n';
    wrap(beside, 0, {}, {});
  }
}

void TextPage::paragraph(std::string_view text, int indent, std::string_view lead) {
  wrap(text, static_cast<std::size_t>(indent), lead, {});
}

void TextPage::coded(std::string_view text, std::string_view code, int indent, std::string_view lead) {
  const std::string tail = "[" + std::string(code) + "]";
  wrap(text, static_cast<std::size_t>(indent), lead, tail);
}

void TextPage::blanked(std::string_view text, std::string_view blank, int indent, std::string_view lead) {
  wrap(text, static_cast<std::size_t>(indent), lead, blank, '.');
}

void TextPage::field(std::string_view label, std::string_view text, int column) {
  std::string lead = "  " + std::string(label) + " ";
  while (columns(lead) + 1 < static_cast<std::size_t>(column)) lead += '.';
  lead += ' ';
  wrap(text, static_cast<std::size_t>(column), lead, {});
}

void TextPage::wrap(std::string_view raw_text, std::size_t indent, std::string_view raw_lead, std::string_view tail,
                    char filling) {
  // Whoever wrote the words, a job's machine or a catalog, they cannot write to the terminal.
  const std::string clean_text = cleaned(raw_text);
  const std::string clean_lead = cleaned(raw_lead);
  const std::string_view text = clean_text;
  std::string_view lead = clean_lead;
  const auto width = static_cast<std::size_t>(width_);
  indent = std::min(indent, width / 2);
  if (columns(lead) > std::max(indent, width / 2)) {  // too long to stand before its text
    wrap(lead, std::min<std::size_t>(indent, 2), {}, {});
    lead = {};
  }
  std::string line(lead);
  while (columns(line) < indent) line += ' ';
  std::size_t used = columns(line);
  bool fresh = true;  // no word on this line yet
  const auto next_line = [&] {
    end_line(line);
    line.assign(indent, ' ');
    used = indent;
    fresh = true;
  };
  const auto put = [&](std::string_view word) {
    if (!fresh && used + 1 + columns(word) > width) next_line();
    if (fresh && used + columns(word) > width && used > indent) next_line();
    if (!fresh) {
      line += ' ';
      ++used;
    }
    while (used + columns(word) > width) {  // longer than any line
      const std::size_t bytes = prefix(word, width - used);
      line += word.substr(0, bytes);
      word.remove_prefix(bytes);
      next_line();
    }
    line += word;
    used += columns(word);
    fresh = false;
  };

  const auto put_all = [&](std::string_view words) {
    for (std::size_t begin = 0; begin < words.size();) {
      begin = words.find_first_not_of(' ', begin);
      if (begin == std::string_view::npos) break;
      const std::size_t end = unbroken_end(words, begin);
      put(words.substr(begin, end - begin));
      begin = end;
    }
  };

  put_all(text);
  if (indent + columns(tail) > width) {  // no line holds it whole
    put_all(tail);
  } else if (!tail.empty()) {
    if (used + 2 + columns(tail) > width) next_line();
    if (used + columns(tail) < width) {
      std::string space(width - used - columns(tail), filling);
      if (filling != ' ') {
        space.front() = ' ';
        space.back() = ' ';
      }
      line += space;
    }
    line += tail;
  }
  end_line(line);
}

void TextPage::end_line(std::string& line) {
  std::replace(line.begin(), line.end(), hard_space, ' ');
  line.erase(line.find_last_not_of(' ') + 1);
  (out_ += line) += '\n';
}

}  // namespace mainbore::report
