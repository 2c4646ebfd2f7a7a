#include <algorithm>
#include <cmath>

#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"
#include "work/by_engineer.hpp"

namespace mainbore {
namespace {

using enum Act;

class Procedure {
 public:
  Procedure(const Plan& plan, UnitSystem system) : plan_(plan), system_(system), seat_(seat_of(plan.method.kind)), marks_(bar_marks(plan, system)) {
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
  void phase(std::string_view heading) { phase_ = heading; }
  void add(Step step) {
    step.phase = phase_;
    const RigState before = state_;
    for (const Act act : step.acts) state_ = after(state_, act, seat_);
    step.state = state_;
    const bool holds_back = wet() && state_.machine_on && state_.chamber_closed;
    const bool held_back = before.machine_on && before.chamber_closed;
    step.moves_valves = holds_back && (!held_back || !stand_alike(before, state_));
    steps_.push_back(std::move(step));
  }
  [[nodiscard]] bool stand_alike(const RigState& a, const RigState& b) const {
    const auto before = valves_of(a, seat_);
    const auto now = valves_of(b, seat_);
    return std::equal(before.begin(), before.end(), now.begin(),
                      [](const ValveState& x, const ValveState& y) { return x.open == y.open; });
  }

  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, system_); }
  [[nodiscard]] std::string far(Length length) const { return on_tape(length, system_, Toward::more); }
  [[nodiscard]] static std::string name(NominalSize size) { return size.label() + " in"; }
  [[nodiscard]] std::string tap() const { return name(plan_.method.tap); }
  [[nodiscard]] bool wet() const { return plan_.job.main.pressurised.value_or(true); }
  [[nodiscard]] bool encased() const { return plan_.job.main.encased.value_or(false); }
  [[nodiscard]] bool plastic() const { return is_plastic(plan_.main.material); }
  [[nodiscard]] bool asbestos() const { return plan_.main.material == Material::asbestos_cement; }
  [[nodiscard]] bool powered() const { return plan_.setup.feed == Feed::powered; }
  [[nodiscard]] std::string thread() const {
    return plan_.method.thread ? std::string(name_of(*plan_.method.thread)) : std::string("its");
  }
  [[nodiscard]] std::string push() const {
    return plan_.setup.push > Force() ? "about " + show(plan_.setup.push) + " at " + on_gauge(plan_.pressure.line, system_)
                                      : "the line pressure";
  }

  // ---- before the machine

  void prepare() {
    phase("Before the pit");
    add({.id = "prepare.people",
         .action = "Agree who works the machine, who turns the valves and who stays out of the pit, and the one word "
                   "that stops the job."});
    add({.id = "prepare.valves",
         .action = "Find and uncover the valves that shut this main down. Set the key on them, turn them enough to know "
                   "that they move, and leave it there.",
         .hold_point = "Shut-off valves found and known to turn.",
         .uses = {"valve-key"}});
    if (!wet()) {
      add({.id = "prepare.empty",
           .action = "Shut the valves, lock and tag them. Open the lowest outlet and leave it open until water has "
                     "stopped and stays stopped.",
           .hold_point = "Main proved empty, valves locked and tagged.",
           .uses = {"valve-key", "lock-and-tag"}});
    }
    add({.id = "prepare.pit",
         .action = "Room all round the pipe, a sump below it with the sump pump running, a ladder in, the repair clamp "
                   "open at the edge. The competent person looks at the walls.",
         .uses = {"ladder", "sump-pump", "repair-clamp"}});
    if (plan_.excavation) walls(*plan_.excavation);
    add({.id = "prepare.identify",
         .action = "Prove by two independent means that this is the drinking-water main. Write down which two.",
         .hold_point = "Pipe proved to be the water main."});
  }

  void walls(const PitPlan& pit) {
    std::string text = "Bottom " + far(pit.pit.along) + " by " + far(pit.pit.across) + ", " + far(pit.pit.depth) + " deep. ";
    const bool needed = pit.protective_system != excavation::ProtectiveSystem::not_required;
    if (pit.engineer_design) text += "Walls as the engineer's design has them. ";
    else if (pit.protection == Protection::shield) text += "Set the shield before anybody goes in. ";
    else if (needed) text += "Cut the walls back " + run(pit) + " out for each 1 up, or set a shield. ";
    text += "Spoil at least " + far(pit.setback) + " from the edge.";
    Step step{.id = "prepare.walls", .action = std::move(text)};
    if (needed) step.hold_point = "Walls safe by the competent person's word.";
    if (pit.protection == Protection::shield && !pit.engineer_design) step.uses = {"trench-shield"};
    add(std::move(step));
  }
  [[nodiscard]] static std::string run(const PitPlan& pit) {
    std::string text;
    append_number(text, pit.pit.slope, 2);
    return text;
  }

