#include "io/rules/rules_together.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "mainbore/finding_words.hpp"
#include "mainbore/rule_fields.hpp"
#include "mainbore/rules_compare.hpp"
#include "rules/conflicts.hpp"

namespace mainbore::io {
namespace {

const RuleField& field_at(std::string_view path) {
  const auto fields = rule_fields();
  return *std::find_if(fields.begin(), fields.end(), [&](const RuleField& field) { return field.path == path; });
}

std::string shown_text(const Detail& value) {
  std::string text;
  append_detail(text, value, UnitSystem::us);
  return text.empty() ? "none" : text;
}

void check_cap(const CapField& field, const Rules& rules, const SetByFile& set, std::vector<FaultAt>& faults) {
  const auto& tap = rules.water.smallest_tap.value;
  const auto node = set.rules.contains(field.path) ? set.rules.find(field.path) : set.rules.find("water.smallest_tap");
  if (!tap || node == set.rules.end()) return;
  for (const TapLimit& row : field.target.in(rules)) {
    if (row.largest == NominalSize() || row.largest >= *tap) continue;
    faults.push_back({node->second,
                      {"rules.contradiction",
                       std::string(field.path) + " of " + row.largest.label() +
                           " in lies below water.smallest_tap of " + tap->label() + " in",
                       "a cap that leaves no tap has \"largest\": \"none\" and says why"}});
  }
}

// A row that allows less than the smallest tap, where this file sets either.
void check_least_tap(const TapLimit& row, std::uint32_t node, const Rules& rules, const SetByFile& set,
                     std::vector<FaultAt>& faults) {
  const auto& tap = rules.water.smallest_tap.value;
  if (!tap || !row.basis.utility || row.largest == NominalSize() || row.largest >= *tap) return;
  const auto smallest = set.rules.find("water.smallest_tap");
  if (node == untouched && smallest == set.rules.end()) return;
  faults.push_back(
      {node != untouched ? node : smallest->second,
       {"rules.contradiction",
        "the largest tap of " + row.largest.label() + " in lies below water.smallest_tap of " + tap->label() + " in",
        "a row that allows no tap has \"largest\": \"none\" and says why"}});
}

// A row to which one before it leaves nothing, and which says another size.
void check_row_before(const TapLimits& rows, std::size_t i, std::uint32_t node, std::vector<FaultAt>& faults) {
  for (std::size_t j = 0; j < i; ++j) {
    if (!rules::leaves_nothing_to(rows[j], rows[i])) continue;
    if (rows[j].largest == rows[i].largest) return;  // said twice
    faults.push_back({node,
                      {"rules.contradiction",
                       "row " + std::to_string(j + 1) + " is for all of these mains, stands first, and says " +
                           (rows[j].largest == NominalSize() ? "none" : rows[j].largest.label() + " in"),
                       "put the exception before the rule, or take one of them away"}});
    return;
  }
}

// Where the file being read sets it.
std::optional<std::uint32_t> place_of(const RuleDifference& one, const Rules& rules, const SetByFile& set) {
  if (const auto touched = set.rules.find(one.path); touched != set.rules.end()) return touched->second;
  const auto* const row = std::get_if<const TapLimit*>(&one.row_after);
  if (row == nullptr) return std::nullopt;
  for (std::size_t list = 0; list < set.rows.size(); ++list) {
    const TapLimits& rows = permission_fields()[list].target.in(rules);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (&rows[i] == *row && set.rows[list][i] != untouched) return set.rows[list][i];
    }
  }
  return std::nullopt;
}

std::string mains_text(const RuleDifference& one) {
  if (!one.material) return {};
  std::string text = " on " + std::string(name_of(*one.material)) + " of " + one.main_from->label();
  if (*one.main_to != *one.main_from) text += " to " + one.main_to->label();
  text += " in";
  if (!one.first_class.empty()) text += ", such as " + std::string(one.first_class) + ",";
  return text;
}

}  // namespace

std::vector<FaultAt> conflicting_rules(const Rules& rules, const SetByFile& set) {
  std::vector<FaultAt> faults;
  for (const rules::RuleConflict& conflict : rules::conflicts(rules)) {
    constexpr std::array<std::string_view, 3> words = {" lies above ", " lies below ", " is the same as "};
    const std::string message = std::string(conflict.one) +
                                std::string(words[static_cast<std::size_t>(conflict.clash)]) +
                                std::string(conflict.other);
    for (const auto& [path, against] :
         {std::pair(conflict.one, conflict.other), std::pair(conflict.other, conflict.one)}) {
      const auto touched = set.rules.find(path);
      if (touched == set.rules.end()) continue;
      const Detail value = mainbore::value_of(rules, field_at(against));
      faults.push_back(
          {touched->second,
           {"rules.contradiction", message, "set " + std::string(against) + " to match; it is " + shown_text(value)}});
      break;
    }
  }
  return faults;
}

std::vector<FaultAt> rows_in_vain(const Rules& rules, const SetByFile& set) {
  std::vector<FaultAt> faults;
  for (const CapField& field : cap_fields()) check_cap(field, rules, set, faults);
  for (std::size_t list = 0; list < set.rows.size(); ++list) {
    const TapLimits& rows = permission_fields()[list].target.in(rules);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const std::uint32_t node = set.rows[list][i];
      check_least_tap(rows[i], node, rules, set, faults);
      if (node != untouched) check_row_before(rows, i, node, faults);
    }
  }
  return faults;
}

std::vector<FaultAt> looser_without_reason(const Catalog& catalog, const Rules& usual, const Rules& rules,
                                           const SetByFile& set, bool rows_read) {
  std::vector<FaultAt> faults;
  std::vector<std::uint32_t> told;
  for (const RuleDifference& one : compare_rules(catalog, usual, rules)) {
    if (!needs_reason(one) || (one.material && !rows_read)) continue;
    if (one.after_basis != nullptr && one.after_basis->reason != nullptr) continue;
    const auto node = place_of(one, rules, set);
    if (!node || std::find(told.begin(), told.end(), *node) != told.end()) continue;
    told.push_back(*node);
    const std::string now = shown_text(one.after);
    faults.push_back({*node,
                      {"rules.looser-without-reason",
                       std::string(one.path) + ": " + now + mains_text(one) +
                           (one.change == RuleChange::looser ? " is looser than the default, "
                                                             : " is neither stricter nor looser than the default, ") +
                           shown_text(one.before),
                       one.material ? "say why in the row: \"reason\": \"...\""
                                    : "say why: { \"value\": \"" + now + "\", \"reason\": \"...\" }"}});
  }
  return faults;
}

std::vector<LooserRule> looser_rules(const Catalog& catalog, const Rules& usual, const Rules& rules) {
  std::vector<LooserRule> looser;
  for (const RuleDifference& one : compare_rules(catalog, usual, rules)) {
    if (!needs_reason(one) || one.after_basis == nullptr) continue;
    LooserRule& rule = looser.emplace_back();
    rule.path = one.path;
    rule.usual = one.before;
    rule.set = one.after;
    if (const auto* const row = std::get_if<const TapLimit*>(&one.row_after)) rule.row = *row;
    rule.material = one.material;
    rule.main_from = one.main_from;
    rule.main_to = one.main_to;
    rule.pipes = one.pipes;
    rule.basis = *one.after_basis;
  }
  return looser;
}

}  // namespace mainbore::io
