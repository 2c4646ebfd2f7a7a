// The pit: soil, walls, size, spoil, ladder, air, marks, what lies beside it.
#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <string>

#include "mainbore/excavation/tolerance_zone.hpp"
#include "mainbore/excavation/traffic_taper.hpp"
#include "mainbore/hydraulics/open_jet.hpp"
#include "planning/calculations.hpp"
#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

using excavation::SoilType;

bool given(const ExcavationFacts& facts) {
  return facts.soil || facts.strength || facts.earth || facts.granular || facts.fissured || facts.vibration ||
         facts.disturbed || facts.layers || facts.water || facts.distress || facts.open_for || facts.protection ||
         facts.finding || facts.hazard || facts.crossing || facts.spoil_distance || facts.located || facts.tolerance ||
         facts.sewer || facts.sewer_below || facts.speed || facts.lane;
}

excavation::ExcavationThresholds thresholds_of(const Rules& rules) {
  return {.protective_system_depth = rules.pit.protective_system_depth.value,
          .egress_depth = rules.pit.egress_depth.value,
          .egress_travel = rules.pit.egress_travel.value,
          .ladder_extension = rules.pit.ladder_extension.value,
          .atmosphere_depth = rules.pit.atmosphere_depth.value,
          .engineer_depth = rules.pit.engineer_depth.value,
          .short_term_depth = rules.pit.short_term_depth.value,
          .short_term_open = rules.pit.short_term_open.value,
          .spoil_setback = rules.pit.spoil_setback.value,
          .guardrail_depth = rules.pit.guardrail_depth.value};
}

excavation::SlopeTable slopes_of(const Rules& rules) {
  return {.stable_rock = rules.pit.slope_stable_rock.value,
          .type_a = rules.pit.slope_type_a.value,
          .type_a_short_term = rules.pit.slope_type_a_short.value,
          .type_b = rules.pit.slope_type_b.value,
          .type_c = rules.pit.slope_type_c.value,
          .distress_flattening = rules.pit.slope_distress.value};
}

// What a claim of type A or rock does not settle counts against it until it is denied: over a main the ground was dug
// before, a street shakes, and cracks are seen only by who looks for them.
excavation::SoilEvidence evidence_of(const ExcavationFacts& facts) {
  excavation::SoilEvidence evidence;
  if (facts.soil) evidence.claimed = static_cast<SoilType>(*facts.soil);
  evidence.unconfined_strength = facts.strength;
  evidence.granular = facts.granular.value_or(false) || facts.earth == Earth::sand;
  evidence.fissured = facts.fissured.value_or(true);
  evidence.vibration = facts.vibration.value_or(true);
  evidence.previously_disturbed = facts.disturbed.value_or(true);
  evidence.layers = static_cast<excavation::LayerDip>(facts.layers.value_or(LayerFacts::none));
  evidence.seeping = facts.water == PitWater::seeping;
  evidence.submerged = facts.water == PitWater::standing;
  return evidence;
}

class PitCheck {
 public:
  PitCheck(const Site& site, const std::optional<OpenHole>& open, Said& said)
      : site_(site),
        open_(open),
        said_(said),
        rules_(site.rules),
        facts_(site.job().excavation),
        thresholds_(thresholds_of(site.rules)) {}

  std::optional<PitPlan> run() {
    take(Taken::soil_type, rules_.pit.type_a_least, Kind::strength);
    take(Taken::soil_type, rules_.pit.type_c_most, Kind::strength);
    const auto soil = excavation::classify_soil(evidence_of(facts_), {.type_a_least = rules_.pit.type_a_least.value,
                                                                      .type_c_most = rules_.pit.type_c_most.value});
    judge_marks();
    judge_ground(soil);
    judge_sewer();
    const auto cover = site_.job().main.known_cover();
    const ResolvedMain& main = site_.main;
    if (!cover || !main.od) {
      judge_spoil();
      said_.findings.add(FindingCode::pit_not_checked, Severity::note)
          .with(cover ? Detail() : Detail(std::string_view("main.cover")),
                main.od ? Detail() : Detail(std::string_view("main.od")));
      return std::nullopt;
    }
    PitPlan plan = size(soil, *cover, main.od_high.value_or(*main.od));
    judge_spoil();
    return plan;
  }

