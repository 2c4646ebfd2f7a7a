#include <algorithm>
#include <array>

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

}  // namespace

std::string rules_check_text(const Rules& rules, std::span<const RuleDifference> differences, UnitSystem system,
                             int width) {
  const std::vector<RuleInForce> list = list_rules(rules);
  const auto set = std::count_if(list.begin(), list.end(),
                                 [](const RuleInForce& rule) { return rule.basis != nullptr && rule.basis->utility; });
  TextPage page(width, false);
  page.title("READABLE: " + rules.name);
  page.paragraph(counted(static_cast<std::size_t>(set), "rule") +
                 " set, rows of lists among them. Against the defaults:");
  if (differences.empty()) page.paragraph("Nothing differs.");
  put_parts(page, differences, [&](const RuleDifference& one) {
    std::string text = title_of(one) + ": " + after_words(one, system);
    if (one.change != RuleChange::same) text += " (default " + before_words(one, system) + ")";
    if (needs_reason(one)) text += ". It guards people or pipe";
    page.paragraph(text + ".", 4, "  - ");
    if (const std::string consent = consent_in_words(one); !consent.empty()) page.paragraph(consent, 6);
    if (one.after_basis != nullptr) page.paragraph(with_reason(*one.after_basis), 6);
  });
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
