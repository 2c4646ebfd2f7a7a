#include "report/text_water.hpp"

#include <cmath>
#include <optional>
#include <string>

#include "mainbore/hydraulics/equal_capacity.hpp"
#include "mainbore/measure.hpp"
#include "report/mixing.hpp"
#include "report/round_up.hpp"

namespace mainbore::report {
namespace {

class WaterSections {
 public:
  WaterSections(TextPage& page, const Plan& plan, UnitSystem system) : page_(page), plan_(plan), system_(system) {}

  void all() {
    if (plan_.verdict != Verdict::no_go) {
      if (plan_.service) service(*plan_.service);
      if (plan_.cleaning) cleaning(*plan_.cleaning);
      if (plan_.excavation) pit(*plan_.excavation);
    }
    const auto missing = not_checked(plan_);
    if (missing.empty()) return;
    page_.heading("NOT CHECKED");
    for (const NotChecked& part : missing) {
      page_.paragraph(std::string(part.what) + " (give " + std::string(part.give) + ")", 4, "  - ");
    }
  }

 private:
  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, system_); }
  [[nodiscard]] std::string far(Length length) const { return show(Measure(length, Kind::distance)); }
  // No more than this.
  [[nodiscard]] std::string within(Length length) const { return on_tape(length, system_, Toward::less); }
  [[nodiscard]] static std::string number(double value, int decimals) {
    std::string text;
    append_number(text, value, decimals);
    return text;
  }
  [[nodiscard]] static std::string name(NominalSize size) { return size.label() + " in"; }
  // Room to be given.
  [[nodiscard]] std::string taped(Length length) const { return on_tape(length, system_, Toward::more); }
  // Earth comes by the truck: a large heap to the whole yard or meter.
  [[nodiscard]] std::string heap(Volume volume) const {
    const Shown earth = shown(Measure(volume, Kind::earth), system_);
    const double whole = earth.value < 10.0 ? earth.value : std::ceil(earth.value);
    return number(whole, earth.decimals) + ' ' + std::string(earth.unit);
  }
  [[nodiscard]] std::string paced(Length length) const { return by_paces(length, system_); }
  // Weights small enough for a scale.
  [[nodiscard]] std::string scale(Force weight) const {
    const double ounces = 16.0 * (weight / units::lbf);
    if (system_ == UnitSystem::si || ounces < 1.0) return number(round_up(28.349523125 * ounces), 0) + " g";
    return number(std::ceil(10.0 * ounces - 1e-6) / 10.0, 1) + " oz";
  }

  // What a crew can measure, rounded up: ounces, cups of 8 fl oz and gallons in quarters | mL and L.
  [[nodiscard]] std::string measured(Volume volume) const {
    if (system_ == UnitSystem::si) {
      const double liters = volume / units::liter;
      return liters < 1.0 ? number(round_up(1000.0 * liters, liters < 0.1 ? 1.0 : 10.0), 0) + " mL"
                          : number(round_up(liters, 0.1), 1) + " L";
    }
    const double ounces = 128.0 * (volume / units::gallon);
    if (ounces <= 8.0) return number(round_up(ounces, 0.25), 2) + " fl oz";
    if (ounces <= 64.0) return number(round_up(ounces / 8.0, 0.25), 2) + " cups";
    return number(round_up(ounces / 128.0, 0.25), 2) + " gal";
  }
  // Weights the same way: quarter ounces, then pounds and ounces | grams.
  [[nodiscard]] std::string weighed(Force weight) const {
    const double ounces = 16.0 * (weight / units::lbf);
    if (system_ == UnitSystem::si) {
      const double grams = 28.349523125 * ounces;
      const double step = grams < 100.0 ? 1.0 : 10.0;
      return number(round_up(grams, step), 0) + " g";
    }
    if (ounces <= 16.0) return number(std::ceil(4.0 * ounces - 1e-6) / 4.0, 2) + " oz";
    const double whole = round_up(ounces);
    const double pounds = std::floor(whole / 16.0);
    const double rest = whole - 16.0 * pounds;
    return number(pounds, 0) + " lb" + (rest > 0.0 ? ' ' + number(rest, 0) + " oz" : std::string());
  }

  // ---- water for the customer

