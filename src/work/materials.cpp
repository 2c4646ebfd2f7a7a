// The load list: what the steps use, described for this plan. A step says what it uses; nothing comes on the list
// otherwise.
#include <algorithm>
#include <cmath>

#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"

namespace mainbore {
namespace {

class LoadList {
 public:
  LoadList(const Plan& plan, UnitSystem system) : plan_(plan), system_(system) {}

  std::vector<LoadItem> all() && {
    if (plan_.verdict == Verdict::no_go || plan_.method.kind == Method::none) return {};
    for (const auto& steps : {procedure(plan_, system_), contingencies(plan_, system_)}) {
      for (const Step& step : steps) used_.insert(used_.end(), step.uses.begin(), step.uses.end());
    }
    list_.reserve(40);
    group_ = LoadGroup::fit;
    fittings();
    consumables();
    group_ = LoadGroup::machine;
    machine();
    group_ = LoadGroup::measure;
    measuring();
    group_ = LoadGroup::keep_safe;
    for_the_material();
    in_case();
    return std::move(list_);
  }

 private:
  void add(std::string_view key, Words item, std::string size, int quantity, Words check = {}) {
    if (std::find(used_.begin(), used_.end(), key) == used_.end()) return;
    list_.push_back({key, std::move(item), std::move(size), quantity, std::move(check), group_});
  }
  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, system_); }
  [[nodiscard]] static std::string name(NominalSize size) { return size.label() + " in"; }
  [[nodiscard]] std::string tap() const { return name(plan_.method.tap); }
  [[nodiscard]] std::string thread() const {
    return plan_.method.thread ? std::string(name_of(*plan_.method.thread)) : std::string("as the machine's");
  }
  [[nodiscard]] bool wet() const { return plan_.job.main.pressurised.value_or(true); }

  // The diameter anything that seats on the pipe must suit: measured, or all that it may still turn out to be.
  [[nodiscard]] std::string seat() const {
    const ResolvedMain& main = plan_.main;
    const bool measured = plan_.job.main.od || plan_.job.main.circumference;
    if (!measured && main.od_low && main.od_high && *main.od_low < *main.od_high) {
      return on_caliper(*main.od_low, system_) + " to " + on_caliper(*main.od_high, system_) + " OD";
    }
    return main.od ? on_caliper(*main.od, system_) + " OD" : std::string("OD to be measured");
  }

  void fittings() {
    const int count = plan_.method.count;
    const std::string rated = "Marked for drinking water and for at least " + pressure_in_words(rating_needed());
    switch (plan_.method.kind) {
      case Method::direct:
        add("corporation-stop", "Corporation stop, " + thread() + " inlet" + marked(usual_stop()), tap(), count,
            rated + ". Key turns freely and shuts. Thread clean and the same as the tap's.");
        break;
      case Method::saddle:
        add("service-saddle", std::string(saddle_name()) + marked(usual_saddle()), name(plan_.main.size) + " main, " + seat() + ", " + tap() + " outlet",
            count, as_asked() + rated + ". Bands, nuts and gasket whole. Try it round the pipe before the cut.");
        add("corporation-stop", "Corporation stop, full bore, " + thread() + " inlet" + marked(usual_stop()), tap(), count,
            rated + ". Full bore, so that the cutter passes. Key turns freely and shuts.");
        break;
      case Method::sleeve:
        add("tapping-sleeve", "Tapping sleeve", name(plan_.main.size) + " main, " + seat() + ", " + tap() + " outlet",
            count, as_asked() + rated + ". Chosen for the measured diameter. Bolts, gasket and test plug with it.");
        add("tapping-valve", "Tapping valve", tap(), count, rated + ". Opens fully for the cutter and shuts tight.");
        break;
      case Method::none:
        break;
    }
    add("support", "Blocking under the machine", "", 1,
        plan_.method.kind == Method::sleeve ? "And under the valve: sleeve and pipe carry neither." : "The stop does not carry it.");
    if (count > 1) {
      add("branch-fittings", "Fittings that join " + std::to_string(count) + " services of " + tap() + " into one",
          name(plan_.job.service.size.value_or(plan_.method.tap)), 1, "Marked for drinking water.");
    }
    const bool branch = plan_.method.kind == Method::sleeve;
    add("service-pipe", branch ? "Branch pipe and fittings" : "Service pipe, with slack for a gooseneck",
        name(plan_.job.service.size.value_or(plan_.method.tap)), count,
        branch ? "Restrained joints or thrust block, as the engineer has it."
               : "Length from main to curb stop measured, and slack added.");
  }

