// Jobs for the planner's tests: a complete, sound one to start from, and the questions asked of a plan.
#pragma once

#include <algorithm>
#include <memory>

#include "mainbore/catalog.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"

namespace mainbore::test {

inline const Rules& default_rules() {
  static const Rules rules = *load_rules(Catalog::builtin(), {}).rules;
  return rules;
}

inline Plan plan_of(const Job& job) { return plan_under(job, default_rules()); }

// A machine with its maker's figures, of an invented make: hand feed to 90 psi, powered to 250; a base chain that reaches
// round 16-inch mains and extensions for larger ones.
inline std::shared_ptr<MachineProfile> truck_machine() {
  auto machine = std::make_shared<MachineProfile>();
  machine->id = "truck";
  machine->title = "the truck's machine";
  machine->maker_figures = true;
  machine->basis = stated_in_job;
  machine->smallest_tap = NominalSize::inches(0.5);
  machine->largest_tap = NominalSize::inches(2);
  machine->hand_limit = 90.0 * units::psi;
  machine->powered_limit = 250.0 * units::psi;
  machine->body_rating = 300.0 * units::psi;
  machine->bar_diameter = 1.0 * units::inch;
  machine->bar_travel = 12.0 * units::inch;
  machine->standoff = 6.0 * units::inch;
  machine->adapter_standoff = 2.0 * units::inch;
  machine->saddle_od_from = 3.5 * units::inch;
  machine->saddle_od_to = 26.0 * units::inch;
  machine->chain_length = 57.0 * units::inch;
  machine->chain_extension = 24.0 * units::inch;
  machine->anchor_offset = 3.0 * units::inch;
  machine->anchor_height = 4.0 * units::inch;
  machine->chain_thickness = 0.6 * units::inch;
  machine->gasket_diameter = 2.25 * units::inch;
  machine->stud_diameter = 0.5 * units::inch;
  return machine;
}

// Everything known and nothing wrong: 8-inch ductile iron of pressure class 350, a 1-inch service, 70 psi.
inline Job sound_job() {
  Job job;
  job.id = "AV-1";
  job.main.material = Material::ductile_iron;
  job.main.size = NominalSize::inches(8);
  job.main.class_name = "PC 350";
  job.main.pressure = 70.0 * units::psi;
  job.main.condition = Condition::sound;
  job.main.carries = Carries::water;
  job.main.curved = false;
  job.main.temperature = Temperature::fahrenheit(55);
  job.main.surge = 20.0 * units::psi;
  job.nearby.emplace();
  job.service.size = NominalSize::inches(1);
  job.service.stop_rating = 300.0 * units::psi;
  job.service.saddle_rating = 300.0 * units::psi;
  job.service.saddle_height = 2.0 * units::inch;
  job.service.stop_length = 3.5 * units::inch;
  job.machine.given = truck_machine();
  return job;
}

inline Nearby at(NearbyThing what, double inches) { return Nearby{what, inches * units::inch, {}, {}}; }

inline bool has(const Plan& plan, FindingCode code) {
  return std::any_of(plan.findings.begin(), plan.findings.end(), [&](const Finding& f) { return f.code == code; });
}

inline const Finding* find(const Plan& plan, FindingCode code) {
  const auto found =
      std::find_if(plan.findings.begin(), plan.findings.end(), [&](const Finding& f) { return f.code == code; });
  return found == plan.findings.end() ? nullptr : &*found;
}

inline Severity severity_of(const Plan& plan, FindingCode code) {
  const Finding* finding = find(plan, code);
  REQUIRE(finding != nullptr);
  return finding->severity;
}

inline const RejectedMethod* rejection(const Plan& plan, Method kind) {
  const auto found = std::find_if(plan.method.rejected.begin(), plan.method.rejected.end(),
                                  [&](const RejectedMethod& r) { return r.kind == kind; });
  return found == plan.method.rejected.end() ? nullptr : &*found;
}

}  // namespace mainbore::test
