#include <algorithm>
#include <array>
#include <vector>

#include "mainbore/rules_report.hpp"
#include "report/text_page.hpp"

namespace mainbore {
namespace {

using report::TextPage;

// Of a list of largest taps the size says it all, and nothing is a tap of no size.
std::string side_words(const RuleDifference& one, const Detail& value, const RuleRow& row, UnitSystem system) {
  std::string text = rule_in_words(value, one.material ? RuleRow() : row, system);
  if (!text.empty()) return text;
  return one.material ? "none" : "not set";
}
std::string before_words(const RuleDifference& one, UnitSystem system) {
  return side_words(one, one.before, one.row_before, system);
}
std::string after_words(const RuleDifference& one, UnitSystem system) {
  return side_words(one, one.after, one.row_after, system);
}

std::string with_reason(const Basis& basis) {
  std::string text = basis_in_words(basis);
  if (basis.reason != nullptr) text += ". Reason: " + *basis.reason;
  return text + ".";
}

std::string title_of(const RuleDifference& one) {
  const std::string mains = mains_in_words(one);
  return std::string(one.path) + (mains.empty() ? "" : ", " + mains);
}

std::string counted(std::size_t count, std::string_view noun) {
  return std::to_string(count) + ' ' + std::string(noun) + (count == 1 ? "" : "s");
}

struct Part {
  RuleChange change;
  std::string_view heading;
  std::string_view beside;
};
constexpr std::array parts = {
    Part{RuleChange::looser, "LOOSER", "allows more, or asks less"},
    Part{RuleChange::stricter, "STRICTER", "allows less, or asks more"},
    Part{RuleChange::other, "OTHERWISE", "neither stricter nor looser"},
    Part{RuleChange::same, "AS BEFORE", "the utility's own word, with the same value"},
};

template <class Put>
void put_parts(TextPage& page, std::span<const RuleDifference> differences, Put put) {
  for (const Part& part : parts) {
    bool begun = false;
    for (const RuleDifference& one : differences) {
      if (one.change != part.change) continue;
      if (!begun) page.heading(part.heading, part.beside);
      begun = true;
      put(one);
    }
  }
}

// ---- a table of what a file makes of the defaults

struct Column {
  std::string_view heading;
  std::size_t width;
};
constexpr std::array table_columns = {Column{"RULE", 37}, Column{"DEFAULT", 12}, Column{"THIS FILE", 12},
                                      Column{"CHANGE", 11}};
using Cells = std::array<std::string, table_columns.size()>;

// A word wider than the column stands over its end.
std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  std::vector<std::string> lines = {{}};
  while (!text.empty()) {
    const std::size_t space = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, space);
    text.remove_prefix(std::min(space + 1, text.size()));
    if (!lines.back().empty() && report::columns(lines.back()) + 1 + report::columns(word) > width)
      lines.emplace_back();
    if (!lines.back().empty()) lines.back() += ' ';
    lines.back() += word;
  }
  return lines;
}

void put_cells(TextPage& page, const Cells& cells) {
  std::array<std::vector<std::string>, table_columns.size()> columns;
  std::size_t height = 0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    columns[i] = wrapped(report::printable(cells[i]), table_columns[i].width);
    height = std::max(height, columns[i].size());
  }
  for (std::size_t line = 0; line < height; ++line) {
    std::string text = "  ";
    std::size_t from = text.size();
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (line < columns[i].size() && !columns[i][line].empty()) {
        text.append(std::max(from, report::columns(text) + (text.size() > 2 ? 1 : 0)) - report::columns(text), ' ');
        text += columns[i][line];
      }
      from += table_columns[i].width + 1;
    }
    page.append(text + '\n');
  }
}

std::string change_words(const RuleDifference& one) {
  constexpr std::array<std::string_view, 4> words = {"same", "stricter", "LOOSER", "otherwise"};
  return std::string(words[static_cast<std::size_t>(one.change)]) + (needs_reason(one) ? " *" : "");
}

