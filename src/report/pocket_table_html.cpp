#include "mainbore/tool_report.hpp"
#include "report/html_writer.hpp"
#include "report/pocket_words.hpp"

namespace mainbore {
namespace {

std::string escaped(std::string_view text) {
  std::string out;
  report::append_escaped(out, text);
  return out;
}

// Landscape, in columns, so that the usual mains of a town stand on one sheet.
constexpr std::string_view style =
    "body{font:8pt/1.15 sans-serif;color:#000;background:#fff;margin:1em}"
    "h1{font-size:12pt;margin:0 0 .3em}p{margin:.2em 0}"
    "main{column-width:34em;column-gap:1.5em}section{margin:.6em 0}"
    "h2{font-size:8.5pt;margin:0 0 .1em;break-after:avoid}"
    "table{border-collapse:collapse;width:100%}tr{break-inside:avoid}"
    "th,td{text-align:right;padding:0 .35em;border-bottom:.5pt solid #000;white-space:nowrap}"
    "th:nth-child(2),td:nth-child(2){text-align:left}"
    "th{border-bottom:1pt solid #000}dl{margin:.6em 0;column-width:34em}"
    "dt{float:left;clear:left;width:2em;font-weight:bold}dd{margin:0 0 .1em 2em}"
    "@page{size:landscape;margin:8mm}"
    "@media print{body{font-size:6pt;margin:0}h1{font-size:9pt}h2{font-size:6.2pt}th,td{padding:0 .2em}"
    "main,dl{column-count:3;column-width:auto}}";

void write_row(std::string& out, const report::PocketRow& row, std::string_view tag) {
  out += "<tr>";
  for (const std::string& cell : row) {
    ((out += '<') += tag) += '>';
    out += escaped(cell);
    ((out += "</") += tag) += '>';
  }
  out += "</tr>\n";
}

}  // namespace

std::string pocket_table_html(const PocketTable& table, UnitSystem system) {
  const report::PocketSheet sheet = report::pocket_sheet(table, system);
  std::string out = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n";
  out += "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n";
  out += "<title>" + escaped(sheet.title) + "</title>\n<style>" + std::string(style) + "</style>\n</head>\n<body>\n";
  out += "<h1>" + escaped(sheet.title) + "</h1>\n";
  for (const std::string& line : sheet.conditions) out += "<p>" + escaped(line) + "</p>\n";
  out += "<main>\n";
  for (const report::PocketBlock& block : sheet.blocks) {
    out += "<section>\n<h2>" + escaped(block.title) + "</h2>\n<table>\n<thead>\n";
    write_row(out, sheet.headings, "th");
    out += "</thead>\n<tbody>\n";
    for (const report::PocketRow& row : block.rows) write_row(out, row, "td");
    out += "</tbody>\n</table>\n</section>\n";
  }
  out += "</main>\n<dl>\n";
  for (const auto& [mark, meaning] : sheet.marks) {
    out += "<dt>" + escaped(mark) + "</dt><dd>" + escaped(meaning) + "</dd>\n";
  }
  return out + "</dl>\n</body>\n</html>\n";
}

}  // namespace mainbore