  // No gauge at the customer's reads more.
  [[nodiscard]] std::string left(Pressure pressure) const { return on_gauge(pressure, system_, Toward::less); }

  void service(const ServicePlan& service) {
    page_.heading("WATER FOR THE CUSTOMER", "at the lowest pressure of the main");
    page_.field("Demand", demand(service.demand));
    page_.field("Lowest in the main", show(service.supply));
    for (const LossItem& item : service.losses) {
      std::string text = (item.loss < Pressure() ? "gains " : "takes ") + show(abs(item.loss));
      if (item.part == LossPart::line) {
        text += ", " + far(service.length) + " of " + name(service.tube->size) + ' ' +
                std::string(name_of(service.tube->tubing)) + ", bore " + show(service.tube->bore);
      } else if (item.part == LossPart::meter) {
        text += ", " + name(service.meter->size) + (service.meter_assumed ? ", not yet chosen" : "");
      } else if (item.part == LossPart::rise) {
        text += ", " + far(abs(item.loss) / plan_.catalog->service_tables().head);
      } else if (item.counted_as) {
        text += ", as " + far(*item.counted_as) + " of pipe";
      }
      std::string label(name_of(item.part));
      label.front() = static_cast<char>(label.front() - 'a' + 'A');
      page_.field(label, text);
    }
    const std::string thickest = left(service.residual_least);
    page_.field("Left behind the meter",
                left(service.residual) + "; wanted " + show(service.residual_wanted) +
                    (thickest != left(service.residual) ? "; " + thickest + " with the thickest walls" : ""));
    page_.field("Line passes at that", show(service.available.flow));
    page_.field("Speed in the line", show(service.velocity));
    page_.field("Friction by", friction(service));
    smallest(service);
    for (const EqualTaps& taps : service.equal_taps) {
      page_.field("In place of one tap", std::to_string(hydraulics::taps_needed(taps.by_rule)) + " taps of " +
                                             name(taps.size) + " carry as much");
    }
  }

  [[nodiscard]] std::string demand(const DemandPlan& demand) const {
    std::string text = show(demand.domestic);
    if (demand.fixture_units) {
      text +=
          ", from " + number(*demand.fixture_units, 1) + " fixture units of the " + std::string(name_of(*demand.code));
      if (demand.coverage != hydraulics::CurveCoverage::within) text += " (outside its curve)";
    }
    if (demand.continuous > Flow()) text += ", " + show(demand.continuous) + " of it without pause";
    if (demand.sprinklers > demand.domestic) text = show(demand.sprinklers) + " for the sprinklers; else " + text;
    return text;
  }

  [[nodiscard]] std::string friction(const ServicePlan& service) const {
    if (service.method == FrictionMethod::hazen_williams) return "Hazen-Williams, C " + number(service.c, 0);
    return "Darcy-Weisbach, roughness " + number(service.roughness / units::mm, 4) + " mm, water at " +
           show(service.temperature);
  }

  void smallest(const ServicePlan& service) {
    std::string text;
    const auto add = [&](std::string_view what, const std::optional<NominalSize>& size) {
      if (size) text += (text.empty() ? "" : ", ") + std::string(what) + ' ' + name(*size);
    };
    add("tap", service.smallest_tap);
    add("line", service.smallest_line);
    add("meter", service.smallest_meter);
    page_.field("Smallest that serve", text.empty() ? "none of this tubing with this meter" : text);
  }

  // ---- clean

