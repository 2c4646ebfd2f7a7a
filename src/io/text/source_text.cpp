#include "io/text/source_text.hpp"

#include <algorithm>
#include <array>

namespace mainbore::io {
namespace {

constexpr std::size_t excerpt_width = 96;

constexpr bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0u) == 0x80u; }

int characters(std::string_view text) {
  return static_cast<int>(std::count_if(text.begin(), text.end(), [](char c) { return !continues(c); }));
}

// On one line, a tab as wide as a space.
std::string excerpt_of(std::string_view text) {
  std::string shown;
  for (;;) {
    const std::size_t tab = text.find('\t');
    shown += text::visible(text.substr(0, tab));
    if (tab == std::string_view::npos) return shown;
    shown += ' ';
    text.remove_prefix(tab + 1);
  }
}

}  // namespace

std::int64_t SourceText::line_of(std::size_t offset) const {
  if (line_begins_.empty()) {
    line_begins_.push_back(0);
    for (std::size_t end = text_.find('\n'); end != std::string_view::npos; end = text_.find('\n', end + 1)) {
      line_begins_.push_back(end + 1);
    }
  }
  const auto next = std::upper_bound(line_begins_.begin(), line_begins_.end(), offset);
  return first_line_ + static_cast<std::int64_t>(next - line_begins_.begin()) - 1;
}

std::optional<Diagnostic> SourceText::unreadable(std::size_t longest, std::string_view what) const {
  if (text_.size() > longest) {
    return at({0, 0}, "",
              {"json.too-large", "longer than any " + std::string(what.substr(what.find(' ') + 1)),
               std::string(what) + " is at most " + std::to_string(longest) + " bytes"});
  }
  if (text_.starts_with("\xFF\xFE") || text_.starts_with("\xFE\xFF")) {
    Diagnostic diagnostic = at({0, 0}, "", {"json.encoding", "the file is UTF-16", "save it as UTF-8"});
    diagnostic.excerpt.clear();
    return diagnostic;
  }
  if (const std::size_t zero = text_.find('\0'); zero != std::string_view::npos) {
    return at({zero, zero + 1}, "", {"json.encoding", "a NUL byte", std::string(what) + " is UTF-8 text"});
  }
  if (const auto bad = first_not_utf8(text_)) {
    return at({*bad, *bad + 1}, "", {"json.encoding", "not UTF-8 from here on", "save the file as UTF-8"});
  }
  return std::nullopt;
}

Diagnostic SourceText::at(Span span, std::string pointer, Problem problem) const {
  Diagnostic diagnostic;
  diagnostic.code = problem.code;
  diagnostic.file = name_;
  diagnostic.pointer = std::move(pointer);
  diagnostic.message = std::move(problem.message);
  diagnostic.help = std::move(problem.help);

  const std::size_t begin = std::min(span.begin, text_.size());
  std::size_t line_begin = text_.substr(0, begin).rfind('\n');
  line_begin = line_begin == std::string_view::npos ? 0 : line_begin + 1;
  std::size_t line_end = std::min(text_.find('\n', begin), text_.size());
  if (line_end > line_begin && text_[line_end - 1] == '\r') --line_end;
  if (line_end < begin) line_end = begin;
  const std::size_t end = std::clamp(span.end, begin, line_end);

  if (first_line_ > 0) {
    diagnostic.line = line_of(begin);
    diagnostic.column = characters(text_.substr(line_begin, begin - line_begin)) + 1;
  }

  // Of a long line, the part round the place; without the indentation.
  std::size_t from = line_begin;
  while (from < begin && (text_[from] == ' ' || text_[from] == '\t')) ++from;
  std::size_t to = line_end;
  if (to - from > excerpt_width) {
    if (begin - from > excerpt_width / 2) from = begin - excerpt_width / 2;
    to = std::min(to, from + excerpt_width);
    while (from < begin && continues(text_[from])) ++from;
    while (to < line_end && continues(text_[to])) ++to;
  }
  diagnostic.excerpt = excerpt_of(text_.substr(from, to - from));
  while (diagnostic.excerpt.ends_with(' ')) diagnostic.excerpt.pop_back();
  diagnostic.caret = characters(excerpt_of(text_.substr(from, begin - from)));
  const std::size_t shown_end = std::clamp(end, begin, std::max(begin, to));
  diagnostic.caret_length = std::max(1, characters(excerpt_of(text_.substr(begin, shown_end - begin))));
  return diagnostic;
}

}  // namespace mainbore::io

