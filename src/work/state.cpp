#include "mainbore/work.hpp"
#include "words/steps.hpp"

namespace mainbore {
namespace {

// Where the water stands once the act is done. The stop, while it is part of the seat (saddle), is itself the valve
// below the machine; in a direct tap it plugs the hole once it is in place and shut.
void settle_pressure(RigState& state, Seat seat) {
  const bool stop_shuts = state.stop_in_place && !state.stop_open;
  const bool fed = state.main_full && state.hole && !stop_shuts;
  // A stop has nothing between itself and the chamber, so there is no valve to shut them apart.
  const bool joined = seat == Seat::stop || state.valve_open || state.bypass_open;
  const bool vented = state.bleed_open || !state.chamber_closed;

  if (fed) {
    state.pressure_below = true;
    if (joined) state.pressure_above = true;  // an open bleed runs, and does not empty it
  } else if (joined && vented) {
    state.pressure_below = false;
  }
  if (vented && !(fed && joined)) state.pressure_above = false;
}

}  // namespace

std::array<bool, valve_keys.size()> valves_open(const RigState& state, Seat seat) {
  return {seat == Seat::stop ? state.stop_open : state.valve_open, state.bypass_open, state.bleed_open,
          state.pressure_above};
}

std::array<ValveState, valve_keys.size()> valves_of(const RigState& state, Seat seat, Language language) {
  using words::StepWord;
  const auto said = [&](StepWord word) { return say(word, language); };
  const auto valve = [&](StepWord name, StepWord brief, bool open) {
    // Where a language has genders, the bypass has its own.
    const bool bypass = name == StepWord::valve_bypass;
    const StepWord stands =
        bypass ? (open ? StepWord::bypass_open : StepWord::bypass_shut) : (open ? StepWord::open : StepWord::shut);
    const StepWord in_short = bypass ? (open ? StepWord::bypass_open_brief : StepWord::bypass_shut_brief)
                                     : (open ? StepWord::open_brief : StepWord::shut_brief);
    return ValveState{said(name), said(stands), said(brief), said(in_short), open};
  };
  const auto [open, bypass_open, bleed_open, full] = valves_open(state, seat);
  return {seat == Seat::stop   ? valve(StepWord::valve_stop, StepWord::stop_brief, open)
          : seat == Seat::pipe ? valve(StepWord::valve_machine, StepWord::valve_brief, open)
                               : valve(StepWord::valve_tapping, StepWord::valve_brief, open),
          valve(StepWord::valve_bypass, StepWord::valve_bypass, bypass_open),
          valve(StepWord::valve_bleed, StepWord::valve_bleed, bleed_open),
          ValveState{said(StepWord::valve_chamber), said(full ? StepWord::at_line : StepWord::at_zero),
                     said(StepWord::chamber_brief), said(full ? StepWord::full_brief : StepWord::zero_brief), full}};
}

RigState after(RigState state, Act act, Seat seat) {
  switch (act) {
    case Act::fit_saddle:
      state.stop_in_place = seat == Seat::stop;
      break;
    case Act::mount_machine:
      state.machine_on = true;
      break;
    case Act::hold_down:
      state.held_down = true;
      break;
    case Act::load_cutter:
      state.bar = RigState::Bar::cutter;
      break;
    case Act::unload_bar:
      state.bar = RigState::Bar::bare;
      break;
    case Act::load_stop:
      state.bar = RigState::Bar::stop;
      break;
    case Act::close_chamber:
      state.chamber_closed = true;
      break;
    case Act::open_chamber:
      state.chamber_closed = false;
      break;
    case Act::open_valve:
      state.valve_open = true;
      break;
    case Act::shut_valve:
      state.valve_open = false;
      break;
    case Act::open_bleed:
      state.bleed_open = true;
      break;
    case Act::shut_bleed:
      state.bleed_open = false;
      break;
    case Act::open_bypass:
      state.bypass_open = true;
      break;
    case Act::shut_bypass:
      state.bypass_open = false;
      break;
    case Act::open_stop:
      state.stop_open = true;
      break;
    case Act::shut_stop:
      state.stop_open = false;
      break;
    case Act::bar_down:
      state.bar_down = true;
      break;
    case Act::cut_through:
      state.hole = true;
      break;
    case Act::cut_thread:
      break;
    case Act::bar_up:
      state.bar_down = false;
      break;
    case Act::seat_stop:
      state.stop_in_place = true;
      break;
    case Act::release_bar:
      state.bar = RigState::Bar::bare;
      break;
    case Act::let_go:
      state.held_down = false;
      break;
    case Act::lift_machine:
      state.machine_on = false;
      state.chamber_closed = false;
      state.bypass_open = false;
      break;
    case Act::fill_main:
      state.main_full = true;
      break;
    case Act::read_zero:
    case Act::read_tight:
      break;
  }
  settle_pressure(state, seat);
  return state;
}

}  // namespace mainbore
