#include <algorithm>
#include <set>
#include <string>

#include "catalog/class_meaning.hpp"
#include "mainbore/rule_fields.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"

using namespace mainbore;

namespace {

Rules defaults() {
  RulesFile read = load_rules(Catalog::builtin());
  for (const Diagnostic& d : read.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
  REQUIRE(read.rules);
  return std::move(*read.rules);
}

// The row that decides for a catalog pipe, as the header says rows are tried.
const TapLimit* row_for(const TapLimits& rows, const Pipe& pipe) {
  for (const TapLimit& row : rows) {
    const auto lists = [](const auto& list, const auto& wanted) {
      return list.empty() || std::find(list.begin(), list.end(), wanted) != list.end();
    };
    const bool class_fits =
        row.classes.empty() || std::any_of(row.classes.begin(), row.classes.end(), [&](const std::string& name) {
          return means_pipe(Catalog::builtin().read_class(name, pipe.series->material), pipe);
        });
    if (lists(row.materials, pipe.series->material) && class_fits && lists(row.series, pipe.series->id) &&
        (!row.main_from || *row.main_from <= pipe.size) && (!row.main_to || pipe.size <= *row.main_to) &&
        (!row.wall_from || (pipe.wall && *row.wall_from <= *pipe.wall))) {
      return &row;
    }
  }
  return nullptr;
}

std::string largest_direct(const Rules& rules, std::string_view series, double size, std::string_view class_name) {
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    if (pipe.series->id != series || pipe.size != NominalSize::inches(size) || pipe.class_name != class_name) continue;
    const TapLimit* const row = row_for(rules.direct.largest, pipe);
    if (row == nullptr) return "no rule";
    return row->largest == NominalSize() ? "none" : row->largest.label();
  }
  return "no such pipe";
}

}  // namespace

TEST_CASE("every default rule is set, rests on a source and is no utility's") {
  const Rules rules = defaults();
  CHECK(rules.name == "default rules");
  for (const RuleField& field : rule_fields()) {
    INFO(field.path);
    if (may_be_unset(field)) {
      CHECK(std::holds_alternative<std::monostate>(value_of(rules, field)));
      continue;
    }
    std::visit(
        [&](const auto& target) {
          CHECK(target.in(rules).basis.source != nullptr);
          CHECK_FALSE(target.in(rules).basis.utility);
        },
        field.target);
  }
  for (const PermissionField& field : permission_fields()) {
    INFO(field.path);
    CHECK_FALSE(field.target.in(rules).empty());
    for (const TapLimit& row : field.target.in(rules)) {
      CHECK(row.basis.source != nullptr);
      if (row.largest == NominalSize()) CHECK_FALSE(row.why.empty());
    }
  }
  for (const Clearance& clearance : rules.place.clearances) CHECK(clearance.least.basis.source != nullptr);
}

TEST_CASE("the table of rules names each path once, under a group, with help") {
  std::set<std::string_view> seen;
  for (const RuleField& field : rule_fields()) {
    INFO(field.path);
    CHECK(seen.insert(field.path).second);
    CHECK(std::count(field.path.begin(), field.path.end(), '.') == 1);
    CHECK_FALSE(field.help.empty());
    CHECK(field.least <= field.greatest);
  }
}

