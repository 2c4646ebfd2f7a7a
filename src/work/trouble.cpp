// What to do when it goes wrong. One rule runs through all of it: the machine on the pipe is the plug, so it stays
// there until the main is shut down or the stop is known to hold.
#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"

namespace mainbore {
namespace {

constexpr std::string_view heading = "If it goes wrong";

}  // namespace

std::vector<Step> contingencies(const Plan& plan, UnitSystem system) {
  const Method kind = plan.method.kind;
  if (plan.verdict == Verdict::no_go || kind == Method::none) return {};
  const bool wet = plan.job.main.pressurised.value_or(true);
  const bool direct = kind == Method::direct;
  const bool plastic = is_plastic(plan.main.material);
  std::vector<Step> list;
  list.reserve(16);
  const auto add = [&](std::string_view id, Words text) {
    list.push_back({id, heading, std::move(text), {}, {}, {}});
  };

  if (wet) {
    add("trouble.breaks",
        "Main cracks, moves or spurts: everybody out of the pit, now. Valves shut from above. Nobody goes back for "
        "tools, and nobody goes in after anyone into rising water.");
    std::string seat = direct ? "Weep at the gasket: stop feeding. Take up both sides evenly, a little"
                              : "Weep at the seat: stop feeding. Take the nuts up evenly, a little";
    if (direct && plan.setup.clamp && plan.setup.clamp->stud_torque) {
      seat += ", as far as the machine's maker allows (holding alone takes up to " +
              format_measure(plan.setup.clamp->stud_torque->high, system) + " on a stud)";
    }
    seat +=
        ". Not cut through yet: if it still weeps, take it off and set it again on cleaner pipe" +
        std::string(direct ? ", with the spare gasket" : "") +
        ". Cut through: leave it mounted and have the main shut down.";
    add("trouble.seat-leaks", std::move(seat));
    std::string bleed = "Gauge does not go to zero, or creeps up: nothing is slackened. ";
    bleed += direct ? "Work the machine valve once more, open to shut; is the bar clear of it? With the stop set: turn "
                      "it on a little. "
             : kind == Method::saddle ? "Work the stop once more, open to shut; is the cutter clear of it? "
                                      : "Work the valve once more, open to shut; is the cutter clear of it? ";
    bleed += "Still not: leave everything mounted, stand clear, have the main shut down and drained, then take it off.";
    add("trouble.no-zero", std::move(bleed));
    add("trouble.bar-out",
        "Bar gets away: do not catch it. Stand clear; it stops at its end. Then feed it back with the screw, or shut "
        "the main down.");
  } else {
    add("trouble.water-comes",
        "Water comes where there should be none: out of the pit, see that every valve is shut and locked, drain again "
        "before going on.");
  }
  add("trouble.jams",
      std::string("Feed jams or the tool stops: no longer bar, no second man on it. Back off half a turn, ") +
          (wet ? "crack the bleed to clear chips, " : "clear the chips, ") + "try lightly. Jams again: draw back, " +
          (wet ? std::string("shut, bleed to zero, ") : std::string()) + "and look at the tool.");
  if (direct) {
    add("trouble.stop-loose",
        std::string("Stop will not tighten, or turns without end: thread stripped or cut too deep. ") +
            (wet ? "Leave it as far in as it holds, machine on, chamber shut, and have the main shut down. "
                 : "Take it out. ") +
            "Then the plug, a saddle over the hole, or the repair clamp.");
    add("trouble.wrong-threads",
        "Too many threads show: one more turn at most, wrench on the inlet side; a stop that binds is not forced. Too "
        "few, or none: the hole is too deep. If it holds, have the utility say whether it stays; if it weeps, shut "
        "down, then a saddle.");
  }
  if (plastic || !direct) {
    add("trouble.coupon",
        "Coupon not in the cutter: open nothing toward customers. Flush hard to waste through the new tap or the "
        "nearest hydrant; look for it; tell the utility in writing if it is not found.");
  }
  if (plastic) {
    add("trouble.plastic",
        "White streaks, a click or a line running from the hole: treat it as a crack. Out of the pit, shut down, cut "
        "the length out.");
  }
  add("trouble.not-water",
      "Anything but water, or any smell, at the first breakthrough: stop, leave machine and valves as they are, "
      "everybody away upwind, no flames or phones near, call the emergency number and the pipe's owner.");
  return list;
}

}  // namespace mainbore
