#include <algorithm>

#include "mainbore/tool_report.hpp"
#include "report/pocket_words.hpp"
#include "report/text_page.hpp"

namespace mainbore {
namespace {

std::string right(const std::string& cell, std::size_t width) {
  std::string text = report::printable(cell);
  const std::size_t used = report::columns(text);
  if (used < width) text.insert(0, width - used, ' ');
  return text;
}
std::string left(const std::string& cell, std::size_t width) {
  std::string text = report::printable(cell);
  const std::size_t used = report::columns(text);
  if (used < width) text.append(width - used, ' ');
  return text;
}

void add_line(std::string& out, std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  (out += line) += '\n';
}

}  // namespace

std::string pocket_table_text(const PocketTable& table, UnitSystem system) {
  const report::PocketSheet sheet = report::pocket_sheet(table, system);
  constexpr int width = 100;
  report::TextPage head(width, false);
  head.title(sheet.title);
  for (const std::string& line : sheet.conditions) head.paragraph(line);
  std::string out = std::move(head).take();
  std::vector<std::size_t> widths;
  for (const auto& heading : sheet.headings) widths.push_back(report::columns(heading));
  for (const report::PocketBlock& block : sheet.blocks) {
    for (const auto& row : block.rows) {
      for (std::size_t i = 0; i < row.size(); ++i)
        widths[i] = std::max(widths[i], report::columns(report::printable(row[i])));
    }
  }
  for (const report::PocketBlock& block : sheet.blocks) {
    report::TextPage title(width, false);
    title.blank();
    title.title(block.title);
    out += std::move(title).take();
    const auto put = [&](const auto& row) {
      std::string line;
      for (std::size_t i = 0; i < row.size(); ++i) {
        line += i == 0 ? " " : "  ";
        line += i == 1 ? left(row[i], widths[i]) : right(row[i], widths[i]);
      }
      add_line(out, line);
    };
    put(sheet.headings);
    for (const auto& row : block.rows) put(row);
  }
  report::TextPage foot(width, false);
  foot.blank();
  for (const auto& [mark, meaning] : sheet.marks) foot.paragraph(meaning, 5, mark);
  return out + std::move(foot).take();
}

}  // namespace mainbore
