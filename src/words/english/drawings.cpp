#include "words/tables.hpp"

namespace mainbore::words::english {
namespace {

using enum DrawingWord;

constexpr DrawingTable table = {{
    {not_drawn, "Not drawn: {why}"},
    {to_scale, "{n} to scale"},
    {along, "Along the main"},
    {minus_way, "- way"},
    {plus_way, "+ way"},
    {tap_here, "TAP HERE"},
    {nothing_near, "nothing to keep clear of in this stretch"},
    {moved, "moved {n} from the place asked"},
    {thing_kept, "{thing} {n}, at least {least}"},
    {clear_each_way, "at least {n} clear each way"},
    {nearest, "nearest: _______"},
    {far_thing, "{thing} {distance} the {way} way"},
    {along_said, "The main from the side."},
    {near_unknown, "What lies near is not known."},
    {at_place, "The tap stands at the place asked."},
    {moved_said, "The tap is moved {distance} from the place asked."},
    {thing_said, "{thing} {distance} from the tap[, at least {least}|]."},
    {nobody_looked, "Nobody has looked: uncover both ways, measure, write it in."},
    {keep_out, "Dark gray: keep out."},
    {white_mark, "White mark: the place asked."},
    {farther_off, "Farther off: {things}."},
    {first_of, "The first of {count} taps is drawn."},
    {from_the_side, "From the side."},
    {machine, "Machine and bar"},
    {chosen_together, "sleeve, valve and machine are chosen for each other."},
    {od_unknown, "the outside diameter is not known."},
    {chain, "chain {n}, hook to hook"},
    {on_open_stop, "machine stands on the open stop"},
    {depths_missing, "Depths not drawn:"},
    {wall_missing, "the wall is not known."},
    {depth_of_point, "depth of the point below the"},
    {below_outside, "outside of the pipe"},
    {drill, "drill"},
    {cutter, "cutter"},
    {mark_touch, "mark 1: touch"},
    {mark_through, "2: through"},
    {full_width, "full width"},
    {tap, "tap"},
    {mark_catches, "mark 3: catches"},
    {mark_stop, "4: STOP"},
    {by_trial, "by trial: ____"},
    {machine_on_pipe, "The machine on the pipe, bar upright."},
    {machine_on_stop, "The machine on the stop of the saddle, bar upright."},
    {chain_said, "Chain {length} hook to hook, legs {degrees} degrees from upright."},
    {full_said, "From touch to full width the drill goes {length}."},
    {stop_said, "The tap stops with its point {length} below the outside."},
    {seat_caption, "Machine saddle for {diameter} outside."},
    {chain_inward, "Chain made up {length}, {extensions}; legs lean {degrees} deg inward going up."},
    {chain_outward, "Chain made up {length}, {extensions}; legs lean {degrees} deg outward going up."},
    {no_extension, "no extension"},
    {one_extension, "1 extension"},
    {extensions, "{count} extensions"},
    {chain_missing, "Chain not drawn: anchors not known."},
    {travel, "Bar travels {travel}; point drawn back stands {standoff} off.[ Needed: {needed}.|]"},
    {travel_missing, "Travel of the bar not known."},
    {stands_at, "Dashes: its place only. Stands at {clock}."},
    {section, "The main at the tap"},
    {measure_first, "the outside diameter is not known. Measure it first."},
    {stop, "{size} stop"},
    {saddle, "{size} saddle"},
    {sleeve, "{size} sleeve"},
    {at_clock, "at {clock} o'clock"},
    {hole, "hole {n}"},
    {wall, "wall {n}"},
    {to_far_wall, "tap to far wall"},
    {outside, "outside {n}"},
    {section_said,
     "Section across the main, seen along it. Outside diameter {od}.[ Wall {wall}.|] The tap points to "
     "{clock} o'clock.[ Hole {hole} wide.|][ The stop's thread, made up, reaches {thread} below the "
     "outside.|]"},
    {seen_along, "Seen along the main."},
    {wall_not_drawn, "Wall not known, not drawn."},
    {thread_black, "Black: thread of the stop. Dashes: its place only."},
    {dashes_stop, "Dashes: place of the stop."},
    {dashes_fitting, "Dashes: place of the fitting."},
}};
static_assert(complete(table), "every word, in the order of DrawingWord");

}  // namespace

const DrawingTable& drawings() { return table; }

}  // namespace mainbore::words::english