 private:
  template <class T>
  void take(Taken what, const Rule<T>& rule, Kind kind) {
    said_.taken.take(PlanPart::pit, what, rule.basis, Measure(rule.value, kind));
  }

  // ---- what needs no depth

  void judge_marks() {
    take(Taken::notice, rules_.pit.notice_days, Kind::ratio);
    if (facts_.tolerance) {
      said_.taken.take(PlanPart::pit, Taken::tolerance_zone, stated_in_job, Measure(*facts_.tolerance));
    } else {
      take(Taken::tolerance_zone, rules_.pit.tolerance_margin, Kind::length);
    }
    if (facts_.located.value_or(false)) return;
    said_.findings.add(FindingCode::pit_not_located, Severity::hold)
        .with(static_cast<int>(rules_.pit.notice_days.value), Measure(zone_margin()))
        .basis(rules_.pit.notice_days.basis, rules_.pit.tolerance_margin.basis);
  }

  void judge_ground(const excavation::SoilClassification& soil) {
    Findings& findings = said_.findings;
    const bool strong = facts_.strength && !over(rules_.pit.type_a_least.value, *facts_.strength);
    const bool claimed = facts_.soil ? *facts_.soil <= SoilClaim::type_a : strong;
    if (claimed && soil.type > SoilType::type_a) {
      findings.add(FindingCode::pit_soil_not_type_a, Severity::caution)
          .with(name_of(soil.type), name_of(soil.reasons.front()))
          .basis(rules_.pit.type_a_least.basis);
    }
    if (facts_.disturbed == false && soil.type <= SoilType::type_a) {
      findings.add(FindingCode::pit_claimed_undisturbed, Severity::hold)
          .with(name_of(soil.type))
          .basis(rules_.pit.type_a_least.basis);
    }
    if (facts_.distress.value_or(false)) {
      findings.add(FindingCode::pit_distress, Severity::hold)
          .with(Measure(rules_.pit.slope_distress.value, Kind::ratio))
          .basis(rules_.pit.slope_distress.basis);
    }
    if (facts_.water && *facts_.water != PitWater::none) {
      const bool standing = *facts_.water == PitWater::standing;
      findings.add(FindingCode::pit_water, standing ? Severity::hold : Severity::caution)
          .with(pit_water_names[static_cast<std::size_t>(*facts_.water)])
          .basis(rules_.pit.slope_type_c.basis);
    }
  }

  void judge_spoil() {
    const auto& distance = facts_.spoil_distance;
    take(Taken::spoil, rules_.pit.spoil_setback, Kind::distance);
    if (!distance ||
        !excavation::duties_at({.depth = Length(), .spoil_distance = distance}, thresholds_).spoil_too_near) {
      return;
    }
    said_.findings.add(FindingCode::pit_spoil_too_near, Severity::hold)
        .value(Measure(*distance, Kind::distance))
        .at_least(Measure(rules_.pit.spoil_setback.value, Kind::distance))
        .basis(rules_.pit.spoil_setback.basis);
  }

  void judge_sewer() {
    std::optional<Length> apart = facts_.sewer;
    if (site_.job().nearby) {
      for (const Nearby& thing : *site_.job().nearby) {
        if (thing.what != NearbyThing::sewer) continue;
        const Length way = abs(thing.along - site_.location.shift);
        if (!apart || way < *apart) apart = way;
      }
    }
    if (!apart) return;
    take(Taken::sewer_distance, rules_.pit.sewer_apart, Kind::distance);
    if (!over(rules_.pit.sewer_apart.value, *apart)) return;
    take(Taken::sewer_distance, rules_.pit.sewer_below, Kind::length);
    if (facts_.sewer_below && !over(rules_.pit.sewer_below.value, *facts_.sewer_below)) return;
    auto finding = said_.findings.add(FindingCode::pit_sewer_near, Severity::hold);
    finding.value(Measure(*apart, Kind::distance))
        .at_least(Measure(rules_.pit.sewer_apart.value, Kind::distance))
        .with(Measure(rules_.pit.sewer_below.value),
              facts_.sewer_below ? Detail(Measure(*facts_.sewer_below)) : Detail())
        .basis(rules_.pit.sewer_apart.basis, rules_.pit.sewer_below.basis);
  }

