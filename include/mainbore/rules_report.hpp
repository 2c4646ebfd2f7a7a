// Rules to be read, by people and by scripts: a file that was checked, what is in force, what differs between two sets.
//
// Nothing is worked out here (rules_compare.hpp). Text is at most `width` columns wide and ends with a line break.
#pragma once

#include <span>
#include <string>

#include "mainbore/job_file.hpp"
#include "mainbore/rule_words.hpp"
#include "mainbore/rules_compare.hpp"

namespace mainbore {

// What a readable file does to the defaults, as a table for the engineer's file: each rule that differs with its default, its
// value in the file, whether that is stricter or looser, and the utility's reference and reason. `differences` are those of the
// default rules and these.
[[nodiscard]] std::string rules_check_text(const Rules& rules, std::span<const RuleDifference> differences,
                                           UnitSystem system, int width = 80);
// Each rule with its value and where it came from.
[[nodiscard]] std::string rules_show_text(const Rules& rules, std::span<const RuleInForce> list, UnitSystem system,
                                          int width = 80);
// Two sets side by side.
[[nodiscard]] std::string rules_diff_text(const Rules& before, const Rules& after,
                                          std::span<const RuleDifference> differences, UnitSystem system,
                                          int width = 80);

// {"format": 1, "name", "rules_set", "differences": [{"path", "mains", "change", "safety", "before", "after"}]}, each
// side
// {"value", "words", "utility", "reference", "reason", "file", "source", "how"}
[[nodiscard]] std::string rules_check_to_json(const Rules& rules, std::span<const RuleDifference> differences,
                                              UnitSystem system, JsonStyle style);
// {"format": 1, "name", "rules": [{"path", "help", ...a side}]}
[[nodiscard]] std::string rules_show_to_json(const Rules& rules, std::span<const RuleInForce> list, UnitSystem system,
                                             JsonStyle style);
// {"format": 1, "before", "after", "differences": []}
[[nodiscard]] std::string rules_diff_to_json(const Rules& before, const Rules& after,
                                             std::span<const RuleDifference> differences, UnitSystem system,
                                             JsonStyle style);

}  // namespace mainbore