  void the_pipe() {
    phase("The pipe");
    add({.id = "pipe.place", .action = place_text(), .uses = {"rule", "diameter-tape"}});
    if (encased()) {
      add({.id = "pipe.clean",
           .action = "Open the film no more than it takes to look, measure and gauge. Wipe the pipe there.",
           .uses = {"disinfectant"}});
    } else {
      const std::string_view with = asbestos() ? "asbestos-kit" : plastic() ? "disinfectant" : "scraper";
      add({.id = "pipe.clean", .action = clean_text(), .uses = {with}});
    }
    Step check{.id = "pipe.check",
               .action = check_text(),
               .hold_point = "Readings inside the stop numbers; pipe sound.",
               .uses = {"diameter-tape", "wall-gauge"}};
    if (plastic()) check.uses.push_back("thermometer");
    add(std::move(check));
    if (encased()) {
      add({.id = "pipe.wrap",
           .action = "Close the film and wrap two or three turns of polyethylene tape round it, tight to the pipe, where "
                     "machine and chain or saddle will sit. The tap goes through tape and film.",
           .uses = {"encasement-tape"}});
    }
    if (wet()) {
      add({.id = "pipe.pressure",
           .action = pressure_text(),
           .hold_point = "Gauge within the stop number, and steady.",
           .uses = {"pressure-gauge"}});
    }
    if (plan_.verdict == Verdict::hold) {
      add({.id = "pipe.holds",
           .action = "Go through the numbered holds. Write each reading in its blank. One outside its number: stop, and "
                     "have the job planned again.",
           .hold_point = "Every hold cleared and signed."});
    }
    if (by_engineer()) return;
    add({.id = "pipe.disinfect",
         .action = "Swab the pipe where it is cut, the tool and the fittings with chlorine solution, as the utility asks.",
         .uses = {"disinfectant"}});
  }

  // A way of tapping that only the engineer can give: nothing of the cut is written down before that.
  [[nodiscard]] bool by_engineer() const { return work::only_by_engineer(plan_); }
  void call_engineer() {
    phase("The engineer's design");
    add({.id = "engineer.call",
         .action = "Cut nothing. Give the engineer material, outside diameter, wall and pressure as read, and wait for "
                   "the design of the connection in writing: fitting, cut, tools and pressure; of concrete pipe its "
                   "wires, mortar and grout too. Keep the pit safe or close it.",
         .hold_point = "Design in hand, with the engineer's name."});
  }

  [[nodiscard]] std::string pressure_text() const {
    std::string text = "Read the line at a gauge near the tap, trapped air let out first.";
    if (const Reading* lowered = lower_the_main_to(plan_)) {
      text += " Have the main lowered to " + bare_bounds(*lowered, system_) +
              " or less, and somebody hold it there till the machine is off.";
      return text;
    }
    text += " Planned for " + on_gauge(plan_.pressure.line, system_) + ".";
    const Reading* const line = plan_.reading(ReadingId::line_pressure);
    if (line != nullptr) text += " Stop over " + bare_bounds(*line, system_) + ".";
    return text;
  }

  [[nodiscard]] std::string place_text() const {
    const Location& place = plan_.location;
    std::string text = "Mark the tap on the barrel at " + place.clock.label() + " o'clock, seen along the main";
    if (std::fabs(place.shift.base()) > 1e-9) {
      text += ", " + far(abs(place.shift)) + " from the place asked (the " + (place.shift > Length() ? "+" : "-") +
              " way on the order)";
    }
    text += ".";
    if (plan_.method.count > 1) {
      text += " There are " + std::to_string(plan_.method.count) + " taps: mark all of them, in turn at " +
              place.clock.label() + " and " + place.other_clock.label() + " o'clock" +
              (plan_.method.spacing ? ", at least " + far(*plan_.method.spacing) + " apart" : "") + ".";
    }
    if (!place.clearings.empty()) {
      text += " Measure that it clears:";
      for (std::size_t i = 0; i < place.clearings.size(); ++i) {
        const Clearing& clearing = place.clearings[i];
        text += (i == 0 ? " " : "; ") + std::string(nearby_names[static_cast<std::size_t>(clearing.what)]) + " by " +
                least_in_words(plan_, clearing, system_);
      }
      text += ".";
    }
    return text;
  }

