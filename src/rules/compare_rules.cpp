#include <algorithm>
#include <array>
#include <string>
#include <tuple>
#include <type_traits>

#include "mainbore/rule_fields.hpp"
#include "mainbore/rules_compare.hpp"
#include "rules/tap_limits.hpp"

namespace mainbore {
namespace {

using rules::match;
using rules::Match;

// However the classes are written.
bool same_mains(const MainFilter& a, const MainFilter& b) {
  const auto parts = [](const MainFilter& m) {
    return std::tie(m.materials, m.main_from, m.main_to, m.main_above, m.main_below, m.pipes, m.series, m.wall_from,
                    m.wall_below, m.bore_from, m.bore_to, m.bore_above, m.bore_below, m.laid_from, m.laid_to);
  };
  return parts(a) == parts(b);
}
bool same_row(const TapLimit& a, const TapLimit& b) {
  return same_mains(a, b) && a.largest == b.largest && a.why == b.why && a.consent == b.consent;
}
bool same_row(const ClosedSeason& a, const ClosedSeason& b) {
  return same_mains(a, b) && a.from == b.from && a.to == b.to && a.why == b.why;
}
bool same_row(const FittingSpecification& a, const FittingSpecification& b) {
  return same_mains(a, b) && a.tap_from == b.tap_from && a.tap_to == b.tap_to && a.tap_above == b.tap_above &&
         a.text == b.text;
}

bool same_row(const SizesByDwellings& a, const SizesByDwellings& b) {
  return a.from == b.from && a.to == b.to && a.tap == b.tap && a.line == b.line && a.meter == b.meter;
}
bool same_row(const OwnWords& a, const OwnWords& b) { return a.id == b.id && a.text == b.text; }

RuleChange change_of(const Detail& before, const Detail& after, Stricter stricter) {
  if (before == after) return RuleChange::same;
  const auto old_number = number_of(before);
  const auto new_number = number_of(after);
  // What nothing asked for, and is asked now, is the stricter for it.
  if (old_number.has_value() != new_number.has_value()) return new_number ? RuleChange::stricter : RuleChange::looser;
  if (!old_number || stricter == Stricter::neither) return RuleChange::other;
  const bool rises = *new_number > *old_number;
  return rises == (stricter == Stricter::higher) ? RuleChange::stricter : RuleChange::looser;
}

constexpr RuleTarget<std::vector<OwnWords>> words_in_rules(
    [](const Rules& rules) -> const auto& { return rules.words; }, [](Rules& rules) -> auto& { return rules.words; });

class Comparison {
 public:
  Comparison(const Catalog& catalog, const Rules& before, const Rules& after)
      : catalog_(catalog), before_(before), after_(after) {
    for (const Pipe& pipe : catalog.pipes()) sizes_.push_back(pipe.size);
    std::sort(sizes_.begin(), sizes_.end());
    sizes_.erase(std::unique(sizes_.begin(), sizes_.end()), sizes_.end());
  }

  std::vector<RuleDifference> all() && {
    rows(not_tapped_path, rule_at<&Rules::main, &MainRules::not_tapped>, RuleChange::stricter, RuleChange::looser);
    rows(closed_season_path, rule_at<&Rules::main, &MainRules::closed_season>, RuleChange::stricter,
         RuleChange::looser);
    for (const CapField& field : cap_fields()) {
      rows(field.path, field.target, RuleChange::stricter, RuleChange::looser);
    }
    for (const PermissionField& field : permission_fields()) largest_taps(field);
    for (const SpecificationField& field : specification_fields()) {
      rows(field.path, field.target, RuleChange::other, RuleChange::other);
    }
    for (std::size_t i = 0; i < nearby_names.size(); ++i) clearance(static_cast<NearbyThing>(i));
    for (const RuleField& field : rule_fields()) single(field);
    rows(by_dwellings_path, rule_at<&Rules::water, &WaterRules::by_dwellings>, RuleChange::stricter,
         RuleChange::looser);
    rows(own_words_path, words_in_rules, RuleChange::other, RuleChange::other);
    return std::move(list_);
  }

