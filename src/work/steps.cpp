// The order of work: which step comes when, for this plan. Its sentences stand in words/steps.hpp.
#include "words/steps.hpp"

#include <array>
#include <cmath>

#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"
#include "words/terms.hpp"
#include "work/by_engineer.hpp"

namespace mainbore {
namespace {

using enum Act;
using words::StepWord;

class Procedure {
 public:
  Procedure(const Plan& plan, Audience audience)
      : plan_(plan), audience_(audience), seat_(seat_of(plan.method.kind)), marks_(bar_marks(plan, audience)) {
    state_.main_full = wet();
  }

  std::vector<Step> all() && {
    if (plan_.verdict == Verdict::no_go || plan_.method.kind == Method::none) return {};
    steps_.reserve(40);
    prepare();
    the_pipe();
    if (by_engineer()) {
      call_engineer();
      return std::move(steps_);
    }
    switch (plan_.method.kind) {
      case Method::direct:
        direct();
        break;
      case Method::saddle:
        saddle();
        break;
      case Method::sleeve:
        sleeve();
        break;
      case Method::none:
        break;
    }
    if (plan_.method.count > 1) next_tap();
    if (!wet()) fill();
    connect();
    finish();
    return std::move(steps_);
  }

 private:
  void phase(StepWord heading) { phase_ = say(heading, audience_.language); }
  [[nodiscard]] Words said(StepWord word) const { return Words::standing(say(word, audience_.language)); }
  [[nodiscard]] std::string said(StepWord word, std::initializer_list<words::Figure> figures) const {
    return say(word, audience_.language, figures);
  }
  // A hold point: go no further until it is so.
  [[nodiscard]] std::string_view until(StepWord word) const { return say(word, audience_.language); }
  void also(std::string& text, StepWord word) const { (text += ' ') += say(word, audience_.language); }
  void also(std::string& text, StepWord word, std::initializer_list<words::Figure> figures) const {
    words::append_filled(text += ' ', say(word, audience_.language), figures, audience_.language);
  }
  void add(Step step) {
    step.phase = phase_;
    const RigState before = state_;
    for (const Act act : step.acts) state_ = after(state_, act, seat_);
    step.state = state_;
    const bool holds_back = wet() && state_.machine_on && state_.chamber_closed;
    const bool held_back = before.machine_on && before.chamber_closed;
    step.moves_valves = holds_back && (!held_back || valves_open(before, seat_) != valves_open(state_, seat_));
    steps_.push_back(std::move(step));
  }

  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, audience_); }
  [[nodiscard]] std::string far(Length length) const { return on_tape(length, audience_, Toward::more); }
  [[nodiscard]] static std::string name(NominalSize size) { return size.label() + " in"; }
  [[nodiscard]] std::string tap() const { return name(plan_.method.tap); }
  [[nodiscard]] std::string_view term(std::string_view english) const {
    return words::term(english, audience_.language);
  }
  [[nodiscard]] bool wet() const { return plan_.job.main.is_pressurized(); }
  [[nodiscard]] bool encased() const { return plan_.job.main.encased.value_or(false); }
  [[nodiscard]] bool plastic() const { return is_plastic(plan_.main.material); }
  [[nodiscard]] bool asbestos() const { return plan_.main.material == Material::asbestos_cement; }
  [[nodiscard]] bool powered() const { return plan_.setup.feed == Feed::powered; }
  [[nodiscard]] std::string thread() const {
    return std::string(plan_.method.thread ? name_of(*plan_.method.thread) : until(StepWord::its_thread));
  }
  [[nodiscard]] std::string push() const {
    if (!(plan_.setup.push > Force())) return said(StepWord::push_unknown, {});
    return said(StepWord::push, {{"push", in_round_figures(plan_.setup.push, audience_)},
                                 {"line", on_gauge(plan_.pressure.line, audience_)}});
  }

  // ---- before the machine