  // ---- the pit itself

  PitPlan size(const excavation::SoilClassification& soil, Length cover, Length od) {
    PitPlan plan;
    plan.soil = soil;
    plan.main_od = od;
    plan.cover = cover;
    plan.main_to_far_wall = rules_.pit.room_far_side.value;
    plan.protection = facts_.protection;
    const excavation::PitRoom room{.along = rules_.pit.room_along.value,
                                   .machine_side = rules_.pit.room_machine_side.value,
                                   .far_side = rules_.pit.room_far_side.value,
                                   .below = rules_.pit.room_below.value};
    plan.pit = excavation::size_pit(od, cover, room, 0.0);
    write_depth(plan, rules_.pit.protective_system_depth, "a protective system beyond the limit");
    take(Taken::pit_room, rules_.pit.room_along, Kind::distance);
    take(Taken::pit_room, rules_.pit.room_machine_side, Kind::distance);
    take(Taken::pit_room, rules_.pit.room_far_side, Kind::distance);
    take(Taken::pit_room, rules_.pit.room_below, Kind::distance);
    judge_depth(plan);
    judge_hanging(plan);
    if (!site_.whole()) return plan;
    choose_walls(plan);
    heap_spoil(plan);
    plan_way_out(plan);
    plan_surroundings(plan);
    write_pit(site_, plan, swell_of(plan), said_.taken);
    fill(plan, room);
    return plan;
  }

  void write_depth(const PitPlan& plan, const Rule<Length>& limit, std::string_view what) {
    if (!site_.calculates()) return;
    said_.taken.calculated(
        Worked(PlanPart::pit, Formula::pit_depth,
               {planning::given(Measure(plan.cover, Kind::distance)), diameter(site_, site_.main, plan.main_od),
                figure(rules_.pit.room_below, Kind::distance)},
               Measure(plan.pit.depth, Kind::distance), what)
            .at_most(figure(limit, Kind::distance)));
  }

  void judge_depth(PitPlan& plan) {
    Findings& findings = said_.findings;
    const Length depth = plan.pit.depth;
    excavation::GroundFinding found = excavation::GroundFinding::not_examined;
    if (facts_.finding) {
      found =
          *facts_.finding == CaveInSign::sign ? excavation::GroundFinding::sign : excavation::GroundFinding::no_sign;
    }
    if (facts_.distress.value_or(false)) found = excavation::GroundFinding::sign;
    const excavation::ExcavationDuties duties =
        excavation::duties_at({.depth = depth,
                               .soil = plan.soil.type,
                               .finding = found,
                               .atmosphere_hazard_expected = facts_.hazard.value_or(false),
                               .public_crossing = facts_.crossing.value_or(false)},
                              thresholds_);
    plan.protective_system = duties.protective_system;
    plan.ladder = duties.egress;
    plan.atmosphere_test = duties.atmosphere_test;
    plan.engineer_design = duties.engineer_design;
    plan.guardrail = duties.guardrail;
    take(Taken::protective_system, rules_.pit.protective_system_depth, Kind::distance);
    take(Taken::engineer_depth, rules_.pit.engineer_depth, Kind::distance);
    take(Taken::way_out, rules_.pit.egress_depth, Kind::distance);
    take(Taken::air_test, rules_.pit.atmosphere_depth, Kind::distance);
    take(Taken::guardrail, rules_.pit.guardrail_depth, Kind::distance);

    const auto add = [&](FindingCode code, Severity severity, const Rule<Length>& rule) {
      return findings.add(code, severity)
          .value(Measure(depth, Kind::distance))
          .at_most(Measure(rule.value, Kind::distance))
          .basis(rule.basis);
    };
    if (duties.protective_system == excavation::ProtectiveSystem::needs_finding) {
      // Walls that are sloped or shielded anyway need no finding.
      add(FindingCode::pit_not_examined, facts_.protection ? Severity::caution : Severity::hold,
          rules_.pit.protective_system_depth);
    }
    if (duties.protective_system == excavation::ProtectiveSystem::required) {
      add(FindingCode::pit_protective_system, facts_.protection ? Severity::caution : Severity::hold,
          rules_.pit.protective_system_depth);
    }
    if (duties.engineer_design) write_depth(plan, rules_.pit.engineer_depth, "an engineer's design beyond the limit");
    if (duties.atmosphere_test) write_depth(plan, rules_.pit.atmosphere_depth, "the air tested beyond the limit");
    if (duties.engineer_design) add(FindingCode::pit_engineer, Severity::hold, rules_.pit.engineer_depth);
    if (duties.egress) {
      add(FindingCode::pit_egress, Severity::caution, rules_.pit.egress_depth)
          .with(Measure(rules_.pit.egress_travel.value, Kind::distance),
                Measure(rules_.pit.ladder_extension.value, Kind::distance));
    }
    if (duties.atmosphere_test) add(FindingCode::pit_atmosphere, Severity::hold, rules_.pit.atmosphere_depth);
    if (duties.guardrail) add(FindingCode::pit_guardrail, Severity::caution, rules_.pit.guardrail_depth);
    // Whether bad air is to be expected is a competent person's to say; until then the plan says that it was not asked.
    if (!facts_.hazard &&
        excavation::duties_at({.depth = depth, .atmosphere_hazard_expected = true}, thresholds_).atmosphere_test) {
      findings.add(FindingCode::pit_not_checked, Severity::note)
          .with(std::string_view("excavation.hazard"))
          .basis(rules_.pit.atmosphere_depth.basis);
    }
  }