 private:
  void single(const RuleField& field) {
    RuleDifference one;
    one.path = field.path;
    one.safety = field.safety;
    one.before = value_of(before_, field);
    one.after = value_of(after_, field);
    one.before_basis = &basis_of(before_, field);
    one.after_basis = &basis_of(after_, field);
    one.change = change_of(one.before, one.after, field.stricter);
    keep(one);
  }

  void clearance(NearbyThing what) {
    const auto find = [&](const Rules& rules) -> const Clearance* {
      const auto found = std::find_if(rules.place.clearances.begin(), rules.place.clearances.end(),
                                      [&](const Clearance& c) { return c.what == what; });
      return found == rules.place.clearances.end() ? nullptr : &*found;
    };
    const Clearance* const old_one = find(before_);
    const Clearance* const new_one = find(after_);
    RuleDifference one;
    one.path = clearance_path(what);
    one.safety = true;
    if (old_one != nullptr) one.before = Measure(old_one->least.value, Kind::distance);
    if (new_one != nullptr) one.after = Measure(new_one->least.value, Kind::distance);
    if (old_one != nullptr) one.before_basis = &old_one->least.basis;
    if (new_one != nullptr) one.after_basis = &new_one->least.basis;
    one.change = change_of(one.before, one.after, Stricter::higher);
    keep(one);
  }

  // Rows there, and rows gone.
  template <class Rows>
  void rows(std::string_view path, RuleTarget<Rows> list, RuleChange added, RuleChange gone) {
    using Row = std::decay_t<decltype(*(list.in(before_)).begin())>;
    const auto in = [](const Rows& rows, const Row& row) {
      const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& r) { return same_row(r, row); });
      return found == rows.end() ? nullptr : &*found;
    };
    for (const Row& row : list.in(before_)) {
      if (in(list.in(after_), row) != nullptr) continue;
      RuleDifference one;
      one.path = path;
      one.change = gone;
      one.row_before = &row;
      one.before_basis = &row.basis;
      list_.push_back(one);
    }
    for (const Row& row : list.in(after_)) {
      const Row* const old_one = in(list.in(before_), row);
      RuleDifference one;
      one.path = path;
      one.change = old_one == nullptr ? added : RuleChange::same;
      if (old_one != nullptr) one.row_before = old_one;
      if (old_one != nullptr) one.before_basis = &old_one->basis;
      one.row_after = &row;
      one.after_basis = &row.basis;
      keep(one);
    }
  }

  // ---- largest taps, main by main

  struct Side {
    const TapLimit* row = nullptr;
    NominalSize largest;
    friend bool operator==(const Side&, const Side&) = default;
  };
  struct Asked {
    Material material;
    NominalSize size;
    const Pipe* pipe;
    std::optional<int> laid;
  };

  // What the rules permit of a main laid in some year, of which all else is known that the tables have; where they have not,
  // the most that a reading can open.
  static Side side(const Rules& rules, const PermissionField& field, const Asked& main) {
    const auto fits = [&](const TapLimit& row) {
      return row.covers(main.material, main.size) ? match(row, main.pipe, {.od = {}, .wall = {}, .laid = main.laid})
                                                  : Match::no;
    };
    for (const std::uint32_t place : rules.main.not_tapped.near(main.material, main.size)) {
      const TapLimit& row = rules.main.not_tapped[place];
      if (fits(row) == Match::yes) return {&row, {}};
    }
    const TapLimits& rows = field.target.in(rules);
    Side most;
    for (const std::uint32_t place : rows.near(main.material, main.size)) {
      const TapLimit& row = rows[place];
      const Match match = fits(row);
      if (match == Match::no) continue;
      if (most.row == nullptr || row.largest > most.largest) most = {&row, row.largest};
      if (match == Match::yes) break;
    }
    return most;
  }