  [[nodiscard]] Words clean_text() const {
    if (asbestos()) {
      return "Wet the pipe and clean it bare all the way round with wet rags and a soft brush. No scraping dry, no "
             "grinding, no wire wheel, no hammer.";
    }
    if (plastic()) {
      return "Wipe the pipe clean with a wet rag all the way round. No scraping, no hammer: a scratch is where a crack "
             "starts.";
    }
    return "Clean the pipe bare all the way round so that everything seats squarely: scale off with the scraper, no dirt "
           "left under the seat.";
  }

  [[nodiscard]] std::string check_text() const {
    // The numbers of the plan and no others: two figures for one reading would be one too many.
    std::string text = "Measure the outside with the tape, and gauge the wall at the tap and beside it.";
    std::string numbers;
    for (const Reading& reading : plan_.readings) {
      if (reading.kind() == Kind::pressure) continue;
      numbers += numbers.empty() ? " " : "; ";
      numbers += std::string(words_of(reading.id)) + " " + bounds_in_words(reading, system_);
    }
    if (!numbers.empty()) text += " Stop numbers:" + numbers + ".";
    text += " Look for cracks, pits, soft spots and old clamps.";
    if (plastic())
      text += " Read the pipe's temperature out of the sun. No tap in a scratched or sun-burnt length" +
              std::string(plan_.method.kind == Method::direct ? ", nor in a bent one." : ".");
    return text;
  }

  // ---- direct

  void direct() {
    phase("Set the machine");
    const Setup& setup = plan_.setup;
    std::string seat = "Set gasket and machine saddle";
    if (setup.saddle_od) seat += " for " + on_caliper(*setup.saddle_od, system_) + " outside";
    seat += " on the mark, then the second gasket and the machine, bar pointing at the centre of the pipe. It must not rock.";
    add({.id = "machine.seat",
         .action = std::move(seat),
         .acts = {mount_machine},
         .uses = {"machine-saddle", "machine-gasket", "tapping-machine"}});
    chain();
    add({.id = "machine.tool",
         .action = "Put the " + tap() + " " + thread() +
                   (plastic() ? " combined shell cutter and tap" : " combined drill and tap") +
                   " on the bar. Lay it beside the stop: same size, same thread; a second person looks too. Close the "
                   "chamber, bar drawn back.",
         .hold_point = "Tool and stop match, seen by two people.",
         .acts = {load_cutter, close_chamber},
         .uses = {"combined-drill-and-tap", "corporation-stop"}});
    add({.id = "machine.valves",
         .action = "Bleed and bypass (the equalizing valve) shut, machine valve open. Swing the valve once by hand: it "
                   "must clear the tool. Mark the bar where it enters the machine: mark 0, " +
                   where("drawn-back") + ".",
         .hold_point = "Valve swings clear of the tool; mark 0 on the bar.",
         .acts = {shut_bleed, shut_bypass, open_valve},
         .uses = {"rule"}});
    cut("machine");
    std::string text =
        "Cut the thread, cutting grease on the tap: it catches at mark 3. Feed with the screw until two or three threads "
        "lead, then take the feed off: turn, do not push. A quarter turn back now and then clears the chips. Stop at mark "
        "4: " + where("stop-tapping") + ". No deeper, or the stop bottoms before it seals; never past mark 5.";
    if (!plan_.makeup) text += " Depth and turns are those of the trial piece.";
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
    std::string text = "Chain round the pipe, no twist, hooks home";
    Step step{.id = "machine.chain", .acts = {hold_down}, .uses = {"chain"}};
    if (setup.chain) {
      text += "; at least " + on_rule(setup.chain->needed, system_, Toward::more) + " of chain";
      if (setup.chain->extensions > 0) {
        text += " with " + std::to_string(setup.chain->extensions) +
                (setup.chain->extensions == 1 ? " extension" : " extensions");
        step.uses.push_back("chain-extension");
      }
    }
    text += ". Take up both sides evenly, a little at a time";
    if (setup.clamp && setup.clamp->stud_torque) {
      text += ", by torque wrench to what the machine's maker says: holding takes about " +
              show(setup.clamp->stud_torque->usual) + " on each stud";
      step.uses.push_back("torque-wrench");
    } else {
      step.uses.push_back("wrenches");
    }
    text += plastic() ? ", only until it holds: the pipe must stay round." : ". The machine must not shift by hand.";
    step.action = std::move(text);
    add(std::move(step));
  }