  void cleaning(const CleaningPlan& cleaning) {
    page_.heading("CLEAN");
    const SwabMix& swab = cleaning.swab;
    const std::string stock = number(swab.stock.percent(), 2) + " % stock" +
                              (swab.stock_assumed ? ", the weakest household bleach: read the label" : "");
    const std::string strength = number(swab.wanted.percent(), 2) + " % solution";
    if (swab.liquid) {
      const Mixing mixing = mixing_of(swab, system_);
      page_.field("Swab pipe, cutter, stop", strength + ": " + mixing.stock + " of " + stock + ", and " + mixing.water +
                                                 " of water, for " + show(swab.finished));
      page_.field("On the jug", mixing.each);
    } else if (swab.dry) {
      page_.field("Swab pipe, cutter, stop",
                  strength + ": " + scale(*swab.dry) + " of " + stock + " in " + show(swab.finished) + " of water");
    }
    if (cleaning.flush) flush(*cleaning.flush);
    page_.field("Samples", cleaning.as_main
                               ? "taken, after the line was filled with chlorine"
                               : "not usual for a service of this size on a main that stayed under pressure");
    for (const FillPlan& fill : cleaning.fills) filled(fill);
    for (const ChlorineDose* dose : cleaning.doses) {
      if (!cleaning.fills.empty()) break;
      page_.field("Or fill with", number(dose->dose.mg_per_liter(), 0) + " mg/L for " +
                                      show(Measure(dose->hold, Kind::time_span)) + "; at least " +
                                      number(dose->residual.mg_per_liter(), 0) + " mg/L left (" + dose->method + ")");
    }
    page_.field("Materials", "potable grade; lead at most " + number(plan_.rules->cleaning.lead_percent.value, 2) +
                                 " % averaged over what the water wets");
  }

  // One dose: how it is had, and what is done with the water.
  void filled(const FillPlan& fill) {
    const ChlorineDose& dose = *fill.dose;
    std::string products;
    for (const FillProduct& product : fill.products) {
      products += (products.empty() ? "" : ", or ") +
                  (product.volume ? measured(*product.volume) : weighed(*product.weight)) + " of " +
                  std::string(product.name) +
                  (product.name == "stock at hand" ? ", " + number(product.strength.percent(), 2) + " %" : "");
      if (product.volume) products += " (by weight, if its label is: " + weighed(*product.weight) + ")";
    }
    page_.field("Fill at " + number(dose.dose.mg_per_liter(), 0) + " mg/L",
                products + "; " + show(Measure(dose.hold, Kind::time_span)) +
                    (dose.hold_most ? " to " + show(Measure(*dose.hold_most, Kind::time_span)) : std::string()) +
                    ", at least " + number(dose.residual.mg_per_liter(), 0) + " mg/L left (" + dose.method + ")");
    std::string agents;
    for (const AgentDose& agent : fill.agents)
      agents += (agents.empty() ? "" : ", or ") + weighed(agent.weight) + ' ' + agent.agent->name;
    page_.field("Then let go with", agents);
  }

  // From ten gallons on in whole ones.
  [[nodiscard]] std::string in_gallons(Volume volume, std::optional<Toward> toward = {}) const {
    const Shown exact = toward ? shown(volume, system_, *toward) : shown(volume, system_);
    const double whole = toward ? std::ceil(exact.value) : std::round(exact.value);
    return number(exact.value < 10.0 ? exact.value : whole, exact.decimals) + ' ' + std::string(exact.unit);
  }

  void flush(const FlushPlan& flush) {
    const auto run = [&](const sanitary::Flushing& flushing) {
      return format_measure(Measure(flushing.flow), system_, Toward::more) + " for " +
             format_measure(Measure(flushing.time), system_, Toward::more);
    };
    page_.field("Flush to waste", run(flush.full) + " (" + show(plan_.rules->cleaning.flush_velocity.value) +
                                      "); never under " + run(flush.least) + "; then until clear");
    page_.field("Line can pass", show(flush.available) + " to waste");
    page_.field("Water to get rid of", in_gallons(flush.full.discharged, Toward::more) + ", " +
                                           number(flush.changes, 1) + " changes of " +
                                           in_gallons(flush.full.line_volume));
    std::string agents;
    for (const AgentDose& dose : flush.agents) {
      agents += (agents.empty() ? "" : ", or ") + scale(dose.weight) + ' ' + dose.agent->name;
    }
    page_.field("Takes its chlorine out", agents + " (for " + number(flush.chlorine.mg_per_liter(), 1) + " mg/L)");
  }

  // ---- the pit

