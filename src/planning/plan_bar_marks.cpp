// The marks on the bar: what is known of pipe, tool and machine, taken to the safe side of each mark.
#include <algorithm>

#include "planning/calculations.hpp"
#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

constexpr auto drill_point = mechanics::Angle::degrees(118.0);

Length greatest_wall(const Site& site) {
  const ResolvedMain& main = site.main;
  if (main.wall_basis == WallBasis::measured) return *main.wall_nominal + site.rules.measuring.wall_uncertainty.value;
  Length wall = *main.wall_nominal;
  for (const Pipe* pipe : main.candidates) {
    if (pipe->wall) wall = std::max(wall, *pipe->wall + pipe->wall_minus);
  }
  return wall;
}

mechanics::BarTool tool_of(const Site& site, const Candidate& plan, const MarksPlan& marks) {
  const ToolFacts& facts = site.job().tool;
  const Rules& rules = site.rules;
  mechanics::BarTool tool;
  tool.width = *plan.method.hole;
  tool.beyond = rules.drilling.clearance.value;
  const bool direct = plan.method.kind == Method::direct;
  if (direct && !is_plastic(site.main.material) && plan.setup.drill) {
    tool.width = *plan.setup.drill;
    tool.point = drill_point;
  }
  if (direct) {
    tool.lead = facts.lead;
    tool.tap_depth = marks.tap_depth;
    if (marks.by_trial) tool.found_by_trial = site.job().service.trial.depth;
    tool.length = facts.length;
    tool.insertion_length = facts.insertion_length;
  }
  return tool;
}

// What stands between the drawn-back tool and the pipe, and must be passed before it is shut.
std::optional<Length> height_to_clear(const Candidate& plan) {
  if (plan.method.kind == Method::direct)
    return plan.setup.machine == nullptr ? std::nullopt : plan.setup.machine->valve_height;
  const FittingFacts& fitting = plan.fitting;
  if (plan.method.kind != Method::saddle || !fitting.saddle_height.value || !fitting.stop_length.value)
    return std::nullopt;
  return *fitting.saddle_height.value + *fitting.stop_length.value;
}

void mark_the_pipe(const Site& site, const Candidate& plan, MarksPlan& marks) {
  const ResolvedMain& main = site.main;
  if (!plan.method.hole || !main.od || !main.wall_nominal || !main.wall_least || !(*main.wall_least > Length())) return;
  const auto farthest = farthest_wall(site);
  if (!farthest || !main.od_least) return;
  const mechanics::PipeRange pipe{*main.od_least, *main.od, *main.wall_least, greatest_wall(site), *farthest};
  if (pipe.greatest_wall + pipe.farthest_wall >= pipe.least_od) return;
  marks.at = mechanics::bar_marks(pipe, tool_of(site, plan, marks));
  // Feed is counted from the touch of a shell cutter's teeth; its pilot goes ahead of them.
  const Length ahead = pilot_ahead(site, plan.method.kind);
  const Length limit = *far_wall_feed(site) - ahead;
  if (limit > marks.at->breakthrough) marks.limit = limit;
}

}  // namespace

std::optional<MarksPlan> bar_marks(const Site& site, const Candidate& plan, Recorder& taken) {
  if (plan.method.kind == Method::none) return std::nullopt;
  MarksPlan marks;
  const ToolFacts& tool = site.job().tool;
  const MachineProfile* machine = plan.setup.machine;
  marks.clear = height_to_clear(plan);
  if (machine != nullptr) marks.feed_pitch = machine->feed_pitch;
  if (plan.method.kind == Method::direct) {
    const auto& trial = site.job().service.trial.depth;
    marks.by_trial = trial && !over(shallowest_trial(site, plan), *trial) &&
                     std::none_of(plan.said.findings.list().begin(), plan.said.findings.list().end(),
                                  [](const Finding& one) { return one.code == FindingCode::makeup_trial_off; });
    if (plan.makeup) marks.tap_depth = plan.makeup->tip_depth;
    const TapThread* thread = site.catalog.thread(*plan.method.thread, plan.method.tap);
    if (marks.tap_depth && thread != nullptr) marks.tap_turns = *marks.tap_depth / thread->form.pitch();
    if (machine != nullptr) marks.drawn_back = machine->standoff;
    if (marks.drawn_back && tool.length && tool.insertion_length)
      marks.stop_drawn_back = mechanics::drawn_back_with(*marks.drawn_back, *tool.length, *tool.insertion_length);
  }
  mark_the_pipe(site, plan, marks);
  write_marks(site, plan, marks, marks.at ? std::optional(greatest_wall(site)) : std::nullopt, taken);
  return marks;
}

}  // namespace mainbore::planning