  void prepare() {
    phase(StepWord::phase_before);
    add({.id = "prepare.people", .action = said(StepWord::people)});
    if (const std::string named = approved_in_words(plan_.method, audience_); !named.empty()) {
      add({.id = "prepare.fittings",
           .action = said(StepWord::fittings, {{"named", named}}),
           .hold_point = until(StepWord::fittings_until)});
    }
    add({.id = "prepare.valves",
         .action = said(StepWord::valves),
         .hold_point = until(StepWord::valves_until),
         .uses = {"valve-key"}});
    if (!wet()) {
      add({.id = "prepare.empty",
           .action = said(StepWord::empty),
           .hold_point = until(StepWord::empty_until),
           .uses = {"valve-key", "lock-and-tag"}});
    }
    add({.id = "prepare.pit", .action = said(StepWord::pit), .uses = {"ladder", "sump-pump", "repair-clamp"}});
    if (plan_.excavation) walls(*plan_.excavation);
    add({.id = "prepare.identify", .action = said(StepWord::identify), .hold_point = until(StepWord::identify_until)});
  }

  void walls(const PitPlan& pit) {
    std::string text =
        said(StepWord::walls_bottom,
             {{"along", far(pit.pit.along)}, {"across", far(pit.pit.across)}, {"depth", far(pit.pit.depth)}});
    const bool needed = pit.protective_system != excavation::ProtectiveSystem::not_required;
    if (pit.engineer_design) also(text, StepWord::walls_engineer);
    else if (pit.protection == Protection::shield) also(text, StepWord::walls_shield);
    else if (needed) also(text, StepWord::walls_slope, {{"run", run(pit)}});
    also(text, StepWord::walls_spoil, {{"setback", far(pit.setback)}});
    Step step{.id = "prepare.walls", .action = std::move(text)};
    if (needed) step.hold_point = until(StepWord::walls_until);
    if (pit.protection == Protection::shield && !pit.engineer_design) step.uses = {"trench-shield"};
    add(std::move(step));
  }
  [[nodiscard]] static std::string run(const PitPlan& pit) {
    std::string text;
    append_number(text, pit.pit.slope, 2);
    return text;
  }

  void the_pipe() {
    phase(StepWord::phase_pipe);
    add({.id = "pipe.place", .action = place_text(), .uses = {"rule", "diameter-tape"}});
    clean();
    Step check{.id = "pipe.check",
               .action = check_text(),
               .hold_point = until(StepWord::check_until),
               .uses = {"diameter-tape", "wall-gauge"}};
    if (plastic()) check.uses.push_back("thermometer");
    add(std::move(check));
    if (encased()) add({.id = "pipe.wrap", .action = said(StepWord::wrap), .uses = {"encasement-tape"}});
    if (wet()) {
      add({.id = "pipe.pressure",
           .action = pressure_text(),
           .hold_point = until(StepWord::pressure_until),
           .uses = {"pressure-gauge"}});
    }
    if (plan_.verdict == Verdict::hold)
      add({.id = "pipe.holds", .action = said(StepWord::holds), .hold_point = until(StepWord::holds_until)});
    if (by_engineer()) return;
    add({.id = "pipe.disinfect", .action = said(StepWord::disinfect), .uses = {"disinfectant"}});
  }

  // A way of tapping that only the engineer can give: nothing of the cut is written down before that.
  [[nodiscard]] bool by_engineer() const { return work::only_by_engineer(plan_); }
  void call_engineer() {
    phase(StepWord::phase_engineer);
    add({.id = "engineer.call", .action = said(StepWord::engineer), .hold_point = until(StepWord::engineer_until)});
  }

  [[nodiscard]] std::string pressure_text() const {
    if (const StopNumber* lowered = lower_the_main_to(plan_))
      return said(StepWord::pressure_lowered, {{"limit", bare_bounds(*lowered, audience_)}});
    const StopNumber* const line = plan_.stop_number(ReadingId::line_pressure);
    const std::string limit = line == nullptr ? std::string() : bare_bounds(*line, audience_);
    return said(StepWord::pressure, {{"line", on_gauge(plan_.pressure.line, audience_)}, {"limit", limit}});
  }

