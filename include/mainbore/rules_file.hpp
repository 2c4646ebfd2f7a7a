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
//     const RulesFile read = load_rules(Catalog::builtin(), own);
//     if (read.rules) { const Plan p = plan(job, Catalog::builtin(), *read.rules); }
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/finding.hpp"
#include "mainbore/measure.hpp"
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

// The defaults of the catalogue with the files laid over them. Never throws for anything in the texts; a fault in the
// default rules themselves is a diagnostic of "rules/default.json". The catalogue must outlive the rules.
[[nodiscard]] RulesFile load_rules(const Catalog& catalog, std::span<const RuleText> files = {});

// Which way a number gets stricter: asks for more, or allows less.
enum class Stricter : std::uint8_t { neither, higher, lower };

// One rule with a single value. This table is the only list of them: it drives reading, range checks, schema and
// documentation.
struct RuleField {
  using Target =
      std::variant<Rule<double> Rules::*, Rule<Length> Rules::*, Rule<Pressure> Rules::*, Rule<Temperature> Rules::*,
                   Rule<Force> Rules::*, Rule<Velocity> Rules::*, Rule<Flow> Rules::*, Rule<Volume> Rules::*,
                   Rule<Time> Rules::*, Rule<NominalSize> Rules::*, Rule<ThreadStandard> Rules::*,
                   Rule<ClockPosition> Rules::*, Rule<std::optional<Length>> Rules::*,
                   Rule<std::optional<NominalSize>> Rules::*>;
  std::string_view path;  // "direct.required_threads": group and key
  Target target;
  Kind kind;     // what the value measures; unused for a thread or a clock position
  double least;  // allowed range, both ends included, in base units (measure.hpp)
  double most;
  std::string_view help;
  Stricter stricter;
  bool safety;  // guards people or pipe: a looser one needs a reason
};
[[nodiscard]] std::span<const RuleField> rule_fields();

// The value of a rule, nothing where it is unset, and what it rests on.
[[nodiscard]] Detail value_of(const Rules& rules, const RuleField& field);
[[nodiscard]] const Basis& basis_of(const Rules& rules, const RuleField& field);
// A rule that nothing asks for until a utility sets it.
[[nodiscard]] bool may_be_unset(const RuleField& field);
// The number of a value that has one, in base units, so that two of one rule can be compared.
[[nodiscard]] std::optional<double> number_of(const Detail& value);

// Two rules of which the first may not lie above the second.
struct RuleEnds {
  std::string_view lower;
  std::string_view upper;
};
[[nodiscard]] std::span<const RuleEnds> rule_ends();

// The rules that are lists of TapLimit.
struct TapLimitField {
  std::string_view path;   // "direct.largest"
  std::string_view first;  // "direct.largest_first": rows that stand before those of the list
  std::vector<TapLimit> Rules::*target;
  std::string_view help;
};
[[nodiscard]] std::span<const TapLimitField> tap_limit_fields();

// Lists with rows of other kinds.
struct SpecificationField {
  std::string_view path;
  std::vector<FittingSpecification> Rules::*target;
  std::string_view help;
};
[[nodiscard]] std::span<const SpecificationField> specification_fields();
inline constexpr std::string_view not_tapped_path = "main.not_tapped";
inline constexpr std::string_view not_tapped_help = "mains that are not tapped for services at all";
inline constexpr std::string_view closed_season_path = "main.closed_season";
inline constexpr std::string_view closed_season_help = "days of the year on which mains are not tapped";

// Where the clearances stand, each under the name of what is kept clear of (job.hpp, nearby_names).
inline constexpr std::string_view clearances_path = "place.clearances";

// What the codes of rules diagnostics mean.
[[nodiscard]] std::span<const DiagnosticText> rules_diagnostic_texts();

}  // namespace mainbore