  // Where a mark of the card stands.
  [[nodiscard]] std::string where(std::string_view key) const {
    for (const BarMark& mark : marks_) {
      if (mark.key == key) return std::string(mark.where);
    }
    return "as measured";
  }
  // Marks past the first are set out with a rule up the bar while its tool rests on the pipe.
  [[nodiscard]] std::string touch_text() const {
    std::string text = "Run the tool down until it just touches the pipe. Mark the bar where it enters the machine: mark 1. "
                       "Set out from it with the rule, as the card has them:";
    for (const BarMark& mark : marks_) {
      if (mark.key == "drawn-back" || mark.key == "touch") continue;
      (text += mark.key == "through" ? " marks " : ", ") += mark.sign;
    }
    return text + ".";
  }

  // Down to the pipe and through it, for every method.
  void cut(std::string_view holder) {
    phase("Cut");
    if (plan_.main.material == Material::pvc || plan_.main.material == Material::pvco) {
      add({.id = "cut.blanket",
           .action = "Lay the blanket over the pipe, the machine through its hole, and stand behind it.",
           .uses = {"blanket"}});
    }
    add({.id = "cut.down",
         .action = touch_text(),
         .hold_point = "Every mark of the card is on the bar.",
         .acts = {bar_down},
         .uses = {"rule"}});
    std::string text = powered() ? "Start the drive slow. Feed" : "Turn steadily and feed";
    text += " by the screw, light and even";
    if (plastic()) text += ": slow, a sharp cutter, no leaning on it";
    text += ". From mark 2 on (" + where("through") +
            ") feel for the breakthrough: the bar eases. From then on the feed only follows.";
    if (!wet() && asbestos()) text += " Keep the cut wet all the time and catch the chips.";
    Step through{.id = "cut.through", .action = std::move(text), .acts = {cut_through}};
    if (powered()) through.uses.push_back("powered-feed");
    if (asbestos()) through.uses.push_back("asbestos-kit");
    add(std::move(through));
    if (!wet()) return;
    Step flush{.id = "cut.flush",
               .action = std::string("Crack the bleed open, let chips and air run out") +
                         (asbestos() ? " through a hose into a lined bucket, not onto the ground" : "") +
                         ", and shut it. Look at the seat of the " + std::string(holder) + ": no weep.",
               .hold_point = "No leak round the seat.",
               .acts = {open_bleed, shut_bleed, read_tight}};
    if (asbestos()) flush.uses = {"asbestos-kit", "waste-hose"};
    add(std::move(flush));
  }

  void change_under_pressure() {
    phase("Change to the stop");
    add({.id = "change.back-out",
         .action = "Back the tap out by its thread. Set the feed again before the last thread lets go: then the water "
                   "pushes the bar out (" + push() + "). Stand beside it and let it up slowly on the feed, to mark 0.",
         .acts = {bar_up}});
    add({.id = "change.shut",
         .action = "With the bar at mark 0 shut the machine valve. The bypass stays shut.",
         .acts = {shut_valve}});
    add({.id = "change.bleed",
         .action = "Open the bleed. Watch the gauge go to zero and stay there a full minute.",
         .hold_point = "Chamber at zero and staying there. If not: nothing is opened.",
         .acts = {open_bleed, read_zero},
         .uses = {"pressure-gauge"}});
    add({.id = "change.tool",
         .action = std::string("Open the chamber and take the bar out. Take the tool off and look at it: ") +
                   (plastic() ? "the coupon must be in it, clean-cut and as thick as the wall was gauged. Keep it with the order."
                              : "chips bright, no broken tooth."),
         .acts = {open_chamber, unload_bar}});
    add({.id = "change.stop",
         .action = std::string("Shut the corporation stop and try it by hand. ") +
                   (plastic() ? "PTFE tape on its inlet thread." : "Sealant on its inlet thread.") +
                   " Take the nut off its outlet and screw the insertion tool on there, hand tight; bar in, inlet down. "
                   "Measure that the stop clears the valve. Close the chamber, bar drawn back.",
         .hold_point = "Stop shut, tried by two people; it clears the valve.",
         .acts = {shut_stop, load_stop, close_chamber},
         .uses = {"corporation-stop", "thread-sealant", "insertion-tool", "rule"}});
  }

