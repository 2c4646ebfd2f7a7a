// Walks every order of work against a model of the rig that knows nothing of how the orders are written: water goes
// where it is let, and nothing may be loosened, opened or lifted while it is behind it.
#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "unit/work/sample_plans.hpp"

namespace mainbore {
namespace {

using test::Sample;
using test::sample_plan;

constexpr std::array methods = {Method::direct, Method::saddle, Method::sleeve};

std::vector<Sample> every_variant() {
  std::vector<Sample> list;
  for (const Method method : methods) {
    for (std::size_t m = 0; m < material_count; ++m) {
      for (const bool wet : {true, false}) {
        for (const Feed feed : {Feed::hand, Feed::powered}) {
          for (const Verdict verdict : {Verdict::go, Verdict::hold}) {
            list.push_back({method, static_cast<Material>(m), wet, feed, verdict});
          }
        }
      }
    }
  }
  return list;
}

std::string name(const Sample& s) {
  return std::string(name_of(s.method)) + ", " + std::string(name_of(s.material)) + (s.wet ? ", wet, " : ", dry, ") +
         std::string(name_of(s.feed));
}

// Four spaces in a row, with something between each two that may be open: main | hole | below | valve | above | bleed |
// air. Water of the main fills what is joined to it; what is joined to the air alone empties; what is shut in keeps its
// state.
class Rig {
 public:
  Rig(Seat seat, bool main_full) : seat_(seat), main_full_(main_full) {}

  // Does the act, and says what was wrong with doing it: empty when nothing was.
  std::string perform(Act act) {
    const std::string fault = fault_of(act);
    apply(act);
    flow();
    if (act != Act::read_zero) zero_read_ = zero_read_ && act != Act::open_bypass && act != Act::shut_bleed;
    return fault;
  }

  [[nodiscard]] bool above() const { return above_; }
  [[nodiscard]] bool below() const { return below_; }
  [[nodiscard]] std::string fault_at_end() const {
    if (machine_) return "the machine is left on";
    if (!main_full_) return "the main is left empty";
    if (!hole_) return "nothing was cut";
    if (seat_ == Seat::tapping_valve ? !valve_open_ : !(stop_placed_ && stop_open_)) return "the service is left shut";
    return {};
  }

 private:
  [[nodiscard]] bool hole_open() const { return hole_ && !(stop_placed_ && !stop_open_); }
  [[nodiscard]] bool between_open() const { return seat_ == Seat::stop || valve_open_ || bypass_; }
  [[nodiscard]] bool air() const { return bleed_ || !closed_; }
  // A tool passes down only through what is open.
  [[nodiscard]] bool way_down() const { return seat_ == Seat::stop ? stop_open_ : valve_open_; }
  // What comes to the open air when the machine is lifted.
  [[nodiscard]] bool held_back() const { return seat_ == Seat::tapping_valve ? above_ : above_ || below_; }
  [[nodiscard]] bool main_shut_off() const { return seat_ == Seat::tapping_valve ? !valve_open_ : !hole_open(); }

