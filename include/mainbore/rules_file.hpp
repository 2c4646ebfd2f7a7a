// The rules file: a utility's own standard, laid over the defaults.
//
//     {
//       "name": "Ashby Vale Water District",
//       "place": {"clearances": {"tap": {"value": "24 in", "reference": "Standard 4.2", "reason": "crowded mains"}}},
//       "pressure": {"wet_tap_limit": "150 psi"},
//       "direct": {"largest": [{"material": "ductile iron", "main_from": "6 in", "largest": "1 in"}]}
//     }
//
// It is a merge patch (RFC 7396) of data/rules/default.json: what it names is replaced, the rest stays. Several are
// laid one over the other, in order. A rule may be written as its bare value or as an object with `value`, `reference`
// (the document and section) and `reason`. A list of largest taps replaces the default list whole; one of the same name
// with `_first` behind it stands before the list in force, whose rows stay. A null would take a rule away and is refused,
// except for a rule that is unset by default.
//
// Every rule that a file touches carries Basis::utility, and Basis::reference is its `reference` or else the file's
// `name`. Nothing is guessed: an unknown key, a wrong unit, a value that cannot be, two rules that exclude each other,
// or a rule looser than a safety default without a `reason` is a diagnostic, and all of them are reported at once.
//
//     const std::vector<RuleText> own = {{"ashby_vale.json", text}};
//     RulesFile read = load_rules(Catalog::builtin(), own);
//     if (read.rules) { const Planner planner(*std::move(read.rules)); }
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/rules.hpp"

namespace mainbore {

struct RuleText {
  std::string name;  // of the file, for messages
  std::string text;  // UTF-8 JSON
};

// Bases of the rules point into `rules->references`: move the rules, do not copy them.
struct RulesFile {
  std::optional<Rules> rules;  // present exactly when there are no diagnostics
  std::vector<Diagnostic> diagnostics;
};

// Longest rules text read, in bytes.
inline constexpr std::size_t longest_rules = 1u << 20;

// The defaults of the catalog with the files laid over them. Never throws for anything in the texts; a fault in the
// default rules themselves is a diagnostic of "rules/default.json". The catalog must outlive the rules.
[[nodiscard]] RulesFile load_rules(const Catalog& catalog, std::span<const RuleText> files = {});

// What the codes of rules diagnostics mean.
[[nodiscard]] std::span<const DiagnosticText> rules_diagnostic_texts();

}  // namespace mainbore