  [[nodiscard]] std::string place_text() const {
    const Location& place = plan_.location;
    const bool moved = std::fabs(place.shift.base()) > 1e-9;
    const std::string shift = moved ? far(abs(place.shift)) : std::string();
    const std::string_view way = moved ? (place.shift > Length() ? "+" : "-") : "";
    std::string text = said(StepWord::place, {{"clock", place.clock.label()}, {"shift", shift}, {"way", way}});
    if (plan_.method.count > 1) {
      const std::string count = std::to_string(plan_.method.count);
      const std::string apart = plan_.method.spacing ? far(*plan_.method.spacing) : std::string();
      also(text, StepWord::place_several,
           {{"count", count}, {"clock", place.clock.label()}, {"other", place.other_clock.label()}, {"apart", apart}});
    }
    std::string things;
    for (const Clearing& clearing : place.clearings) {
      const std::string_view thing = term(nearby_names[static_cast<std::size_t>(clearing.what)]);
      things += things.empty() ? "" : "; ";
      things += said(StepWord::place_thing, {{"thing", thing}, {"least", least_in_words(plan_, clearing, audience_)}});
    }
    if (!things.empty()) also(text, StepWord::place_clears, {{"things", things}});
    return text;
  }

  void clean() {
    const std::string_view with = encased()    ? "disinfectant"
                                  : asbestos() ? "asbestos-kit"
                                  : plastic()  ? "disinfectant"
                                               : "scraper";
    const StepWord word = encased()    ? StepWord::clean_film
                          : asbestos() ? StepWord::clean_asbestos
                          : plastic()  ? StepWord::clean_plastic
                                       : StepWord::clean_bare;
    add({.id = "pipe.clean", .action = said(word), .uses = {with}});
  }

  [[nodiscard]] std::string check_text() const {
    // The numbers of the plan and no others: two figures for one reading would be one too many.
    std::string numbers;
    for (const StopNumber& reading : plan_.stop_numbers) {
      if (reading.kind() == Kind::pressure) continue;
      numbers += numbers.empty() ? "" : "; ";
      ((numbers += words_of(reading.id, audience_.language)) += ' ') += bounds_in_words(reading, audience_);
    }
    std::string text = said(StepWord::check, {{"numbers", numbers}});
    if (plastic())
      also(text, plan_.method.kind == Method::direct ? StepWord::check_plastic_direct : StepWord::check_plastic);
    return text;
  }

  // ---- direct

  void direct() {
    phase(StepWord::phase_machine);
    const Setup& setup = plan_.setup;
    const std::string diameter = setup.saddle_od ? on_caliper(*setup.saddle_od, audience_) : std::string();
    add({.id = "machine.seat",
         .action = said(StepWord::seat, {{"diameter", diameter}}),
         .acts = {mount_machine},
         .uses = {"machine-saddle", "machine-gasket", "tapping-machine"}});
    chain();
    add({.id = "machine.tool",
         .action =
             said(plastic() ? StepWord::tool_plastic : StepWord::tool_metal, {{"tap", tap()}, {"thread", thread()}}),
         .hold_point = until(StepWord::tool_until),
         .acts = {load_cutter, close_chamber},
         .uses = {"combined-drill-and-tap", "corporation-stop"}});
    add({.id = "machine.valves",
         .action = said(StepWord::machine_valves, {{"mark", where("drawn-back")}}),
         .hold_point = until(StepWord::machine_valves_until),
         .acts = {shut_bleed, shut_bypass, open_valve},
         .uses = {"rule"}});
    cut(StepWord::holder_machine);
    std::string text = said(StepWord::thread_it, {{"mark", where("stop-tapping")}});
    if (!plan_.makeup) also(text, StepWord::by_piece);
    Step cut_it{.id = "tap.thread", .action = std::move(text), .acts = {cut_thread}, .uses = {"cutting-grease"}};
    if (!plan_.makeup) cut_it.uses.push_back("trial-piece");
    add(std::move(cut_it));
    if (wet()) {
      change_under_pressure();
      set_under_pressure();
      take_off_stop();
    } else {
      set_stop_dry();
    }
  }