  void set_under_pressure() {
    phase("Set the stop");
    add({.id = "set.equalise",
         .action = "Shut the bleed and hold the bar with the feed. Open the bypass slowly, and wait until the chamber stands "
                   "at line pressure.",
         .hold_point = "Same pressure on both sides of the machine valve.",
         .acts = {shut_bleed, open_bypass},
         .uses = {"pressure-gauge"}});
    add({.id = "set.open",
         .action = "Stand beside the bar, still holding it with the feed (" + push() + "), and open the machine valve fully.",
         .acts = {open_valve}});
    Step set{.id = "set.stop",
             .action = "Run the stop down to mark S, " + where("stop-touches") +
                       ". Feed and turn it until two or three threads lead, then take the feed off and let it lead. " +
                       makeup_text(),
             .acts = {bar_down, seat_stop},
             .uses = {"insertion-tool"}};
    if (plastic()) set.uses.push_back("torque-wrench");
    add(std::move(set));
    add({.id = "set.bleed",
         .action = "Shut the bypass, then open the bleed. Watch the gauge go to zero and stay there a full minute: only now "
                   "does the stop hold the main.",
         .hold_point = "Gauge at zero and staying there. If not: nothing is slackened.",
         .acts = {shut_bypass, open_bleed, read_zero},
         .uses = {"pressure-gauge"}});
  }

  void take_off_stop() {
    phase("Take the machine off");
    add({.id = "off.release",
         .action = "Unscrew the insertion tool from the stop's outlet and draw the bar back. The stop must not turn with it.",
         .acts = {release_bar, bar_up},
         .uses = {"insertion-tool"}});
    add({.id = "off.lift",
         .action = "Slacken the chain evenly, a little each side, nobody in line. Lift the machine clear.",
         .acts = {let_go, lift_machine}});
    add({.id = "off.look",
         .action = "Put the nut back on the stop's outlet. Look at the stop under the full line. If it weeps, turn it on a "
                   "little, wrench on the inlet side, never on the key or the outlet. " + showing_text(),
         .hold_point = "No weep at the stop.",
         .acts = {read_tight},
         .uses = {"wrenches"}});
  }

  void set_stop_dry() {
    phase("Set the stop");
    add({.id = "dry.back-out",
         .action = "Back the tap out by its thread, the feed set before the last thread lets go, and draw the bar back to "
                   "mark 0.",
         .acts = {bar_up}});
    add({.id = "dry.lift",
         .action = "Open the bleed: nothing may come. Slacken the chain evenly and lift the machine clear. Take the chips out "
                   "of the hole and the main" +
                   std::string(plastic() ? ", and keep the coupon with the order" : "") +
                   ". Look at the main's wall through the hole: sound, and as thick as it was gauged.",
         .hold_point = "Bleed dry; wall seen through the hole.",
         .acts = {open_bleed, read_zero, let_go, lift_machine, unload_bar}});
    Step set{.id = "dry.stop",
             .action = std::string("Shut the corporation stop. ") +
                       (plastic() ? "PTFE tape on its inlet thread. " : "Sealant on its inlet thread. ") +
                       "Start it by hand, square to the pipe, then the wrench on the inlet side. " + makeup_text(),
             .acts = {shut_stop, seat_stop},
             .uses = {"corporation-stop", "thread-sealant", "wrenches"}};
    if (plastic()) set.uses.push_back("torque-wrench");
    add(std::move(set));
  }

  [[nodiscard]] std::string makeup_text() const {
    std::string text = "Make-up: " + makeup_in_words(plan_) + ".";
    if (plastic()) text += " By torque wrench, and no tighter than the stop's maker says for this pipe.";
    return text + (plan_.makeup ? "" : " Do not run it to the shoulder.");
  }
  [[nodiscard]] std::string showing_text() const {
    return plan_.makeup ? "As many threads must show as the card says." : "It must not stand on its shoulder.";
  }

