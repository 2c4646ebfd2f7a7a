// Nobody sees the far wall from inside a closed chamber: what goes on the bar must stop short of it by its lengths alone.
#include <algorithm>

#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

// A drill is as wide as its thread asks; of a thread whose drill is not listed, as the hole over its threads.
Length cut_width(const Site& site, const Candidate& candidate) {
  const Length hole = *candidate.method.hole;
  if (is_plastic(site.main.material) || candidate.method.kind != Method::direct) return hole;
  const TapThread* const thread = site.catalog.thread(*candidate.method.thread, candidate.method.tap);
  return thread != nullptr && thread->drill ? *thread->drill : hole;
}

// How deep the end of the tool goes below the outside of the pipe. A trial with this very tool says it; else the cutter of a
// combined tool stands ahead of its tap by what was measured, and by its stroke at the least.
std::optional<Length> tool_depth(const Site& site, Candidate& candidate) {
  const auto stroke = stroke_through(site, candidate, cut_width(site, candidate));
  if (!stroke) return std::nullopt;
  const Length pilot = pilot_ahead(site, candidate.method.kind);
  if (candidate.method.kind != Method::direct) return *stroke + pilot;
  const auto& trial = site.job().service.trial.depth;
  if (trial) return std::max(*trial, *stroke);
  const Length lead = std::max(*stroke, site.job().tool.lead.value_or(Length()));
  return lead + tap_depth_for(site, candidate).value_or(Length());
}

// The stop goes in on a tool of its own, on the same bar: that must not pass the mark either to bring it home.
void judge_insertion(const Site& site, Length limit, Candidate& candidate) {
  const ToolFacts& tool = site.job().tool;
  if (candidate.method.kind != Method::direct || !site.pressurised() || !tool.length || !tool.insertion_length) return;
  const Length touches = *tool.length - *tool.insertion_length;
  if (!over(touches, limit)) return;
  candidate.said.findings.add(FindingCode::machine_figures_wrong, Severity::hold)
      .value(*tool.insertion_length)
      .at_least(*tool.length - limit)
      .with(std::string_view("tool.insertion_length"),
            std::string_view("the stop would touch the hole only past the mark that no tool may pass; it must be at least"))
      .basis(site.rules.tool_clearance.basis);
}

}  // namespace

std::optional<Length> farthest_wall(const Site& site) {
  const ResolvedMain& main = site.main;
  std::optional<Length> thickest;
  for (const Pipe* pipe : main.candidates) {
    if (pipe->wall) thickest = std::max(thickest, std::optional(thickest_reading(*pipe)));
    else if (pipe->plausible) thickest = std::max(thickest, std::optional(pipe->plausible->wall_to));
  }
  if (!thickest && main.wall_nominal) thickest = thickest_over(main.material, *main.wall_nominal);
  return thickest;
}

std::optional<Length> far_wall_feed(const Site& site) {
  const auto wall = farthest_wall(site);
  const auto& od = site.main.od_least;
  if (!wall || !od) return std::nullopt;
  return *od - *wall - site.rules.tool_clearance.value;
}

Length pilot_ahead(const Site& site, Method kind) {
  return kind == Method::direct ? Length() : site.job().tool.lead.value_or(Length());
}

void check_far_wall(const Site& site, Candidate& candidate) {
  if (!candidate.method.hole) return;
  const auto limit = far_wall_feed(site);
  const auto depth = tool_depth(site, candidate);
  if (!limit || !depth) return;
  const Rule<Length>& clearance = site.rules.tool_clearance;
  candidate.said.taken.take(PlanPart::tap, Taken::far_wall_clearance, clearance.basis, Measure(clearance.value));
  const Length clear = *limit + clearance.value - *depth;
  if (candidate.makeup) candidate.makeup->far_wall_clearance = clear;
  if (over(*depth, *limit)) {
    candidate.said.findings.add(FindingCode::machine_tool_strikes_far_wall, Severity::hold)
        .value(std::max(clear, Length()))
        .at_least(clearance.value)
        .basis(clearance.basis);
  }
  judge_insertion(site, *limit, candidate);
}

}  // namespace mainbore::planning
