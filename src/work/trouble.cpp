// What to do when it goes wrong. One rule runs through all of it: the machine on the pipe is the plug, so it stays
// there until the main is shut down or the stop is known to hold.
#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"
#include "work/by_engineer.hpp"

namespace mainbore {
namespace {

class Contingencies {
 public:
  Contingencies(const Plan& plan, UnitSystem system) : plan_(plan), system_(system) {}

  std::vector<Step> all() && {
    if (plan_.verdict == Verdict::no_go || plan_.method.kind == Method::none) return {};
    list_.reserve(16);
    if (wet()) breaks();
    else water_comes();
    if (work::only_by_engineer(plan_)) return std::move(list_);  // nothing is cut
    if (wet()) under_pressure();
    jams();
    if (direct()) stop_troubles();
    if (plastic() || !direct()) coupon();
    if (plastic()) cracks();
    not_water();
    return std::move(list_);
  }

 private:
  void add(Step step) {
    step.phase = "If it goes wrong";
    list_.push_back(std::move(step));
  }
  [[nodiscard]] bool wet() const { return plan_.job.main.pressurised.value_or(true); }
  [[nodiscard]] bool direct() const { return plan_.method.kind == Method::direct; }
  [[nodiscard]] bool plastic() const { return is_plastic(plan_.main.material); }

  void breaks() {
    add({.id = "trouble.breaks",
         .condition = "Main cracks, moves or spurts",
         .action = "everybody out of the pit, now. Valves shut from above. Nobody goes back for tools, and nobody goes in "
                   "after anyone into rising water.",
         .uses = {"valve-key"}});
  }
  void water_comes() {
    add({.id = "trouble.water-comes",
         .condition = "Water comes where there should be none",
         .action = "out of the pit, see that every valve is shut and locked, drain again before going on."});
  }

  void under_pressure() {
    seat_leaks();
    no_zero();
    add({.id = "trouble.bar-out",
         .condition = "Bar gets away",
         .action = "do not catch it. Stand clear; it stops at its end. Then feed it back with the screw, or shut the main "
                   "down."});
  }
  void seat_leaks() {
    std::string text = direct() ? "stop feeding. Take up both sides evenly, a little"
                                : "stop feeding. Take the nuts up evenly, a little";
    const bool torqued = direct() && plan_.setup.clamp && plan_.setup.clamp->stud_torque;
    if (torqued) {
      text += ", as far as the machine's maker allows (holding alone takes up to " +
              format_measure(plan_.setup.clamp->stud_torque->high, system_) + " on a stud)";
    }
    text += ". Not cut through yet: if it still weeps, take it off and set it again on cleaner pipe";
    if (direct()) text += ", with the spare gasket";
    text += ". Cut through: leave it mounted and have the main shut down.";
    Step step{.id = "trouble.seat-leaks",
              .condition = direct() ? "Weep at the gasket" : "Weep at the seat",
              .action = std::move(text)};
    if (direct()) step.uses = {"spare-gasket"};
    add(std::move(step));
  }
  void no_zero() {
    std::string text = "nothing is slackened. ";
    text += direct() ? "Work the machine valve once more, open to shut; is the bar clear of it? With the stop set: turn it "
                       "on a little. "
            : plan_.method.kind == Method::saddle ? "Work the stop once more, open to shut; is the cutter clear of it? "
                                                  : "Work the valve once more, open to shut; is the cutter clear of it? ";
    text += "Still not: leave everything mounted, stand clear, have the main shut down and drained, then take it off.";
    add({.id = "trouble.no-zero", .condition = "Gauge does not go to zero, or creeps up", .action = std::move(text)});
  }

  void jams() {
    add({.id = "trouble.jams",
         .condition = "Feed jams or the tool stops",
         .action = std::string("no longer bar, no second man on it. Back off half a turn, ") +
                   (wet() ? "crack the bleed to clear chips, " : "clear the chips, ") + "try lightly. Jams again: draw back, " +
                   (wet() ? "shut, bleed to zero, " : "") + "and look at the tool."});
  }

  void stop_troubles() {
    add({.id = "trouble.stop-loose",
         .condition = "Stop will not tighten, or turns without end",
         .action = std::string("thread stripped or cut too deep. ") +
                   (wet() ? "Leave it as far in as it holds, machine on, chamber shut, and have the main shut down. "
                          : "Take it out. ") +
                   "Then the plug, a saddle over the hole, or the repair clamp.",
         .uses = {"plug", "repair-clamp"}});
    add({.id = "trouble.wrong-threads",
         .condition = "Too many or too few threads show",
         .action = "too many: one more turn at most, wrench on the inlet side; a stop that binds is not forced. Too few, or "
                   "none: the hole is too deep. If it holds, have the utility say whether it stays; if it weeps, shut down, "
                   "then a saddle.",
         .uses = {"wrenches"}});
  }

  void coupon() {
    add({.id = "trouble.coupon",
         .condition = "Coupon not in the cutter",
         .action = "open nothing toward customers. Flush hard to waste through the new tap or the nearest hydrant; look for "
                   "it; tell the utility in writing if it is not found."});
  }
  void cracks() {
    add({.id = "trouble.plastic",
         .condition = "White streaks, a click or a line running from the hole",
         .action = "treat it as a crack. Out of the pit, shut down, cut the length out."});
  }
  void not_water() {
    add({.id = "trouble.not-water",
         .condition = "Anything but water, or any smell, at the first breakthrough",
         .action = "stop, leave machine and valves as they are, everybody away upwind, no flames or phones near, call the "
                   "emergency number and the pipe's owner."});
  }

  const Plan& plan_;
  UnitSystem system_;
  std::vector<Step> list_;
};

}  // namespace

std::vector<Step> contingencies(const Plan& plan, UnitSystem system) { return Contingencies(plan, system).all(); }

}  // namespace mainbore