  static bool is_not_tapped(const Rules& rules, const Side& side) {
    return std::any_of(rules.main.not_tapped.begin(), rules.main.not_tapped.end(),
                       [&](const TapLimit& row) { return &row == side.row; });
  }

  struct Group {
    Side before;
    Side after;
    NominalSize from;
    NominalSize to;
    std::vector<const Pipe*> pipes;
    std::size_t mains = 0;
  };

  // Calls `visit(size, pipe)` for each pipe of the material, and for each size without one that lies between those made
  // of it.
  template <class Visit>
  void each_main(Material material, Visit visit) const {
    const auto made = [&](NominalSize size) { return !catalog_.pipes(material, size).empty(); };
    const auto first = std::find_if(sizes_.begin(), sizes_.end(), made);
    const auto last = std::find_if(sizes_.rbegin(), sizes_.rend(), made);
    const bool listed = first != sizes_.end();
    for (const NominalSize size : sizes_) {
      if (listed && (size < *first || size > *last)) continue;
      const auto pipes = catalog_.pipes(material, size);
      for (const Pipe& pipe : pipes) visit(size, &pipe);
      if (pipes.empty()) visit(size, nullptr);
    }
  }

  // A year of each span in which no row begins or ends; none where no row asks for one.
  [[nodiscard]] std::vector<std::optional<int>> years_of(const PermissionField& field) const {
    std::vector<int> starts;
    const auto take = [&](const TapLimits& rows) {
      for (const TapLimit& row : rows) {
        if (row.laid_from) starts.push_back(*row.laid_from);
        if (row.laid_to) starts.push_back(*row.laid_to + 1);
      }
    };
    for (const Rules* const rules : {&before_, &after_}) {
      take(field.target.in(*rules));
      take(rules->main.not_tapped);
    }
    if (starts.empty()) return {std::nullopt};
    std::sort(starts.begin(), starts.end());
    starts.erase(std::unique(starts.begin(), starts.end()), starts.end());
    std::vector<std::optional<int>> years = {starts.front() - 1};
    years.insert(years.end(), starts.begin(), starts.end());
    return years;
  }
  template <class Visit>
  void each_main_and_year(Material material, const std::vector<std::optional<int>>& years, Visit visit) const {
    each_main(material, [&](NominalSize size, const Pipe* pipe) {
      for (const std::optional<int>& laid : years) visit(size, pipe, laid);
    });
  }

  void largest_taps(const PermissionField& field) {
    for (std::size_t m = 0; m < material_count; ++m) {
      const auto material = static_cast<Material>(m);
      std::vector<Group> groups;
      each_main_and_year(material, years_of(field), [&](NominalSize size, const Pipe* pipe, std::optional<int> laid) {
        const Side old_one = side(before_, field, {material, size, pipe, laid});
        const Side new_one = side(after_, field, {material, size, pipe, laid});
        auto group = std::find_if(groups.begin(), groups.end(),
                                  [&](const Group& g) { return g.before == old_one && g.after == new_one; });
        if (group == groups.end()) {
          group = groups.insert(group, {old_one, new_one, size, size, {}, 0});
        }
        if (pipe != nullptr && (group->pipes.empty() || group->pipes.back() != pipe)) group->pipes.push_back(pipe);
        group->to = size;
        ++group->mains;
      });
      for (const Group& group : groups) {
        // Mains that are not tapped stand once, under the rule that says so.
        if (!is_not_tapped(after_, group.after)) add_group(field, material, group);
      }
    }
  }