  void chain() {
    const Setup& setup = plan_.setup;
    Step step{.id = "machine.chain", .acts = {hold_down}, .uses = {"chain"}};
    std::string needed;
    if (setup.chain) {
      const int count = setup.chain->extensions;
      const StepWord word = count == 0   ? StepWord::chain_none
                            : count == 1 ? StepWord::chain_extension
                                         : StepWord::chain_extensions;
      needed = said(
          word, {{"needed", on_rule(setup.chain->needed, audience_, Toward::more)}, {"count", std::to_string(count)}});
      if (count > 0) step.uses.push_back("chain-extension");
    }
    std::string torque;
    if (setup.clamp && setup.clamp->stud_torque) torque = show(setup.clamp->stud_torque->usual);
    step.uses.push_back(torque.empty() ? "wrenches" : "torque-wrench");
    std::string text = said(StepWord::chain, {{"needed", needed}, {"torque", torque}});
    also(text, plastic() ? StepWord::chain_plastic : StepWord::chain_firm);
    step.action = std::move(text);
    add(std::move(step));
  }

  // Where a mark of the card stands.
  [[nodiscard]] std::string where(std::string_view key) const {
    for (const BarMark& mark : marks_) {
      if (mark.key == key) return std::string(mark.where);
    }
    return said(StepWord::as_measured, {});
  }
  // Marks past the first are set out with a rule up the bar while its tool rests on the pipe.
  [[nodiscard]] std::string touch_text() const {
    std::string signs;
    for (const BarMark& mark : marks_) {
      if (mark.key == "drawn-back" || mark.key == "touch") continue;
      (signs += signs.empty() ? "" : ", ") += mark.sign;
    }
    return said(StepWord::touch, {{"marks", signs}});
  }

  // Down to the pipe and through it, for every method.
  void cut(StepWord holder) {
    phase(StepWord::phase_cut);
    if (plan_.main.material == Material::pvc || plan_.main.material == Material::pvco)
      add({.id = "cut.blanket", .action = said(StepWord::blanket), .uses = {"blanket"}});
    add({.id = "cut.down",
         .action = touch_text(),
         .hold_point = until(StepWord::touch_until),
         .acts = {bar_down},
         .uses = {"rule"}});
    std::string text(until(powered() ? StepWord::cut_powered : StepWord::cut_by_hand));
    if (plastic()) also(text, StepWord::cut_plastic);
    also(text, StepWord::cut_through, {{"mark", where("through")}});
    if (!wet() && asbestos()) also(text, StepWord::cut_wet);
    Step through{.id = "cut.through", .action = std::move(text), .acts = {cut_through}};
    if (powered()) through.uses.push_back("powered-feed");
    if (asbestos()) through.uses.push_back("asbestos-kit");
    add(std::move(through));
    if (!wet()) return;
    Step flush{
        .id = "cut.flush",
        .action = said(asbestos() ? StepWord::flush_asbestos : StepWord::flush_machine, {{"holder", until(holder)}}),
        .hold_point = until(StepWord::flush_until),
        .acts = {open_bleed, shut_bleed, read_tight}};
    if (asbestos()) flush.uses = {"asbestos-kit", "waste-hose"};
    add(std::move(flush));
  }

  [[nodiscard]] std::string_view sealant() const {
    return until(plastic() ? StepWord::sealant_tape : StepWord::sealant_any);
  }

  void change_under_pressure() {
    phase(StepWord::phase_change);
    add({.id = "change.back-out", .action = said(StepWord::back_out, {{"push", push()}}), .acts = {bar_up}});
    add({.id = "change.shut", .action = said(StepWord::shut_machine_valve), .acts = {shut_valve}});
    add({.id = "change.bleed",
         .action = said(StepWord::bleed),
         .hold_point = until(StepWord::bleed_until),
         .acts = {open_bleed, read_zero},
         .uses = {"pressure-gauge"}});
    add({.id = "change.tool",
         .action = said(plastic() ? StepWord::look_at_coupon : StepWord::look_at_tool),
         .acts = {open_chamber, unload_bar}});
    add({.id = "change.stop",
         .action = said(StepWord::load_stop, {{"sealant", sealant()}}),
         .hold_point = until(StepWord::load_stop_until),
         .acts = {shut_stop, load_stop, close_chamber},
         .uses = {"corporation-stop", "thread-sealant", "insertion-tool", "rule"}});
  }

