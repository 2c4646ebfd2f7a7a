// Nobody sees the far wall from inside a closed chamber: what goes on the bar must stop short of it by its lengths alone.
#include <algorithm>

#include "planning/calculations.hpp"
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

struct ToolDepth {
  Length depth;
  Formula by;
};

// How deep the end of the tool goes below the outside of the pipe. A trial with this very tool says it; else the cutter of a
// combined tool stands ahead of its tap by what was measured, and by its stroke at the least.
std::optional<ToolDepth> tool_depth(const Site& site, Candidate& candidate) {
  const auto stroke = stroke_through(site, candidate, cut_width(site, candidate));
  if (!stroke) return std::nullopt;
  const Length pilot = pilot_ahead(site, candidate.method.kind);
  const ToolFacts& tool = site.job().tool;
  const CalculationInput ahead = tool.lead ? given(*tool.lead) : plain(0.0, Kind::length);
  const CalculationInput through = worked_out(Formula::drill_stroke, *stroke);
  const auto put = [&](Formula formula, std::initializer_list<CalculationInput> inputs, Length depth) {
    if (site.calculates()) candidate.said.taken.calculated(Worked(PlanPart::tap, formula, inputs, depth));
    return ToolDepth{depth, formula};
  };
  if (candidate.method.kind != Method::direct) return put(Formula::cutter_depth, {through, ahead}, *stroke + pilot);
  const auto& trial = site.job().service.trial.depth;
  if (trial) return put(Formula::trial_depth, {given(*trial), through}, std::max(*trial, *stroke));
  const Length lead = std::max(*stroke, tool.lead.value_or(Length()));
  const Length tap = tap_depth_for(site, candidate).value_or(Length());
  const bool own = candidate.makeup && candidate.makeup->tip_depth;
  return put(Formula::tool_depth,
             {through, ahead, own ? worked_out(Formula::tap_depth, tap) : plain(tap.base(), Kind::length)}, lead + tap);
}

// The stop goes in on a tool of its own, on the same bar: that must not pass the mark either to bring it home.
void judge_insertion(const Site& site, Length limit, Candidate& candidate) {
  const ToolFacts& tool = site.job().tool;
  if (candidate.method.kind != Method::direct || !site.pressurized() || !tool.length || !tool.insertion_length) return;
  const Length touches = *tool.length - *tool.insertion_length;
  if (!over(touches, limit)) return;
  candidate.said.findings.add(FindingCode::machine_figures_wrong, Severity::hold)
      .value(*tool.insertion_length)
      .at_least(*tool.length - limit)
      .with(std::string_view("tool.insertion_length"),
            std::string_view(
                "the stop would touch the hole only past the mark that no tool may pass; it must be at least"))
      .basis(site.rules.machine.tool_clearance.basis);
}

// A trial counts for the depth of the tap only where its tool got to cut a thread in this pipe at all.
void judge_trial(const Site& site, Candidate& candidate) {
  const auto& trial = site.job().service.trial.depth;
  if (candidate.method.kind != Method::direct || !trial) return;
  const Length least = shallowest_trial(site, candidate);
  if (!over(least, *trial)) return;
  candidate.said.findings.add(FindingCode::machine_figures_wrong, Severity::hold)
      .value(*trial)
      .at_least(least)
      .with(std::string_view("service.trial.depth"),
            std::string_view("tapping would stop before the hole is full or the tap catches; it must be over"))
      .basis(stated_in_job);
}

}  // namespace

Length shallowest_trial(const Site& site, const Candidate& candidate) {
  const Length catches = site.job().tool.lead.value_or(Length());
  const auto& wall = site.main.wall_least;
  if (!candidate.method.hole || !wall || !(*wall > Length())) return catches;
  const auto stroke = drill_stroke_for(site, cut_width(site, candidate), *wall);
  return std::max(catches, stroke ? *stroke - site.rules.drilling.clearance.value : *wall);
}

std::optional<Length> farthest_wall(const Site& site) {
  const ResolvedMain& main = site.main;
  if (!site.thickest_listed && main.wall_nominal) return thickest_over(main.material, *main.wall_nominal);
  return site.thickest_listed;
}

std::optional<Length> far_wall_feed(const Site& site) {
  const auto wall = farthest_wall(site);
  const auto& od = site.main.od_least;
  if (!wall || !od) return std::nullopt;
  return *od - *wall - site.rules.machine.tool_clearance.value;
}

Length pilot_ahead(const Site& site, Method kind) {
  return kind == Method::direct ? Length() : site.job().tool.lead.value_or(Length());
}

void check_far_wall(const Site& site, Candidate& candidate) {
  if (!candidate.method.hole) return;
  judge_trial(site, candidate);
  const auto limit = far_wall_feed(site);
  const auto tool = tool_depth(site, candidate);
  if (!limit || !tool) return;
  const Length depth = tool->depth;
  const Rule<Length>& clearance = site.rules.machine.tool_clearance;
  candidate.said.taken.take(PlanPart::tap, Taken::far_wall_clearance, clearance.basis, Measure(clearance.value));
  const Length clear = *limit + clearance.value - depth;
  if (candidate.makeup) candidate.makeup->far_wall_clearance = clear;
  if (site.calculates()) {
    candidate.said.taken.calculated(
        Worked(PlanPart::tap, Formula::far_wall,
               {diameter(site, site.main, *site.main.od_least), plain(farthest_wall(site)->base(), Kind::length),
                worked_out(tool->by, depth)},
               clear)
            .at_least(figure(clearance)));
  }
  if (over(depth, *limit)) {
    candidate.said.findings.add(FindingCode::machine_tool_strikes_far_wall, Severity::hold)
        .value(Measure(std::max(clear, Length()), Kind::tape))
        .at_least(Measure(clearance.value, Kind::tape))
        .basis(clearance.basis);
  }
  judge_insertion(site, *limit, candidate);
}

}  // namespace mainbore::planning