  void choose_walls(PitPlan& plan) {
    const excavation::SlopeTable slopes = slopes_of(rules_);
    const bool distress = facts_.distress.value_or(false);
    // Where the time is not given nobody may count on the short term.
    excavation::SlopeCase slope_case{.soil = plan.soil.type,
                                     .depth = plan.pit.depth,
                                     .open_for = facts_.open_for.value_or(2.0 * rules_.pit.short_term_open.value),
                                     .distress = distress};
    plan.slope = excavation::allowed_slope(slope_case, slopes, thresholds_);
    take_slope(plan, slope_case);
    const bool upright =
        plan.protective_system == excavation::ProtectiveSystem::not_required || plan.protection == Protection::shield;
    if (!upright) {
      // For an engineer's pit, the slope of the tables at their end: enough to know what has to be moved.
      slope_case.depth = std::min(plan.pit.depth, rules_.pit.engineer_depth.value);
      plan.pit.slope = excavation::allowed_slope(slope_case, slopes, thresholds_)->run;
    }
    plan.shield_above = rules_.pit.shield_above.value;
    plan.shield_below = rules_.pit.shield_below.value;
    take(Taken::shield, rules_.pit.shield_above, Kind::length);
    take(Taken::shield, rules_.pit.shield_below, Kind::length);
    if (!plan.slope || distress) return;
    const bool type_a = plan.soil.type == SoilType::type_a;
    if (type_a && !over(plan.pit.depth, rules_.pit.short_term_depth.value)) {
      const bool shallow = !over(plan.pit.depth, rules_.pit.vertical_lower_depth.value);
      plan.upright_lower = {rules_.pit.vertical_lower.value,
                            shallow ? rules_.pit.slope_type_a.value : rules_.pit.vertical_lower_slope.value};
      take(Taken::upright_lower, rules_.pit.vertical_lower, Kind::distance);
      take(Taken::upright_lower, shallow ? rules_.pit.slope_type_a : rules_.pit.vertical_lower_slope, Kind::ratio);
    }
    if (type_a) plan.benches = {rules_.pit.bench_first.value, rules_.pit.bench_later_a.value};
    if (plan.soil.type == SoilType::type_b && facts_.earth == Earth::clay) {  // only cohesive ground stands in steps
      plan.benches = {rules_.pit.bench_first.value, rules_.pit.bench_later_b.value};
    }
    if (!plan.benches) return;
    take(Taken::steps, rules_.pit.bench_first, Kind::distance);
    take(Taken::steps, type_a ? rules_.pit.bench_later_a : rules_.pit.bench_later_b, Kind::distance);
  }

