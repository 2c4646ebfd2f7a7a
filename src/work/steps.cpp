#include <algorithm>
#include <cmath>

#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"

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
  void add(std::string_view id, Words text, std::initializer_list<Act> acts = {}, std::string_view hold_point = {}) {
    for (const Act act : acts) state_ = after(state_, act, seat_);
    steps_.push_back({id, phase_, std::move(text), hold_point, acts, state_});
  }

  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, system_); }
  [[nodiscard]] static std::string name(NominalSize size) { return size.label() + " in"; }
  [[nodiscard]] std::string tap() const { return name(plan_.method.tap); }
  [[nodiscard]] bool wet() const { return plan_.job.main.pressurised.value_or(true); }
  [[nodiscard]] bool plastic() const { return is_plastic(plan_.main.material); }
  // Stroke and load are worked out for a drill with a point; a shell cutter has none.
  [[nodiscard]] bool twist_drill() const { return plan_.method.kind == Method::direct && !plastic(); }
  [[nodiscard]] bool asbestos() const { return plan_.main.material == Material::asbestos_cement; }
  [[nodiscard]] bool powered() const { return plan_.setup.feed == Feed::powered; }
  [[nodiscard]] std::string thread() const {
    return plan_.method.thread ? std::string(name_of(*plan_.method.thread)) : std::string("its");
  }
  [[nodiscard]] std::string push() const {
    return plan_.setup.push > Force() ? "about " + show(plan_.setup.push) + " at " + show(plan_.pressure.line)
                                      : "the line pressure";
  }

  void prepare() {
    phase("Before the pit");
    add("prepare.people",
        "Agree who works the machine, who stays out of the pit and who turns the valves, and on the one word that "
        "stops the job.");
    add("prepare.valves",
        "Find the valves that shut this main down. Uncover them, set the key on them and turn them enough to know that "
        "they move. Leave the key there.",
        {}, "Shut-off valves found and known to turn.");
    if (!wet()) {
      add("prepare.empty",
          "Shut the valves, lock and tag them, open the lowest outlet and leave it open until water has stopped and "
          "stays stopped.",
          {}, "Main proved empty, valves locked and tagged.");
    }
    add("prepare.pit",
        "Room all round the pipe, a sump below it with the sump pump running, a ladder in, the walls looked at by the "
        "competent person. The repair clamp lies open at the edge.");
    add("prepare.identify",
        "Prove by two independent means that this is the drinking-water main, and write down which two.", {},
        "Pipe proved to be the water main.");
  }

  void the_pipe() {
    phase("The pipe");
    add("pipe.place", place_text());
    add("pipe.clean", clean_text());
    add("pipe.check", check_text(), {}, "Readings inside the stop numbers; pipe sound.");
    if (plan_.job.main.encased.value_or(false)) {
      add("pipe.wrap",
          "Close the film and wrap two or three turns of polyethylene tape round it, tight to the pipe, where machine "
          "and chain or saddle will sit. The tap goes through tape and film.");
    }
    if (wet()) {
      add("pipe.pressure", pressure_text(), {}, "Gauge within the stop number, and steady.");
    }
    if (plan_.verdict == Verdict::hold) {
      add("pipe.holds",
          "Go through the numbered holds of this sheet. Write each reading in its blank. One outside its number: stop, "
          "and have the job planned again.",
          {}, "Every hold on this sheet cleared and signed.");
    }
    if (by_engineer()) return;
    add("pipe.disinfect",
        "Swab the pipe where it is cut, the tool and the fittings with chlorine solution, as the utility asks.");
  }

  // A way of tapping that only the engineer can give: nothing of the cut is written down before that.
  [[nodiscard]] bool by_engineer() const {
    return std::any_of(plan_.findings.begin(), plan_.findings.end(),
                       [](const Finding& finding) { return finding.code == FindingCode::saddle_by_engineer; });
  }
  void call_engineer() {
    phase("The engineer's design");
    add("engineer.call",
        "Cut nothing. Give the engineer material, outside diameter, wall and pressure as read, and wait for the design of "
        "the connection in writing: fitting, cut, tools and pressure. Keep the pit safe or close it.",
        {}, "Design in hand, with the engineer's name.");
  }

  [[nodiscard]] std::string pressure_text() const {
    std::string text = "Read the line at a gauge near the tap.";
    if (const Reading* lowered = lower_the_main_to(plan_)) {
      text += " Have the main lowered to " + bare_bounds(*lowered, system_) +
              " or less, and somebody hold it there till the machine is off.";
    } else {
      text += " Planned for " + show(plan_.pressure.line) + ".";
      const Reading* const line = plan_.reading(ReadingId::line_pressure);
      if (line != nullptr) text += " Stop over " + bare_bounds(*line, system_) + ".";
    }
    return text + " Let trapped air out first.";
  }

  [[nodiscard]] std::string place_text() const {
    const Location& place = plan_.location;
    std::string text = "Mark the tap on the barrel at " + place.clock.label() + " o'clock, seen along the main";
    if (std::fabs(place.shift.base()) > 1e-9) {
      text += ", " + show(Measure(abs(place.shift), Kind::distance)) + " from the place asked (the " +
              (place.shift > Length() ? "+" : "-") + " way on the order)";
    }
    text += ".";
    if (plan_.method.count > 1) {
      text += " There are " + std::to_string(plan_.method.count) +
              " taps: mark all of them, in turn at " + place.clock.label() + " and " + place.other_clock.label() + " o'clock" +
              (plan_.method.spacing ? ", at least " + show(Measure(*plan_.method.spacing, Kind::distance)) + " apart" : "") +
              ".";
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
    if (plan_.job.main.encased.value_or(false)) {
      return "Open the film no more than it takes to look, measure and gauge. Wipe the pipe there.";
    }
    if (asbestos()) {
      return "Wet the pipe and clean it bare all the way round with wet rags and a soft brush. No scraping dry, no "
             "grinding, no wire wheel.";
    }
    if (plastic())
      return "Wipe the pipe clean with a wet rag all the way round. No scraping: a scratch is where a crack starts.";
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

  void direct() {
    phase("Set the machine");
    const Setup& setup = plan_.setup;
    std::string seat = "Set gasket and machine saddle";
    if (setup.saddle_od) seat += " for " + on_calliper(*setup.saddle_od, system_) + " outside";
    seat +=
        " on the mark, then the second gasket and the machine, bar pointing at the centre of the pipe. It must sit "
        "without rocking.";
    add("machine.seat", std::move(seat), {mount_machine});
    std::string chain = "Chain round the pipe, no twist, hooks home";
    if (setup.chain) {
      chain += "; at least " + on_rule(setup.chain->needed, system_, Toward::more) + " of chain";
      if (setup.chain->extensions > 0) {
        chain += " with " + std::to_string(setup.chain->extensions) +
                 (setup.chain->extensions == 1 ? " extension" : " extensions");
      }
    }
    chain += ". Take up both sides evenly, a little at a time";
    if (setup.clamp && setup.clamp->stud_torque)
      chain += ", by torque wrench to what the machine's maker says: holding takes about " +
               show(setup.clamp->stud_torque->usual) + " on each stud";
    chain += plastic() ? ", only until it holds: the pipe must stay round." : ". The machine must not shift by hand.";
    add("machine.chain", std::move(chain), {hold_down});
    add("machine.tool",
        "Put the " + tap() + " " + thread() +
            (plastic() ? " combined shell cutter and tap" : " combined drill and tap") +
            " on the bar. Lay it beside the stop: same size, same thread. A second person looks too. Then close the "
            "chamber with the bar drawn back.",
        {load_cutter, close_chamber}, "Tool and stop match, seen by two people.");
    add("machine.valves",
        "Starting state: bar drawn back, bleed and bypass shut, machine valve open. Swing the valve once by hand: it must "
        "clear the tool. Mark the bar where it enters the machine: mark 0, " + where("drawn-back") + ".",
        {shut_bleed, shut_bypass, open_valve}, "Valve swings clear of the tool; mark 0 on the bar.");
    cut("machine");
    std::string thread_text =
        "Cut the thread with cutting grease on the tap: it catches at mark 3. Feed with the screw until two or "
        "three threads lead, then take the feed off: turn, and do not push. Clear the chips by a quarter turn back now and "
        "then. Stop at mark 4: ";
    thread_text += where("stop-tapping") + ". No deeper, or the stop bottoms before it seals; never past mark 5.";
    add("tap.thread", std::move(thread_text), {cut_thread});
    if (wet()) {
      set_stop_wet();
    } else {
      set_stop_dry();
    }
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
    std::string text = "Run the tool down to the pipe until it just touches. Mark the bar where it enters the machine: mark 1. "
                       "Set out the other marks from it with the rule:";
    bool first = true;
    for (const BarMark& mark : marks_) {
      if (mark.key == "drawn-back" || mark.key == "touch") continue;
      text += (first ? " " : "; ") + std::string(mark.sign) + " " + std::string(mark.name) + ", " + std::string(mark.where);
      first = false;
    }
    return text + ".";
  }

  // Down to the pipe and through it, for every method.
  void cut(std::string_view holder) {
    phase("Cut");
    if (plan_.main.material == Material::pvc || plan_.main.material == Material::pvco)
      add("cut.blanket", "Lay the blanket over the pipe, the machine through its hole, and stand behind it.");
    add("cut.down", touch_text(), {bar_down}, "Every mark of the card is on the bar.");
    std::string text = powered() ? "Start the drive slow. Feed" : "Turn steadily and feed";
    text += " by the screw, light and even";
    if (plastic()) text += ": slow, a sharp cutter, no leaning on it";
    text += ". Feel for the breakthrough from mark 2 on: the bar eases (" + where("through") +
            "). From then on the feed only follows.";
    if (!wet() && asbestos()) text += " Keep the cut wet all the time and catch the chips.";
    add("cut.through", std::move(text), {cut_through});
    if (wet()) {
      add("cut.flush",
          std::string("Crack the bleed open, let chips and air run out") +
              (asbestos() ? " through a hose into a lined bucket, not onto the ground" : "") +
              ", and shut it. Look at the seat of the " + std::string(holder) + ": no weep.",
          {open_bleed, shut_bleed, read_tight}, "No leak round the seat.");
    }
  }

  void set_stop_wet() {
    phase("Change to the stop");
    add("change.back-out",
        "Back the tap out by its thread. Set the feed again before the last thread lets go: then the water pushes the bar out "
        "(" + push() + "). Stand beside it and let it come up slowly on the feed, to mark 0.",
        {bar_up});
    add("change.shut", "With the bar at mark 0 shut the machine valve. The bypass stays shut.", {shut_valve});
    add("change.bleed", "Open the bleed. Watch the gauge go to zero and stay there a full minute.",
        {open_bleed, read_zero}, "Chamber at zero and staying there. If not: nothing is opened.");
    add("change.tool",
        std::string("Now open the chamber and take the bar out. Take the tool off and look at it: ") +
            (plastic() ? "the coupon must be in it, and clean-cut. Keep it with the order."
                       : "chips bright, no broken tooth."),
        {open_chamber, unload_bar});
    add("change.stop",
        std::string("Shut the corporation stop and try it by hand. ") +
            (plastic() ? "PTFE tape on its inlet thread." : "Sealant on its inlet thread.") +
            " Take the nut off its outlet and screw the insertion tool on there, hand tight; bar in, inlet down. Measure that "
            "the stop clears the valve. Close the chamber, bar drawn back.",
        {shut_stop, load_stop, close_chamber}, "Stop shut, tried by two people; it clears the valve.");
    phase("Set the stop");
    add("set.equalise",
        "Shut the bleed and hold the bar with the feed. Open the bypass slowly, and wait until the chamber stands at line "
        "pressure.",
        {shut_bleed, open_bypass}, "Same pressure on both sides of the machine valve.");
    add("set.open",
        "Stand beside the bar, still holding it with the feed (" + push() + "), and open the machine valve fully.",
        {open_valve});
    add("set.stop", "Run the stop down to mark S. Feed and turn it until two or three threads lead, then take the feed off and let it "
        "lead. " + makeup_text(),
        {bar_down, seat_stop});
    add("set.bleed",
        "Shut the bypass. Open the bleed. Watch the gauge go to zero and stay there a full minute: only now does the "
        "stop hold the main.",
        {shut_bypass, open_bleed, read_zero}, "Gauge at zero and staying there. If not: nothing is slackened.");
    phase("Take the machine off");
    add("off.release", "Unscrew the insertion tool from the stop's outlet and draw the bar back. The stop must not turn with it.",
        {release_bar, bar_up});
    add("off.lift", "Slacken the chain evenly, a little each side, nobody in line. Lift the machine clear.",
        {let_go, lift_machine});
    add("off.look",
        "Put the nut back on the stop's outlet. Look at the stop under the full line. If it weeps, turn it on a little, wrench "
        "on the inlet side and never on the key or the outlet. " +
            showing_text(),
        {read_tight}, "No weep at the stop.");
  }

  void set_stop_dry() {
    phase("Set the stop");
    add("dry.back-out", "Back the tap out by its thread, the feed set before the last thread lets go, and draw the bar back to mark 0.",
        {bar_up});
    add("dry.lift",
        "Open the bleed: nothing may come. Slacken the chain evenly and lift the machine clear. Take the chips out of "
        "the hole and the main" +
            std::string(plastic() ? ", and keep the coupon with the order" : "") +
            ". Look at the main's wall through the hole: sound, and as thick as it was gauged.",
        {open_bleed, read_zero, let_go, lift_machine, unload_bar}, "Bleed dry; wall seen through the hole.");
    add("dry.stop",
        std::string("Shut the corporation stop. ") +
            (plastic() ? "PTFE tape on its inlet thread. " : "Sealant on its inlet thread. ") +
            "Start it by hand, square to the pipe. " + makeup_text(),
        {shut_stop, seat_stop});
  }

  [[nodiscard]] std::string makeup_text() const {
    std::string text = "Make-up: " + makeup_in_words(plan_) + ".";
    if (plastic()) text += " By torque wrench, and no tighter than the stop's maker says for this pipe.";
    return text + (plan_.makeup ? "" : " Do not run it to the shoulder.");
  }
  [[nodiscard]] std::string showing_text() const {
    return plan_.makeup ? "As many threads must show as the card says." : "It must not stand on its shoulder.";
  }

  // The machine stands on the open stop, which then is the valve: nothing is changed under pressure.
  void saddle() {
    phase("Saddle and stop");
    std::string text =
        "Fit the saddle, gasket in its groove, outlet at the mark. Take the nuts up evenly in turn, to the figure on "
        "the saddle's sheet.";
    text += plastic() ? " The pipe must stay round; no gap at the sides." : " No gap at the sides.";
    text += " Then the stop into the outlet, sealant on its inlet thread, wrench on the inlet side. Measure from the pipe to the "
            "stop's outlet: the cutter must come back so far.";
    add("saddle.fit", std::move(text), {fit_saddle});
    add("saddle.test",
        "With the stop open, fill it with clean water and, by the test pump, put it under a test pressure no greater than the line or the "
        "pipe's rating, before anything is cut. Let the pressure off again.",
        {open_stop, read_tight}, "Saddle and stop hold the test.");
    phase("Set the machine");
    add("machine.mount", "Take the nut off the stop's outlet. Screw the machine on there, by its adapter, the stop open, and support its "
        "weight.",
        {mount_machine, hold_down});
    add("machine.tool",
        "Put the cutter on the bar: the largest that passes the open stop" +
            (plan_.method.hole ? ", not over " + on_rule(*plan_.method.hole, system_, Toward::less) : std::string()) +
            ". It must pass the open stop without touching; run it through once by hand and draw it back. A second "
            "person looks too. Close the chamber.",
        {load_cutter, close_chamber}, "Cutter passes the open stop, seen by two people.");
    add("machine.valves", "Starting state: bar drawn back, bleed shut, stop fully open. Mark the bar where it enters the machine, the cutter clear "
        "of the stop's plug: mark 0, " + where("drawn-back") + ".",
        {shut_bleed}, "Mark 0 on the bar: the stop is shut only with the bar there.");
    cut("saddle");
    phase("Shut the stop");
    if (wet()) {
      add("change.back-out",
          "Draw the cutter back. The water pushes the bar out: hold it (" + push() +
              ") with the feed, stand beside it, bring it up slowly to mark 0, clear of the stop's plug.",
          {bar_up});
      add("change.shut", "With the bar at mark 0 shut the corporation stop.", {shut_stop});
      add("change.bleed",
          "Open the bleed. Watch the gauge go to zero and stay there a full minute: only now does the stop hold the "
          "main.",
          {open_bleed, read_zero}, "Gauge at zero and staying there. If not: nothing is slackened.");
    } else {
      add("dry.back-out", "Draw the cutter back to mark 0, clear of the stop's plug. Shut the stop. Open the bleed: nothing may come.",
          {bar_up, shut_stop, open_bleed, read_zero}, "Bleed dry.");
    }
    phase("Take the machine off");
    add("off.lift",
        "Hold the stop with one wrench and unscrew the machine with the other, nobody in line. The saddle must not "
        "turn. Put the nut back on the stop's outlet.",
        {let_go, lift_machine});
    add("off.coupon", "Take the cutter off. The coupon must be in it. Look at its edge, sound and as thick as it was gauged, and keep it with "
        "the order.",
        {unload_bar}, "Coupon in hand.");
    if (wet())
      add("off.look", "Look at saddle and stop under the full line.", {read_tight}, "No weep at saddle or stop.");
  }

  void sleeve() {
    phase("Sleeve and valve");
    add("sleeve.fit",
        "Fit the sleeve made for the measured diameter and bolt on the tapping valve. Bolts evenly in turn, to the "
        "maker's figure. Block up valve and machine on their own: the pipe carries neither.",
        {fit_saddle});
    add("sleeve.test",
        "By the test pump, put sleeve and valve under a test pressure no greater than the line or the pipe's rating, through the test "
        "plug, before anything is cut. Let the pressure off again.",
        {read_tight}, "Sleeve holds the test.");
    phase("Set the machine");
    add("machine.mount", "Bolt the machine to the valve by its adapter. Support it.", {mount_machine, hold_down});
    add("machine.tool",
        "Put the cutter with its pilot on the bar and close the chamber. Measure that it clears valve and outlet and "
        "reaches through the pipe. A second person measures too.",
        {load_cutter, close_chamber}, "Cutter clears valve and outlet, measured by two people.");
    add("machine.valves", "Starting state: bar drawn back, bleed shut, tapping valve fully open; count its turns. Mark the bar where it "
        "enters the machine, the cutter clear of the valve: mark 0, " + where("drawn-back") + ".",
        {shut_bleed, open_valve}, "Mark 0 on the bar: the valve is shut only with the bar there.");
    cut("sleeve");
    phase("Shut the valve");
    if (wet()) {
      add("change.back-out",
          "Draw the cutter back with the feed. The water pushes the bar out (" + push() +
              "): stand beside it. Bring it up to mark 0, clear of the valve.",
          {bar_up});
      add("change.shut", "With the bar at mark 0 shut the tapping valve; the same number of turns.", {shut_valve});
      add("change.bleed", "Open the bleed. Watch the gauge go to zero and stay there a full minute.",
          {open_bleed, read_zero}, "Gauge at zero and staying there. If not: nothing is slackened.");
    } else {
      add("dry.back-out", "Draw the cutter back to mark 0, clear of the valve. Shut the valve. Open the bleed: nothing may come.",
          {bar_up, shut_valve, open_bleed, read_zero}, "Bleed dry.");
    }
    phase("Take the machine off");
    add("off.lift", "Take out the bolts evenly, nobody in line. Lift the machine clear.", {let_go, lift_machine});
    add("off.coupon", "Take the cutter off. The coupon must be in it. Look at its edge, sound and as thick as it was gauged, and keep it with "
        "the order.",
        {unload_bar}, "Coupon in hand.");
    if (wet())
      add("off.look", "Look at sleeve and valve under the full line.", {read_tight}, "No weep at sleeve or valve.");
  }

  void next_tap() {
    phase("The next tap");
    add("next.tap", "Do the same for each of the " + std::to_string(plan_.method.count) +
                        " taps, from setting up to this line, one finished and shut before the next is begun.");
  }

  void fill() {
    phase("Fill the main");
    add("fill.main",
        std::string(seat_ == Seat::tapping_valve ? "With the tapping valve shut" : "With the stop shut") +
            ", fill the main slowly and let the air out at the high end. It was open: flush it, and have it disinfected "
            "and sampled as the utility asks, before any customer draws from it. Bring it to its full pressure.",
        {fill_main, read_tight}, "No weep at the new tap under the full line.");
  }

  void connect() {
    phase("Connect and prove");
    std::string text = seat_ == Seat::tapping_valve
                           ? "Connect the branch, restrained or blocked as the engineer has it. No pull and no lever on "
                             "the valve."
                           : "Connect the service with slack: a gooseneck at the main, no pull and no lever on the stop.";
    if (is_metallic(plan_.main.material)) text += " Parting an old metal service: bonding jumper across first.";
    add("connect.service", std::move(text));
    if (seat_ == Seat::tapping_valve) {
      add("connect.flush",
          "Lead the far end to waste. Open the tapping valve slowly, flush until clear, free of air and chips, and "
          "shut the far end.",
          {open_valve});
    } else {
      add("connect.flush",
          "Lead the far end to waste. Open the corporation stop slowly, flush until clear, free of air and chips, and "
          "shut the far end.",
          {open_stop});
    }
    add("connect.check",
        std::string("Look at every joint from main to ") + (seat_ == Seat::tapping_valve ? "valve" : "curb stop") +
            " under the full line, before any cover.",
        {read_tight}, "No visible leak anywhere.");
  }

  void finish() {
    phase("Leave it well");
    std::string text = "Bed and support main, tap and service. No rock against them.";
    if (plan_.job.main.encased.value_or(false))
      text = "Tape every cut in the film; wrap the stop and the first of the service. " + text;
    add("finish.bed", std::move(text));
    if (wet() && lower_the_main_to(plan_) != nullptr) {
      add("finish.pressure", "Have the main brought back to its pressure slowly, and look at the tap again.",
          {read_tight}, "No weep under the full line.");
    }
    add("finish.machine", "Clean and oil the machine. Look at tool, chain, seals and valve; put aside what is worn.");
    add("finish.record",
        "Write it down: place with two ties, clock position, depth, pipe and wall as read, pressure, method, tap, "
        "coupon kept, leak check, anything odd about the main. A picture before cover.");
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

std::vector<Step> procedure(const Plan& plan, UnitSystem system) { return Procedure(plan, system).all(); }

}  // namespace mainbore
