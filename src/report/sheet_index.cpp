#include "report/sheet_index.hpp"

#include <algorithm>
#include <array>

#include "mainbore/sheet.hpp"
#include "report/html_writer.hpp"
#include "report/week_days.hpp"
#include "words/terms.hpp"

namespace mainbore::report {
namespace {

constexpr std::size_t longest_name = 80;

constexpr std::array<std::string_view, 5> ends = {"go", "HOLD, ready", "HOLD, office", "NO-GO", "cannot be read"};

bool is_safe(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_' || c == '.';
}

// A device of some systems, whatever stands behind its point.
bool is_reserved(std::string_view small) {
  const std::string_view stem = small.substr(0, small.find('.'));
  if (stem == "con" || stem == "prn" || stem == "aux" || stem == "nul" || stem == "index") return true;
  return stem.size() == 4 && (stem.starts_with("com") || stem.starts_with("lpt"));
}

std::string small_letters(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return text;
}

}  // namespace

std::string SheetIndex::name_for(const WeekOrder& order) {
  std::string name = order.name.substr(0, longest_name);
  bool changed = name.size() < order.name.size() || name.empty();
  for (char& c : name) {
    if (is_safe(c)) continue;
    c = '_';
    changed = true;
  }
  if (name.empty() || name.front() == '.' || name.front() == '-') name.insert(0, 1, '_');
  while (name.ends_with('.')) name.back() = '_';
  std::string small = small_letters(name);
  if (changed || is_reserved(small) || taken_.contains(small)) {
    name += "-order-" + std::to_string(orders_);
    small = small_letters(name);
    for (int again = 2; taken_.contains(small); ++again) small = small_letters(name + '-' + std::to_string(again));
    if (small != small_letters(name)) name = small;
  }
  taken_.insert(small);
  return name + ".html";
}

std::string SheetIndex::add(const WeekOrder& order) {
  ++orders_;
  std::string file = order.sheet.empty() ? std::string() : name_for(order);
  HtmlWriter row(rows_);
  row.start("tr").start("td");
  if (file.empty()) row.text(order.name);
  else row.element("a", order.name, {{"href", file}});
  row.end();
  row.element("td", ends[static_cast<std::size_t>(order.end)]);
  row.element("td", day_shown(order.date));
  row.element("td", order.crew);
  row.element("td", order.place.empty() ? order.where : order.place);
  row.element("td", order.reasons.empty()              ? std::string_view()
                    : order.end == WeekEnd::unreadable ? std::string_view(order.reasons.front().why)
                                                       : std::string_view(order.reasons.front().what));
  row.end().line();
  if (!file.empty()) ++sheets_;
  return file;
}

std::string SheetIndex::page() const {
  std::string out;
  append_page_head(out, "Field sheets", PageScript::none);
  HtmlWriter page(out);
  page.start("main", {{"class", "sheet"}}).line();
  page.element("h1", std::to_string(orders_) + (orders_ == 1 ? " order, " : " orders, ") + std::to_string(sheets_) +
                         (sheets_ == 1 ? " field sheet" : " field sheets"))
      .line();
  page.start("table").line().start("tr");
  for (const std::string_view heading : {"Order", "Verdict", "Day", "Crew", "Place", "Why"})
    page.element("th", heading);
  page.end().line();
  out += rows_;
  page.end().line().end().line();
  append_page_tail(out, PageScript::none);
  return out;
}

std::string sheet_page(const WeekOrder& order) {
  std::string out;
  const std::string_view end = words::term(ends[static_cast<std::size_t>(order.end)], order.language);
  append_page_head(out, order.name + ": " + std::string(end), PageScript::readings, order.language);
  HtmlWriter page(out);
  page.start("nav")
      .element("a", words::term("All orders", order.language), {{"href", std::string(SheetIndex::file_name)}})
      .end()
      .line();
  out += order.sheet;
  append_page_tail(out, PageScript::readings);
  return out;
}

}  // namespace mainbore::report
