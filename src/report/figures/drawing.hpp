// What the drawings of a sheet show, as lengths of the real thing: worked out from a plan here, put on paper by
// figures.hpp. A drawing that the plan does not know enough for has no value.
#pragma once

#include <optional>
#include <vector>

#include "mainbore/plan.hpp"

namespace mainbore::report {

// Right and up from the center of the pipe.
struct Spot {
  Length right;
  Length up;
};

// The main cut across at the tap, seen along it.
struct SectionDrawing {
  Length radius;                     // outside
  std::optional<Length> bore;        // radius, at the nominal wall
  std::optional<Length> hole;        // radius
  double turn_degrees = 0.0;         // of the tap from the crown, clockwise
  Spot tap;                          // middle of the hole on the outside
  std::optional<Length> thread_in;   // stop's thread below the surface when made up
  std::optional<Length> thread_out;  // and above it
  std::optional<Length> tip;         // depth of the tap's point when it stops
};
[[nodiscard]] std::optional<SectionDrawing> section_drawing(const Plan& plan);

// One turn of the thread, as far as a face of the cut holds it: depths below the crown.
struct ThreadTurn {
  Length from;
  Length to;
};
// The wall at the hole, at the least wall counted on. The left half is cut across the pipe, the right half along it;
// turns are drawn as rings, as they are counted. Depths are below the crown.
struct ThreadsDrawing {
  Length radius;  // of the pipe, outside
  Length hole;    // radius of the thread's largest diameter
  Length pitch;
  Length thread_height;
  bool height_known = false;  // false: eight tenths of the pitch, as most taper threads have
  Length wall;
  std::optional<Length> nominal_wall;  // where it is another
  Length drop;                         // of the surface at the hole's sides: complete threads begin here
  double complete_threads = 0.0;
  std::vector<ThreadTurn> complete;  // whole turns that close all the way round
  std::vector<ThreadTurn> across;    // incomplete ones on the left face, across the pipe
  std::vector<ThreadTurn> along;     // and on the right face, along the pipe
  Length foot;                       // where the left face ends at the bore
  std::optional<Length> stop_end;    // end of the stop's thread, made up
};
[[nodiscard]] std::optional<ThreadsDrawing> threads_drawing(const Plan& plan);

// Places along the main, from the asked one.
struct AlongThing {
  NearbyThing what = NearbyThing::joint;
  Length along;
  std::optional<Length> kept;  // where a rule asks for a distance
  std::optional<Length> least;
};
struct AlongDrawing {
  bool looked = false;
  Length from;  // the stretch drawn
  Length to;
  Length planned;
  std::optional<Length> radius;    // of the pipe
  Length ask;                      // clearance from a joint, where nobody has looked
  std::vector<AlongThing> things;  // inside the stretch, in order along the main
  std::vector<AlongThing> beyond;  // outside it
};
[[nodiscard]] std::optional<AlongDrawing> along_drawing(const Plan& plan);

struct ChainDrawing {
  Spot hook;      // on the right; the left mirrors it
  Spot touch;     // where the leg meets the pipe
  Length radius;  // of the chain's middle round the pipe
};
// The machine on the pipe, its bar upright.
struct MachineDrawing {
  Method method = Method::direct;
  Length radius;
  std::optional<Length> bore;
  std::optional<ChainDrawing> chain;
  Length bar;  // radius
  std::optional<Length> standoff;
  std::optional<Length> travel;
  // Depths of the tool's point below the outside of the pipe.
  std::optional<Length> through;   // the drill's point comes out in the bore
  std::optional<Length> full;      // the hole is full width
  bool by_marks = false;           // both are the marks on the bar, no lengths of the wall and the drill
  std::optional<Length> tap_stop;  // the tap's point, when it stops
};
[[nodiscard]] std::optional<MachineDrawing> machine_drawing(const Plan& plan);

// The pit cut across the main, seen along it: the machine's side to the right, spoil on the other. Spots are from the
// center of the main.
struct PitDrawing {
  bool mirrored = false;  // the tap points to the left, as in the section, and the drawing is turned over with it
  Length radius;          // of the main, outside
  Length ground;          // up
  Spot far_edge;          // the walls, at the top and at the bottom
  Spot far_foot;
  Spot near_foot;
  Spot near_edge;
  bool sloped = false;
  bool shielded = false;
  Spot spoil_toe;  // the foot nearer to the pit
  Spot spoil_top;
  Spot spoil_heel;
  std::optional<Length> rails;  // how far up those of the ladder reach, from the bottom
};
[[nodiscard]] std::optional<PitDrawing> pit_drawing(const Plan& plan);

// Pressure from the main to the customer, in the order in which water meets what takes it.
struct PressureStep {
  LossPart part = LossPart::line;
  Pressure after;
};
struct ProfileDrawing {
  Pressure supply;
  std::vector<PressureStep> steps;
  Pressure wanted;
  std::optional<Pressure> least;  // left with the least bore of the tubing, where it is less
  Pressure lowest;                // the range drawn: nothing, and all that is met
  Pressure highest;
};
[[nodiscard]] std::optional<ProfileDrawing> profile_drawing(const Plan& plan);

}  // namespace mainbore::report