  std::string fault_of(Act act) const {
    switch (act) {
      case Act::mount_machine:
        if (seat_ == Seat::stop && !stop_placed_) return "machine on a stop that is not there";
        break;
      case Act::hold_down:
        if (!machine_) return "nothing to hold down";
        break;
      case Act::load_cutter:
      case Act::load_stop:
        if (closed_) return "bar loaded through a closed chamber";
        if (act == Act::load_stop && stop_open_) return "an open stop goes on the bar";
        if (bar_ != 0) return "something is already on the bar";
        break;
      case Act::unload_bar:
        if (closed_ && machine_) return "bar unloaded in a closed chamber";
        break;
      case Act::close_chamber:
        if (bar_ == 0) return "chamber closed on a bare bar";
        break;
      case Act::open_chamber:
        if (above_) return "chamber opened under pressure";
        if (main_full_ && hole_ && valve_open_) return "chamber opened with the valve open";
        if (main_full_ && hole_ && bypass_) return "chamber opened with the bypass open";
        if (main_full_ && !zero_read_) return "chamber opened before zero was read";
        break;
      case Act::open_valve:
        if (machine_ && !closed_) return "valve opened into an open chamber";
        if (machine_ && bleed_) return "valve opened into an open bleed";
        if (machine_ && below_ && !above_) return "valve opened under uneven pressure";
        break;
      case Act::shut_valve:
        if (bar_down_) return "valve shut on the bar";
        break;
      case Act::shut_stop:
        if (bar_down_) return "stop shut on the bar";
        break;
      case Act::open_stop:
        if (seat_ == Seat::pipe && machine_) return "stop opened under the machine";
        if (hole_ && !main_full_) return "stop opened on an empty main";
        break;
      case Act::open_bypass:
        if (bleed_ || !closed_) return "pressure let into an open chamber";
        break;
      case Act::bar_down:
        if (!way_down()) return "bar run into something shut";
        if (bar_ == 0) return "bare bar run down";
        if (!held_) return "bar run down in a machine that is not held";
        break;
      case Act::cut_through:
        if (!machine_ || !held_ || !closed_ || bleed_) return "cut with the rig not tight";
        if (bar_ != 1 || !bar_down_) return "cut without a cutter at the pipe";
        break;
      case Act::cut_thread:
        if (!hole_ || bar_ != 1 || !bar_down_) return "thread without a hole";
        break;
      case Act::seat_stop:
        if (stop_open_) return "open stop set";
        if (machine_ && (bar_ != 2 || !bar_down_)) return "stop set that is not at the hole";
        if (!machine_ && main_full_) return "stop set by hand under pressure";
        break;
      case Act::release_bar:
        if (!stop_placed_ || above_ || !zero_read_) return "bar let go before the stop is proved";
        break;
      case Act::let_go:
      case Act::lift_machine:
        if (held_back()) return "loosened under pressure";
        if (!main_shut_off() && main_full_) return "loosened with the main open";
        if (!bleed_) return "loosened with the bleed shut";
        if (!zero_read_) return "loosened before zero was read";
        if (bar_down_) return "loosened with the bar down";
        if (act == Act::lift_machine && held_) return "lifted while held";
        break;
      case Act::fill_main:
        if (machine_) return "main filled under the machine";
        if (seat_ == Seat::tapping_valve ? valve_open_ : !stop_placed_ || stop_open_)
          return "main filled into an open tap";
        break;
      case Act::read_zero:
        if (!bleed_) return "zero read with the bleed shut";
        if (above_) return "zero cannot be read: there is pressure";
        if (bypass_) return "zero read with the bypass open";
        break;
      case Act::fit_saddle:
      case Act::open_bleed:
      case Act::shut_bleed:
      case Act::bar_up:
      case Act::shut_bypass:
      case Act::read_tight:
        break;
    }
    return {};
  }

  void apply(Act act) {
    switch (act) {
      case Act::fit_saddle:
        stop_placed_ = seat_ == Seat::stop;
        break;
      case Act::mount_machine:
        machine_ = true;
        break;
      case Act::hold_down:
        held_ = true;
        break;
      case Act::load_cutter:
        bar_ = 1;
        break;
      case Act::load_stop:
        bar_ = 2;
        break;
      case Act::unload_bar:
      case Act::release_bar:
        bar_ = 0;
        break;
      case Act::close_chamber:
        closed_ = true;
        break;
      case Act::open_chamber:
        closed_ = false;
        break;
      case Act::open_valve:
        valve_open_ = true;
        break;
      case Act::shut_valve:
        valve_open_ = false;
        break;
      case Act::open_bleed:
        bleed_ = true;
        break;
      case Act::shut_bleed:
        bleed_ = false;
        break;
      case Act::open_bypass:
        bypass_ = true;
        break;
      case Act::shut_bypass:
        bypass_ = false;
        break;
      case Act::open_stop:
        stop_open_ = true;
        break;
      case Act::shut_stop:
        stop_open_ = false;
        break;
      case Act::bar_down:
        bar_down_ = true;
        break;
      case Act::bar_up:
        bar_down_ = false;
        break;
      case Act::cut_through:
        hole_ = true;
        break;
      case Act::seat_stop:
        stop_placed_ = true;
        break;
      case Act::let_go:
        held_ = false;
        break;
      case Act::lift_machine:
        machine_ = closed_ = false;
        break;
      case Act::fill_main:
        main_full_ = true;
        break;
      case Act::read_zero:
        zero_read_ = true;
        break;
      case Act::cut_thread:
      case Act::read_tight:
        break;
    }
  }