  // What fittings are marked for unless more is asked for: on a list of many orders these are one item.
  [[nodiscard]] Pressure usual_stop() const { return plan_.rules == nullptr ? Pressure() : plan_.rules->stop_rating.value; }
  [[nodiscard]] Pressure usual_saddle() const {
    return plan_.rules == nullptr ? Pressure() : plan_.rules->saddle_rating.value;
  }
  [[nodiscard]] std::string marked(Pressure usual) const {
    const bool usual_is_enough = usual == Pressure() || rating_needed() <= usual;
    return usual_is_enough ? std::string() : ", marked " + pressure_in_words(next_rating(rating_needed())) + " or more";
  }
  // Fittings are made for steps of pressure (common practice): those that want nearly the same are one item.
  [[nodiscard]] static Pressure next_rating(Pressure needed) {
    constexpr double step = 25.0;
    return std::ceil(needed / (step * units::psi) - 1e-9) * step * units::psi;
  }

  // The utility's own words, where its rules have any on this fitting.
  [[nodiscard]] std::string as_asked() const {
    const FittingSpecification* asked = plan_.method.specification;
    return asked == nullptr ? std::string() : "As the utility asks: " + asked->text + ". ";
  }

  [[nodiscard]] Words saddle_name() const {
    if (plan_.main.material == Material::polyethylene) return "Service saddle made for polyethylene, wide full seat";
    if (is_plastic(plan_.main.material)) return "Service saddle made for PVC, wide full seat";
    return "Service saddle";
  }

  void machine() {
    const Setup& setup = plan_.setup;
    std::string check = "Valve shuts, packing and gaskets sound, bleed clear.";
    if (setup.travel_needed) check += " Bar travel at least " + show(Measure(*setup.travel_needed, Kind::tape)) + ".";
    if (plan_.pressure.line > Pressure() && wet()) check += " Good for at least " + pressure_in_words(most_pressure()) + ".";
    const bool own = setup.machine != nullptr && setup.machine->maker_figures && plan_.method.kind != Method::sleeve;
    // The feed apart: one machine of the yard may be fed by hand for one order and powered for the next.
    add("tapping-machine", own ? "Tapping machine: " + setup.machine->title : "Tapping machine", tap(), 1,
        std::move(check));
    add("powered-feed", "Powered feed for the tapping machine", "", 1);
    switch (plan_.method.kind) {
      case Method::direct: {
        add("machine-saddle", "Machine saddle", setup.saddle_od ? on_caliper(*setup.saddle_od, system_) + " OD" : seat(), 1,
            "Seats all round without rocking. Do not pack one that does not fit.");
        add("machine-gasket", "Gasket set, pipe to saddle and saddle to machine", "", plan_.method.count, "Fresh: one set a tap.");
        add("spare-gasket", "Spare gasket set for the machine", "", 1, "Fresh.");
        const int extensions = setup.chain ? setup.chain->extensions : 0;
        add("chain", "Machine chain with its hooks", "", 1,
            setup.chain ? "With extensions at least " + show(Measure(setup.chain->needed, Kind::tape)) + " hook to hook. No bent link."
                        : "No bent link.");
        add("chain-extension", "Chain extension", "", extensions);
        add("insertion-tool", "Insertion tool for the stop", tap(), 1, "Thread of the stop's outlet. Measured with the stop on it.");
        add("combined-drill-and-tap", cutter_name(), tap() + " " + thread(), 1,
            "Sharp, flutes clean. Mark on the tool the same as on the stop.");
        add("trial-piece", "Trial piece of the same wall, tapped, with the bar marked from it",
            tap() + " " + thread(), 1, "Stop made up in it with the right threads showing.");
        break;
      }
      case Method::saddle:
        add("shell-cutter", cutter_name(), "for a " + tap() + " stop", 1,
            "The largest that passes the open stop freely; sharp, keeps its coupon.");
        add("test-pump", "Test pump and gauge for the saddle", "", 1);
        add("stop-adapter", "Adapter, machine to corporation stop outlet", tap(), 1, "Thread of the stop's outlet.");
        break;
      case Method::sleeve:
        add("shell-cutter", "Shell cutter with pilot, coupon retained", tap() + " outlet", 1,
            "Of the size the sleeve's maker names; clears valve and outlet.");
        add("test-pump", "Test pump and gauge for the sleeve", "", 1);
        add("valve-adapter", "Adapter, machine to tapping valve", tap(), 1, "Gasket and bolts with it.");
        break;
      case Method::none:
        break;
    }
    std::string reads = "Reads the torque that the maker says";
    if (plan_.method.kind == Method::direct && setup.clamp && setup.clamp->stud_torque) {
      reads += "; holding the machine takes " + show(setup.clamp->stud_torque->usual) + " to " +
               show(setup.clamp->stud_torque->high);
    }
    add("torque-wrench", "Torque wrench", "", 1, reads + ".");
    add("wrenches", "Wrenches for stop and machine", "", 1, "Two that fit the flats of the stop's inlet side and the machine.");
  }