namespace mainbore {

std::string format_diagnostic(const Diagnostic& d) {
  using text::visible;
  std::string out = visible(d.file);
  if (d.line > 0) out += ':' + std::to_string(d.line) + ':' + std::to_string(d.column);
  out += ": error[";
  out += d.code;
  out += "]: ";
  if (!d.pointer.empty()) out += visible(d.pointer) + ": ";
  out += visible(d.message) + '\n';
  if (!d.excerpt.empty()) {
    out += "  |  " + visible(d.excerpt) + "\n  |  " + std::string(static_cast<std::size_t>(d.caret), ' ') +
           std::string(static_cast<std::size_t>(d.caret_length), '^') + '\n';
  }
  for (std::string_view rest = d.help; !rest.empty();) {
    const std::size_t cut = std::min(rest.find('\n'), rest.size());
    out += "  = ";
    out += visible(rest.substr(0, cut));
    out += '\n';
    rest.remove_prefix(std::min(cut + 1, rest.size()));
  }
  return out;
}

std::span<const DiagnosticText> diagnostic_texts() {
  static constexpr std::array texts = {
      DiagnosticText{
          "json.syntax", "not JSON",
          "The text breaks the grammar of JSON (RFC 8259). The usual causes: a comma after the last member, a "
          "missing comma or quote, single quotes, a comment, or a quantity such as 82 psi written without "
          "double quotes."},
      DiagnosticText{"json.encoding", "not UTF-8 text",
                     "Files are read as UTF-8. A byte-order mark and Windows line ends are accepted; UTF-16, other "
                     "encodings and NUL bytes are not. Save the file as UTF-8."},
      DiagnosticText{
          "json.too-large", "too long or too deeply nested",
          "A job is a page, not a book: the reader refuses what is longer or nested more deeply than any job "
          "can be, so that a wrong file is refused at once."},
      DiagnosticText{
          "call.wrong-usage", "a call of the C interface that makes no sense",
          "A null where a text or a result belongs, or a number that mainbore.h does not list. The message says "
          "which."},
      DiagnosticText{
          "data.unreadable", "tables that cannot be used",
          "The tables given in place of those built in miss a file or hold a row that cannot be; the message names "
          "file, row and fault."},
      DiagnosticText{"job.duplicate-key", "a key given twice",
                     "JSON readers differ on which of two equal keys counts. Here neither does: keep the right one."},
      DiagnosticText{"job.unknown-key", "a key that is not part of a job",
                     "A misspelt key would silently drop a fact, so it is an error, with the nearest known key."},
      DiagnosticText{"job.unknown-value", "a word that is not one of those known",
                     "The value must be one of the words listed. Case, spaces, hyphens and underscores do not matter. "
                     "The nearest word is offered but never taken."},
      DiagnosticText{"job.wrong-type", "a value of the wrong kind",
                     "Text stands in double quotes; counts and years are plain whole numbers; yes and no are true and "
                     "false. A fact that is not known is left out: null is not a value."},
      DiagnosticText{"job.no-unit", "a number without a unit",
                     "Nobody guesses a unit here: 90 may be psi, kPa or feet of head. Write the unit with the number."},
      DiagnosticText{"job.unknown-unit", "a unit that is not known",
                     "The unit behind the number is none that is read for this kind of value."},
      DiagnosticText{"job.wrong-unit", "the unit of something else",
                     "The unit is known but measures something else: a pressure where a length belongs, for example."},
      DiagnosticText{"job.not-a-quantity", "not a quantity",
                     "A quantity is a number and its unit, such as \"8 in\", \"4 ft 6 in\" or \"82 psi\"."},
      DiagnosticText{"job.out-of-range", "a value out of range",
                     "The value lies outside what can exist. What is odd but possible is accepted and left to the "
                     "planner. A main without pressure is main.pressurized = false, not a pressure of zero."},
      DiagnosticText{"job.missing", "a fact that is required",
                     "Only the main's material and size, the service's size and the line pressure must be known; the "
                     "planner assumes the safe side of anything else. Something nearby needs what it is and where, and "
                     "a machine described by its own figures needs the ones every check rests on."},
      DiagnosticText{"job.contradiction", "two facts that cannot both be",
                     "Two values of the job exclude each other, such as a machine's least tap above its greatest."},
  };
  return texts;
}

}  // namespace mainbore
