#include "cli/explain_command.hpp"

#include <algorithm>

#include "cli/result_writer.hpp"
#include "io/text/nearest.hpp"
#include "mainbore/approved_file.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/finding_words.hpp"
#include "mainbore/order_file.hpp"
#include "mainbore/readings_file.hpp"
#include "mainbore/rules_file.hpp"
#include "mainbore/settings_file.hpp"
#include "text/foreign.hpp"

namespace mainbore::cli {
namespace {

constexpr std::size_t page_width = 80;

void append_paragraph(std::string& out, std::string_view text) {
  std::size_t column = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (word.empty()) continue;
    if (column > 0 && column + 1 + word.size() > page_width) {
      out += '\n';
      column = 0;
    }
    if (column > 0) {
      out += ' ';
      ++column;
    }
    out += word;
    column += word.size();
  }
  out += '\n';
}

std::vector<DiagnosticText> all_diagnostics() {
  std::vector<DiagnosticText> texts;
  for (const std::span<const DiagnosticText> some :
       {diagnostic_texts(), rules_diagnostic_texts(), order_diagnostic_texts(), settings_diagnostic_texts(),
        record_diagnostic_texts(), approved_diagnostic_texts()}) {
    texts.insert(texts.end(), some.begin(), some.end());
  }
  return texts;
}

std::string list_of_codes() {
  std::size_t widest = 0;
  std::vector<std::pair<std::string_view, std::string_view>> lines;
  for (const std::string_view code : finding_codes) lines.emplace_back(code, text_of(*finding_named(code)).title);
  for (const DiagnosticText& text : all_diagnostics()) lines.emplace_back(text.code, text.title);
  for (const auto& [code, title] : lines) widest = std::max(widest, code.size());
  std::string out;
  for (const auto& [code, title] : lines) {
    out += code;
    out.append(widest + 2 - code.size(), ' ');
    out += title;
    out += '\n';
  }
  return out;
}

std::string explained(std::string_view code) {
  std::string out;
  std::string_view title;
  std::string_view about;
  std::string fix;
  if (const auto finding = finding_named(code)) {
    title = text_of(*finding).title;
    about = text_of(*finding).about;
    fix = fix_in_general(*finding);
  }
  for (const DiagnosticText& text : all_diagnostics()) {
    if (text.code != code) continue;
    title = text.title;
    about = text.about;
  }
  if (title.empty()) {
    std::vector<std::string_view> codes(finding_codes.begin(), finding_codes.end());
    for (const DiagnosticText& text : all_diagnostics()) codes.push_back(text.code);
    std::string message = "unknown code " + text::quoted(code);
    if (const auto near = io::nearest(code, codes)) message += ": did you mean \"" + std::string(*near) + "\"?";
    throw Stop(exit_usage, message + "\nall codes: mainbore explain --list");
  }
  out = std::string(code) + ": " + std::string(title) + "\n\n";
  append_paragraph(out, about);
  if (!fix.empty()) {
    out += '\n';
    append_paragraph(out, "What to do: " + fix);
  }
  return out;
}

}  // namespace

ExitStatus explain_command(const ExplainRequest& request, Console& console) {
  if (request.list) {
    write_result(list_of_codes(), console);
  } else if (request.code.empty()) {
    throw Stop(exit_usage, "explain which code?\nall codes: mainbore explain --list");
  } else {
    write_result(explained(request.code), console);
  }
  return exit_go;
}

}  // namespace mainbore::cli