  void flow() {
    const bool main_to_below = main_full_ && hole_open();
    const bool main_to_above = main_to_below && between_open();
    const bool air_to_above = air();
    const bool air_to_below = air_to_above && between_open();
    if (main_to_below) below_ = true;
    else if (air_to_below) below_ = false;
    if (main_to_above) above_ = true;
    else if (air_to_above) above_ = false;
  }

  Seat seat_;
  bool main_full_;
  bool hole_ = false, machine_ = false, held_ = false, closed_ = false, valve_open_ = false, bleed_ = false;
  bool stop_open_ = false, stop_placed_ = false, bypass_ = false, bar_down_ = false, above_ = false, below_ = false,
       zero_read_ = false;
  int bar_ = 0;  // 0 bare, 1 cutter, 2 stop
};

std::vector<Act> acts_of(const std::vector<Step>& steps) {
  std::vector<Act> acts;
  for (const Step& step : steps) acts.insert(acts.end(), step.acts.begin(), step.acts.end());
  return acts;
}

std::vector<std::string> faults_in(const std::vector<Act>& acts, Seat seat, bool main_full) {
  std::vector<std::string> faults;
  Rig rig(seat, main_full);
  for (const Act act : acts) {
    if (const std::string fault = rig.perform(act); !fault.empty()) faults.push_back(fault);
  }
  if (const std::string fault = rig.fault_at_end(); !fault.empty()) faults.push_back(fault);
  return faults;
}

const Step& step_named(const std::vector<Step>& steps, std::string_view id) {
  const auto found = std::find_if(steps.begin(), steps.end(), [&](const Step& step) { return step.id == id; });
  INFO("step " << id);
  REQUIRE(found != steps.end());
  return *found;
}

bool has(const std::vector<Step>& steps, std::string_view id) {
  return std::any_of(steps.begin(), steps.end(), [&](const Step& step) { return step.id == id; });
}

}  // namespace

TEST_CASE("no order of work loosens or opens anything that holds pressure") {
  for (const Sample& sample : every_variant()) {
    INFO(name(sample));
    const auto steps = procedure(sample_plan(sample), UnitSystem::us);
    REQUIRE_FALSE(steps.empty());
    CHECK(faults_in(acts_of(steps), seat_of(sample.method), sample.wet) == std::vector<std::string>{});
  }
}

TEST_CASE("the state printed with each step is where the water really stands") {
  for (const Sample& sample : every_variant()) {
    INFO(name(sample));
    Rig rig(seat_of(sample.method), sample.wet);
    for (const Step& step : procedure(sample_plan(sample), UnitSystem::us)) {
      INFO(step.id);
      for (const Act act : step.acts) rig.perform(act);
      CHECK(step.state.pressure_above == rig.above());
      CHECK(step.state.pressure_below == rig.below());
    }
  }
}

TEST_CASE("the model of the rig notices a safety act left out") {
  // Acts without which somebody gets hurt, for each way of tapping a full main.
  struct Omission {
    Method method;
    Act act;
  };
  const Omission omissions[] = {
      {Method::direct, Act::hold_down},   {Method::direct, Act::bar_up},        {Method::direct, Act::shut_valve},
      {Method::direct, Act::open_bleed},  {Method::direct, Act::read_zero},     {Method::direct, Act::shut_stop},
      {Method::direct, Act::open_bypass}, {Method::direct, Act::seat_stop},     {Method::saddle, Act::shut_stop},
      {Method::saddle, Act::read_zero},   {Method::saddle, Act::open_bleed},    {Method::saddle, Act::bar_up},
      {Method::saddle, Act::open_stop},   {Method::sleeve, Act::shut_valve},    {Method::sleeve, Act::open_bleed},
      {Method::sleeve, Act::read_zero},   {Method::sleeve, Act::close_chamber},
  };
  for (const Omission& omission : omissions) {
    INFO(name_of(omission.method) << ", act " << static_cast<int>(omission.act));
    auto acts = acts_of(procedure(sample_plan({.method = omission.method}), UnitSystem::us));
    // The last of them: an earlier bleed is for flushing. A stop is safe by being shut before the cut as well.
    const auto last = omission.act == Act::open_stop ? std::find(acts.begin(), acts.end(), omission.act)
                                                     : std::find(acts.rbegin(), acts.rend(), omission.act).base() - 1;
    if (omission.act == Act::shut_stop && omission.method == Method::direct) {
      // It starts shut; open it, as stops come out of the box.
      *last = Act::open_stop;
    } else {
      acts.erase(last);
    }
    CHECK_FALSE(faults_in(acts, seat_of(omission.method), true).empty());
  }
}

// What one printed state may not become of the one before, whatever was done between.
std::string fault_between(const RigState& before, const RigState& now, Seat seat, bool zero_read) {
  const bool valve_was_open = seat == Seat::stop ? before.stop_open : before.valve_open;
  const bool valve_is_open = seat == Seat::stop ? now.stop_open : now.valve_open;
  const bool water = before.main_full && before.hole;
  if (before.chamber_closed && !now.chamber_closed && water) {
    if (before.pressure_above) return "chamber opened under pressure";
    if (!zero_read) return "chamber opened before zero was read";
    if (before.bypass_open) return "chamber opened with the bypass open";
    if (seat == Seat::pipe && valve_was_open && !before.stop_in_place) return "chamber opened over an open valve";
  }
  if (before.held_down && !now.held_down && water) {
    if (before.pressure_above) return "let go under pressure";
    if (seat != Seat::tapping_valve && before.pressure_below) return "let go over a main that is not shut off";
    if (!before.bleed_open || !zero_read) return "let go before zero was read with the bleed open";
  }
  if (before.machine_on && !now.machine_on && (now.held_down || before.bypass_open)) return "lifted too soon";
  if (valve_was_open && !valve_is_open && before.bar_down && now.bar_down) return "shut on the bar";
  if (before.bar_down && !now.bar_down && before.bar == RigState::Bar::cutter && now.hole && !valve_was_open)
    return "bar under a shut valve";
  if (!valve_was_open && valve_is_open && before.machine_on && before.pressure_below && !before.pressure_above) {
    return "valve opened against the line, the bypass not opened first";
  }
  if (!before.bypass_open && now.bypass_open && (now.bleed_open || !now.chamber_closed))
    return "bypass opened into the air";
  return {};
}

// Walks a procedure by the states it prints.
std::vector<std::string> faults_of_states(const std::vector<Step>& steps, bool main_full) {
  std::vector<std::string> faults;
  RigState before;
  before.main_full = main_full;
  const Seat seat =
      std::any_of(steps.begin(), steps.end(), [](const Step& s) { return s.id == "sleeve.fit"; }) ? Seat::tapping_valve
      : std::any_of(steps.begin(), steps.end(), [](const Step& s) { return s.id == "saddle.fit"; }) ? Seat::stop
                                                                                                    : Seat::pipe;
  bool zero_read = false;
  for (const Step& step : steps) {
    const bool reads_zero = std::find(step.acts.begin(), step.acts.end(), Act::read_zero) != step.acts.end();
    if (reads_zero && (step.state.bypass_open || !step.state.bleed_open || step.state.pressure_above)) {
      faults.push_back(std::string(step.id) + ": zero read with water coming or the bleed shut");
    }
    // A step of several acts, as of a dry main, has read it before it lets go.
    zero_read = zero_read || reads_zero;
    const RigState from = step.acts.size() > 2 && reads_zero ? after(before, Act::open_bleed, seat) : before;
    if (const std::string fault = fault_between(from, step.state, seat, zero_read); !fault.empty()) {
      faults.push_back(std::string(step.id) + ": " + fault);
    }
    if (step.state.bypass_open || !step.state.bleed_open) zero_read = false;
    before = step.state;
  }
  return faults;
}

TEST_CASE("each printed state may follow the one before") {
  for (const Sample& sample : every_variant()) {
    INFO(name(sample));
    Plan plan = sample_plan(sample);
    for (const int count : {1, 3}) {
      plan.method.count = count;
      CHECK(faults_of_states(procedure(plan, UnitSystem::us), sample.wet) == std::vector<std::string>{});
    }
  }
}

TEST_CASE("an order of work with two steps exchanged is found out") {
  struct Exchange {
    Method method;
    std::string_view first;
    std::string_view second;
  };
  constexpr std::array exchanges = {
      Exchange{Method::direct, "change.bleed", "change.tool"},     // opened before zero
      Exchange{Method::direct, "change.back-out", "change.shut"},  // valve shut on the bar
      Exchange{Method::direct, "set.equalise", "set.open"},        // valve before the bypass
      Exchange{Method::direct, "set.bleed", "off.lift"},           // let go before zero
      Exchange{Method::direct, "set.stop", "off.lift"},
      Exchange{Method::saddle, "change.back-out", "change.shut"},
      Exchange{Method::saddle, "change.bleed", "off.lift"},
      Exchange{Method::saddle, "change.shut", "off.lift"},
      Exchange{Method::sleeve, "change.back-out", "change.shut"},
      Exchange{Method::sleeve, "change.bleed", "off.lift"},
      Exchange{Method::sleeve, "change.shut", "change.bleed"},
  };
  for (const Exchange& exchange : exchanges) {
    INFO(name_of(exchange.method) << ": " << exchange.first << " and " << exchange.second);
    auto steps = procedure(sample_plan({.method = exchange.method}), UnitSystem::us);
    const auto at = [&](std::string_view id) {
      return std::find_if(steps.begin(), steps.end(), [&](const Step& step) { return step.id == id; });
    };
    REQUIRE(at(exchange.first) < at(exchange.second));
    REQUIRE(at(exchange.second) != steps.end());
    std::iter_swap(at(exchange.first), at(exchange.second));
    RigState state;
    for (Step& step : steps) {
      for (const Act act : step.acts) state = after(state, act, seat_of(exchange.method));
      step.state = state;
    }
    CHECK_FALSE(faults_of_states(steps, true).empty());
  }
}

TEST_CASE("bypass, valve, bleed and chamber stand in every state that is printed") {
  for (const Sample& sample : every_variant()) {
    INFO(name(sample));
    for (const Step& step : procedure(sample_plan(sample), UnitSystem::us)) {
      if (!step.moves_valves) continue;
      const auto valves = valves_of(step.state, seat_of(sample.method));
      CHECK(valves[1].name == "bypass");
      CHECK(valves[1].open == step.state.bypass_open);
      CHECK(valves[3].stands == (step.state.pressure_above ? "AT LINE PRESSURE" : "AT ZERO"));
      CHECK(step.state.machine_on);
    }
  }
}

TEST_CASE("a step says what it does: its words and its acts are of one thing") {
  struct Said {
    Act act;
    std::vector<std::string_view> words;  // one of them stands in the action
  };
  const Said said[] = {
      {Act::open_bypass, {"pen the bypass"}},
      {Act::shut_bypass, {"hut the bypass", "ypass (the equalizing valve) shut", "ypass (equalizing valve) shut"}},
      {Act::open_bleed, {"pen the bleed", "rack the bleed open"}},
      {Act::open_valve,
       {"achine valve open", "open the machine valve", "apping valve fully open", "Open the tapping valve"}},
      {Act::shut_valve, {"hut the machine valve", "hut the tapping valve", "Shut the valve"}},
      {Act::shut_stop, {"hut the corporation stop", "hut the stop"}},
      {Act::open_chamber, {"pen the chamber"}},
      {Act::close_chamber, {"lose the chamber", "close the chamber"}},
      {Act::let_go, {"lacken the chain", "nscrew the machine", "out the bolts"}},
      {Act::lift_machine, {"ift the machine clear", "nscrew the machine"}},
      {Act::read_zero, {"gauge go to zero", "nothing may come"}},
      {Act::seat_stop, {"Make-up: "}},
      {Act::bar_up, {"mark 0", "draw the bar back"}},
  };
  for (const Sample& sample : every_variant()) {
    INFO(name(sample));
    for (const Step& step : procedure(sample_plan(sample), UnitSystem::us)) {
      for (const Said& one : said) {
        if (std::find(step.acts.begin(), step.acts.end(), one.act) == step.acts.end()) continue;
        INFO(step.id << ", act " << static_cast<int>(one.act));
        CHECK(std::any_of(one.words.begin(), one.words.end(), [&](std::string_view words) {
          return step.action.view().find(words) != std::string_view::npos;
        }));
      }
    }
  }
}

TEST_CASE("the feed stays on until threads lead, the test comes before the cut, and the coupon is kept") {
  const auto direct = procedure(sample_plan(), UnitSystem::us);
  for (const auto id : {"tap.thread", "set.stop"}) {
    CHECK(step_named(direct, id).action.view().find("started two or three threads") != std::string_view::npos);
    CHECK(step_named(direct, id).action.view().find("let off the feed") != std::string_view::npos);
  }
  CHECK(step_named(direct, "change.back-out")
            .action.view()
            .find("Engage the feed again before the last thread lets go") != std::string_view::npos);
  CHECK(step_named(direct, "change.stop")
            .action.view()
            .find("Take the nut off its outlet and screw the insertion tool on,") != std::string_view::npos);
  CHECK(step_named(direct, "off.look").action.view().find("Put the nut back on the stop's outlet") !=
        std::string_view::npos);
  CHECK(step_named(direct, "finish.machine").action.view().find("tool, chain, seals") != std::string_view::npos);
  const auto saddle = procedure(sample_plan({.method = Method::saddle}), UnitSystem::us);
  const auto index = [&](std::string_view id) { return &step_named(saddle, id) - saddle.data(); };
  CHECK(index("saddle.test") < index("cut.through"));
  CHECK(step_named(saddle, "off.coupon").action.view().find("keep it with the order") != std::string_view::npos);
  for (const Material material : {Material::pvc, Material::asbestos_cement}) {
    const auto steps = procedure(sample_plan({.material = material}), UnitSystem::us);
    CHECK(step_named(steps, "pipe.clean").action.view().find("no hammer") != std::string_view::npos);
  }
}

TEST_CASE("a contingency has its condition apart from what is done") {
  for (const Sample& sample : every_variant()) {
    const Plan plan = sample_plan(sample);
    for (const Step& step : contingencies(plan, UnitSystem::us)) {
      INFO(step.id);
      CHECK_FALSE(step.condition.empty());
      CHECK(step.condition.view().find(':') == std::string_view::npos);
      CHECK(in_words(step) == std::string(step.condition.view()) + ": " + std::string(step.action.view()));
    }
  }
}

TEST_CASE("zero is read, as a hold point, before the machine is loosened") {
  for (const Sample& sample : every_variant()) {
    INFO(name(sample));
    bool held_for_zero = false;
    for (const Step& step : procedure(sample_plan(sample), UnitSystem::us)) {
      for (const Act act : step.acts) {
        if (act == Act::read_zero) held_for_zero = !step.hold_point.empty();
        if (act == Act::let_go) CHECK(held_for_zero);
      }
    }
  }
}

TEST_CASE("steps carry the job's own numbers") {
  const auto steps = procedure(sample_plan(), UnitSystem::us);
  CHECK(step_named(steps, "change.back-out").action.view().find("about 65 lbf at 82 psi") != std::string::npos);
  CHECK(step_named(steps, "machine.chain").action.view().find("at least 18-13/16 in of chain with 1 extension") !=
        std::string::npos);
  CHECK(step_named(steps, "pipe.check")
            .action.view()
            .find("sound wall at the tap at least 0.237 in; circumference of the pipe 21-1/2 in to 21-7/8 in") !=
        std::string::npos);
  CHECK(step_named(steps, "pipe.pressure").action.view().find("Planned for 82 psi. Stop over 100 psi.") !=
        std::string::npos);
  CHECK(step_named(steps, "set.stop")
            .action.view()
            .find("3-3/4 turns by hand, then 2 turns by wrench; 2 threads left showing") != std::string::npos);
  CHECK(step_named(steps, "tap.thread")
            .action.view()
            .find("Stop at mark 4: mark 3 + 1-1/16 in, 12-1/2 turns of the bar after 3") != std::string::npos);
  const auto metric = procedure(sample_plan(), UnitSystem::si);
  CHECK(step_named(metric, "pipe.check").action.view().find("at least 6.1 mm") != std::string::npos);
}

TEST_CASE("every mark of the card is made in a step, and used") {
  for (const Sample& sample : every_variant()) {
    INFO(name(sample));
    const Plan plan = sample_plan(sample);
    std::string text;
    for (const Step& step : procedure(plan, UnitSystem::us)) text.append(in_words(step)) += '\n';
    const auto marks = bar_marks(plan, UnitSystem::us);
    CHECK(marks.size() == (sample.method != Method::direct ? 4U : sample.wet ? 7U : 6U));
    CHECK(text.find("mark 0") != std::string::npos);
    CHECK(text.find("mark 1.") != std::string::npos);
    // The card has them all; a step that works by one says where it is.
    const std::string set_out(step_named(procedure(plan, UnitSystem::us), "cut.down").action.view());
    for (const BarMark& mark : marks) {
      INFO(mark.key);
      if (mark.key == "touch") continue;
      if (mark.key != "drawn-back") CHECK(set_out.find(' ' + std::string(mark.sign)) != std::string::npos);
      if (mark.key == "tap-catches" || mark.key == "far-wall") continue;
      CHECK(text.find(mark.where) != std::string::npos);
    }
  }
}

TEST_CASE("what a step works with is on the truck, and nothing else is") {
  struct Named {
    std::string_view key;
    std::string_view word;  // of the order of work, or of what to do when it goes wrong
  };
  constexpr std::array named = {Named{"corporation-stop", "orporation stop"},
                                Named{"service-saddle", "Fit the saddle"},
                                Named{"tapping-sleeve", "Fit the sleeve"},
                                Named{"tapping-valve", "tapping valve"},
                                Named{"support", "lock up "},
                                Named{"thread-sealant", "inlet thread"},
                                Named{"cutting-grease", "cutting grease"},
                                Named{"disinfectant", "chlorine solution"},
                                Named{"machine-saddle", "machine saddle"},
                                Named{"spare-gasket", "spare gasket"},
                                Named{"chain", "Chain around the pipe"},
                                Named{"chain-extension", "extension"},
                                Named{"insertion-tool", "insertion tool"},
                                Named{"combined-drill-and-tap", "combined "},
                                Named{"shell-cutter", "Put the cutter"},
                                Named{"stop-adapter", "Screw the machine on there, by its adapter"},
                                Named{"valve-adapter", "Bolt the machine to the valve by its adapter"},
                                Named{"test-pump", "test pump"},
                                Named{"trial-piece", "trial piece"},
                                Named{"trench-shield", "Set the shield"},
                                Named{"bucket", "the bucket fills"},
                                Named{"branch-fittings", "branch fittings"},
                                Named{"encasement-tape", "polyethylene tape"},
                                Named{"powered-feed", "Start the drive"},
                                Named{"rule", "with the rule"},
                                Named{"wrenches", "wrench"},
                                Named{"waste-hose", "by the hose"},
                                Named{"lock-and-tag", "lock and tag"},
                                Named{"pressure-gauge", "gauge"},
                                Named{"diameter-tape", "with the tape"},
                                Named{"wall-gauge", "gauge the wall"},
                                Named{"thermometer", "pipe's temperature"},
                                Named{"scraper", "with the scraper"},
                                Named{"bonding-jumper", "onding jumper"},
                                Named{"blanket", "Lay the blanket"},
                                Named{"ladder", "ladder in"},
                                Named{"sump-pump", "sump pump"},
                                Named{"valve-key", "Put the key"},
                                Named{"repair-clamp", "repair clamp"},
                                Named{"plug", "the plug,"},
                                Named{"torque-wrench", "orque wrench"},
                                Named{"tapping-machine", "machine"},
                                Named{"service-pipe", "Connect the "},
                                Named{"machine-gasket", "Set gasket"},
                                Named{"asbestos-kit", "et rags"}};
  for (const Sample& sample : every_variant()) {
    INFO(name(sample));
    const Plan plan = sample_plan(sample);
    std::string text;
    for (const auto& list : {procedure(plan, UnitSystem::us), contingencies(plan, UnitSystem::us)}) {
      for (const Step& step : list) text.append(in_words(step)) += '\n';
    }
    const auto load = load_list(plan, UnitSystem::us);
    for (const Named& thing : named) {
      INFO(thing.key);
      const bool loaded =
          std::any_of(load.begin(), load.end(), [&](const LoadItem& item) { return item.key == thing.key; });
      CHECK(loaded == (text.find(thing.word) != std::string::npos));
    }
    for (const LoadItem& item : load) {
      INFO(item.key);
      CHECK(std::any_of(named.begin(), named.end(), [&](const Named& thing) { return thing.key == item.key; }));
    }
  }
}

TEST_CASE("steps that do not apply do not appear") {
  const auto wet = procedure(sample_plan(), UnitSystem::us);
  const auto dry = procedure(sample_plan({.wet = false}), UnitSystem::us);
  CHECK(has(wet, "set.equalise"));
  CHECK_FALSE(has(dry, "set.equalise"));
  CHECK(has(dry, "prepare.empty"));
  CHECK(has(dry, "fill.main"));
  CHECK_FALSE(has(wet, "fill.main"));
  CHECK_FALSE(has(wet, "pipe.holds"));
  CHECK(has(procedure(sample_plan({.verdict = Verdict::hold}), UnitSystem::us), "pipe.holds"));
  CHECK_FALSE(has(procedure(sample_plan({.method = Method::saddle}), UnitSystem::us), "machine.chain"));
  CHECK_FALSE(has(wet, "pipe.wrap"));

  Plan plan = sample_plan();
  plan.job.main.encased = true;
  plan.method.count = 3;
  plan.pressure.reduce_to = 60.0 * units::psi;
  plan.stop_numbers = {{ReadingId::line_pressure, std::nullopt, Measure(55.0 * units::psi)}};  // less, by a surge
  const auto more = procedure(plan, UnitSystem::us);
  CHECK(has(more, "pipe.wrap"));
  CHECK(has(more, "next.tap"));
  CHECK(has(more, "finish.pressure"));
  CHECK(step_named(more, "pipe.pressure").action.view().find("lowered to 55 psi or less") != std::string::npos);
}

TEST_CASE("the main, not a ratchet, decides the words for plastic and asbestos cement") {
  const auto pvc = procedure(sample_plan({.material = Material::pvc}), UnitSystem::us);
  CHECK(step_named(pvc, "change.stop").action.view().find("PTFE tape") != std::string::npos);
  CHECK(step_named(pvc, "change.tool").action.view().find("coupon") != std::string::npos);
  CHECK(has(pvc, "cut.blanket"));
  CHECK_FALSE(has(procedure(sample_plan(), UnitSystem::us), "cut.blanket"));
  CHECK(step_named(procedure(sample_plan(), UnitSystem::us), "cut.through").action.view().find("hole full at 5/8 in") !=
        std::string::npos);
  const auto cement = procedure(sample_plan({.material = Material::asbestos_cement}), UnitSystem::us);
  CHECK(step_named(cement, "pipe.clean").action.view().find("No scraping dry") != std::string::npos);
}

TEST_CASE("a no-go has nothing to do and nothing that could go wrong") {
  const Plan plan = sample_plan({.verdict = Verdict::no_go});
  CHECK(procedure(plan, UnitSystem::us).empty());
  CHECK(contingencies(plan, UnitSystem::us).empty());
}

TEST_CASE("ids of steps are unique, and every step says something") {
  for (const Sample& sample : every_variant()) {
    INFO(name(sample));
    const Plan plan = sample_plan(sample);
    for (const auto& list : {procedure(plan, UnitSystem::us), contingencies(plan, UnitSystem::si)}) {
      std::set<std::string_view> ids;
      for (const Step& step : list) {
        INFO(step.id);
        CHECK(ids.insert(step.id).second);
        CHECK(step.action.view().size() > 20);
        CHECK_FALSE(step.phase.empty());
      }
    }
  }
}

TEST_CASE("trouble under pressure starts with getting out") {
  const auto wet = contingencies(sample_plan(), UnitSystem::us);
  REQUIRE_FALSE(wet.empty());
  CHECK(wet.front().id == "trouble.breaks");
  for (const auto id : {"trouble.seat-leaks", "trouble.jams", "trouble.no-zero", "trouble.stop-loose"})
    CHECK(has(wet, id));
  CHECK(has(contingencies(sample_plan({.method = Method::saddle}), UnitSystem::us), "trouble.coupon"));
  CHECK_FALSE(has(contingencies(sample_plan({.wet = false}), UnitSystem::us), "trouble.no-zero"));
}

}  // namespace mainbore