  void set_under_pressure() {
    phase(StepWord::phase_stop);
    add({.id = "set.equalise",
         .action = said(StepWord::equalize),
         .hold_point = until(StepWord::equalize_until),
         .acts = {shut_bleed, open_bypass},
         .uses = {"pressure-gauge"}});
    add({.id = "set.open", .action = said(StepWord::open_machine_valve, {{"push", push()}}), .acts = {open_valve}});
    Step set{.id = "set.stop",
             .action = said(StepWord::set_stop, {{"mark", where("stop-touches")}, {"makeup", makeup_text()}}),
             .acts = {bar_down, seat_stop},
             .uses = {"insertion-tool"}};
    if (plastic()) set.uses.push_back("torque-wrench");
    add(std::move(set));
    add({.id = "set.bleed",
         .action = said(StepWord::stop_bleed),
         .hold_point = until(StepWord::zero_until),
         .acts = {shut_bypass, open_bleed, read_zero},
         .uses = {"pressure-gauge"}});
  }

  void take_off_stop() {
    phase(StepWord::phase_off);
    add({.id = "off.release",
         .action = said(StepWord::release),
         .acts = {release_bar, bar_up},
         .uses = {"insertion-tool"}});
    add({.id = "off.lift", .action = said(StepWord::lift), .acts = {let_go, lift_machine}});
    const StepWord showing = plan_.makeup ? StepWord::showing : StepWord::showing_unknown;
    add({.id = "off.look",
         .action = said(StepWord::look_at_stop, {{"showing", until(showing)}}),
         .hold_point = until(StepWord::look_at_stop_until),
         .acts = {read_tight},
         .uses = {"wrenches"}});
  }

  void set_stop_dry() {
    phase(StepWord::phase_stop);
    add({.id = "dry.back-out", .action = said(StepWord::dry_back_out), .acts = {bar_up}});
    add({.id = "dry.lift",
         .action = said(plastic() ? StepWord::dry_lift_coupon : StepWord::dry_lift),
         .hold_point = until(StepWord::dry_lift_until),
         .acts = {open_bleed, read_zero, let_go, lift_machine, unload_bar}});
    Step set{.id = "dry.stop",
             .action = said(StepWord::dry_stop, {{"sealant", sealant()}, {"makeup", makeup_text()}}),
             .acts = {shut_stop, seat_stop},
             .uses = {"corporation-stop", "thread-sealant", "wrenches"}};
    if (plastic()) set.uses.push_back("torque-wrench");
    add(std::move(set));
  }

  [[nodiscard]] std::string makeup_text() const {
    std::string text = said(StepWord::makeup, {{"makeup", makeup_in_words(plan_, audience_.language)}});
    if (plastic()) also(text, StepWord::makeup_plastic);
    if (!plan_.makeup) also(text, StepWord::makeup_unknown);
    return text;
  }

  // ---- saddle: the machine stands on the open stop, which then is the valve. Nothing is changed under pressure.

  void saddle() {
    phase(StepWord::phase_saddle);
    add({.id = "saddle.fit",
         .action = said(plastic() ? StepWord::saddle_fit_plastic : StepWord::saddle_fit),
         .uses = {"service-saddle", "torque-wrench"}});
    add({.id = "saddle.stop",
         .action = said(StepWord::saddle_stop),
         .acts = {fit_saddle},
         .uses = {"corporation-stop", "thread-sealant", "wrenches", "rule"}});
    add({.id = "saddle.test",
         .action = said(StepWord::saddle_test),
         .hold_point = until(StepWord::saddle_test_until),
         .acts = {open_stop, read_tight},
         .uses = {"test-pump"}});
    phase(StepWord::phase_machine);
    add({.id = "machine.mount",
         .action = said(StepWord::mount_on_stop),
         .acts = {mount_machine, hold_down},
         .uses = {"tapping-machine", "stop-adapter", "support", "wrenches"}});
    const std::string hole = plan_.method.hole ? on_rule(*plan_.method.hole, audience_, Toward::less) : std::string();
    add({.id = "machine.tool",
         .action = said(StepWord::saddle_tool, {{"hole", hole}}),
         .hold_point = until(StepWord::saddle_tool_until),
         .acts = {load_cutter, close_chamber},
         .uses = {"shell-cutter"}});
    add({.id = "machine.valves",
         .action = said(StepWord::saddle_valves, {{"mark", where("drawn-back")}}),
         .hold_point = until(StepWord::saddle_valves_until),
         .acts = {shut_bleed, shut_bypass},
         .uses = {"rule"}});
    cut(StepWord::holder_saddle);
    phase(StepWord::phase_shut_stop);
    if (wet()) {
      add({.id = "change.back-out", .action = said(StepWord::saddle_back, {{"push", push()}}), .acts = {bar_up}});
      add({.id = "change.shut", .action = said(StepWord::saddle_shut), .acts = {shut_stop}});
      zero_before_lifting(StepWord::saddle_bleed);
    } else {
      add({.id = "dry.back-out",
           .action = said(StepWord::saddle_dry_back),
           .hold_point = until(StepWord::dry_until),
           .acts = {bar_up, shut_stop, open_bleed, read_zero}});
    }
    phase(StepWord::phase_off);
    add({.id = "off.lift",
         .action = said(StepWord::saddle_lift),
         .acts = {let_go, lift_machine},
         .uses = {"wrenches"}});
    coupon();
    if (wet()) {
      add({.id = "off.look",
           .action = said(StepWord::saddle_look),
           .hold_point = until(StepWord::saddle_look_until),
           .acts = {read_tight}});
    }
  }