  // The row of the slopes that the pit is cut by.
  void take_slope(const PitPlan& plan, const excavation::SlopeCase& slope_case) {
    const bool short_term = !over(slope_case.open_for, rules_.pit.short_term_open.value) &&
                            !over(plan.pit.depth, rules_.pit.short_term_depth.value);
    const Rule<double>* row = &rules_.pit.slope_type_c;
    if (plan.soil.type == SoilType::stable_rock) row = &rules_.pit.slope_stable_rock;
    if (plan.soil.type == SoilType::type_a)
      row = short_term ? &rules_.pit.slope_type_a_short : &rules_.pit.slope_type_a;
    if (plan.soil.type == SoilType::type_b) row = &rules_.pit.slope_type_b;
    take(Taken::slopes, *row, Kind::ratio);
    if (slope_case.distress) take(Taken::slopes, rules_.pit.slope_distress, Kind::ratio);
  }

  [[nodiscard]] Earth earth_of(const PitPlan& plan) const {
    return facts_.earth.value_or(plan.soil.type == SoilType::stable_rock ? Earth::rock : Earth::earth);
  }
  [[nodiscard]] const Rule<double>& swell_of(const PitPlan& plan) const {
    const std::array<const Rule<double>*, 4> swells = {&rules_.pit.swell_sand, &rules_.pit.swell_earth,
                                                       &rules_.pit.swell_clay, &rules_.pit.swell_rock};
    return *swells[static_cast<std::size_t>(earth_of(plan))];
  }

  void heap_spoil(PitPlan& plan) {
    const ServiceTables& tables = site_.catalog.service_tables();
    const Earth earth = earth_of(plan);
    const Rule<double>& swell = swell_of(plan);
    take(Taken::swell, swell, Kind::ratio);
    take(Taken::swell, rules_.pit.repose, Kind::ratio);
    said_.taken.take(PlanPart::pit, Taken::ground_weight, tables.weight_basis);
    plan.top = excavation::pit_top(plan.pit);
    plan.bank = excavation::pit_volume(plan.pit);
    if (plan.slope && plan.protective_system != excavation::ProtectiveSystem::not_required) {
      excavation::Pit otherwise = plan.pit;
      otherwise.slope = plan.pit.slope > 0.0 ? 0.0 : plan.slope->run;
      plan.bank_otherwise = excavation::pit_volume(otherwise);
    }
    plan.loose = excavation::loose_volume(plan.bank, swell.value);
    plan.weight = plan.bank * (earth == Earth::rock ? tables.rock_weight : tables.soil_weight);
    plan.spoil = excavation::spoil_windrow(plan.loose, plan.top.along, rules_.pit.repose.value);
    plan.setback = rules_.pit.spoil_setback.value;
    plan.occupied = excavation::occupied_strip(plan.top.across, plan.setback, plan.spoil);
  }

  void plan_way_out(PitPlan& plan) {
    take(Taken::ladder, rules_.pit.egress_travel, Kind::distance);
    take(Taken::ladder, rules_.pit.ladder_extension, Kind::distance);
    plan.ladders = excavation::ladders_needed(plan.pit.along, rules_.pit.egress_travel.value);
    // It leans 1 to 4, and ladders come by the foot.
    const Length leaning = std::sqrt(17.0) / 4.0 * (plan.pit.depth + rules_.pit.ladder_extension.value);
    plan.ladder_length = std::ceil(leaning / units::foot - 1e-6) * units::foot;
    plan.egress_travel = rules_.pit.egress_travel.value;
  }

  [[nodiscard]] Length zone_margin() const { return facts_.tolerance.value_or(rules_.pit.tolerance_margin.value); }

  void plan_surroundings(PitPlan& plan) {
    const ServiceTables& tables = site_.catalog.service_tables();
    plan.notice_days = rules_.pit.notice_days.value;
    plan.zone_half_width = excavation::tolerance_zone_half_width(plan.main_od, zone_margin());
    said_.taken.take(PlanPart::pit, Taken::marks_color, tables.colors_basis);
    plan.own_mark = tables.water_mark;
    plan.stop_mark = tables.gas_mark;
    if (facts_.lane && facts_.speed) {
      using excavation::TaperKind;
      const auto taper = [&](TaperKind kind) { return excavation::taper_length(kind, *facts_.lane, *facts_.speed); };
      plan.tapers = {taper(TaperKind::merging), taper(TaperKind::shifting), taper(TaperKind::shoulder)};
    }
  }

