// Rules in words: one place, whoever prints them.
#pragma once

#include <string>

#include "mainbore/measure.hpp"
#include "mainbore/rules_compare.hpp"

namespace mainbore {

// "150 psi", "1:30", "1 in"; a row of a list as "ductile iron, mains of 6 to 12 in: 1 in". Empty where there is
// nothing.
[[nodiscard]] std::string rule_in_words(const Detail& value, const RuleRow& row, UnitSystem system);

// The mains that a difference between lists of largest taps is about: "ductile iron of 6 to 12 in, such as PC 350".
// Empty for another rule.
[[nodiscard]] std::string mains_in_words(const RuleDifference& difference);

// Of a permission that holds each tap until somebody consents: who, or that nobody is named. Empty for any other.
[[nodiscard]] std::string consent_in_words(const RuleDifference& difference);

// The documents that the rules are laid from, as each says it is: "Ashby Vale Water District: Standard for Services, edition 3,
// of 2026-03-01, approved by the chief engineer". Empty of the defaults alone.
[[nodiscard]] std::string documents_in_words(const Rules& rules);

// "Ashby Vale Standard 4.1 (ashby_vale.json)", or the source of a default and how it was had.
[[nodiscard]] std::string basis_in_words(const Basis& basis);

}  // namespace mainbore