  void add_group(const PermissionField& field, Material material, const Group& group) {
    RuleDifference one;
    one.path = field.path;
    one.safety = true;
    one.material = material;
    one.main_from = group.from;
    one.main_to = group.to;
    std::size_t mains = 0;
    each_main(material, [&](NominalSize size, const Pipe*) { mains += size >= group.from && size <= group.to; });
    mains *= years_of(field).size();
    if (group.mains < mains && !group.pipes.empty()) one.first_class = group.pipes.front()->class_name;
    one.pipes = group.pipes;
    const NominalSize none;
    if (group.before.largest != none) one.before = group.before.largest;
    if (group.after.largest != none) one.after = group.after.largest;
    if (group.before.row != nullptr) {
      one.row_before = group.before.row;
      one.before_basis = &group.before.row->basis;
    }
    if (group.after.row != nullptr) {
      one.row_after = group.after.row;
      one.after_basis = &group.after.row->basis;
    }
    one.change = group.before.largest == group.after.largest  ? RuleChange::same
                 : group.before.largest < group.after.largest ? RuleChange::looser
                                                              : RuleChange::stricter;
    keep(one);
  }

  void keep(const RuleDifference& one) {
    const bool was_own = one.before_basis != nullptr && one.before_basis->utility;
    const bool is_own = one.after_basis != nullptr && one.after_basis->utility;
    if (one.change != RuleChange::same || (is_own && !was_own)) list_.push_back(one);
  }

  const Catalog& catalog_;
  const Rules& before_;
  const Rules& after_;
  std::vector<NominalSize> sizes_;
  std::vector<RuleDifference> list_;
};

}  // namespace

std::string_view name_of(RuleChange change) {
  constexpr std::array<std::string_view, 4> names = {"same", "stricter", "looser", "other"};
  return names[static_cast<std::size_t>(change)];
}

std::vector<RuleInForce> list_rules(const Rules& rules) {
  std::vector<RuleInForce> list;
  const auto add_rows = [&](std::string_view path, std::string_view help, const auto& rows) {
    for (const auto& row : rows) list.push_back({path, help, {}, &row, &row.basis});
    if (rows.empty()) list.push_back({path, help, {}, {}, nullptr});
  };
  add_rows(not_tapped_path, not_tapped_help, rules.main.not_tapped);
  add_rows(closed_season_path, closed_season_help, rules.main.closed_season);
  for (const CapField& field : cap_fields()) add_rows(field.path, field.help, field.target.in(rules));
  for (const PermissionField& field : permission_fields()) add_rows(field.path, field.help, field.target.in(rules));
  for (const SpecificationField& field : specification_fields()) {
    add_rows(field.path, field.help, field.target.in(rules));
  }
  for (const Clearance& clearance : rules.place.clearances) {
    list.push_back({clearance_path(clearance.what),
                    "clearance along the main",
                    Measure(clearance.least.value, Kind::distance),
                    {},
                    &clearance.least.basis});
  }
  for (const RuleField& field : rule_fields()) {
    Detail value = value_of(rules, field);
    const bool unset = std::holds_alternative<std::monostate>(value);
    list.push_back({field.path, field.help, value, {}, unset ? nullptr : &basis_of(rules, field)});
  }
  add_rows(by_dwellings_path, by_dwellings_help, rules.water.by_dwellings);
  add_rows(own_words_path, own_words_help, rules.words);
  // Groups in the order met; within a group as listed.
  std::vector<std::string_view> groups;
  const auto place = [&](std::string_view path) {
    const std::string_view group = path.substr(0, path.find('.'));
    const auto found = std::find(groups.begin(), groups.end(), group);
    if (found == groups.end()) groups.push_back(group);
    return found - groups.begin();
  };
  for (const RuleInForce& rule : list) place(rule.path);
  std::stable_sort(list.begin(), list.end(),
                   [&](const RuleInForce& a, const RuleInForce& b) { return place(a.path) < place(b.path); });
  return list;
}

std::vector<RuleDifference> compare_rules(const Catalog& catalog, const Rules& before, const Rules& after) {
  return Comparison(catalog, before, after).all();
}

}  // namespace mainbore