  // ---- saddle: the machine stands on the open stop, which then is the valve. Nothing is changed under pressure.

  void saddle() {
    phase("Saddle and stop");
    add({.id = "saddle.fit",
         .action = std::string("Fit the saddle, gasket in its groove, outlet at the mark. Take the nuts up evenly in turn, by "
                               "torque wrench to the figure on the saddle's sheet. ") +
                   (plastic() ? "The pipe must stay round; no gap at the sides." : "No gap at the sides."),
         .uses = {"service-saddle", "torque-wrench"}});
    add({.id = "saddle.stop",
         .action = "Screw the corporation stop into the outlet, sealant on its inlet thread, wrench on the inlet side. "
                   "Measure from the pipe to the stop's outlet: the cutter must come back so far.",
         .acts = {fit_saddle},
         .uses = {"corporation-stop", "thread-sealant", "wrenches", "rule"}});
    add({.id = "saddle.test",
         .action = "Open the stop, fill it with clean water and, by the test pump, put it under a test pressure no greater "
                   "than the line or the pipe's rating, before anything is cut. Let the pressure off again.",
         .hold_point = "Saddle and stop hold the test.",
         .acts = {open_stop, read_tight},
         .uses = {"test-pump"}});
    phase("Set the machine");
    add({.id = "machine.mount",
         .action = "Take the nut off the stop's outlet. Screw the machine on there, by its adapter, the stop open, and "
                   "block up its weight.",
         .acts = {mount_machine, hold_down},
         .uses = {"tapping-machine", "stop-adapter", "support", "wrenches"}});
    add({.id = "machine.tool",
         .action = "Put the cutter on the bar: the largest that passes the open stop" +
                   (plan_.method.hole ? ", not over " + on_rule(*plan_.method.hole, system_, Toward::less) : std::string()) +
                   ". Run it through once by hand, touching nothing, and draw it back; a second person looks too. Close the "
                   "chamber.",
         .hold_point = "Cutter passes the open stop, seen by two people.",
         .acts = {load_cutter, close_chamber},
         .uses = {"shell-cutter"}});
    add({.id = "machine.valves",
         .action = "Bar drawn back, bleed and any bypass (equalizing valve) shut, stop fully open. Mark the bar where it enters "
                   "the machine, the cutter clear of the stop's plug: mark 0, " + where("drawn-back") + ".",
         .hold_point = "Mark 0 on the bar: the stop is shut only with the bar there.",
         .acts = {shut_bleed, shut_bypass},
         .uses = {"rule"}});
    cut("saddle");
    phase("Shut the stop");
    if (wet()) {
      add({.id = "change.back-out",
           .action = "Draw the cutter back with the feed. The water pushes the bar out (" + push() +
                     "): stand beside it, let it up slowly to mark 0, clear of the stop's plug.",
           .acts = {bar_up}});
      add({.id = "change.shut",
           .action = "With the bar at mark 0 shut the corporation stop.",
           .acts = {shut_stop}});
      zero_before_lifting("Open the bleed. Watch the gauge go to zero and stay there a full minute: only now does the stop "
                          "hold the main.");
    } else {
      add({.id = "dry.back-out",
           .action = "Draw the cutter back to mark 0, clear of the stop's plug. Shut the stop. Open the bleed: nothing may come.",
           .hold_point = "Bleed dry.",
           .acts = {bar_up, shut_stop, open_bleed, read_zero}});
    }
    phase("Take the machine off");
    add({.id = "off.lift",
         .action = "Hold the stop with one wrench and unscrew the machine with the other, nobody in line. The saddle must not "
                   "turn. Put the nut back on the stop's outlet.",
         .acts = {let_go, lift_machine},
         .uses = {"wrenches"}});
    coupon();
    if (wet()) {
      add({.id = "off.look",
           .action = "Look at saddle and stop under the full line.",
           .hold_point = "No weep at saddle or stop.",
           .acts = {read_tight}});
    }
  }

