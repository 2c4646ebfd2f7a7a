#include "words/tables.hpp"

namespace mainbore::words::english {
namespace findings_table {

using enum FindingCode;

// In the order of MAINBORE_FINDINGS. In details and fixes, {value}, {limit}, {margin} and {0} to {3} stand for what the
// finding carries, {0+} and the like for a figure rounded up, {0-} down, {wall} and the other ids for the bounds of
// a stop number; [this {0}|that] is "this" when everything in it is known and otherwise "that" (which may be missing). A fix is an order to the crew, and says which reading clears the
// finding where one can.
constexpr FindingTable<FindingText> table = {{
    {identity_not_water,
     {"not a drinking-water main",
      "The pipe is on the order as carrying {0}. Only drinking water is tapped with this plan.",
      "Do not tap. Keep tools off the pipe and call its owner. If the order is wrong, have the utility correct it in "
      "writing and plan again.",
      "A tap into anything but drinking water can kill: gas and oil burn, sewage and reclaimed water poison the "
      "service. Crews have cut gas lines that they took for water lines, so what the pipe carries is settled before "
      "anything else is looked at."}},
    {identity_unknown,
     {"what the pipe carries is not known", "The order says that what this pipe carries is unknown.",
      "Do not tap yet. Have the utility identify the pipe by two independent means, such as its record and a sound or "
      "tracing signal from a known hydrant or valve. Enter what it carries and plan again.",
      "Material and color prove nothing: iron, steel, polyethylene and PVC all carry gas somewhere, and a gas tube "
      "may lie inside an old metal water pipe. A painted mark may belong to the pipe beside it."}},
    {identity_unconfirmed,
     {"pipe not yet proved to be the water main",
      "The order does not say that this pipe was proved to carry drinking water.",
      "Prove it by two independent means before the machine goes on: record and blue mark; signal or sound from a "
      "known hydrant or valve; size, material and joints as the record has them. Write down which two.",
      "An exposed pipe is not always the marked one: gas lines have been cut for water lines and dead lines taken for "
      "live ones. Two means that do not depend on each other catch that; two looks at the same paint do not."}},
    {main_not_in_catalogue,
     {"main not in the tables", "No {1} {0} pipe is listed, so its diameter, wall and rating are not known.",
      "Check size and material on the pipe itself. If they are right, measure the outside diameter and gauge the wall, "
      "get the rated pressure from the utility, and plan again with them.",
      "Dimensions come from the published tables. Where a pipe is not in them only measured figures will do; a "
      "neighboring size is not used in its place."}},
    {main_class_unknown,
     {"class of the main not known",
      "{1} listed pipes fit what is known. [Planned for the weakest, {0}.|Planned for the weakest of them.]",
      "Read the class cast, stenciled or printed on the barrel[, or measure the {2}: it tells the pipes apart|].",
      "Pipes of one size were made in several walls. Not knowing which, the plan takes the least guaranteed wall, in "
      "which the fewest threads hold, and the lowest rating. Knowing the class can only make the answer better."}},
    {main_class_not_made,
     {"class on the card not made in this size",
      "The class or standard on the card is not listed for this pipe.[ Listed here: {0}[ to {1}|][; {2}[ to {3}|]|].|]",
      "Read the class on the barrel itself. Correct the card, or leave the class out and gauge the wall at the tap.",
      "A class that was never made in the size means that size, material or class was written down wrong. The plan "
      "cannot tell which, so it ignores the class and takes the weakest pipe listed."}},
    {main_class_word,
     {"word of the class not known here",
      "The class or standard on the card says {0}[, a word of {1} pipe|, a word that is not in the tables].",
      "Read the class on the barrel itself. Correct the material, or write the class in the words of its standard, and "
      "plan again.",
      "Every word of a class means something: C909 pipe has little more than half the wall of C900 pipe of the same "
      "pressure class. A word that is not understood is not passed over. The plan ignores the class and takes the "
      "weakest pipe listed."}},
    {main_by_recollection,
     {"only recollection tells the pipe apart",
      "[The name on the card is recalled as the usual one of {0}.|{1} is recalled as laid[ from {2}|][ until {3}|].] "
      "The "
      "plan does not count on it.",
      "Read the class cast on the barrel, or have the utility rate the main. Until then the weakest pipe that fits is "
      "planned for.",
      "No publication that could be read says so. What is only recalled may be wrong by the one pipe that matters, so "
      "it "
      "removes none."}},
    {main_size_metric,
     {"size given by a metric name",
      "The size is given as DN {0}. The {1} {2} pipe planned for measures {3} outside. In most countries a pipe of "
      "that "
      "name measures otherwise.",
      "Measure the circumference on bare clean pipe, enter it and plan again. If the record names the American "
      "standard "
      "that the pipe was made to, enter that as main.standard.",
      "A metric name is not a dimension: ductile iron of DN 150 measures 175 mm outside by the American standard and "
      "170 "
      "mm by the international one. Saddle, seat and gasket for one do not fit the other, and the walls differ too."}},
    {main_year_contradicts,
     {"year laid does not fit the pipe",
      "The card says {0} laid in {1}.[ It was laid from {2} to {3}.|[ It was laid from {2} on.|[ It was laid until "
      "{3}.|]]]",
      "Look at the barrel: scratch it, look at the joint, measure the outside diameter. Correct material, class or "
      "year, and plan again.",
      "Each kind of pipe has its years. Old cast iron taken for ductile iron is the mistake that matters: it cracks "
      "where ductile iron holds, and its diameter differs."}},
    {main_not_yet_laid,
     {"main laid after the day of the tap", "The card says laid in {0}; the tap is planned for {1}.",
      "Correct the year or the day, and plan again. If the main is still to be laid, plan the tap when it lies and is "
      "full.",
      "One of the two is written down wrong, and the year tells which pipe this is."}},
    {main_od_contradicts,
     {"outside diameter is not that of the pipe on the card",
      "The pipe measures {value} outside. The nearest it could be by the card[, {0},|] measures {limit}.[ The reading "
      "fits {1}.|]",
      "Clean the barrel bare and measure again in three places. If the reading stands, this is not the pipe on the "
      "card: correct material, class or size and plan again.",
      "The outside diameter is the surest sign of what a pipe is. Machine saddle, service saddle and gasket all seat "
      "on it, and a wrong one leaks or rocks under pressure."}},
    {main_od_unsettled,
     {"outside diameter not settled", "Pipes from {0} to {1} outside all fit what is known.",
      "Measure the circumference on bare clean pipe before loading the truck. The reading settles which machine saddle "
      "and which service saddle to bring.",
      "One nominal size covers several outside diameters. A saddle for one does not seat on another, and an oversize "
      "one shows a gap at the two sides."}},
    {main_od_unknown,
     {"outside diameter not known", "Neither the tables nor the order give the outside diameter.",
      "Measure the circumference with a tape around bare clean pipe, enter it and plan again.",
      "Every seat, gasket, chain and thread count is worked from the outside diameter. Nothing stands in for it."}},
    {main_readings_disagree,
     {"caliper and tape disagree", "The caliper gives {value}, the tape gives {limit}.",
      "Clean the barrel all the way around and take both again in the same place. Check that the tape lies square to "
      "the pipe. They must agree before the tap.",
      "Two readings of one pipe that differ by more than the two instruments allow mean that one is wrong, that the "
      "pipe is out of round, or that scale is still on it."}},
    {main_wall_impossible,
     {"wall reading out of range", "A wall of {value} was entered. This pipe can have at most {limit}.",
      "Check the unit and the gauge's setting for this material. Gauge bare metal or plastic again: the lining does "
      "not count. Until then the plan uses the least wall in the tables.",
      "A reading far over any wall made is of something else: diameter for wall, millimeters for inches, a dimension "
      "ratio for a thickness, an echo from the lining or from the far side."}},
    {main_wall_thin,
     {"wall thinner than a sound pipe", "The wall measures {value}. A sound pipe[ of {0}|] has at least {limit}.",
      "Gauge several places around the tap and look for pitting. Tap only where the wall reads at least "
      "[{wall}|{limit}]; else move to sound pipe or ask the engineer.[ A {1} water main may have been ordered with a "
      "thinner wall: "
      "have the utility look for the wall on its drawings, and plan with an outlet welded on and reinforced, as the "
      "engineer "
      "designs it.|]",
      "A wall below what the class allows has been eaten from inside or outside, or is another class. Both mean that "
      "the rating on the card cannot be relied on here."}},
    {main_wall_unmeasured,
     {"wall not measured",
      "Nobody has gauged the wall at the tap.[ The plan needs sound wall of at least "
      "{wall}.|[ The plan needs sound wall of at least {limit}.|]]",
      "Gauge the wall at the tap and beside it, on bare clean pipe, and write down the least reading. [It must be at "
      "least {wall}; stop if less.|[It must be at least {limit}; stop if less.|Enter it and plan again.]]",
      "The tables give the wall of a new pipe. Years in the ground take some of it, and not evenly, so the wall under "
      "the tap is read before the hole is cut rather than after."}},
    {main_condition_unseen,
     {"main not yet looked at", "Nobody has said what condition the main is in.",
      "Clean the barrel all the way around and look: cracks, pits, soft spots, old clamps. Sound it with a light "
      "hammer "
      "if it is iron. Write down sound, pitted or poor.",
      "A tap loads the pipe where it is cut. A crack or a deep pit near it can run while the machine is on, with the "
      "main under pressure and somebody in the pit."}},
    {main_condition_pitted,
     {"main is pitted", "The order says the main is pitted.",
      "Choose the place by gauge: sound wall under the whole seat of machine or saddle, and no pit under a gasket. "
      "Read the wall at the tap and write it down.",
      "Under pits the wall is thinner than any table says, threads are short, and a gasket cannot seal across them."}},
    {main_condition_poor,
     {"main is in poor condition", "The order says the main is in poor condition.",
      "Do not tap this length under pressure. Tap a sound length, or have the engineer decide on cutting in a new "
      "piece with the main shut down.",
      "A pipe that is cracked, soft or badly corroded may not carry the chain, the drill or the hole. What fails then "
      "fails at full flow in an occupied pit."}},
    {main_encased,
     {"main is wrapped in film", "The main lies in polyethylene film.",
      "Where machine and chain will sit, wrap two or three turns of polyethylene tape around pipe and film, and tap "
      "through it. Afterwards tape every cut, and wrap the stop and the first of the service.",
      "The film keeps the soil's water off the iron. A hole left open in it gathers the corrosion in one place: at the "
      "tap."}},
    {main_curved,
     {"pipe is bent along its length", "This length of pipe is laid to a curve.",
      "Move to a straight length for a direct tap, or use a saddle made for this pipe.",
      "In a bent plastic pipe the outside of the bend is already stretched. A thread cut there starts a crack."}},
    {main_curve_unknown,
     {"not known whether the pipe is bent", "Nobody has said whether this length is straight.",
      "Lay a straightedge or string along the exposed barrel. Tap direct only if it lies straight; write down what you "
      "saw.",
      "In a bent plastic pipe the outside of the bend is already stretched. A thread cut there starts a crack."}},
    {main_temperature_outside,
     {"pipe too cold or too warm to tap", "The pipe wall is at {value}. It is tapped {2} only from {0} to {1}.",
      "Shade, cover or wait until a thermometer held to the pipe reads [{pipe-temperature}|{0} to {1}][, {3}|].",
      "Cold plastic cracks under the cutter and warm plastic gives way under the seat. The window is the one in which "
      "taps were tried."}},
    {main_temperature_unmeasured,
     {"pipe temperature not read",
      "Nobody has read the temperature of the pipe. It must lie within [{pipe-temperature}|{0} to {1}].",
      "Hold a thermometer to the bare pipe, out of the sun, when it has been uncovered for a while. Tap only at "
      "[{pipe-temperature}|{0} to {1}].",
      "Plastic loses strength with warmth and toughness with cold. Pipe in an open trench in the sun is far warmer "
      "than the water in it."}},
    {main_freezing,
     {"pipe below freezing", "The pipe wall is at {value}; water freezes at {limit}.",
      "Check the thermometer. If it is so, do not cut: have the pit covered and warmed, without a flame, until the "
      "pipe "
      "reads at least {limit} and the main is known to flow, then plan again.",
      "A pipe as cold as ice may be plugged by it, and bursts under more pressure than any gauge nearby shows. Iron "
      "and "
      "plastic are brittle then, and the stop freezes while it is being set."}},
    {service_not_smaller,
     {"service as large as the main", "A {0} service in a {1} main is not planned here.",
      "Have the engineer choose: a sleeve made for size on size, a tee, or a larger main. If a size was written down "
      "wrong, correct it and plan again.",
      "A branch as large as the pipe it leaves is a connection between mains, not a service tap: the hole would take "
      "the whole side of the pipe."}},
    {direct_not_allowed,
     {"no direct tap in this kind of main",
      "Under the rules in force {0} takes no direct tap."
      "[ Which row holds depends on {2}, which is not known: give it and plan again.|]",
      "[Instead: {1}.|Use a saddle or a sleeve made for this pipe.]",
      "A direct tap cuts its thread in the pipe's own wall. Some walls are too thin, too soft or too brittle to hold "
      "it, or hold it only until the service is pulled."}},
    {direct_over_maximum,
     {"larger than the largest direct tap",
      "A {0} direct tap is asked for. The largest allowed[ in {2}|] is {1}."
      "[ Which row holds depends on {3}, which is not known: give it and plan again.|]",
      "Use a saddle, or several smaller taps of equal capacity.",
      "The larger the hole beside the pipe's diameter, the further the thread drops away at the sides and the more of "
      "the pipe is gone. The largest tap for each main is set by rule."}},
    {direct_no_rule,
     {"no rule for a direct tap here",
      "No rule in force covers a direct tap in {1} {0}."
      "[ Which row holds depends on {2}, which is not known: give it and plan again.|]",
      "Use a saddle, or have the engineer set a largest direct tap for this main.",
      "Where no rule covers a main, the plan offers no direct tap in it rather than borrow the rule of another."}},
    {direct_few_threads,
     {"too few threads in the wall", "[A wall of {0}|The wall] holds {value-}; {limit} are required.",
      "Use a smaller tap, several small ones, or a saddle.",
      "On a round pipe a thread closes all the way around only below the sides of the hole. What is counted is these "
      "complete threads: the ones that hold and seal."}},
    {direct_thin_wall,
     {"too few threads if the wall is at its thinnest",
      "The wall may be as thin as {value}, which[ holds {0-} and|] falls short: {limit} is needed.",
      "Gauge the wall at the tap. It must read at least [{wall}|{1+}]; if less, use a saddle.",
      "At its nominal wall this pipe holds the threads, at the least wall its class allows it does not. Only a reading "
      "at the tap can tell which pipe this is."}},
    {direct_marginal_threads,
     {"only just enough threads", "The wall holds {value-}; {limit} are required.",
      "Gauge the wall at the tap, use a sharp tap and a fresh stop, and stop at the mark. Have a saddle on the truck.",
      "The count is right, with little to spare for a pit, a worn tap or a turn too many."}},
    {direct_recalled_thread,
     {"thread dimensions are recalled, not published",
      "[The utility asks for {limit} in the wall; by the dimensions recalled for this thread a wall of {0} holds "
      "{value-}.|"
      "By the dimensions recalled for this thread the wall holds {value-}; {limit} are usual.]",
      "[Gauge the wall at the tap: at {1+} or more it holds them. Or read the class on the barrel, or measure the "
      "stop's "
      "thread, and plan again. Or have the utility's engineer permit this tap.|Measure the stop's thread (diameter "
      "over "
      "the threads, and threads per inch) or ask its maker, then plan again.]",
      "The dimensions of this thread were not read in its standard; they are recalled. They are good for a first look, "
      "not for a tap that depends on them."}},
    {direct_thread_unknown,
     {"thread not in the tables",
      "No dimensions are listed for a [{1} {0}|{0}] thread; "
      "where a larger one is listed it is counted as that.",
      "Check the thread marked on the stop. Use a stop and a tap with a listed thread, or a saddle.",
      "Without the thread's pitch and diameter nobody can count how many turns the wall holds."}},
    {direct_wrong_thread,
     {"wrong thread for a direct tap here", "{0} is not the thread to cut in this main.",
      "Use stop and tap with the thread the rules ask for, both the same, or a saddle.",
      "A taper pipe thread spreads a plastic wall more than the corporation taper does, and two threads that only "
      "nearly match will start, bind and leak."}},
    {direct_hole_too_large,
     {"hole too large for the pipe", "The [{0} |]hole is {value} of the pipe's diameter; at most {limit} is allowed.",
      "Use a smaller tap, several small ones, or a saddle or sleeve.",
      "A hole that is wide beside the pipe leaves too little around it, and its thread runs out at the sides."}},
    {direct_wall_unknown,
     {"wall not known", "Neither the tables nor the order give a wall to count threads in.",
      "Gauge the wall at the tap.[ The threads need at least {wall}.|[ The threads need at least {limit}.|]] Enter the "
      "reading and plan again, or use a "
      "saddle.",
      "Threads are counted in the wall. Without it the plan cannot say that a direct tap holds."}},
    {saddle_not_allowed,
     {"no saddle tap on this kind of main",
      "Under the rules in force {0} takes no tap through a saddle."
      "[ Which row holds depends on {2}, which is not known: give it and plan again.|]",
      "[Instead: {1}.|Use a sleeve made for this pipe, or ask the engineer.]",
      "A saddle hangs on the barrel and needs a barrel that can bear its bands and lose a round of wall."}},
    {saddle_over_maximum,
     {"larger than the largest saddle tap",
      "A {0} saddle tap is asked for. The largest allowed[ on {2}|] is {1}."
      "[ Which row holds depends on {3}, which is not known: give it and plan again.|]",
      "Use several smaller taps of equal capacity, or a sleeve.",
      "Above a certain outlet a saddle's bands no longer make up for the pipe that is cut away, and a full sleeve is "
      "used."}},
    {saddle_no_rule,
     {"no rule for a saddle here",
      "No rule in force covers a saddle on {1} {0}."
      "[ Which row holds depends on {2}, which is not known: give it and plan again.|]",
      "Have the engineer set a largest saddle tap for this main, or use a sleeve.",
      "Where no rule covers a main, the plan offers no saddle on it rather than borrow the rule of another."}},
    {saddle_hole_too_large,
     {"hole too large for a saddle",
      "The [{0} |]hole is {value} of the pipe's diameter; at most {limit} is allowed under a saddle.",
      "Use a smaller tap, several small ones, or a sleeve.",
      "A saddle replaces none of the wall that is cut away. Beyond a share of the diameter the pipe is left too "
      "weak."}},
    {saddle_by_engineer,
     {"saddle only with the engineer's word", "On this main a saddle is used only as the engineer says.",
      "Show the engineer material, outside diameter, wall and pressure. Write down the saddle allowed and the name.",
      "On this kind of pipe, bands and hole act on more than a plain wall: wire, mortar, or a brittle or unknown "
      "barrel."}},
    {section_too_little_left,
     {"too little of the pipe left beside the hole",
      "With the hole {value} of the pipe's strength as a beam is left; at least {limit} is required.",
      "Use a smaller tap, several small ones well apart, or a sleeve that carries the pipe.",
      "A main bends over hard spots and under traffic. A hole at its crown or invert takes strength where bending is "
      "worst."}},
    {several_need_room,
     {"several taps need room", "{0} taps of {1} need {limit} of clear barrel.",
      "Expose and measure the barrel between joints. There must be {limit}, free of taps, joints and clamps.",
      "Taps standing close together weaken the same piece of pipe. Each keeps its distance from the next, and from the "
      "joints at both ends."}},
    {several_no_room,
     {"no room for a series of taps",
      "{0} taps of {1} need {limit} of clear barrel; {value} lies between the joints listed.",
      "Expose a longer length of pipe for the taps, or use a saddle or sleeve.",
      "Taps standing close together weaken the same piece of pipe. Each keeps its distance from the next, and from the "
      "joints at both ends."}},
    {several_too_many,
     {"too many taps to stand for one",
      "{0} taps[ of {1}|] would be needed[; at most {limit} are allowed|, more than the rule allows].",
      "Use a saddle or a sleeve for one larger tap.",
      "Small taps carry less than their areas suggest, so many are needed, and each is a hole, a stop and a joint that "
      "can leak."}},
    {several_not_taken,
     {"several smaller taps not offered", "Taps of {0} do not do here[: {1}|].",
      "See what else is offered, or ask the engineer.",
      "A series of small taps must itself pass every check: each tap by its threads, all together by their number and "
      "their room."}},
    {sleeve_not_allowed,
     {"no sleeve on this kind of main",
      "Under the rules in force {0} takes no tapping sleeve."
      "[ Which row holds depends on {2}, which is not known: give it and plan again.|]",
      "[Instead: {1}.|Ask the engineer: cutting in a tee with the main shut down may be the way.]",
      "A sleeve clamps right around the pipe and carries a valve and a machine. Not every barrel bears that."}},
    {sleeve_over_maximum,
     {"larger than the largest sleeve tap",
      "A {0} outlet is asked for. The largest allowed[ on {2}|] is {1}."
      "[ Which row holds depends on {3}, which is not known: give it and plan again.|]",
      "Use a smaller outlet, or have the engineer design a tee with the main shut down.",
      "Cutting a branch near the size of the main takes most of the wall on one side."}},
    {sleeve_no_rule,
     {"no rule for a sleeve here",
      "No rule in force covers a sleeve on {1} {0}."
      "[ Which row holds depends on {2}, which is not known: give it and plan again.|]",
      "Have the engineer set a largest outlet for this main.",
      "Where no rule covers a main, the plan offers no sleeve on it rather than borrow the rule of another."}},
    {sleeve_to_be_chosen,
     {"sleeve to be chosen", "A tapping sleeve with a {0} outlet is needed[ for {1} outside diameter|].",
      "Measure the outside diameter in three places, then order sleeve and tapping valve for it, rated for the line. "
      "Measure from the pipe to the far face of the valve, and see that the machine's travel passes it and the wall. "
      "Plan the cut with the maker's sheet for the sleeve and its machine.",
      "Sleeves are made for narrow ranges of diameter, and each has its own machine, cutter and bolting. Their figures "
      "are the maker's to give."}},
    {method_not_as_asked,
     {"not the method asked for", "Asked for: {0}. Planned: {1}.",
      "Tell whoever wrote the order. The reason stands with the rejected methods.",
      "The method asked for does not pass the checks for this main. The plan takes the next one that does."}},
    {method_none,
     {"no method passes", "No method that may be offered passes for this main and service.",
      "[The rules say instead: {0}. |See why each was rejected. ]The ways left: a smaller service, another main, a tee "
      "cut in with the main shut down, or a connection designed by the engineer.",
      "The plan tries a direct tap, a saddle, several smaller taps and a sleeve, and each has met something that stops "
      "it."}},
    {pressure_over_pipe_rating,
     {"line pressure over the pipe's rating",
      "The line is at {value}. [{0} pipe|The pipe] is rated {limit}, over by {margin}.",
      "[The class is not proved, and the pipe may be one that bears this line. Read {1} at the pipe, or get the "
      "utility's rating of "
      "this main, and plan again with it. If neither is high enough, this main runs over its rating, tap or no tap: "
      "tell "
      "the utility.|Stop and tell the utility: this main runs over its rating, tap or no tap. If the class is in "
      "doubt, "
      "read it on the barrel, or ask the utility what it rates this main for, and plan again.]",
      "A pipe over its rating has lost the reserve that covers surge, age and a hole. Lowering the line for the time "
      "of the tap does not cure it, because the pressure comes back."}},
    {pressure_over_feed_limit,
     {"line pressure over the feed limit", "The line is at {value}. This machine is fed by {0} only up to {limit}.",
      "Have the main lowered to [{line-pressure}|{limit}] or less and held there, or bring a machine with a powered "
      "feed. Read "
      "the gauge at the tap: at most [{line-pressure}|{limit}].",
      "The line pushes the bar back out at whoever feeds it. Above the limit, the feed named cannot hold or control "
      "it."}},
    {pressure_over_machine_rating,
     {"line pressure over the machine's rating", "The line is at {value}. The machine holds {limit}.",
      "Have the main lowered to [{line-pressure}|{limit}] or less and held there, or bring a machine rated for the "
      "line. Read "
      "the gauge at the tap.",
      "Body, packing and gaskets of the machine stand between the crew and the main."}},
    {pressure_over_stop_rating,
     {"line pressure over the stop's rating", "The line is at {value}. The corporation stop is good for {limit}.",
      "Use a stop marked for at least {value+}. If the stop on the truck is marked so, enter its rating and plan "
      "again.",
      "The stop stays on the main for good, so it must hold what the main runs at, not only what it is lowered to for "
      "the tap."}},
    {pressure_over_saddle_rating,
     {"line pressure over the saddle's rating", "The line is at {value}. The saddle or sleeve is good for {limit}.",
      "Use one marked for at least {value+}. If the one on the truck is marked so, enter its rating and plan again.",
      "Saddle and sleeve stay on the main for good, so they must hold what the main runs at."}},
    {pressure_over_wet_tap_limit,
     {"line pressure over the limit for tapping",
      "The line is at {value}. Mains are tapped under pressure up to {limit}.",
      "Have the main lowered to [{line-pressure}|{limit}] or less and held there while the tap is made. Read the gauge "
      "at the "
      "tap: at most [{line-pressure}|{limit}].",
      "Whatever the equipment can hold, a limit is set for working on an open main with people in the pit."}},
    {pressure_surge_over_rating,
     {"pressure with surge over what the pipe may see",
      "With [{1}|a] surge of {0} the main may see {value}; {limit} is allowed.",
      "Ask the utility what surge this main sees and how often[: {surge} has room|[: {2} has room|]]. Read the pipe's "
      "class, and ask what the "
      "main is rated for. Plan again with what you learn; a surge that comes only with a power failure or a fire flow "
      "is "
      "entered as occasional. What lowers it: pumps started and valves closed slowly, a lower line pressure for good.",
      "Pumps and fast valves send pressure waves through the main. A pipe that is already near its limit has no room "
      "for them, and less with a hole in it. Plastic fatigues under surges that come every day, so those must lie "
      "within "
      "its rating; brittle pipe has nothing to give."}},
    {pressure_surge_over_fitting,
     {"pressure with surge over what a fitting may see",
      "With a surge of {0} the {1} may see {value}; {limit} is allowed for a moment.",
      "Use one marked for at least {2+}: enter its rating and plan again. Or ask the utility what surge this main "
      "sees, and "
      "enter that.",
      "A fitting is proved at half as much again as it is rated for. More than that may not reach it, not even for a "
      "moment."}},
    {pressure_rating_unknown,
     {"pipe's rating not known", "The tables give no rated pressure for this pipe.",
      "Call the utility for the working pressure it rates this main for, from its record or its test, and enter that "
      "as "
      "the main's rating. [It must be at least {limit}, line and surge together. |]Plan again.",
      "Old standards and some materials state no rating that still holds. That the main runs is no proof that it is "
      "within it."}},
    {pressure_too_warm,
     {"pipe too warm to be under pressure", "The pipe is at {0}, over the range for which it has any rating.",
      "Do not tap. Shade and cool the pipe, check the thermometer, and plan again with a reading in the range.",
      "A plastic pipe's rating falls with warmth, and ends where its table ends."}},
    {pressure_needs_regulator,
     {"customer's side needs a regulator",
      "The line is at {value}; customers are served without a regulator up to {limit}.",
      "Put a pressure regulator on the customer's side, as the code there asks.",
      "Household valves and heaters are made for lower pressures than mains. The tap does not depend on this; the "
      "house does."}},
    {pressure_low_over_line,
     {"lowest pressure above the highest",
      "The lowest pressure of the main is given as {value}, the highest as {limit}.",
      "Read the gauge or ask the utility for both, put the wrong one right and plan again.",
      "`main.pressure` is the greatest pressure expected while tapping, and every limit is held against it. If the "
      "main "
      "never falls below a higher figure, the tap was planned for too little."}},
    {pressure_system_low,
     {"line below the pressure of a water system",
      "The line is at {value}; a distribution system is kept at {limit} at the least.",
      "Ask the utility whether the figure is right and the main is in service, and what the customer will have.",
      "Below it the house has hardly any water, and any leak can draw dirty water in. The figure may be of another "
      "unit, or of a main that was shut. The tap itself is judged by the greatest pressure alone."}},
    {machine_unspecified,
     {"machine's own figures not given", "Planned with conservative figures[ ({0})|], not with the maker's.",
      "Read pressure limits, travel of the bar and sizes of tap in the machine's own papers. They must reach the "
      "numbers of this plan; write them down, or enter them and plan again.",
      "Machines differ in travel, seat and limit. Until the maker's figures are entered the plan is cautious, and may "
      "hold a tap that the machine could make."}},
    {machine_wrong_size,
     {"tap outside the machine's sizes", "The tap is {0}. The machine takes {1} to {2}.",
      "Bring a machine for {0} taps.", "The bar, the chamber and the valve must pass the tool and then the stop."}},
    {machine_no_powered_feed,
     {"machine has no powered feed", "A powered feed was asked for, and this machine has none.",
      "Feed by hand within the hand-feed limit, or bring a machine with a powered feed.",
      "A machine's limit under a powered feed counts only where it has one."}},
    {machine_figures_missing,
     {"machine's figures not all given", "Not given, and so not checked: {0}[; {1}|][; {2}|][; {3}|].",
      "Read the figures in the machine's papers or measure them on it, enter them and plan again; or show on a piece "
      "of "
      "the same pipe in the yard that the machine seats, holds and reaches.",
      "A check that has no figure to go by has not been passed. What was left out may be the one thing that does not "
      "fit "
      "this pipe."}},
    {machine_no_saddle,
     {"no machine saddle for this pipe", "The pipe is {value} outside. The machine's saddles seat on {0} to {1}.",
      "Bring a machine saddle made for {value}, or another machine. Do not pack one that does not fit.",
      "The saddle between machine and pipe makes the seal. One that does not follow the pipe's curve leaks at the two "
      "sides or rocks."}},
    {machine_gasket_small,
     {"seal hardly wider than the hole",
      "The machine's sealing circle is {value} wide; around a {0} hole it must be {limit} or more.",
      "Check the figure in the machine's own papers, or bring a saddle and gasket that seal outside the hole.",
      "Water that comes up outside the gasket cannot be held: the seal must lie on sound pipe all around the hole."}},
    {machine_figures_wrong,
     {"machine's figures out of range", "The job's {0} is {value}: {1} {limit}.",
      "Measure it on the machine or read it in its maker's papers, put it right and plan again.",
      "What holds the machine down is worked out from its figures. With a wrong figure nothing can be said of "
      "chain, clamp or travel."}},
    {machine_stud_overloaded,
     {"stud too weak for the clamp", "Each stud pulls {0}: {value} on a {1} stud; {limit} is taken as the limit.",
      "Use a clamp with thicker studs or a smaller gasket, or lower the line.",
      "A stud that stretches lets the machine lift while the main is open under it. The limit is that of a plain steel "
      "stud without a grade mark, and leaves room for the scatter of tightening by torque."}},
    {machine_chain_short,
     {"chain too short",
      "{limit} of chain is needed and {value} is on the truck. Extensions needed in all: {0}[; on the truck: {1}|].",
      "Load chain extensions: {0} in all. Then measure the chain, hook to hook: at least {limit}.",
      "The chain goes around the pipe from hook to hook, and its length follows from the diameter."}},
    {machine_travel_short,
     {"bar travel too short", "The bar travels {value}; this tap needs {limit}.",
      "Bring a machine with at least {limit} of travel, or a shorter tool that its maker allows.",
      "The tool must reach from behind the valve, through the wall, to full depth. A bar that ends early leaves a "
      "half-cut hole in a main under pressure."}},
    {machine_reach_unknown,
     {"not known whether the bar reaches",
      "On a saddle the bar reaches through adapter, stop and saddle. Not given: "
      "{0}[; {1}|][; {2}|][; {3}|].",
      "Measure with a tape in the yard, machine, stop and saddle on the bench, enter the lengths and plan again; or "
      "set "
      "them up on a piece of the same pipe and cut it through.",
      "A saddle tap needs more travel than a direct one: the cutter has the whole stop to pass before it touches the "
      "pipe. A bar that ends early leaves a half-cut hole in a main under pressure."}},
    {machine_valve_not_clear,
     {"valve cannot shut behind the bar",
      "With the bar drawn back its {0} stands {value} over the pipe; the valve "
      "needs {limit} to swing.",
      "Use a shorter tool, or a machine whose valve stands nearer to the pipe. Try the valve in the yard with the tool "
      "on the bar.",
      "The valve between chamber and main must shut before the chamber is opened. A tool left in its way keeps the "
      "main open."}},
    {machine_tool_strikes_far_wall,
     {"tool reaches the far wall", "At full depth the tool is {value-} from the far wall; {limit} is required.",
      "Use a shorter tool or a smaller tap. Do not run past the mark.",
      "In a small pipe a long drill and tap can score or pierce the opposite wall before the thread is cut."}},
    {machine_push_by_hand,
     {"push on the bar over the limit for hands",
      "The line pushes the bar with {value}; {limit} is taken as the limit for bare hands.",
      "Hold the bar with the feed screw or its restraint, never by hand alone, and stand beside it.",
      "When the tool comes free the whole push comes onto the bar at once. A bar that gets away hits whoever stands in "
      "line with it."}},
    {machine_chain_ovals_pipe,
     {"chain may squeeze the pipe out of round",
      "At the tension needed the pipe may go out of round by {value}; caution is from {0}, and {1} is the limit.",
      "Use a wide strap or full-seat clamp instead of the bare chain, or lower the line. Take up only until it holds.",
      "The figure is an upper bound: a real pipe is helped by its neighbors and by the water in it. But a plastic "
      "pipe squeezed oval under the cutter is where cracks start."}},
    {makeup_by_trial,
     {"depth of tap by trial",
      "Make-up cannot be worked out for [{0}|this thread]: its taper or gauge length is not published here.",
      "Tap a trial piece of the same wall on the bench, make up the stop, and mark the bar where the right threads "
      "show.",
      "How far to run the tap decides how far the stop goes in. Where the thread's own figures are lacking a trial "
      "gives the mark, and tap and stop come from the same pair."}},
    {makeup_trial_off,
     {"trial's counts do not fit", "Of the trial, {0}: {value}; {1} {limit}.",
      "Make the trial again with this tool and a stop of this lot, count turns and threads, and work the depth out "
      "anew.",
      "The crew taps to the depth of the trial and makes the stop up by its counts. Where the wrench did nothing, or "
      "turns and threads are not those of a made-up stop, the depth is that of another joint, or of none."}},
    {place_not_looked,
     {"nobody has looked for joints and other taps", "What lies on and beside the main near the tap is not known.",
      "Uncover the barrel both ways and look for joints, taps, clamps and defects. The tap must stand at least {limit} "
      "clear.",
      "A tap too near a joint, a clamp or another tap weakens the same piece of pipe, and the machine needs the "
      "room."}},
    {place_moved,
     {"tap moved to clear something",
      "Too near the place asked: {0}, {1} along. The tap must keep {limit} from it. Moved {value+} along the main, + "
      "and - as on the order.",
      "Dig to the new place and measure there. Keep at least {limit} clear. Tell whoever drew the service.",
      "A tap too near a joint, a clamp or another tap weakens the same piece of pipe."}},
    {place_no_room,
     {"no clear place near enough",
      "Within {0} of the place asked, no place keeps every distance[ (in the way: {1})|].",
      "Choose a place on another length of pipe, or have the engineer agree to a shorter distance.",
      "Distances from joints, taps and clamps keep weakened places apart. The plan moves a tap only so far before it "
      "asks."}},
    {place_clock,
     {"place around the pipe outside the rule",
      "The place asked stands {value} above horizontal[; the limit is {limit}|]. Planned: {0}.",
      "Tap at the planned place, or have the engineer agree to the one asked. Write down which.",
      "Low on the pipe a service draws sediment, and the machine hangs; on the crown it draws air and the service "
      "loses cover."}},
    {place_stagger,
     {"another tap in line",
      "[A tap {0} away stands at {1}, in line with this one or within {3} of it.|Of a tap {0} away nobody has said "
      "where "
      "around the pipe it stands: it counts as in line.][ Planned: {2}.|]",
      "[Tap at {2}, or move along the main to {limit} from that tap.|[Near the tap at {1}: move along the main to "
      "{limit} "
      "from it, and plan again for that place.|Look where around the pipe that tap stands, enter its clock position "
      "and "
      "plan again; or move to {limit} from it.]]",
      "Holes in one line along the pipe weaken that line. Staggered ones do not."}},
    {place_defect_near,
     {"damaged pipe near", "Near the tap: {0}, {1} away.",
      "Look at it and at the pipe between. Watch it while the machine is on; move the tap if it weeps or moves.",
      "A clamp or defect says that this length has failed before. What caused it may reach to the tap."}},
    {place_other_line,
     {"another line near", "Near the tap: {0}, {1} away.",
      "Dig by hand to find it before any machine works near, and look under the main too. Keep its owner's number in "
      "the truck.",
      "Lines lie beside and right under water mains, and marks can be off by feet. People have struck gas while "
      "digging to water."}},
    {value_recalled,
     {"a value is recalled, not read", "Check this value: {0}[, {1}|][, {2}|][, {3}|]. It is recalled, not read.",
      "Compare it with the document or the maker's sheet before relying on it.",
      "Some figures could only be set down as remembered. The plan uses them on the safe side, and never passes them "
      "off as published."}},
    {service_size_not_made,
     {"no stop is made in this size",
      "No {1} thread is listed for a {0} tap[; nearest: {2}[ and {3}|]|; nearest: {3}].",
      "Read the size on the stop or ask for the service's nominal size[: {2}[ or {3}|] may be meant|: {3} may be "
      "meant], "
      "and plan again with it.",
      "Stops, taps and drills come in the sizes of the thread's standard. A size between them is a slip of the pen or "
      "a bore taken for a name, and the hole cut for it fits nothing on the truck."}},
    {service_not_tabulated,
     {"size not in the tables", "{1}, given as {0}, is in no table[; nearest: {2}[ and {3}|]|; nearest: {3}].",
      "Read the size on the tubing or the meter[: {2}[ or {3}|] may be meant|: {3} may be meant], and plan again with "
      "it. Of a meter larger than any listed, compound or turbine, bring its maker's curve: what it loses and passes "
      "at "
      "this demand. The engineer sizes the service by that.",
      "A size that is in no table cannot be worked out, and a service that is not worked out "
      "has not passed."}},
    {service_existing_lead,
     {"old lead service found", "The service found in the ground is lead.",
      "Stop. Do not cut, bend or shake it. Tell the utility, and go on only by its word on replacement, flushing and "
      "notice to the customer.",
      "Disturbing a lead service loosens what lies on its wall, and the house drinks it for weeks. Joining a new "
      "pipe to an old lead one makes it worse. Whether it is replaced whole is the utility's to say."}},
    {service_existing_galvanized,
     {"old galvanized service found", "The service found in the ground is galvanized steel.",
      "Stop and tell the utility. Ask whether it ever lay behind lead, and whether it is replaced whole. Measure "
      "what it passes before it is joined to.",
      "Old galvanized pipe is narrowed by rust, breaks at its threads when it is moved, and holds lead that came "
      "from pipe before it. Utilities list it together with lead."}},
    {service_not_checked,
     {"water for the customer not worked out",
      "Not checked: {0}.[ Missing: {1}[, {2}|][, {3}|].|[ Missing: {2}[, {3}|].|[ Missing: {3}.|]]]",
      "Give what is missing and plan again, or have the engineer size the service.",
      "A tap that holds may still starve the house. Without the length and material of the line and the demand "
      "nobody can say."}},
    {service_code_unnamed,
     {"plumbing code not named",
      "Fixture units are given without the code they belong to. Planned by the {0}, which asks for the most: {value}.",
      "Say whose fixture units these are, and plan again.",
      "Codes weigh fixtures differently and draw their own demand curves. At ten units the curves of two codes are "
      "14.6 and 8 gpm: units of one read on the curve of another are wrong by nearly double."}},
    {service_fixture_unknown,
     {"fixture the code does not list",
      "In the list of fixtures, number {1} is not a fixture of [the {0}|any code here].",
      "Write the fixture as the code's table does, or give the fixture units or the flow.",
      "A fixture that is left out makes the service too small. So the plan does not go on without it."}},
    {service_curve_unread,
     {"demand curve does not reach",
      "No demand curve of [the {0}|a code here] covers these fixture units and this kind of supply.",
      "Work the demand out by the code itself, and give it as a flow.",
      "Some rows of some curves could not be read, and one code's curve for flush valves was not. The plan does not "
      "guess them from another's."}},
    {service_starved,
     {"too little pressure for the customer",
      "At {0} the pressure left behind the meter is {value-}; at least {limit} is wanted. The line passes {1} at that.",
      "Lay a larger line, set a larger meter or tap, or shorten the line, and plan again. The plan names the "
      "smallest that serve.",
      "What is left behind the meter must still climb the house and work its fixtures. Below the least pressure "
      "showers run cold or dry, and water may be drawn back from the house into the main."}},
    {service_too_high,
     {"customer too high for the main",
      "The customer is {0} above the main. At its lowest pressure that leaves {value-} before any water runs; at least "
      "{limit} is wanted.",
      "Check the rise. If it is right, serve the customer from a main of higher pressure, or through a pump that the "
      "utility allows.",
      "Each foot of rise takes 0.43 psi, and no larger pipe gives it back."}},
    {service_too_fast,
     {"water too fast in the service",
      "At {0} the water runs at {value}, over {limit}; beyond {1} the line is too small.",
      "Lay [a {2} line|a larger line]. Up to {1} this one serves, but runs loud and wears faster.",
      "Fast water is noisy, wears copper at its bends and hammers when a valve shuts: in a copper line each foot a "
      "second that is stopped short gives some 55 psi."}},
    {service_meter_over,
     {"meter passed beyond its maximum", "The demand of {value} is over the {limit} that a {0} meter may pass.",
      "Set a larger meter. The plan names the smallest that serves.",
      "Beyond its greatest safe flow a displacement meter wears out fast, reads low and takes the pressure that the "
      "house needs."}},
    {service_meter_continuous,
     {"meter over its continuous flow",
      "{value} runs on without pause; a {0} meter should pass no more than {limit} for long.",
      "Set a larger meter, or lower the flow that runs on.",
      "The greatest safe flow is for short times. A flow that goes on for hours wears the chamber at a fraction of "
      "it."}},
    {service_line_small,
     {"service under the least size", "A {0} line is under the least size of {1}.",
      "Lay at least {1}, or show the utility's permission for less.",
      "Codes set a least size for a new service whatever its demand."}},
    {clean_stock_too_weak,
     {"stock weaker than the solution", "The stock has {value} of chlorine; the solution wants {limit}.",
      "Bring fresh stock and read its label. Bleach loses strength on the truck.",
      "No mixing makes a strong solution from a weak stock. Old bleach looks and smells like fresh."}},
    {clean_cannot_scour,
     {"flush too slow to carry dirt out", "The line passes {value} to waste; to run at {0} it needs {limit}.",
      "Flush before the meter is set, through the full bore, and for more changes of water. Look at what comes out, "
      "and go on until it is clear.",
      "Below this speed water runs over chips and sand and leaves them where they lie, to come out in the meter or "
      "the house."}},
    {clean_as_main,
     {"service is disinfected as a main",
      "A {0} service is over {1}: it is filled with chlorine, held, flushed and sampled like a main.",
      "Choose one of the doses of this plan, hold it for its time, read what is left, flush, and have samples taken "
      "before it is put to use.",
      "Small services on a main that stays under pressure are kept clean by swabbing and flushing. A large line "
      "holds too much water and dirt for that."}},
    {pit_not_checked,
     {"part of the pit not worked out", "The pit is not fully checked. Not given: [{0}|{1}][, {1}|].",
      "Give it and plan again; until then the competent person decides on site.",
      "Depth decides most duties of a pit, and it follows from the cover and the diameter of the main. Whether bad "
      "air is to be expected is for somebody who knows the place."}},
    {pit_not_located,
     {"lines not located", "The job does not say that the locate ticket is valid and all marks are read.",
      "Call the locate center. Dig no sooner than {0} full working days after the day of the call, or by the law of "
      "the state. Dig by hand within {1} to each side of a mark.",
      "People die digging into gas and power. Owners mark their lines when they are called, and not before; private "
      "lines nobody marks."}},
    {pit_soil_not_type_a,
     {"soil cannot be Type A", "The soil is planned as {0}: {1}.",
      "Slope or shield for {0}. Only ground that was never dug, does not shake and shows no crack or water may stand "
      "as Type A.",
      "The firmest kind of soil loses its strength once it is dug, shaken, cracked or wet. Over an old main it was "
      "dug before."}},
    {pit_claimed_undisturbed,
     {"ground over a main said to be undisturbed",
      "The job says that the ground was never dug, and plans it as {0}. A main lies in it.",
      "Have the competent person write down how the main came there without a trench (bored, jacked, pulled in). If it "
      "lies "
      "in a trench, leave `excavation.disturbed` out and plan again: the walls are then sloped for dug ground.",
      "A trench that was filled again never stands like grown ground, however firm it looks, and the pit is cut into "
      "it."}},
    {pit_not_examined,
     {"ground not examined for signs of a cave-in",
      "At {value+} no protective system is required only if a competent person has looked and found no sign of a "
      "cave-in. The job does not say so.",
      "Have a competent person look at the ground before anybody goes in, and write down what was found. Any sign: "
      "slope or shield it.",
      "Pits less deep than the limit have buried people. The rule asks for eyes before it lets the walls stand."}},
    {pit_protective_system,
     {"protective system required",
      "At {value+}, or by a sign found, the pit must be sloped, shored or shielded (from {limit} always).",
      "Slope or shore it for its soil, or set a shield made for the depth, before anybody goes in.",
      "A cubic yard of soil weighs as much as a car, and falls without warning. Most who were buried were in pits "
      "without any protection."}},
    {pit_engineer,
     {"engineer designs the protective system", "At {value+} the pit is deeper than {limit}, where the tables end.",
      "Have a registered professional engineer design the protective system, and keep the drawing on site.",
      "Beyond the depth of the tables nobody on site may choose slope, bench or shield by rule."}},
    {pit_distress,
     {"ground is moving", "The ground shows distress: cracks at the edge, slumping or bulging.",
      "Everybody out. Cut the walls back by at least {0} more run to one of rise than the steepest slope, or shield "
      "them; a competent person looks again before anybody goes in.",
      "Cracks beside the edge and bulging walls are the beginning of the fall."}},
    {pit_water,
     {"water in the pit", "Water in the pit: {0}. Wet ground is Type C.",
      "Nobody works in or near water that gathers unless it is held down by pumping that somebody watches, and the "
      "walls are protected for wet ground. Keep the water below the tap.",
      "Water loosens walls, undercuts them and carries dirt into an open main."}},
    {pit_egress,
     {"way out required", "At {value+} a ladder is required, no farther than {0} from anybody.",
      "Stand the ladder before anybody goes in, its rails {1} above the edge, clear of hoses and tools.",
      "When a wall or a stop lets go there are seconds."}},
    {pit_atmosphere,
     {"air to be tested", "The pit is {value+} deep and bad air is to be expected.",
      "Test for oxygen (19.5 percent at least) and for gas before anybody goes in and as work goes on; ventilate. "
      "Keep rescue gear at the edge.",
      "Gas and sewer air gather in a pit and do not always smell."}},
    {pit_guardrail,
     {"crossing needs guard rails", "People cross a pit {value+} deep.", "Put guard rails on the walkway.",
      "From this depth a fall is likely to maim."}},
    {pit_spoil_too_near,
     {"spoil too near the edge", "The spoil lies {value} from the edge; at least {limit} is required.",
      "Move it back, or hold it with a retaining board made for it.",
      "Spoil at the edge weighs on the wall and falls back on those below."}},
    {pit_sewer_near,
     {"sewer too near the water line",
      "The nearest sewer is {value} away.[ It lies {1} below the water line.|] It must be {limit} away, or at least "
      "{0} below.",
      "Move the service, or have the utility agree to a crossing with its joints far from the sewer. Write down both "
      "distances.",
      "A leaking sewer beside a water line that loses pressure is how whole streets fall ill."}},
    {pit_main_hangs,
     {"joint of the main hangs in the pit", "A {0} lies {1} from the tap, within the {2+} of main laid bare.",
      "Support the main on both sides of it before the ground is taken from under it, and bed the main again before "
      "cover.",
      "Joints hold pressure because the ground holds them. A joint that sags opens."}},
    {main_not_tapped,
     {"main that the utility does not tap", "The utility does not tap mains such as this one, {0} of {1}. {2}.",
      "Do not tap it. Serve the lot from another main, or put the case to the utility's engineer and plan again under "
      "the rules that come of it.",
      "A main that feeds a district is worth more whole than the service is: a bad tap in it shuts off thousands. "
      "Utilities say which of their mains are left alone (`main.not_tapped`)."}},
    {main_perhaps_not_tapped,
     {"main that the utility perhaps does not tap",
      "Some of the pipes that this {1} {0} main may be are not tapped by the utility. {2}.",
      "[Give {3}|Read the class on the barrel] and plan again. If it is one that is not tapped, serve the lot from "
      "another main.",
      "The rule names a class, a wall, an inside diameter or a year, and which pipe lies here is not known yet."}},
    {season_closed,
     {"planned in a season in which mains are not tapped",
      "The utility taps no such mains from {0} to {1}, and the job is planned for a day within.[ {2}.|]",
      "Plan it for a day outside the season, or get the utility's permission for this one in writing.",
      "Cold iron is brittle, frozen ground lies on the main like a slab, and a cut street cannot be closed again "
      "before "
      "spring. Some codes therefore name months in which mains are tapped only by permission (`main.closed_season`)."}},
    {season_date_unknown,
     {"day not known, and mains are not tapped all year round",
      "The utility taps no such mains from {0} to {1}, and the job names no day that can be read.[ {2}.|]",
      "Write the day as year, month and day, such as 2026-05-04 (`date`). If it lies within, get the utility's "
      "permission.",
      "Whether the season is closed depends on the day, and no day is assumed."}},
    {place_cover,
     {"cover over the main outside the utility's rule", "The main lies under {value}, {0} than the {limit} asked for.",
      "Measure the cover at the tap. If it is so, ask the utility how the service is kept from frost and traffic here, "
      "and write the answer down.",
      "Cover keeps frost and wheels from service and stop, and a main too deep is a pit of another kind. The figure is "
      "the utility's, for its own frost and streets (`place.least_cover`, `place.greatest_cover`)."}},
    {place_cover_unknown,
     {"cover over the main not known", "The utility asks for a cover of {limit}, and the job names none.",
      "Measure from the surface to the top of the main and plan again with it (`main.cover`).",
      "A rule on cover can be kept only where the cover is known."}},
    {service_tap_small,
     {"tap smaller than the utility makes", "A tap of {0} is smaller than {1}, the smallest that the utility makes.",
      "Make the tap {1} and reduce behind the stop, or get the utility's permission.",
      "A small hole costs as much work as a larger one and cannot serve what the lot may need later, so utilities name "
      "the smallest tap they make (`water.smallest_tap`)."}},
    {rules_looser,
     {"utility's rule not as strict as the default",
      "The utility sets {0} to {1}; the default is {2}. Its reason: {3}.",
      "If the reason does not hold here, plan by the default.",
      "Defaults that guard people and pipe may be set looser, or otherwise where neither way is the stricter, by a "
      "utility "
      "that says why. Its reason is printed with every plan that relies on the rule."}},
    {pressure_over_line_rating,
     {"line pressure over the rating of the service tubing",
      "The line is at {value}. The tubing, {0}, is good for {limit}[ at {1}|].",
      "Lay tubing marked for at least {value+}, or copper. If the tubing on the truck is marked so, enter its rating "
      "and "
      "plan again.",
      "Everything ahead of the customer's valve sees what the main runs at, all day and night, and plastic holds less "
      "when it is warm."}},
    {order_fact_unread,
     {"fact on the order that cannot be read",
      "The order says something of {0}[, {1}|][, {2}|][, {3}|] that cannot be read.",
      "Find out what was meant, write it so that it can be read, and plan again.",
      "Somebody wrote a fact down, and the plan was made without it: a thin wall, a low rating or a crack may be what "
      "it "
      "says. What cannot be read is asked for, not left out."}},
    {rules_consent,
     {"tap by consent alone",
      "The utility's rule allows a[ {0}|] tap in {1} with the consent of {3}.[ By default: {2}.|]",
      "Get the consent of {3} to this tap in writing, with name and day, before the cut.",
      "What the defaults close to a method, a utility may open where a named person takes it on for each tap: a "
      "sentence "
      "that was meant to lower a limit must not open what nobody spoke of. A row says who consents (`consent`)."}},
    {rules_consent_unnamed,
     {"opened by the utility's rule, and nobody named who consents",
      "By default {1} takes no {0} tap[: {2}|]. The utility's rule allows it and names nobody who consents.",
      "Get the consent of the utility's engineer to this tap in writing. Where mains such as this one are to be tapped "
      "so, have the rule name who consents; where the rule only meant to keep taps small, write it as a cap.",
      "A rule such as \"no tap larger than 1 in\" says how large a tap may be, not that every pipe may be threaded. "
      "Written as a permission it opens pipe that the defaults close, so each tap waits for a named person "
      "(`consent`); written as a cap (`at_most`) it opens nothing."}},
    {several_over_maximum,
     {"taps of a series larger than the utility allows",
      "Taps of {0} are larger than those a series may have here[, {1}|].[ {2}.|]",
      "Use smaller ones, a saddle or a sleeve.",
      "A utility may say how large the taps may be that stand for one larger, or that none do (`several.at_most`)."}},
    {service_tap_too_fast,
     {"water too fast in the tap", "At {0} the water runs at {value} through the {1} tap and its stop, over {limit}.",
      "[Make the tap {2}|Make a larger tap, or several], or show the utility's permission for this speed.",
      "A tap is short, so its loss is small; but water beyond this speed is loud, and scours seat and key of the stop "
      "(`water.tap_velocity_limit`)."}},
    {service_meter_share,
     {"meter near its greatest flow", "The demand of {value} takes more of a {0} meter than {limit}.",
      "[Set a {1} meter|Set a larger meter], or show the utility's permission for this one.",
      "A meter that often runs near its greatest flow wears fast and reads low, so utilities choose it by a share of "
      "its "
      "range (`water.meter_share`)."}},
    {service_line_against_tap,
     {"service pipe and tap not as the utility pairs them",
      "[The service pipe is {1}|The job does not say the size of the service pipe]; the utility wants it with a {0} "
      "tap[ at least "
      "{2}|][ at most {3}|].",
      "Give the size of the pipe (`service.line.size`) or of the tap that goes with it, or get the utility's "
      "permission.",
      "Many texts say how the stop goes with the pipe: the same size, or an eighth of an inch smaller "
      "(`water.line_over_tap_least`, `water.line_over_tap_most`)."}},
    {sleeve_too_small,
     {"no sleeve is made with so small an outlet",
      "A {0} outlet is smaller than {1}, the smallest with which a sleeve is made.",
      "Plan a sleeve with a {1} outlet (`service.size`) and reduce behind its valve, or use a saddle.",
      "Tapping sleeves carry a valve and a machine. Smaller taps are made through a saddle (`sleeve.smallest`)."}},
    {sleeve_hole_too_large,
     {"outlet too large for the main",
      "The [{0} |]hole is {value} of the pipe's diameter; at most {limit} is allowed under a sleeve.",
      "Use a smaller outlet, or have the engineer design a tee with the main shut down.",
      "Some texts bound the hole by a share of the main, a third or a half, whatever holds it (`sleeve.hole_ratio`)."}},
    {approved_none_fits,
     {"no approved fitting fits",
      "No {0} on the approved list fits.[ None has the {3} that is needed.|][ The nearest is {1}; it lacks the {2}[: "
      "{value} "
      "where {limit} is needed|].| The list has none.]",
      "Have the office name an approved {0} for this main in writing, with its stock number, or correct the list and "
      "plan "
      "again.",
      "A plan made with an approved list (`--approved`) uses what is on it. An item fits when it is made for the "
      "material "
      "of the main, takes every diameter that the main may have, is of the size and thread of the tap, and is rated "
      "for "
      "line and surge. Without one the plan counts on nothing that the list says."}},
    {approved_no_tool_fits,
     {"no approved tool fits",
      "No {0} on the approved list fits.[ None has the {3} that is needed.|][ The nearest is {1}; it lacks the {2}[: "
      "{value} "
      "where {limit} is needed|].|]",
      "Ask the yard which {0} is used on this main before the truck leaves.",
      "Where an approved list names cutters, taps, machine saddles or chains, the plan looks for the one that suits. "
      "The "
      "machine's own checks judge the tool: this only says that none on the list does."}},
    {service_cover,
     {"cover over the service under the utility's rule",
      "The service line lies under {value} at the least, less than the {limit} asked for.",
      "Lay it deeper, or ask the utility how it is kept from frost and traffic here, and write the answer down.",
      "A shallow line freezes before the main does, and wheels and spades reach it. The figure is the utility's "
      "(`line.least_cover`)."}},
    {service_cover_unknown,
     {"cover over the service not known", "The utility asks for {limit} over the service line, and the job names none.",
      "Take the least cover from the drawing of the service, or have it measured, and plan again with it "
      "(`service.line.cover`).",
      "A rule on cover can be kept only where the cover is known."}},
    {service_line_near,
     {"service nearer to another line than the utility's rule",
      "The service line lies {value} from the nearest {0}; the utility asks for {limit}.",
      "Lay the service farther off, or get the utility's permission, and that of whoever owns the other line.",
      "Who digs for the one line hits the other; gas from a leak follows a trench, and so does sewage. The distances "
      "are "
      "the utility's (`line.from_gas`, `line.from_electric`, `line.from_sewer`)."}},
    {service_line_near_unknown,
     {"distance of the service from another line not known",
      "The utility keeps the service line {limit} from any {0}, and the job does not say how far it stays.",
      "Take it from the locate marks and the drawing of the service, and plan again with it (`{1}`); where there is "
      "none, enter any greater distance.",
      "A distance can be kept only where it is known. Nothing is assumed of what lies beside the service."}},
    {service_line_close,
     {"service close to another line", "The service line lies {value} from the nearest {0}; {limit} is usual.",
      "Lay it farther off, or ask the code there how near it may lie: many let a service stand on a shelf above a "
      "sewer, or beside one of pipe approved inside buildings. Gas and electric lines are their owners' to answer for.",
      "A sewer that leaks beside a water line fouls it as soon as the pressure fails. Who digs for one line hits the "
      "other. The utility has set no distance of its own (`line.from_gas`, `line.from_electric`, `line.from_sewer`)."}},
    {main_air_cold,
     {"air colder than the utility taps in",
      "The air is at {value}; the utility makes no tap when it is below {limit}.",
      "Wait until the air is at {limit} or warmer, read it at the pit, and plan again.",
      "Hands, gaskets and sealant fail in the cold, pipe gets brittle, and what was spilled freezes under the crew. "
      "The "
      "temperature is the utility's (`main.coldest_air`)."}},
    {main_air_unknown,
     {"temperature of the air not known", "The utility makes no tap when the air is below {limit}.",
      "Read the air at the pit on the day, and tap only at {limit} or warmer.",
      "A date says what weather to expect, and a thermometer what it is."}},
    {service_dwellings_size,
     {"smaller than the utility's size for so many dwellings",
      "For {3} dwellings the utility asks for a {0} of {1} or larger[; this one is {2}|, and the job names none].",
      "Give it {1} or larger and plan again, or get the utility's permission.",
      "A table of sizes by dwellings stands for the demand that the utility has met in its own streets "
      "(`water.by_dwellings`)."}},
    {service_dwellings_unknown,
     {"number of dwellings not known",
      "The utility sizes tap, line and meter by the number of dwellings, and the job does not say how many.",
      "Find out how many dwellings the service supplies and plan again (`service.dwellings`).",
      "No number of dwellings is assumed: one too few would let too small a tap pass."}},
    {service_dwellings_unlisted,
     {"number of dwellings outside the utility's table", "The utility's sizes by dwellings have no row for {0}.",
      "Ask the utility's engineer for the sizes of tap, line and meter, in writing.",
      "Beyond the table a service is designed, and not looked up."}},
    {service_premises,
     {"more premises on one tap than the utility allows",
      "The service supplies {value} premises; the utility allows {limit} on one tap.",
      "Plan a tap for each of the premises, or get the utility's permission in writing.",
      "Who shares a service shares its leaks, its shut-off and its bills, so most codes ask for one connection to each "
      "of the premises (`water.most_premises`)."}},
    {service_premises_unknown,
     {"number of premises not known",
      "The utility allows {limit} premises on one tap, and the job does not say how many it is for.",
      "Find out how many premises the service supplies and plan again (`service.premises`).",
      "One is not assumed: whether a second lot hangs on the line is to be said by whoever orders the tap."}},
}};

static_assert(complete(table), "every finding has its words, in the order of MAINBORE_FINDINGS");

}  // namespace findings_table

const FindingTable<FindingText>& findings() { return findings_table::table; }

}  // namespace mainbore::words::english