  // The most that the plan lets the gauge show when tapping: whatever is loaded must reach it.
  [[nodiscard]] Pressure most_pressure() const {
    const Reading* line = plan_.reading(ReadingId::line_pressure);
    return line != nullptr && line->at_most ? line->at_most->as<-2, 1, 0>() : plan_.pressure.line;
  }
  [[nodiscard]] Pressure rating_needed() const { return std::max(plan_.pressure.line, most_pressure()); }
  // As printed: the stop number itself, where the line is not over it.
  [[nodiscard]] std::string pressure_in_words(Pressure pressure) const {
    const Reading* line = plan_.reading(ReadingId::line_pressure);
    return line != nullptr && pressure == most_pressure() ? bare_bounds(*line, system_) : on_gauge(pressure, system_, Toward::more);
  }
  [[nodiscard]] Words cutter_name() const {
    if (plan_.method.kind == Method::saddle) return "Shell cutter, coupon retained";
    if (is_plastic(plan_.main.material)) return "Combined shell cutter and tap, two slots or more, coupon retained";
    return "Combined drill and tap";
  }
  [[nodiscard]] std::string hole() const { return plan_.method.hole ? show(*plan_.method.hole) : tap(); }

  void measuring() {
    add("rule", "Steel rule and a marker for the bar", "", 1);
    add("pressure-gauge", "Pressure gauge", "", 1,
        "Reads zero when open and past " + pressure_in_words(rating_needed()) + "; " +
            on_gauge(plan_.pressure.line, system_) + " lies where it reads well.");
    add("diameter-tape", "Steel tape or caliper for the outside diameter", "", 1);
    add("wall-gauge", "Wall gauge", "", 1,
        plan_.main.wall_least
            ? "Set for " + std::string(name_of(plan_.main.material)) + ", checked on a piece of known wall."
            : "Checked on a piece of known wall.");
    add("thermometer", "Surface thermometer", "", 1);
  }

  void for_the_material() {
    add("scraper", "Scraper and wire brush", "", 1);
    add("bonding-jumper", "Bonding jumper with two clamps", "", 1, "Clamps bite bright metal; cable whole.");
    add("blanket", "Heavy blanket with a hole for the tool", "", 1);
    add("asbestos-kit", "Water spray, lined bucket, leak-tight labelled bags, protection as the competent person says", "", 1,
        "The competent person has classified the work.");
    add("encasement-tape", "Polyethylene tape and film", "", 1, "Enough for three turns under the machine, and the repair.");
  }

  void consumables() {
    const bool plastic_thread = plan_.method.kind == Method::direct && is_plastic(plan_.main.material);
    add("thread-sealant", plastic_thread ? "PTFE tape for the inlet thread" : "PTFE tape or pipe dope for the inlet thread", "",
        1, plastic_thread ? "No dope on plastic threads." : "Marked for drinking water.");
    add("cutting-grease", "Cutting grease or oil for the tap", "", 1,
        is_plastic(plan_.main.material) ? "Safe for drinking water and for plastic." : "Safe for drinking water.");
    add("disinfectant", "Chlorine solution and clean rags", "", 1, "Strength as the utility asks; fresh.");
  }

  // What turns a bad moment into a nuisance.
  void in_case() {
    add("trench-shield", "Trench shield", "", 1, "Made for this depth; its data sheet with it.");
    add("ladder", "Ladder", "", 1, "Its rails stand above the edge.");
    add("sump-pump", "Sump pump and hose", "", 1, "On a ground-fault interrupter if electric.");
    add("valve-key", "Key for the shut-off valves", "", 1, "Fits the valves on this main.");
    add("lock-and-tag", "Locks and tags for the valves", "", 1, "One for each valve that is shut.");
    add("waste-hose", "Hose to waste", "", 1, "Long enough to reach where the water may run.");
    add("bucket", "Bucket", system_ == UnitSystem::us ? "5 gal" : "20 L", 1, "To time the flush with.");
    add("repair-clamp", "Full-circle repair clamp", name(plan_.main.size) + " main, " + seat(), 1,
        "Lies open at the edge of the pit before the cut.");
    add("plug", "Plug, " + thread(), tap(), 1, "Same thread as the stop.");
  }

  const Plan& plan_;
  UnitSystem system_;
  LoadGroup group_ = LoadGroup::fit;
  std::vector<std::string_view> used_;
  std::vector<LoadItem> list_;
};

}  // namespace

std::vector<LoadItem> materials(const Plan& plan, UnitSystem system) { return LoadList(plan, system).all(); }

}  // namespace mainbore