  void zero_before_lifting(StepWord action) {
    add({.id = "change.bleed",
         .action = said(action),
         .hold_point = until(StepWord::zero_until),
         .acts = {open_bleed, read_zero},
         .uses = {"pressure-gauge"}});
  }
  void coupon() {
    add({.id = "off.coupon",
         .action = said(StepWord::coupon),
         .hold_point = until(StepWord::coupon_until),
         .acts = {unload_bar}});
  }

  // ---- sleeve

  void sleeve() {
    phase(StepWord::phase_sleeve);
    add({.id = "sleeve.fit",
         .action = said(StepWord::sleeve_fit),
         .acts = {fit_saddle},
         .uses = {"tapping-sleeve", "tapping-valve", "torque-wrench", "support"}});
    add({.id = "sleeve.test",
         .action = said(StepWord::sleeve_test),
         .hold_point = until(StepWord::sleeve_test_until),
         .acts = {read_tight},
         .uses = {"test-pump"}});
    phase(StepWord::phase_machine);
    add({.id = "machine.mount",
         .action = said(StepWord::mount_on_valve),
         .acts = {mount_machine, hold_down},
         .uses = {"tapping-machine", "valve-adapter", "support", "wrenches"}});
    add({.id = "machine.tool",
         .action = said(StepWord::sleeve_tool),
         .hold_point = until(StepWord::sleeve_tool_until),
         .acts = {load_cutter, close_chamber},
         .uses = {"shell-cutter", "rule"}});
    add({.id = "machine.valves",
         .action = said(StepWord::sleeve_valves, {{"mark", where("drawn-back")}}),
         .hold_point = until(StepWord::sleeve_valves_until),
         .acts = {shut_bleed, shut_bypass, open_valve},
         .uses = {"rule"}});
    cut(StepWord::holder_sleeve);
    phase(StepWord::phase_shut_valve);
    if (wet()) {
      add({.id = "change.back-out", .action = said(StepWord::sleeve_back, {{"push", push()}}), .acts = {bar_up}});
      add({.id = "change.shut", .action = said(StepWord::sleeve_shut), .acts = {shut_valve}});
      zero_before_lifting(StepWord::bleed);
    } else {
      add({.id = "dry.back-out",
           .action = said(StepWord::sleeve_dry_back),
           .hold_point = until(StepWord::dry_until),
           .acts = {bar_up, shut_valve, open_bleed, read_zero}});
    }
    phase(StepWord::phase_off);
    add({.id = "off.lift",
         .action = said(StepWord::sleeve_lift),
         .acts = {let_go, lift_machine},
         .uses = {"wrenches"}});
    coupon();
    if (wet()) {
      add({.id = "off.look",
           .action = said(StepWord::sleeve_look),
           .hold_point = until(StepWord::sleeve_look_until),
           .acts = {read_tight}});
    }
  }

  // ---- afterwards

  void next_tap() {
    phase(StepWord::phase_next);
    add({.id = "next.tap", .action = said(StepWord::next_tap, {{"count", std::to_string(plan_.method.count)}})});
  }

