// The rules in force one by one, and two sets of them side by side: what differs, and which is the stricter.
//
// A rule with a number is stricter where it asks for more or allows less (rule_fields.hpp, Stricter). A list of largest
// taps is compared by what it says of mains: for each pipe of the catalog, and for each size between those of which
// the catalog lists no pipe of the material, the largest tap under either set; mains decided by the same two rows
// stand together. A main that no row fits, or that is not tapped, takes none. A row of any other list is stricter for
// being there.
//
//     const RulesFile own = load_rules(catalog, files);
//     for (const RuleDifference& d : compare_rules(catalog, usual, *own.rules)) ...
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <variant>
#include <vector>

#include "mainbore/rules.hpp"

namespace mainbore {

enum class RuleChange : std::uint8_t {
  same,  // the value stays, and the utility has made it its own
  stricter,
  looser,
  other,  // neither: a matter of habit, or words
};
[[nodiscard]] std::string_view name_of(RuleChange change);

// A row of a list.
using RuleRow = std::variant<std::monostate, const TapLimit*, const ClosedSeason*, const FittingSpecification*,
                             const SizesByDwellings*, const OwnWords*>;

struct RuleDifference {
  std::string_view path;
  RuleChange change = RuleChange::same;
  bool safety = false;  // guards people or pipe
  Detail before;        // nothing: unset, or no tap
  Detail after;
  RuleRow row_before;  // of a list
  RuleRow row_after;
  const Basis* before_basis = nullptr;
  const Basis* after_basis = nullptr;
  // Of a list of largest taps: which mains.
  std::optional<Material> material;
  std::optional<NominalSize> main_from;
  std::optional<NominalSize> main_to;
  std::vector<const Pipe*> pipes;
  std::string_view first_class;  // where only some of the pipes of these sizes are meant
};

// Whether a utility may set it so only with a reason: it guards people or pipe, and is looser or neither way stricter.
[[nodiscard]] inline bool needs_reason(const RuleDifference& difference) {
  return difference.safety && (difference.change == RuleChange::looser || difference.change == RuleChange::other);
}

// What differs, and what `after` has made the utility's own without changing it. Points into both, and into the
// catalog.
[[nodiscard]] std::vector<RuleDifference> compare_rules(const Catalog& catalog, const Rules& before,
                                                        const Rules& after);

// A rule in force, or a row of one that is a list.
struct RuleInForce {
  std::string_view path;
  std::string_view help;
  Detail value;  // nothing: unset, or a row
  RuleRow row;
  const Basis* basis = nullptr;  // nothing: unset
};

// Every rule, group by group; an empty list stands there once, without a row. Points into the rules.
[[nodiscard]] std::vector<RuleInForce> list_rules(const Rules& rules);

}  // namespace mainbore