  void pit(const PitPlan& pit) {
    page_.heading("THE PIT");
    page_.field("Bottom", taped(pit.pit.along) + " along the main, " + taped(pit.pit.across) + " across; " +
                              taped(pit.main_to_far_wall) + " of that on the far side");
    page_.field("Depth", taped(pit.pit.depth));
    std::string soil(name_of(pit.soil.type));
    for (std::size_t i = 0; i < pit.soil.reasons.size(); ++i) {
      soil += (i == 0 ? ": " : ", ") + std::string(name_of(pit.soil.reasons[i]));
    }
    page_.field("Soil", soil);
    page_.field("Walls", walls(pit));
    if (pit.slope) page_.field("Steepest slope", slope(*pit.slope));
    if (pit.upright_lower) {
      page_.field("Lower part may stand", "upright for " + within(pit.upright_lower->height) + ", with " +
                                              number(pit.upright_lower->slope_above, 2) + " to 1 above it");
    }
    if (pit.benches) {
      page_.field("Steps instead", "first at most " + within(pit.benches->first) + ", later ones " +
                                       within(pit.benches->later) + ", no steeper over all");
    }
    page_.field("Top", taped(pit.top.along) + " by " + taped(pit.top.across));
    page_.field("To be dug", heap(pit.bank) + " in the ground, " + heap(pit.loose) + " loose, " +
                                 by_the_truck(pit.weight, system_) +
                                 (pit.bank_otherwise ? "; " + heap(*pit.bank_otherwise) + " in the ground if it is " +
                                                           (pit.pit.slope > 0.0 ? "shielded" : "sloped") + " instead"
                                                     : ""));
    page_.field("Spoil", "at least " + taped(pit.setback) + " back from the edge; " + paced(pit.spoil.height) +
                             " high and " + paced(pit.spoil.base) + " wide along one side; " + paced(pit.occupied) +
                             " from the middle");
    page_.field("Ladder", (pit.ladder ? "required: " : "one even so: ") + std::to_string(pit.ladders) + ", " +
                              far(pit.ladder_length) + " with its rails above the edge");
    page_.field("Air", pit.atmosphere_test ? "tested before anybody goes in" : "as the competent person finds it");
    page_.field("Looked at", "before each shift, after rain, when anything changes");
    if (pit.engineer_design) page_.field("Design", "by a registered engineer; the slope here is for volumes only");
    surroundings(pit);
  }

  [[nodiscard]] std::string walls(const PitPlan& pit) const {
    using excavation::ProtectiveSystem;
    if (pit.protection == Protection::shield) {
      return "shield made for the depth; " + taped(pit.shield_above) +
             " above the foot of any slope over it, no more than " + within(pit.shield_below) + " dug below it";
    }
    if (pit.protective_system == ProtectiveSystem::not_required) return "may stand upright while no sign shows";
    std::string text = "sloped " + number(pit.pit.slope, 2) + " to 1, or a shield";
    if (pit.protective_system == ProtectiveSystem::needs_finding) text += ", until somebody competent has looked";
    return text;
  }

  [[nodiscard]] static std::string slope(const excavation::AllowedSlope& slope) {
    const std::string degrees = number(excavation::slope_angle(slope.run).degrees(), 0) + " degrees";
    return number(slope.run, 2) + " to 1, " + degrees + (slope.short_term ? ", for a day only" : "");
  }

  void surroundings(const PitPlan& pit) {
    page_.field("By hand only",
                "within " + on_tape(pit.zone_half_width, system_, Toward::more) + " of the middle of the main's mark");
    page_.field("Marks", "water is " + std::string(pit.own_mark) + "; " + std::string(pit.stop_mark) +
                             " in the zone: stop, until its owner has said whose pipe this is");
    page_.field("Notice", number(pit.notice_days, 0) + " full working days before digging");
    page_.field("Main laid bare", taped(pit.hanging) + (pit.joint_hangs ? ", with a joint in it: support it" : ""));
    if (pit.tapers) {
      page_.field("Tapers", "lane that ends " + paced(pit.tapers->merging) + ", lane that shifts " +
                                paced(pit.tapers->shifting) + ", shoulder " + paced(pit.tapers->shoulder));
    }
    if (pit.fill)
      page_.field("If the tap lets go",
                  "water over the main in " + format_measure(Measure(*pit.fill), system_, Toward::less));
  }

  TextPage& page_;
  const Plan& plan_;
  UnitSystem system_;
};

}  // namespace

void water_sections(TextPage& page, const Plan& plan, UnitSystem system) { WaterSections(page, plan, system).all(); }

}  // namespace mainbore::report
