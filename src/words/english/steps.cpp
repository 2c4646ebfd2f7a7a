#include "words/tables.hpp"

namespace mainbore::words::english {
namespace steps_table {

using enum StepWord;

constexpr StepTable table = {{
    {phase_before, "Before the pit"},
    {phase_pipe, "The pipe"},
    {phase_engineer, "The engineer's design"},
    {phase_machine, "Set the machine"},
    {phase_cut, "Cut"},
    {phase_change, "Change to the stop"},
    {phase_stop, "Set the stop"},
    {phase_off, "Take the machine off"},
    {phase_saddle, "Saddle and stop"},
    {phase_shut_stop, "Shut the stop"},
    {phase_sleeve, "Sleeve and valve"},
    {phase_shut_valve, "Shut the valve"},
    {phase_next, "The next tap"},
    {phase_fill, "Fill the main"},
    {phase_connect, "Connect and prove"},
    {phase_leave, "Leave it right"},
    {phase_trouble, "If it goes wrong"},
    {people,
     "Agree who works the machine, who turns the valves and who stays out of the pit, and the one word "
     "that stops the job."},
    {fittings, "Lay out what the approved list names and read the mark on each: {named}."},
    {fittings_until, "Fittings as approved, by their marks."},
    {valves,
     "Locate and uncover the valves that shut this main down. Put the key on each, turn it enough to know it moves, "
     "and leave the key there."},
    {valves_until, "Shut-off valves located and known to turn."},
    {empty,
     "Shut the valves, lock and tag them. Open the lowest outlet and leave it open until the water stops and stays "
     "stopped."},
    {empty_until, "Main proved empty, valves locked and tagged."},
    {pit,
     "Dig clear all around the pipe, with a sump below it: sump pump running, ladder in, repair clamp open at the "
     "edge. The competent person inspects the walls."},
    {walls_bottom, "Bottom {along} by {across}, {depth} deep."},
    {walls_engineer, "Walls as the engineer designed them."},
    {walls_shield, "Set the shield before anybody goes in."},
    {walls_slope, "Slope the walls {run} out for each 1 up, or set a shield."},
    {walls_spoil, "Spoil at least {setback} from the edge."},
    {walls_until, "The competent person says the walls are safe."},
    {identify, "Prove by two independent means that this is the drinking-water main. Write down which two."},
    {identify_until, "Pipe proved to be the water main."},
    {place,
     "Mark the tap on the barrel at {clock} o'clock, seen along the main[, {shift} from the place asked "
     "(the {way} way on the order)|]."},
    {place_several,
     "There are {count} taps: mark all of them, in turn at {clock} and {other} o'clock[, at least "
     "{apart} apart|]."},
    {place_clears, "Check that it clears: {things}."},
    {place_thing, "{thing} by {least}"},
    {clean_film, "Open the film no more than it takes to look, measure and gauge. Wipe the pipe there."},
    {clean_asbestos,
     "Wet the pipe and clean it bare all the way around with wet rags and a soft brush. No scraping dry, "
     "no grinding, no wire wheel, no hammer."},
    {clean_plastic,
     "Wipe the pipe clean with a wet rag all the way around. No scraping, no hammer: a scratch is where "
     "a crack starts."},
    {clean_bare,
     "Clean the pipe bare all the way around so that everything seats squarely: scale off with the "
     "scraper, no dirt left under the seat."},
    {check,
     "Measure the outside with the tape, and gauge the wall at the tap and beside it.[ Stop numbers: "
     "{numbers}.|] Look for cracks, pits, soft spots and old clamps."},
    {check_plastic, "Read the pipe's temperature out of the sun. No tap in a scratched or sun-burnt length."},
    {check_plastic_direct,
     "Read the pipe's temperature out of the sun. No tap in a scratched, sun-burnt or bent length."},
    {check_until, "Readings inside the stop numbers; pipe sound."},
    {wrap,
     "Close the film and wrap two or three turns of polyethylene tape around it, tight to the pipe, "
     "where machine and chain or saddle will sit. The tap goes through tape and film."},
    {pressure_lowered,
     "Bleed off the air and read the line at a gauge near the tap. Have the main lowered to {limit} or less and held "
     "there until the machine is off."},
    {pressure,
     "Bleed off the air and read the line at a gauge near the tap. Planned for {line}.[ Stop over {limit}.|]"},
    {pressure_until, "Gauge within the stop number, and steady."},
    {holds,
     "Work through the numbered holds and write each reading in its blank. If one is outside its number, stop and have "
     "the job planned again."},
    {holds_until, "Every hold cleared and signed."},
    {disinfect,
     "Swab the pipe where it is cut, the tool and the fittings with chlorine solution, as the utility "
     "asks."},
    {engineer,
     "Cut nothing. Give the engineer material, outside diameter, wall and pressure as read, and wait for "
     "the design of the connection in writing: fitting, cut, tools and pressure; for concrete pipe its "
     "wires, mortar and grout too. Keep the pit safe or close it."},
    {engineer_until, "Design in hand, with the engineer's name."},
    {its_thread, "its"},
    {push, "about {push} at {line}"},
    {push_unknown, "the line pressure"},
    {as_measured, "as measured"},
    {seat,
     "Set gasket and machine saddle[ for {diameter} outside|] on the mark, then the second gasket and "
     "the machine, bar pointing at the center of the pipe. It must not rock."},
    {chain,
     "Chain around the pipe, no twist, hooks home[; at least {needed}|]. Take up both sides evenly, a little at a "
     "time[, with a torque wrench to the machine maker's figure: holding takes about {torque} on each stud|]."},
    {chain_extension, "{needed} of chain with 1 extension"},
    {chain_extensions, "{needed} of chain with {count} extensions"},
    {chain_none, "{needed} of chain"},
    {chain_plastic, "Only until it holds: the pipe must stay round."},
    {chain_firm, "The machine must not shift by hand."},
    {tool_metal,
     "Put the {tap} {thread} combined drill and tap on the bar. Lay it beside the stop: same size, same thread; a "
     "second person checks. Close the chamber, bar drawn back."},
    {tool_plastic,
     "Put the {tap} {thread} combined shell cutter and tap on the bar. Lay it beside the stop: same size, same thread; "
     "a second person checks. Close the chamber, bar drawn back."},
    {tool_until, "Tool and stop match, seen by two people."},
    {machine_valves,
     "Bleed and bypass (the equalizing valve) shut, machine valve open. Work the valve once by hand: it must clear the "
     "tool. Mark the bar where it enters the machine: mark 0, {mark}."},
    {machine_valves_until, "Valve clears the tool; mark 0 on the bar."},
    {thread_it,
     "Cut the thread, cutting grease on the tap: it catches at mark 3. Feed with the screw until the tap has started "
     "two or three threads, then let off the feed: turn, do not push. Back up a quarter turn now and then to clear the "
     "chips. Stop at mark 4: {mark}. No deeper, or the stop bottoms before it seals; never past mark 5."},
    {by_piece, "Depth and turns as on the trial piece."},
    {blanket, "Lay the blanket over the pipe, the machine through its hole, and stand behind it."},
    {touch,
     "Run the tool down until it just touches the pipe. Mark the bar where it enters the machine: mark "
     "1. From it lay out the other marks of the card with the rule: marks {marks}."},
    {touch_until, "Every mark of the card is on the bar."},
    {cut_by_hand, "Turn steadily; feed light and even with the screw."},
    {cut_powered, "Start the drive slow; feed light and even with the screw."},
    {cut_plastic, "Go slow with a sharp cutter; do not lean on it."},
    {cut_through,
     "From mark 2 on ({mark}) feel for the breakthrough: the bar eases. After that only follow with the feed."},
    {cut_wet, "Keep the cut wet the whole time and catch the chips."},
    {flush_machine,
     "Crack the bleed open, let chips and air run out, and shut it. Look at the seat of the {holder}: no "
     "weep."},
    {flush_asbestos,
     "Crack the bleed open, let chips and air run out through a hose into a lined bucket, not onto the "
     "ground, and shut it. Look at the seat of the {holder}: no weep."},
    {flush_until, "No leak around the seat."},
    {holder_machine, "machine"},
    {holder_saddle, "saddle"},
    {holder_sleeve, "sleeve"},
    {back_out,
     "Back the tap out of its thread. Engage the feed again before the last thread lets go: the water then pushes the "
     "bar out ({push}). Stand beside it and let it up slowly on the feed, to mark 0."},
    {shut_machine_valve, "With the bar at mark 0 shut the machine valve. The bypass stays shut."},
    {bleed, "Open the bleed. Watch the gauge go to zero and stay there a full minute."},
    {bleed_until, "Chamber at zero and staying there. If not, open nothing."},
    {look_at_tool,
     "Open the chamber and take the bar out. Take the tool off and inspect it: chips bright, no broken tooth."},
    {look_at_coupon,
     "Open the chamber and take the bar out. Take the tool off: the coupon must be in it, clean-cut and as thick as "
     "the wall was gauged. Keep it with the order."},
    {load_stop,
     "Shut the corporation stop and try it by hand. {sealant} Take the nut off its outlet and screw the insertion tool "
     "on, hand tight; bar in, inlet down. Measure that the stop clears the valve. Close the chamber, bar drawn back."},
    {sealant_tape, "PTFE tape on its inlet thread."},
    {sealant_any, "Sealant on its inlet thread."},
    {load_stop_until, "Stop shut, tried by two people; it clears the valve."},
    {equalize,
     "Shut the bleed and hold the bar with the feed. Open the bypass slowly, and wait until the chamber "
     "stands at line pressure."},
    {equalize_until, "Same pressure on both sides of the machine valve."},
    {open_machine_valve,
     "Stand beside the bar, still holding it with the feed ({push}), and open the machine valve fully."},
    {set_stop,
     "Run the stop down to mark S, {mark}. Feed and turn it until it has started two or three threads, then let off "
     "the feed and let it pull itself in. {makeup}"},
    {stop_bleed,
     "Shut the bypass, then open the bleed. Watch the gauge go to zero and stay there a full minute: "
     "only now does the stop hold the main."},
    {zero_until, "Gauge at zero and staying there. If not, slacken nothing."},
    {release,
     "Unscrew the insertion tool from the stop's outlet and draw the bar back. The stop must not turn "
     "with it."},
    {lift, "Slacken the chain evenly, a little each side, nobody in line. Lift the machine clear."},
    {look_at_stop,
     "Put the nut back on the stop's outlet. Check the stop under full line pressure. If it weeps, tighten it a "
     "little, wrench on the inlet side, never on the key or the outlet. {showing}"},
    {look_at_stop_until, "No weep at the stop."},
    {showing, "The threads showing must match the card."},
    {showing_unknown, "It must not be run to the shoulder."},
    {dry_back_out,
     "Back the tap out of its thread, the feed engaged before the last thread lets go, and draw the bar back to mark "
     "0."},
    {dry_lift,
     "Open the bleed: nothing may come. Slacken the chain evenly and lift the machine clear. Take the "
     "chips out of the hole and the main. Look at the main's wall through the hole: sound, and as thick "
     "as it was gauged."},
    {dry_lift_coupon,
     "Open the bleed: nothing may come. Slacken the chain evenly and lift the machine clear. Take the "
     "chips out of the hole and the main, and keep the coupon with the order. Look at the main's wall "
     "through the hole: sound, and as thick as it was gauged."},
    {dry_lift_until, "Bleed dry; wall seen through the hole."},
    {dry_stop,
     "Shut the corporation stop. {sealant} Start it by hand, square to the pipe, then the wrench on the "
     "inlet side. {makeup}"},
    {makeup, "Make-up: {makeup}."},
    {makeup_plastic, "By torque wrench, and no tighter than the stop's maker says for this pipe."},
    {makeup_unknown, "Do not run it to the shoulder."},
    {saddle_fit,
     "Fit the saddle, gasket in its groove, outlet at the mark. Take up the nuts evenly in turn, with a torque wrench "
     "to the figure on the saddle's sheet. No gap at the sides."},
    {saddle_fit_plastic,
     "Fit the saddle, gasket in its groove, outlet at the mark. Take up the nuts evenly in turn, with a torque wrench "
     "to the figure on the saddle's sheet. The pipe must stay round; no gap at the sides."},
    {saddle_stop,
     "Screw the corporation stop into the outlet, sealant on its inlet thread, wrench on the inlet side. "
     "Measure from the pipe to the stop's outlet: the cutter must come back that far."},
    {saddle_test,
     "Open the stop, fill it with clean water and pressurize it with the test pump, no higher than the line or the "
     "pipe's rating, before anything is cut. Let the pressure off again."},
    {saddle_test_until, "Saddle and stop hold the test."},
    {mount_on_stop,
     "Take the nut off the stop's outlet. Screw the machine on there, by its adapter, stop open, and block up its "
     "weight."},
    {saddle_tool,
     "Put the cutter on the bar: the largest that passes the open stop[, not over {hole}|]. Run it through once by "
     "hand, touching nothing, and draw it back; a second person checks. Close the chamber."},
    {saddle_tool_until, "Cutter passes the open stop, seen by two people."},
    {saddle_valves,
     "Bar drawn back, bleed and any bypass (equalizing valve) shut, stop fully open. Mark the bar where "
     "it enters the machine, the cutter clear of the stop's plug: mark 0, {mark}."},
    {saddle_valves_until, "Mark 0 on the bar: the stop is shut only with the bar there."},
    {saddle_back,
     "Draw the cutter back with the feed. The water pushes the bar out ({push}): stand beside it, let it "
     "up slowly to mark 0, clear of the stop's plug."},
    {saddle_shut, "With the bar at mark 0 shut the corporation stop."},
    {saddle_bleed,
     "Open the bleed. Watch the gauge go to zero and stay there a full minute: only now does the stop "
     "hold the main."},
    {saddle_dry_back,
     "Draw the cutter back to mark 0, clear of the stop's plug. Shut the stop. Open the bleed: nothing "
     "may come."},
    {dry_until, "Bleed dry."},
    {saddle_lift,
     "Hold the stop with one wrench and unscrew the machine with the other, nobody in line. The saddle "
     "must not turn. Put the nut back on the stop's outlet."},
    {coupon,
     "Take the cutter off. The coupon must be in it. Look at its edge, sound and as thick as the wall "
     "was gauged, and keep it with the order."},
    {coupon_until, "Coupon in hand."},
    {saddle_look, "Check saddle and stop under full line pressure."},
    {saddle_look_until, "No weep at saddle or stop."},
    {sleeve_fit,
     "Fit the sleeve made for the measured diameter and bolt on the tapping valve. Take up the bolts evenly in turn, "
     "with a torque wrench to the maker's figure. Block up valve and machine on their own: the pipe carries neither."},
    {sleeve_test,
     "Pressurize sleeve and valve with the test pump through the test plug, no higher than the line or the pipe's "
     "rating, before anything is cut. Let the pressure off again."},
    {sleeve_test_until, "Sleeve holds the test."},
    {mount_on_valve, "Bolt the machine to the valve by its adapter. Block up its weight."},
    {sleeve_tool,
     "Put the cutter with its pilot on the bar and close the chamber. Measure that it clears valve and "
     "outlet and reaches through the pipe; a second person measures too."},
    {sleeve_tool_until, "Cutter clears valve and outlet, measured by two people."},
    {sleeve_valves,
     "Bar drawn back, bleed and any bypass (equalizing valve) shut, tapping valve fully open; count its "
     "turns. Mark the bar where it enters the machine, the cutter clear of the valve: mark 0, {mark}."},
    {sleeve_valves_until, "Mark 0 on the bar: the valve is shut only with the bar there."},
    {sleeve_back,
     "Draw the cutter back with the feed. The water pushes the bar out ({push}): stand beside it, let it "
     "up slowly to mark 0, clear of the valve."},
    {sleeve_shut, "With the bar at mark 0 shut the tapping valve; the same number of turns."},
    {sleeve_dry_back,
     "Draw the cutter back to mark 0, clear of the valve. Shut the valve. Open the bleed: nothing may "
     "come."},
    {sleeve_lift, "Take out the bolts evenly, nobody in line. Lift the machine clear."},
    {sleeve_look, "Check sleeve and valve under full line pressure."},
    {sleeve_look_until, "No weep at sleeve or valve."},
    {next_tap,
     "Do the same for each of the {count} taps, from setting up to this line, one finished and shut "
     "before the next is begun."},
    {fill_stop,
     "With the stop shut, fill the main slowly and let the air out at the high end. It was open: flush "
     "it, and have it disinfected and sampled as the utility asks, before any customer draws from it. "
     "Bring it to its full pressure by the gauge."},
    {fill_valve,
     "With the tapping valve shut, fill the main slowly and let the air out at the high end. It was "
     "open: flush it, and have it disinfected and sampled as the utility asks, before any customer draws "
     "from it. Bring it to its full pressure by the gauge."},
    {fill_until, "No weep at the new tap under full line pressure."},
    {bond_when, "If an old metal service is cut"},
    {bond, "bonding jumper across it first, left on until the work is done."},
    {connect, "Connect the service with slack: a gooseneck at the main, no pull or leverage on the stop."},
    {connect_branch,
     "Connect the branch, restrained or blocked as the engineer has it. No pull or leverage on the valve."},
    {connect_several,
     "Connect the {count} services with slack, each a gooseneck at the main, and join them by the branch fittings. No "
     "pull or leverage on the stops."},
    {flush_stop,
     "Run the far end to waste by the hose. Open the corporation stop slowly, flush until clear, free of "
     "air and chips, and shut the far end.[ Flush hard: the bucket fills in {seconds} or less, for at "
     "least {time}.|]"},
    {flush_valve,
     "Run the far end to waste by the hose. Open the tapping valve slowly, flush until clear, free of "
     "air and chips, and shut the far end.[ Flush hard: the bucket fills in {seconds} or less, for at "
     "least {time}.|]"},
    {check_joints, "Check every joint from main to curb stop under full line pressure, before backfill."},
    {check_joints_valve, "Check every joint from main to valve under full line pressure, before backfill."},
    {check_joints_until, "No visible leak anywhere."},
    {bed, "Bed and support main, tap and service. No rock against them."},
    {bed_film,
     "Tape every cut in the film; wrap the stop and the first of the service. Bed and support main, tap "
     "and service. No rock against them."},
    {bring_back, "Have the main brought back to its pressure slowly, and check the tap again."},
    {bring_back_until, "No weep under full line pressure."},
    {oil_direct, "Clean and oil the machine. Inspect tool, chain, seals and valve; set aside what is worn."},
    {oil_other, "Clean and oil the machine. Inspect cutter, adapter, seals and valve; set aside what is worn."},
    {record,
     "Write it down: place with two ties, clock position, depth, pipe and wall as read, pressure, method, tap, coupon "
     "kept, leak check, anything odd about the main. Take a picture before backfill."},
    {breaks_when, "Main cracks, moves or spurts"},
    {breaks,
     "everybody out of the pit, now. Valves shut from above. Nobody goes back for tools, and nobody goes "
     "in after anyone into rising water."},
    {water_when, "Water comes where there should be none"},
    {water, "out of the pit, check that every valve is shut and locked, drain again before going on."},
    {leaks_gasket_when, "Weep at the gasket"},
    {leaks_seat_when, "Weep at the seat"},
    {leaks_gasket,
     "stop feeding. Take up both sides evenly, a little[, as far as the machine's maker allows (holding alone takes up "
     "to {torque} on a stud)|]. Not cut through yet: if it still weeps, take it off and set it again on cleaner pipe, "
     "with the spare gasket. Cut through: leave it mounted and have the main shut down."},
    {leaks_seat,
     "stop feeding. Take up the nuts evenly, a little. Not cut through yet: if it still weeps, take it off and set it "
     "again on cleaner pipe. Cut through: leave it mounted and have the main shut down."},
    {no_zero_when, "Gauge does not go to zero, or creeps up"},
    {no_zero_machine,
     "slacken nothing. Work the machine valve once more, open to shut; is the bar clear of it? With the stop set: "
     "tighten it a little. Still not: leave everything mounted, stand clear, have the main shut down and drained, then "
     "take it off."},
    {no_zero_stop,
     "slacken nothing. Work the stop once more, open to shut; is the cutter clear of it? Still not: leave everything "
     "mounted, stand clear, have the main shut down and drained, then take it off."},
    {no_zero_valve,
     "slacken nothing. Work the valve once more, open to shut; is the cutter clear of it? Still not: leave everything "
     "mounted, stand clear, have the main shut down and drained, then take it off."},
    {bar_out_when, "Bar gets away"},
    {bar_out,
     "do not grab it. Stand clear; it stops at its end. Then feed it back with the screw, or shut the main down."},
    {jams_when, "Feed jams or the tool stops"},
    {jams,
     "no cheater bar, no second person on it. Back off half a turn, crack the bleed to clear chips, try lightly. Jams "
     "again: draw back, shut, bleed to zero, and inspect the tool."},
    {jams_dry,
     "no cheater bar, no second person on it. Back off half a turn, clear the chips, try lightly. Jams again: draw "
     "back and inspect the tool."},
    {loose_when, "Stop will not tighten, or keeps turning"},
    {loose,
     "thread stripped or cut too deep. Leave it as far in as it holds, machine on, chamber shut, and "
     "have the main shut down. Then the plug, a saddle over the hole, or the repair clamp."},
    {loose_dry,
     "thread stripped or cut too deep. Take it out. Then the plug, a saddle over the hole, or the repair "
     "clamp."},
    {threads_when, "Too many or too few threads show"},
    {threads,
     "too many: one more turn at most, wrench on the inlet side; do not force a stop that binds. Too few, or none: the "
     "hole is too deep. If it holds, the utility says whether it stays; if it weeps, shut down, then a saddle."},
    {coupon_when, "Coupon not in the cutter"},
    {coupon_lost,
     "open nothing toward customers. Flush hard to waste through the new tap or the nearest hydrant; "
     "look for it; tell the utility in writing if it is not found."},
    {crack_when, "White streaks, a click or a line running from the hole"},
    {crack, "treat it as a crack. Out of the pit, shut down, cut the length out."},
    {not_water_when, "Anything but water, or any smell, at the first breakthrough"},
    {not_water,
     "stop, leave machine and valves as they are, everybody away upwind, no flames or phones near, call "
     "the emergency number and the pipe's owner."},
    {valve_stop, "corporation stop"},
    {valve_machine, "machine valve"},
    {valve_tapping, "tapping valve"},
    {valve_bypass, "bypass"},
    {valve_bleed, "bleed"},
    {valve_chamber, "chamber"},
    {valve_brief, "valve"},
    {chamber_brief, "chamber"},
    {stop_brief, "stop"},
    {open, "OPEN"},
    {shut, "SHUT"},
    {bypass_open, "OPEN"},
    {bypass_shut, "SHUT"},
    {at_line, "AT LINE PRESSURE"},
    {at_zero, "AT ZERO"},
    {open_brief, "OPEN"},
    {shut_brief, "SHUT"},
    {bypass_open_brief, "OPEN"},
    {bypass_shut_brief, "SHUT"},
    {full_brief, "FULL"},
    {zero_brief, "ZERO"},
    {work_heading, "ORDER OF WORK"},
    {work_now, "Now: "},
    {work_until, "Go no further until: "},
    {by_utility, "The utility: "},
    {trouble_heading, "IF IT GOES WRONG"},
    {load_heading, "LOAD"},
    {load_beside, "tick each one"},
}};
static_assert(complete(table), "every word, in the order of StepWord");

}  // namespace steps_table

const StepTable& steps() { return steps_table::table; }

}  // namespace mainbore::words::english
