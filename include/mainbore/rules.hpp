// The rules in force: every number a utility could set differently.
//
// Defaults are data/rules/default.json; a utility's standard is laid over them (io/rules_reader). Each rule knows what it
// rests on and whether the utility set it. Plain data, immutable while planning; must outlive the plans made under it.
#pragma once

#include <deque>
#include <optional>
#include <string>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/job.hpp"
#include "mainbore/material.hpp"
#include "mainbore/nominal_size.hpp"
#include "mainbore/units.hpp"

namespace mainbore {

template <class T>
struct Rule {
  T value{};
  Basis basis;
};

// The largest tap a kind of main may take. Rows are tried in order; the first that fits the main decides, so a utility
// can put its exceptions first. A main that no row fits takes no tap by that method without the engineer.
struct TapLimit {
  std::vector<Material> materials;        // empty: any
  std::vector<std::string> class_keys;    // normalised; empty: any
  std::vector<std::string> series;        // catalogue series ids; empty: any
  std::optional<NominalSize> main_from;   // smallest main the row covers, inclusive
  std::optional<NominalSize> main_to;     // largest, inclusive
  std::optional<Length> wall_from;        // the nominal wall must be at least this
  NominalSize largest;                    // 0: no tap by this method
  std::string why;                        // for a refusal: what is done instead
  Basis basis;
};

// Clearance a tap keeps from one kind of thing, centre to centre or to the face, along the main.
struct Clearance {
  NearbyThing what = NearbyThing::joint;
  Rule<Length> least;
};

struct Rules {
  Rules() = default;
  // Bases point into `references`: rules move, and are never copied.
  Rules(Rules&&) = default;
  Rules& operator=(Rules&&) = default;

  std::string name;

  // direct tap
  std::vector<TapLimit> direct;
  Rule<double> required_threads;               // complete threads in the wall
  Rule<double> marginal_threads;               // within this of the requirement: say so
  Rule<double> hole_ratio_direct;              // greatest hole over outside diameter
  Rule<ThreadStandard> default_thread;
  Rule<double> wrench_turns;                   // make-up wanted
  Rule<double> threads_showing;
  Rule<double> strip_effectiveness;            // of a short thread's shear area
  Rule<Temperature> plastic_wet_tap_coldest;   // pipe temperature window for a wet tap in PVC
  Rule<Temperature> plastic_wet_tap_warmest;

  // saddle, sleeve, several taps
  std::vector<TapLimit> saddle;
  std::vector<TapLimit> sleeve;
  Rule<double> hole_ratio_saddle;
  Rule<double> section_left;                   // least section modulus left in the pipe as a beam
  Rule<double> equal_capacity_exponent;
  Rule<double> most_taps;                      // of a series standing for one larger

  // pressure
  Rule<Pressure> stop_rating;                  // of a corporation stop whose mark nobody has read
  Rule<Pressure> saddle_rating;
  Rule<Pressure> wet_tap_limit;                // whatever the equipment allows
  Rule<Pressure> surge_assumed;                // recurring, where none is given
  Rule<Pressure> iron_surge_allowance;         // already inside the class of ductile iron
  Rule<double> plastic_surge_factor;           // occasional surge: total over the derated rating
  Rule<Pressure> regulator_above;              // customer side

  // place
  std::vector<Clearance> clearances;
  Rule<Length> farthest_shift;                 // how far a tap may be moved to find its place
  Rule<Length> stagger_within;                 // taps nearer than this stand at different clock positions
  Rule<ClockPosition> default_clock;
  Rule<double> lowest_elevation;               // degrees above horizontal: lowest place on the pipe
  Rule<double> highest_elevation;

  // measuring
  Rule<Length> od_uncertainty;                 // calliper
  Rule<Length> circumference_uncertainty;      // tape
  Rule<Length> wall_uncertainty;               // gauge

  // hands and chain
  Rule<Force> push_caution;                    // on a bar held by hand
  Rule<Force> push_limit;
  Rule<double> ovality_caution;
  Rule<double> ovality_limit;
  Rule<Length> chain_bearing;                  // length of plastic pipe that shares the chain's squeeze
  Rule<double> gasket_factor;                  // m, of the seal under the machine saddle
  Rule<Length> tool_clearance;                 // tap tip to the far wall

  // drilling iron, for the force the clamp must hold
  Rule<Length> drill_feed;                     // per turn, by ratchet and feed screw
  Rule<double> drill_work_factor;              // Kd of the handbook method (mechanics/boring.hpp)
  Rule<double> drill_iron_factor;              // K of the cast-iron method
  Rule<Length> drill_clearance;                // past breakthrough

  // Text of utility references that Basis::reference points at: a deque, so that they stay where they are.
  std::deque<std::string> references;
};

}  // namespace mainbore