  void judge_hanging(PitPlan& plan) {
    plan.hanging = plan.pit.along;
    if (!site_.job().nearby) return;
    for (const Nearby& thing : *site_.job().nearby) {
      const bool joins = is_joint(thing.what) || thing.what == NearbyThing::fitting ||
                         thing.what == NearbyThing::valve || thing.what == NearbyThing::repair_clamp;
      const Length way = abs(thing.along - site_.location.shift);
      if (!joins || over(way, plan.hanging / 2.0)) continue;
      plan.joint_hangs = true;
      said_.findings.add(FindingCode::pit_main_hangs, Severity::caution)
          .with(nearby_names[static_cast<std::size_t>(thing.what)], Measure(way, Kind::distance),
                Measure(plan.hanging, Kind::distance));
      return;
    }
  }

  // From the bottom to the crown of the main, less the main itself.
  void fill(PitPlan& plan, const excavation::PitRoom& room) {
    if (!open_) return;
    excavation::Pit to_crown = plan.pit;
    to_crown.depth = plan.main_od + room.below;
    const Volume pipe = std::numbers::pi / 4.0 * (plan.main_od * plan.main_od * plan.pit.along);
    plan.fill = hydraulics::time_to_fill(excavation::pit_volume(to_crown) - pipe, open_->flow);
  }

  const Site& site_;
  const std::optional<OpenHole>& open_;
  Said& said_;
  const Rules& rules_;
  const ExcavationFacts& facts_;
  excavation::ExcavationThresholds thresholds_;
};

// By the cover alone, of a job that tells nothing else of its pit.
std::optional<Length> least_depth(const Site& site) {
  const auto cover = site.job().main.known_cover();
  if (!cover || !site.main.od) return std::nullopt;
  return *cover + site.main.od_high.value_or(*site.main.od) + site.rules.pit.room_below.value;
}

}  // namespace

std::optional<PitPlan> check_pit(const Site& site, const std::optional<OpenHole>& open, Said& said) {
  if (!given(site.job().excavation)) {
    const auto depth = least_depth(site);
    // Beyond the depth of the tables an engineer designs the pit, whatever else is told of it. A pit that crews protect every
    // day says nothing against the tap: a caution, which the card prints among those of every job too.
    const PitRules& rules = site.rules.pit;
    if (!depth || !over(*depth, rules.engineer_depth.value)) {
      if (depth && !over(rules.protective_system_depth.value, *depth)) {
        said.findings.add(FindingCode::pit_protective_system, Severity::caution)
            .value(Measure(*depth, Kind::distance))
            .at_most(Measure(rules.protective_system_depth.value, Kind::distance))
            .basis(rules.protective_system_depth.basis);
      }
      return std::nullopt;
    }
  }
  return PitCheck(site, open, said).run();
}

}  // namespace mainbore::planning

namespace mainbore {

std::vector<NotChecked> not_checked(const Plan& plan) {
  const Job& job = plan.job;
  const LineFacts& line = job.service.line;
  const DemandFacts& demand = job.service.demand;
  std::vector<NotChecked> list;
  list.reserve(3);
  // Only what is missing is asked for. Where all is given and still nothing could be worked out, a hold says why.
  struct Wanted {
    bool given;
    std::string_view path;
  };
  const auto add = [&](bool checked, std::string_view what, std::initializer_list<Wanted> facts) {
    if (checked) return;
    std::string missing;
    for (const Wanted& fact : facts) {
      if (!fact.given) (missing += missing.empty() ? "" : ", ") += fact.path;
    }
    list.push_back({what, missing.empty() ? "what its holds ask for" : std::move(missing)});
  };
  add(plan.service.has_value(), "water for the customer",
      {{line.material.has_value(), "service.line.material"},
       {line.length.has_value(), "service.line.length"},
       {demand.flow || demand.fixture_units || !demand.fixtures.empty(),
        "service.demand.flow or .fixture_units with .code"}});
  add(plan.cleaning.has_value(), "disinfection and flushing",
      {{job.sanitary.stock.has_value(), "sanitary.stock"},
       {line.material.has_value(), "service.line.material"},
       {line.length.has_value(), "service.line.length"}});
  add(plan.excavation.has_value(), "the pit",
      {{job.main.known_cover().has_value(), "main.cover"},
       {job.excavation.soil.has_value(), "excavation.soil"},
       {job.excavation.located.has_value(), "excavation.located"}});
  return list;
}

}  // namespace mainbore
