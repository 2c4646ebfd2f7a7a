#include "report/figures/drawing.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mainbore::report {
namespace {

// Turns are counted as the plan counts them: a hair under a whole one is whole.
constexpr double hair = 1e-9;

bool draws(const Plan& plan) { return plan.verdict != Verdict::no_go && plan.method.kind != Method::none; }

const TapThread* thread_of(const Plan& plan) {
  if (plan.catalog == nullptr || !plan.method.thread) return nullptr;
  return plan.catalog->thread(*plan.method.thread, plan.method.tap);
}

std::optional<Length> bore_radius(const ResolvedMain& main) {
  if (!main.od || !main.wall_nominal || *main.wall_nominal * 2.0 >= *main.od) return std::nullopt;
  return *main.od / 2.0 - *main.wall_nominal;
}

// Turns of one pitch from `top` down to `bottom`, laid so that one of them begins at `origin`; cut off at both ends.
std::vector<ThreadTurn> turns_between(Length top, Length bottom, Length origin, Length pitch) {
  std::vector<ThreadTurn> turns;
  if (!(bottom - top > hair * pitch)) return turns;
  const double first = std::floor((top - origin) / pitch + hair);
  for (int i = 0;; ++i) {
    const Length from = origin + (first + i) * pitch;
    if (bottom - from <= hair * pitch) break;
    turns.push_back({std::max(from, top), std::min(from + pitch, bottom)});
  }
  return turns;
}

// At least this much of the main is drawn each way, and more where something lies a little beyond.
constexpr Length half_stretch = 5.0 * units::foot;
constexpr Length farthest_drawn = 10.0 * units::foot;
constexpr Length room_beyond = 1.0 * units::foot;

}  // namespace

std::optional<SectionDrawing> section_drawing(const Plan& plan) {
  if (!draws(plan) || !plan.main.od) return std::nullopt;
  SectionDrawing drawing;
  drawing.radius = *plan.main.od / 2.0;
  drawing.bore = bore_radius(plan.main);
  if (plan.method.hole) drawing.hole = *plan.method.hole / 2.0;
  drawing.turn_degrees = 0.5 * plan.location.clock.minutes;
  const double turn = drawing.turn_degrees * std::numbers::pi / 180.0;
  drawing.tap = {drawing.radius * std::sin(turn), drawing.radius * std::cos(turn)};
  const TapThread* thread = thread_of(plan);
  if (plan.method.kind == Method::direct && plan.makeup && thread != nullptr && thread->geometry) {
    drawing.thread_in = plan.makeup->makeup.engaged_length;
    drawing.thread_out = std::max(thread->geometry->effective_length - *drawing.thread_in, Length());
    drawing.tip = plan.makeup->tip_depth;
  }
  return drawing;
}

std::optional<ThreadsDrawing> threads_drawing(const Plan& plan) {
  const TapThread* thread = thread_of(plan);
  if (!draws(plan) || plan.method.kind != Method::direct || !plan.engagement || thread == nullptr) return std::nullopt;
  const ResolvedMain& main = plan.main;
  const mechanics::Engagement& fit =
      plan.engagement->at_least ? *plan.engagement->at_least : plan.engagement->at_nominal;
  if (!main.od_least || fit.fit == mechanics::HoleFit::undefined || fit.fit == mechanics::HoleFit::wider_than_pipe) {
    return std::nullopt;
  }
  ThreadsDrawing drawing;
  // The threads are counted in the smallest pipe this can be, and drawn in it.
  drawing.radius = *main.od_least / 2.0;
  drawing.hole = thread->form.major / 2.0;
  drawing.pitch = thread->form.pitch();
  drawing.height_known = thread->geometry.has_value();
  drawing.thread_height = thread->geometry ? thread->geometry->thread_height : 0.8 * drawing.pitch;
  drawing.wall = fit.axial_along;
  if (main.wall_nominal && std::fabs((*main.wall_nominal - drawing.wall) / drawing.wall) > 1e-6) {
    drawing.nominal_wall = main.wall_nominal;
  }
  drawing.drop = fit.drop;
  drawing.complete_threads = fit.complete_threads;
  drawing.foot = fit.drop + fit.axial_transverse;
  const int whole = static_cast<int>(std::floor(fit.complete_threads + hair));
  for (int i = 0; i < whole; ++i) {
    drawing.complete.push_back({drawing.drop + i * drawing.pitch, drawing.drop + (i + 1) * drawing.pitch});
  }
  // What is left of each face above and below the whole turns. Where the drop takes the whole wall there are none.
  const Length below = drawing.drop + whole * drawing.pitch;
  drawing.along = turns_between(Length(), std::min(drawing.drop, drawing.wall), drawing.drop, drawing.pitch);
  for (const ThreadTurn& turn : turns_between(below, drawing.wall, drawing.drop, drawing.pitch))
    drawing.along.push_back(turn);
  drawing.across = turns_between(below, drawing.foot, drawing.drop, drawing.pitch);
  if (plan.makeup) drawing.stop_end = plan.makeup->makeup.engaged_length;
  return drawing;
}