TEST_CASE("units arrive as what they are") {
  const Rules rules = defaults();
  CHECK(rules.pressure.regulator_above.value / units::psi == Catch::Approx(80));
  CHECK(rules.place.farthest_shift.value / units::foot == Catch::Approx(6));
  CHECK(rules.measuring.circumference_uncertainty.value / units::inch == Catch::Approx(0.125));
  CHECK(rules.machine.ovality_limit.value == Catch::Approx(0.075));
  CHECK(rules.direct.plastic_wet_tap_warmest.value.fahrenheit() == Catch::Approx(90));
  CHECK(rules.direct.plastic_dry_tap_coldest.value.fahrenheit() == Catch::Approx(0));
  CHECK(rules.direct.plastic_dry_tap_warmest.value.fahrenheit() == Catch::Approx(100));
  CHECK(rules.pressure.plastic_recurring_surge_factor.value == 1.0);
  CHECK(rules.pressure.plastic_recurring_surge_factor.basis.how == How::memory);
  CHECK(rules.pressure.asbestos_cement_surge_allowance.value == Pressure());
  CHECK(rules.machine.push_limit.value / units::lbf == Catch::Approx(50));
  CHECK(rules.place.default_clock.value.minutes == 90);
  CHECK(rules.place.highest_elevation.value == Catch::Approx(60));
  CHECK(rules.direct.default_thread.value == ThreadStandard::awwa_taper);
  const auto tap = std::find_if(rules.place.clearances.begin(), rules.place.clearances.end(),
                                [](const Clearance& c) { return c.what == NearbyThing::tap; });
  REQUIRE(tap != rules.place.clearances.end());
  CHECK(tap->least.value / units::inch == Catch::Approx(18));
}

TEST_CASE("largest direct taps by default") {
  const Rules rules = defaults();
  CHECK(largest_direct(rules, "di-pressure-class", 4, "PC 350") == "3/4");
  CHECK(largest_direct(rules, "di-pressure-class", 8, "PC 350") == "1");
  CHECK(largest_direct(rules, "di-pressure-class", 12, "PC 350") == "1-1/4");
  CHECK(largest_direct(rules, "di-pressure-class", 14, "PC 250") == "1-1/4");
  CHECK(largest_direct(rules, "di-pressure-class", 14, "PC 300") == "1-1/2");
  CHECK(largest_direct(rules, "di-pressure-class", 16, "PC 250") == "1-1/2");
  CHECK(largest_direct(rules, "di-pressure-class", 16, "PC 300") == "2");
  CHECK(largest_direct(rules, "di-pressure-class", 24, "PC 200") == "2");
  CHECK(largest_direct(rules, "ci-pit-cast", 3, "Class B") == "3/4");
  CHECK(largest_direct(rules, "ci-pit-cast", 6, "Class B") == "1");
  CHECK(largest_direct(rules, "ci-pit-cast", 30, "Class B") == "no rule");
  CHECK(largest_direct(rules, "pvc-c900", 8, "DR 18") == "1");
  CHECK(largest_direct(rules, "pvc-c900", 8, "DR 25") == "none");
  CHECK(largest_direct(rules, "pvc-c900", 4, "DR 14") == "none");
  CHECK(largest_direct(rules, "pvc-c900", 14, "DR 18") == "none");
  CHECK(largest_direct(rules, "pvc-ips", 6, "SDR 17") == "none");
  CHECK(largest_direct(rules, "pvco-c909", 6, "PC 235") == "none");
  CHECK(largest_direct(rules, "pe-ips", 6, "DR 11") == "none");
}

TEST_CASE("the thinnest ductile iron of every size takes a 3/4-inch stop") {
  // Published: the minimum pressure class of all diameters may be tapped directly for 3/4-inch services.
  const Rules rules = defaults();
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    if (pipe.series->id != "di-pressure-class") continue;
    INFO(pipe.size.label() << ' ' << pipe.class_name);
    const TapLimit* const row = row_for(rules.direct.largest, pipe);
    REQUIRE(row != nullptr);
    CHECK(row->largest >= NominalSize::inches(0.75));
  }
}

TEST_CASE("every main has a word on saddles and sleeves or none at all, never a silent yes") {
  const Rules rules = defaults();
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    INFO(pipe.series->id << ' ' << pipe.size.label());
    if (const TapLimit* const row = row_for(rules.saddle.largest, pipe)) CHECK(row->largest <= NominalSize::inches(2));
    if (const TapLimit* const row = row_for(rules.sleeve.largest, pipe)) CHECK(row->largest <= NominalSize::inches(12));
  }
}
