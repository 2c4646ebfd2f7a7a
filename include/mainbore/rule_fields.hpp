// The table of rules: where each stands in a file, what it measures, what it can be, which way it gets stricter.
//
// It drives reading, range checks, schema and documentation: a rule that is not in it does not exist.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "mainbore/finding.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/rules.hpp"

namespace mainbore {

// Which way a number gets stricter: asks for more, or allows less. Of a rule that guards people or pipe and has no such way,
// either is refused without a reason.
enum class Stricter : std::uint8_t { neither, higher, lower };

// Where a rule stands in `Rules`: the group, and the member of it.
template <class T>
class RuleTarget {
 public:
  constexpr RuleTarget(const T& (*read)(const Rules&), T& (*write)(Rules&)) : read_(read), write_(write) {}
  [[nodiscard]] const T& in(const Rules& rules) const { return read_(rules); }
  [[nodiscard]] T& in(Rules& rules) const { return write_(rules); }

 private:
  const T& (*read_)(const Rules&);
  T& (*write_)(Rules&);
};
// rule_at<&Rules::direct, &DirectRules::required_threads>
template <auto group, auto member>
inline constexpr RuleTarget<std::remove_reference_t<decltype(std::declval<Rules&>().*group.*member)>> rule_at(
    [](const Rules& rules) -> const auto& { return rules.*group.*member; },
    [](Rules& rules) -> auto& { return rules.*group.*member; });

// One rule with a single value. This table is the only list of them: it drives reading, range checks, schema and
// documentation.
struct RuleField {
  template <class... T>
  using AnyOf = std::variant<RuleTarget<Rule<T>>...>;
  using Target = AnyOf<double, Length, Pressure, Temperature, Force, Velocity, Flow, Volume, Time, NominalSize,
                       ThreadStandard, ClockPosition, std::optional<Length>, std::optional<NominalSize>,
                       std::optional<Temperature>, std::optional<double>>;
  std::string_view path;  // "direct.required_threads": group and key
  Target target;
  Kind kind;     // what the value measures; unused for a thread or a clock position
  double least;  // allowed range, both ends included, in base units (measure.hpp)
  double greatest;
  std::string_view help;
  Stricter stricter;
  bool safety;         // guards people or pipe: a looser one needs a reason
  bool whole = false;  // a count, which has no fractions
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
  bool may_meet = true;  // whether both may be the same
};
[[nodiscard]] std::span<const RuleEnds> rule_ends();

// The permissions: lists of TapLimit of which the first row that fits decides.
struct PermissionField {
  std::string_view path;   // "direct.largest"
  std::string_view first;  // "direct.largest_first": rows that stand before those of the list
  RuleTarget<TapLimits> target;
  RuleTarget<TapLimits> by_default;
  std::string_view help;
};
[[nodiscard]] std::span<const PermissionField> permission_fields();

// The caps: lists of TapLimit of which each row that fits counts.
struct CapField {
  std::string_view path;  // "direct.at_most"
  RuleTarget<TapLimits> target;
  std::string_view help;
};
[[nodiscard]] std::span<const CapField> cap_fields();

// The members of a file that say what it is.
struct DocumentLine {
  std::string_view key;
  std::string RulesDocument::*text;
  std::string_view help;
};
[[nodiscard]] std::span<const DocumentLine> document_lines();
[[nodiscard]] const DocumentLine* document_line(std::string_view key);

// Lists with rows of other kinds.
struct SpecificationField {
  std::string_view path;
  RuleTarget<std::vector<FittingSpecification>> target;
  std::string_view help;
};
[[nodiscard]] std::span<const SpecificationField> specification_fields();
inline constexpr std::string_view not_tapped_path = "main.not_tapped";
inline constexpr std::string_view not_tapped_help = "mains that are not tapped for services at all";
inline constexpr std::string_view closed_season_path = "main.closed_season";
inline constexpr std::string_view by_dwellings_path = "water.by_dwellings";
inline constexpr std::string_view by_dwellings_help =
    "smallest tap, line and meter for a number of dwellings; each row that holds counts";
inline constexpr std::string_view own_words_path = "words";
inline constexpr std::string_view own_words_help =
    "the utility's own words on a method, step or caution, printed beside the program's";
// What a utility may have words on, in order: "method.direct", "caution.eyes", "set.stop".
[[nodiscard]] std::span<const std::string_view> own_words_ids();
inline constexpr int longest_own_words = 300;  // letters: they stand beside a step, and are not one
inline constexpr std::string_view closed_season_help = "days of the year on which mains are not tapped";

// Where the clearances stand, each under the name of what is kept clear of (job.hpp, nearby_names):
// "place.clearances.tap".
inline constexpr std::string_view clearances_path = "place.clearances";
[[nodiscard]] std::string_view clearance_path(NearbyThing what);

}  // namespace mainbore