  void zero_before_lifting(Words action) {
    add({.id = "change.bleed",
         .action = std::move(action),
         .hold_point = "Gauge at zero and staying there. If not: nothing is slackened.",
         .acts = {open_bleed, read_zero},
         .uses = {"pressure-gauge"}});
  }
  void coupon() {
    add({.id = "off.coupon",
         .action = "Take the cutter off. The coupon must be in it. Look at its edge, sound and as thick as the wall was "
                   "gauged, and keep it with the order.",
         .hold_point = "Coupon in hand.",
         .acts = {unload_bar}});
  }

  // ---- sleeve

  void sleeve() {
    phase("Sleeve and valve");
    add({.id = "sleeve.fit",
         .action = "Fit the sleeve made for the measured diameter and bolt on the tapping valve. Bolts evenly in turn, by "
                   "torque wrench to the maker's figure. Block up valve and machine on their own: the pipe carries neither.",
         .acts = {fit_saddle},
         .uses = {"tapping-sleeve", "tapping-valve", "torque-wrench", "support"}});
    add({.id = "sleeve.test",
         .action = "By the test pump, put sleeve and valve under a test pressure no greater than the line or the pipe's "
                   "rating, through the test plug, before anything is cut. Let the pressure off again.",
         .hold_point = "Sleeve holds the test.",
         .acts = {read_tight},
         .uses = {"test-pump"}});
    phase("Set the machine");
    add({.id = "machine.mount",
         .action = "Bolt the machine to the valve by its adapter. Block up its weight.",
         .acts = {mount_machine, hold_down},
         .uses = {"tapping-machine", "valve-adapter", "support", "wrenches"}});
    add({.id = "machine.tool",
         .action = "Put the cutter with its pilot on the bar and close the chamber. Measure that it clears valve and outlet and "
                   "reaches through the pipe; a second person measures too.",
         .hold_point = "Cutter clears valve and outlet, measured by two people.",
         .acts = {load_cutter, close_chamber},
         .uses = {"shell-cutter", "rule"}});
    add({.id = "machine.valves",
         .action = "Bar drawn back, bleed and any bypass (equalizing valve) shut, tapping valve fully open; count its turns. "
                   "Mark the bar where it enters the machine, the cutter clear of the valve: mark 0, " +
                   where("drawn-back") + ".",
         .hold_point = "Mark 0 on the bar: the valve is shut only with the bar there.",
         .acts = {shut_bleed, shut_bypass, open_valve},
         .uses = {"rule"}});
    cut("sleeve");
    phase("Shut the valve");
    if (wet()) {
      add({.id = "change.back-out",
           .action = "Draw the cutter back with the feed. The water pushes the bar out (" + push() +
                     "): stand beside it, let it up slowly to mark 0, clear of the valve.",
           .acts = {bar_up}});
      add({.id = "change.shut",
           .action = "With the bar at mark 0 shut the tapping valve; the same number of turns.",
           .acts = {shut_valve}});
      zero_before_lifting("Open the bleed. Watch the gauge go to zero and stay there a full minute.");
    } else {
      add({.id = "dry.back-out",
           .action = "Draw the cutter back to mark 0, clear of the valve. Shut the valve. Open the bleed: nothing may come.",
           .hold_point = "Bleed dry.",
           .acts = {bar_up, shut_valve, open_bleed, read_zero}});
    }
    phase("Take the machine off");
    add({.id = "off.lift",
         .action = "Take out the bolts evenly, nobody in line. Lift the machine clear.",
         .acts = {let_go, lift_machine},
         .uses = {"wrenches"}});
    coupon();
    if (wet()) {
      add({.id = "off.look",
           .action = "Look at sleeve and valve under the full line.",
           .hold_point = "No weep at sleeve or valve.",
           .acts = {read_tight}});
    }
  }

  // ---- afterwards

  void next_tap() {
    phase("The next tap");
    add({.id = "next.tap",
         .action = "Do the same for each of the " + std::to_string(plan_.method.count) +
                   " taps, from setting up to this line, one finished and shut before the next is begun."});
  }

  void fill() {
    phase("Fill the main");
    add({.id = "fill.main",
         .action = std::string(seat_ == Seat::tapping_valve ? "With the tapping valve shut" : "With the stop shut") +
                   ", fill the main slowly and let the air out at the high end. It was open: flush it, and have it disinfected "
                   "and sampled as the utility asks, before any customer draws from it. Bring it to its full pressure by "
                   "the gauge.",
         .hold_point = "No weep at the new tap under the full line.",
         .acts = {fill_main, read_tight},
         .uses = {"pressure-gauge"}});
  }