  void fill() {
    phase(StepWord::phase_fill);
    add({.id = "fill.main",
         .action = said(branch() ? StepWord::fill_valve : StepWord::fill_stop),
         .hold_point = until(StepWord::fill_until),
         .acts = {fill_main, read_tight},
         .uses = {"pressure-gauge"}});
  }

  [[nodiscard]] bool branch() const { return seat_ == Seat::tapping_valve; }

  void connect() {
    phase(StepWord::phase_connect);
    if (is_metallic(plan_.main.material)) {
      add({.id = "connect.bond",
           .condition = said(StepWord::bond_when),
           .action = said(StepWord::bond),
           .uses = {"bonding-jumper"}});
    }
    Step service{.id = "connect.service",
                 .action = said(branch() ? StepWord::connect_branch : StepWord::connect),
                 .uses = {"service-pipe"}};
    if (plan_.method.count > 1) {
      service.action = said(StepWord::connect_several, {{"count", std::to_string(plan_.method.count)}});
      service.uses.push_back("branch-fittings");
    }
    add(std::move(service));
    flush_service();
    add({.id = "connect.check",
         .action = said(branch() ? StepWord::check_joints_valve : StepWord::check_joints),
         .hold_point = until(StepWord::check_joints_until),
         .acts = {read_tight}});
  }

  void flush_service() {
    Step step{.id = "connect.flush", .acts = {branch() ? open_valve : open_stop}, .uses = {"waste-hose"}};
    std::string seconds;
    std::string time;
    if (plan_.cleaning && plan_.cleaning->flush) {
      const sanitary::Flushing& full = plan_.cleaning->flush->full;
      seconds = format_measure(Measure(bucket() / full.flow), audience_, Toward::less);
      time = format_measure(Measure(full.time), audience_, Toward::more);
      step.uses.push_back("bucket");
    }
    step.action = said(branch() ? StepWord::flush_valve : StepWord::flush_stop, {{"seconds", seconds}, {"time", time}});
    add(std::move(step));
  }
  // What a flow is timed with.
  [[nodiscard]] Volume bucket() const {
    return audience_.units == UnitSystem::us ? 5.0 * units::gallon : 20.0 * units::liter;
  }

  void finish() {
    phase(StepWord::phase_leave);
    Step bed{.id = "finish.bed", .action = said(encased() ? StepWord::bed_film : StepWord::bed)};
    if (encased()) bed.uses = {"encasement-tape"};
    add(std::move(bed));
    if (wet() && lower_the_main_to(plan_) != nullptr) {
      add({.id = "finish.pressure",
           .action = said(StepWord::bring_back),
           .hold_point = until(StepWord::bring_back_until),
           .acts = {read_tight}});
    }
    add({.id = "finish.machine",
         .action = said(plan_.method.kind == Method::direct ? StepWord::oil_direct : StepWord::oil_other)});
    add({.id = "finish.record", .action = said(StepWord::record)});
  }

  const Plan& plan_;
  Audience audience_;
  Seat seat_;
  std::string_view phase_;
  RigState state_;
  std::vector<BarMark> marks_;
  std::vector<Step> steps_;
};

}  // namespace

namespace work {

bool only_by_engineer(const Plan& plan) { return plan.finding(FindingCode::saddle_by_engineer) != nullptr; }

}  // namespace work

std::string in_words(const Step& step) {
  if (step.condition.empty()) return std::string(step.action.view());
  return std::string(step.condition.view()) + ": " + std::string(step.action.view());
}

std::vector<Step> procedure(const Plan& plan, Audience audience) { return Procedure(plan, audience).all(); }

std::string_view words_id_of(const ChosenMethod& method) {
  if (method.kind == Method::none) return {};
  if (method.count > 1) return "method.several";
  constexpr std::array<std::string_view, 3> ids = {"method.direct", "method.saddle", "method.sleeve"};
  return ids[static_cast<std::size_t>(method.kind)];
}

std::string utility_in_words(const Plan& plan, std::string_view id, Language language) {
  const OwnWords* const own = plan.rules == nullptr ? nullptr : own_words(*plan.rules, id);
  return own == nullptr ? std::string() : std::string(say(StepWord::by_utility, language)) + own->text;
}

}  // namespace mainbore