std::optional<AlongDrawing> along_drawing(const Plan& plan) {
  if (!draws(plan)) return std::nullopt;
  AlongDrawing drawing;
  drawing.looked = plan.job.nearby.has_value();
  drawing.planned = plan.location.shift;
  if (plan.main.od) drawing.radius = *plan.main.od / 2.0;
  drawing.from = std::min(drawing.planned, Length()) - half_stretch;
  drawing.to = std::max(drawing.planned, Length()) + half_stretch;
  if (!drawing.looked) {
    if (plan.rules != nullptr) {
      for (const Clearance& clearance : plan.rules->place.clearances)
        drawing.ask = std::max(drawing.ask, clearance.least.value);
    }
    return drawing;
  }
  for (const Nearby& near : *plan.job.nearby) {
    AlongThing thing{near.what, near.along, std::nullopt, std::nullopt};
    for (const Clearing& clearing : plan.location.clearings) {
      if (clearing.what != near.what || clearing.along != near.along) continue;
      thing.kept = clearing.kept;
      thing.least = clearing.least;
    }
    const bool inside = near.along > drawing.planned - farthest_drawn && near.along < drawing.planned + farthest_drawn;
    if (inside) {
      drawing.from = std::min(drawing.from, near.along - room_beyond);
      drawing.to = std::max(drawing.to, near.along + room_beyond);
    }
    (inside ? drawing.things : drawing.beyond).push_back(thing);
  }
  const auto nearer_the_minus_end = [](const AlongThing& a, const AlongThing& b) { return a.along < b.along; };
  std::stable_sort(drawing.things.begin(), drawing.things.end(), nearer_the_minus_end);
  std::stable_sort(drawing.beyond.begin(), drawing.beyond.end(), nearer_the_minus_end);
  return drawing;
}

std::optional<MachineDrawing> machine_drawing(const Plan& plan) {
  // The machine of a sleeve bolts to a valve that somebody else has yet to choose.
  if (!draws(plan) || plan.method.kind == Method::sleeve || !plan.main.od || plan.setup.machine == nullptr) {
    return std::nullopt;
  }
  const Setup& setup = plan.setup;
  const MachineProfile& machine = *setup.machine;
  MachineDrawing drawing;
  drawing.method = plan.method.kind;
  drawing.radius = *plan.main.od / 2.0;
  drawing.bore = bore_radius(plan.main);
  drawing.bar = machine.bar_diameter / 2.0;
  drawing.standoff = machine.standoff;
  drawing.travel = machine.bar_travel;
  const bool marked = plan.marks && plan.marks->at;
  drawing.through = marked ? plan.marks->at->breakthrough : plan.main.wall_nominal;
  drawing.full = marked ? plan.marks->at->full_width : setup.drill_stroke;
  drawing.by_marks = marked;
  if (marked && drawing.full && plan.marks->past_limit(*drawing.full)) drawing.full.reset();
  if (plan.makeup) drawing.tap_stop = plan.makeup->tip_depth;
  if (plan.method.kind == Method::direct && setup.chain && machine.anchor_offset && machine.anchor_height) {
    ChainDrawing& chain = drawing.chain.emplace();
    chain.hook = {*machine.anchor_offset, drawing.radius + *machine.anchor_height};
    chain.radius = drawing.radius + machine.chain_thickness.value_or(Length()) / 2.0;
    // A leg touches the circle where the radius stands square on it: as far round from straight up as the leg leans.
    const double from_top = std::numbers::pi / 2.0 - setup.chain->leg_degrees * std::numbers::pi / 180.0;
    chain.touch = {chain.radius * std::sin(from_top), chain.radius * std::cos(from_top)};
  }
  return drawing;
}

std::optional<PitDrawing> pit_drawing(const Plan& plan) {
  if (!draws(plan) || !plan.excavation) return std::nullopt;
  const PitPlan& pit = *plan.excavation;
  PitDrawing drawing;
  drawing.mirrored = plan.location.clock.minutes > 6 * 60;
  drawing.radius = pit.main_od / 2.0;
  drawing.ground = drawing.radius + pit.cover;
  const Length bottom = drawing.ground - pit.pit.depth;
  const Length spread = pit.pit.slope * pit.pit.depth;
  drawing.far_foot = {-(drawing.radius + pit.main_to_far_wall), bottom};
  drawing.near_foot = {drawing.far_foot.right + pit.pit.across, bottom};
  drawing.far_edge = {drawing.far_foot.right - spread, drawing.ground};
  drawing.near_edge = {drawing.near_foot.right + spread, drawing.ground};
  drawing.sloped = pit.pit.slope > 0.0;
  drawing.shielded = !drawing.sloped && pit.protection == Protection::shield;
  drawing.spoil_toe = {drawing.far_edge.right - pit.setback, drawing.ground};
  drawing.spoil_top = {drawing.spoil_toe.right - pit.spoil.base / 2.0, drawing.ground + pit.spoil.height};
  drawing.spoil_heel = {drawing.spoil_toe.right - pit.spoil.base, drawing.ground};
  if (pit.ladder || plan.job.main.is_pressurized()) {
    drawing.rails = drawing.ground + plan.rules->pit.ladder_extension.value;
  }
  return drawing;
}

std::optional<ProfileDrawing> profile_drawing(const Plan& plan) {
  if (!draws(plan) || !plan.service || plan.service->losses.empty()) return std::nullopt;
  const ServicePlan& service = *plan.service;
  ProfileDrawing drawing;
  drawing.supply = service.supply;
  drawing.wanted = service.residual_wanted;
  drawing.highest = std::max(service.supply, drawing.wanted);
  drawing.lowest = std::min(Pressure(), service.residual_least);
  for (const LossItem& item : service.losses) {
    drawing.steps.push_back({item.part, item.left});
    drawing.highest = std::max(drawing.highest, item.left);
    drawing.lowest = std::min(drawing.lowest, item.left);
  }
  if (service.residual_least < service.residual) drawing.least = service.residual_least;
  return drawing;
}

}  // namespace mainbore::report