  void connect() {
    phase("Connect and prove");
    const bool branch = seat_ == Seat::tapping_valve;
    if (is_metallic(plan_.main.material)) {
      add({.id = "connect.bond",
           .condition = "An old metal service is parted",
           .action = "bonding jumper across first, and on until the work is done.",
           .uses = {"bonding-jumper"}});
    }
    Step service{.id = "connect.service",
                 .action = branch ? Words("Connect the branch, restrained or blocked as the engineer has it. No pull and no lever "
                                          "on the valve.")
                                  : Words("Connect the service with slack: a gooseneck at the main, no pull and no lever on the "
                                          "stop."),
                 .uses = {"service-pipe"}};
    if (plan_.method.count > 1) {
      service.action = "Connect the " + std::to_string(plan_.method.count) +
                       " services with slack, each a gooseneck at the main, and join them by the branch fittings. No pull and "
                       "no lever on the stops.";
      service.uses.push_back("branch-fittings");
    }
    add(std::move(service));
    flush_service();
    add({.id = "connect.check",
         .action = std::string("Look at every joint from main to ") + (branch ? "valve" : "curb stop") +
                   " under the full line, before any cover.",
         .hold_point = "No visible leak anywhere.",
         .acts = {read_tight}});
  }

  void flush_service() {
    const bool branch = seat_ == Seat::tapping_valve;
    std::string text = "Lead the far end to waste by the hose. Open the ";
    text += branch ? "tapping valve" : "corporation stop";
    text += " slowly, flush until clear, free of air and chips, and shut the far end.";
    Step step{.id = "connect.flush", .acts = {branch ? open_valve : open_stop}, .uses = {"waste-hose"}};
    if (plan_.cleaning && plan_.cleaning->flush) {
      const sanitary::Flushing& full = plan_.cleaning->flush->full;
      text += " Flush hard: the bucket fills in " +
              format_measure(Measure(bucket() / full.flow), system_, Toward::less) + " or less, for at least " +
              format_measure(Measure(full.time), system_, Toward::more) + ".";
      step.uses.push_back("bucket");
    }
    step.action = std::move(text);
    add(std::move(step));
  }
  // What a flow is timed with.
  [[nodiscard]] Volume bucket() const { return system_ == UnitSystem::us ? 5.0 * units::gallon : 20.0 * units::litre; }

  void finish() {
    phase("Leave it well");
    Step bed{.id = "finish.bed", .action = "Bed and support main, tap and service. No rock against them."};
    if (encased()) {
      bed.action = "Tape every cut in the film; wrap the stop and the first of the service. Bed and support main, tap and "
                   "service. No rock against them.";
      bed.uses = {"encasement-tape"};
    }
    add(std::move(bed));
    if (wet() && lower_the_main_to(plan_) != nullptr) {
      add({.id = "finish.pressure",
           .action = "Have the main brought back to its pressure slowly, and look at the tap again.",
           .hold_point = "No weep under the full line.",
           .acts = {read_tight}});
    }
    add({.id = "finish.machine",
         .action = plan_.method.kind == Method::direct
                       ? "Clean and oil the machine. Look at tool, chain, seals and valve; put aside what is worn."
                       : "Clean and oil the machine. Look at cutter, adapter, seals and valve; put aside what is worn."});
    add({.id = "finish.record",
         .action = "Write it down: place with two ties, clock position, depth, pipe and wall as read, pressure, method, tap, "
                   "coupon kept, leak check, anything odd about the main. A picture before cover."});
  }

  const Plan& plan_;
  UnitSystem system_;
  Seat seat_;
  std::string_view phase_;
  RigState state_;
  std::vector<BarMark> marks_;
  std::vector<Step> steps_;
};

}  // namespace

namespace work {

bool only_by_engineer(const Plan& plan) {
  return std::any_of(plan.findings.begin(), plan.findings.end(),
                     [](const Finding& finding) { return finding.code == FindingCode::saddle_by_engineer; });
}

}  // namespace work

std::string in_words(const Step& step) {
  if (step.condition.empty()) return std::string(step.action.view());
  return std::string(step.condition.view()) + ": " + std::string(step.action.view());
}

std::vector<Step> procedure(const Plan& plan, UnitSystem system) { return Procedure(plan, system).all(); }

}  // namespace mainbore