std::string rests_on(const RuleDifference& one) {
  std::string text = consent_in_words(one);
  if (one.after_basis != nullptr) text += (text.empty() ? "" : " ") + with_reason(*one.after_basis);
  return text;
}

// Rows that rest on the same word stand together, and it once behind them.
void put_table(TextPage& page, std::span<const RuleDifference> differences, UnitSystem system) {
  std::vector<const RuleDifference*> list;
  for (const Part& part : parts) {
    for (const RuleDifference& one : differences) {
      if (one.change == part.change) list.push_back(&one);
    }
  }
  Cells headings;
  for (std::size_t i = 0; i < headings.size(); ++i) headings[i] = table_columns[i].heading;
  put_cells(page, headings);
  for (std::size_t i = 0; i < list.size(); ++i) {
    const RuleDifference& one = *list[i];
    const bool of_a_list = !one.material && (!std::holds_alternative<std::monostate>(one.row_before) ||
                                             !std::holds_alternative<std::monostate>(one.row_after));
    if (of_a_list) {
      const bool gone = std::holds_alternative<std::monostate>(one.row_after);
      put_cells(page, {title_of(one), gone ? "a row" : "", gone ? "none" : "a row", change_words(one)});
      page.paragraph(gone ? before_words(one, system) : after_words(one, system), 6);
    } else {
      put_cells(page, {title_of(one), before_words(one, system), after_words(one, system), change_words(one)});
    }
    const std::string basis = rests_on(one);
    if (!basis.empty() && (i + 1 == list.size() || rests_on(*list[i + 1]) != basis)) page.paragraph(basis, 6);
  }
}

}  // namespace

std::string rules_check_text(const Rules& rules, std::span<const RuleDifference> differences, UnitSystem system,
                             int width) {
  const std::vector<RuleInForce> list = list_rules(rules);
  const auto set = std::count_if(list.begin(), list.end(),
                                 [](const RuleInForce& rule) { return rule.basis != nullptr && rule.basis->utility; });
  TextPage page(width, false);
  page.title("READABLE: " + rules.name);
  if (const std::string documents = documents_in_words(rules); documents != rules.name) page.paragraph(documents + ".");
  page.paragraph(counted(static_cast<std::size_t>(set), "rule") + " set, rows of lists among them.");
  page.heading("WHAT THIS FILE MAKES OF THE DEFAULTS");
  if (differences.empty()) page.paragraph("Nothing differs.");
  else put_table(page, differences, system);
  if (std::any_of(differences.begin(), differences.end(), needs_reason)) {
    page.paragraph("* Guards people or pipe: not without the reason.");
  }
  return std::move(page).take();
}

std::string rules_show_text(const Rules& rules, std::span<const RuleInForce> list, UnitSystem system, int width) {
  TextPage page(width, false);
  page.title("IN FORCE: " + rules.name);
  std::string_view group;
  for (const RuleInForce& rule : list) {
    const std::string_view own_group = rule.path.substr(0, rule.path.find('.'));
    if (own_group != group) page.heading(group = own_group);
    const std::string value = rule_in_words(rule.value, rule.row, system);
    page.paragraph(std::string(rule.path) + ": " + (value.empty() ? "not set" : value), 4, "  - ");
    if (rule.basis != nullptr) page.paragraph(with_reason(*rule.basis), 6);
  }
  return std::move(page).take();
}

std::string rules_diff_text(const Rules& before, const Rules& after, std::span<const RuleDifference> differences,
                            UnitSystem system, int width) {
  TextPage page(width, false);
  page.title("FROM " + before.name + " TO " + after.name);
  if (differences.empty()) page.paragraph("Nothing differs.");
  const auto side = [&](std::string_view label, const std::string& words, const Basis* basis) {
    page.paragraph(words + (basis == nullptr ? "." : "; " + with_reason(*basis)), 14, "      " + std::string(label));
  };
  put_parts(page, differences, [&](const RuleDifference& one) {
    page.paragraph(title_of(one), 4, "  - ");
    side("from ", before_words(one, system), one.before_basis);
    side("to   ", after_words(one, system), one.after_basis);
  });
  return std::move(page).take();
}

}  // namespace mainbore
