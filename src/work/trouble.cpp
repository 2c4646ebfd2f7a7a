// What to do when it goes wrong. One rule runs through all of it: the machine on the pipe is the plug, so it stays
// there until the main is shut down or the stop is known to hold.
#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"
#include "words/steps.hpp"
#include "work/by_engineer.hpp"

namespace mainbore {
namespace {

using words::StepWord;

class Contingencies {
 public:
  Contingencies(const Plan& plan, Audience audience) : plan_(plan), audience_(audience) {}

  std::vector<Step> all() && {
    if (plan_.verdict == Verdict::no_go || plan_.method.kind == Method::none) return {};
    list_.reserve(16);
    if (wet()) add("trouble.breaks", StepWord::breaks_when, said(StepWord::breaks), {"valve-key"});
    else add("trouble.water-comes", StepWord::water_when, said(StepWord::water));
    if (work::only_by_engineer(plan_)) return std::move(list_);  // nothing is cut
    if (wet()) under_pressure();
    add("trouble.jams", StepWord::jams_when, said(wet() ? StepWord::jams : StepWord::jams_dry));
    if (direct()) stop_troubles();
    if (plastic() || !direct()) add("trouble.coupon", StepWord::coupon_when, said(StepWord::coupon_lost));
    if (plastic()) add("trouble.plastic", StepWord::crack_when, said(StepWord::crack));
    add("trouble.not-water", StepWord::not_water_when, said(StepWord::not_water));
    return std::move(list_);
  }

 private:
  using Things = BoundedList<std::string_view, most_used>;
  void add(std::string_view id, StepWord when, Words action, Things uses = {}) {
    Step step{.id = id,
              .phase = say(StepWord::phase_trouble, audience_.language),
              .condition = said(when),
              .action = std::move(action)};
    step.uses = uses;
    list_.push_back(std::move(step));
  }
  [[nodiscard]] Words said(StepWord word) const { return Words::standing(say(word, audience_.language)); }
  [[nodiscard]] bool wet() const { return plan_.job.main.is_pressurized(); }
  [[nodiscard]] bool direct() const { return plan_.method.kind == Method::direct; }
  [[nodiscard]] bool plastic() const { return is_plastic(plan_.main.material); }

  void under_pressure() {
    seat_leaks();
    const StepWord no_zero = direct()                              ? StepWord::no_zero_machine
                             : plan_.method.kind == Method::saddle ? StepWord::no_zero_stop
                                                                   : StepWord::no_zero_valve;
    add("trouble.no-zero", StepWord::no_zero_when, said(no_zero));
    add("trouble.bar-out", StepWord::bar_out_when, said(StepWord::bar_out));
  }
  void seat_leaks() {
    if (!direct()) return add("trouble.seat-leaks", StepWord::leaks_seat_when, said(StepWord::leaks_seat));
    std::string torque;
    const auto& clamp = plan_.setup.clamp;
    if (clamp && clamp->stud_torque) torque = format_measure(clamp->stud_torque->high, audience_);
    add("trouble.seat-leaks", StepWord::leaks_gasket_when,
        say(StepWord::leaks_gasket, audience_.language, {{"torque", torque}}), {"spare-gasket"});
  }
  void stop_troubles() {
    add("trouble.stop-loose", StepWord::loose_when, said(wet() ? StepWord::loose : StepWord::loose_dry),
        {"plug", "repair-clamp"});
    add("trouble.wrong-threads", StepWord::threads_when, said(StepWord::threads), {"wrenches"});
  }

  const Plan& plan_;
  Audience audience_;
  std::vector<Step> list_;
};

}  // namespace

std::vector<Step> contingencies(const Plan& plan, Audience audience) { return Contingencies(plan, audience).all(); }

}  // namespace mainbore
