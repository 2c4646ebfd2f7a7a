#include "words/tables.hpp"

namespace mainbore::words::english {
namespace cautions_table {

using enum CautionWord;

constexpr CautionTable table = {{
    {who_decides,
     {"Utility, makers, code and site decide",
      "The utility, the makers of machine and fittings, the local code and the competent person on site decide. Where "
      "they say otherwise, or see something that is not on this sheet, follow them."}},
    {identify,
     {"Prove it is the water main, two ways",
      "Prove that this is the drinking-water main by two independent means before the machine goes on. Metal, color "
      "and "
      "paint are no proof. Yellow mark or any smell, hiss or bubbling: leave, keep flames and phones away, call the "
      "emergency number and the gas owner from a distance."}},
    {other_lines,
     {"Hand-dig to every marked line",
      "Find every marked line by hand before a machine digs near it, and look beside and under the main as well. Marks "
      "can be off; private lines are not marked."}},
    {prove_empty,
     {"Drained main can refill: lock and tag",
      "A drained main can fill again. Lock and tag the valves, open the lowest outlet and leave it open, and treat the "
      "main as full until water has stopped there and stayed stopped."}},
    {shut_off,
     {"Shut-off valves located and turned",
      "Know which valves shut this main down. Have them found, uncovered and turned before the cut, with somebody at "
      "hand who can close them."}},
    {out_of_line,
     {"Nobody in line with the bar or stop",
      "Keep head and body out of line with the bar, the stop and any plug that is under pressure. Nobody stands where "
      "a "
      "part would fly.[ At {pressure} the water pushes on a {hole} hole with {push}.|]"}},
    {read_zero,
     {"Open nothing until gauge reads zero",
      "Nothing is loosened, unscrewed or lifted until the valve is shut, the bleed is open and the gauge stands at "
      "zero "
      "and stays there. If it does not stay, leave everything mounted and call for the shut-down."}},
    {trapped_air,
     {"Bleed air slowly: fittings can fly",
      "Let air out of main, machine and service slowly. Trapped air is a spring, as water is not: a fitting that lets "
      "go "
      "flies."}},
    {pit_fills,
     {"If it lets go the pit fills: get out",
      "[A stop or tool that lets go spills up to {flow} into the pit[, over the main in {time}.|, and fills it in "
      "minutes.]|A stop or tool that lets go can fill the pit in minutes.] Keep a sump pump running and the way out "
      "clear of hoses and tools."}},
    {eyes,
     {"Hard hat, eye and face protection",
      "Hard hat, eye protection, boots with toe caps, gloves off where something turns; a face shield at the "
      "machine."}},
    {clean,
     {"Keep pit water off tap, tool and stop",
      "Water in the pit is dirty water. Keep it below the tap; disinfect tool, stop and pipe face as the utility asks; "
      "no hose end in the pit without an air gap."}},
    {not_alone,
     {"Never alone; one stays out of the pit",
      "Never alone. One person stays out of the pit, in sight, with the means to call. Nobody goes into rising water "
      "or "
      "fallen earth after another: shut the main, call, and help from the edge."}},
    {pit,
     {"Walls inspected and ladder in, always",
      "A competent person looks at the pit before each shift, after rain and whenever water shows. At the depth the "
      "rule sets, and sooner if the ground shows any sign, slope, shore or shield it. Over a main under pressure keep "
      "a "
      "ladder in even a shallow pit.[ This one goes {depth} down.|[ This one goes at least {least_depth} down.|]]"}},
    {pit_deep,
     {"Slope, shore or shield it; ladder in",
      "Nobody goes in before the pit is sloped, shored or shielded: at this depth the rule asks for it always. A "
      "competent person looks at it before each shift, after rain and whenever water shows. Keep a ladder in.[ This "
      "one "
      "goes {depth} down.|[ This one goes at least {least_depth} down.|]]"}},
    {wet_ground,
     {"Water in pit: get out, pump, recheck",
      "Ground that has been dug before is never the firm kind, and wet ground is the loose kind. Water in the pit: get "
      "out, pump, have it looked at again."}},
    {digger,
     {"Spoil back; bucket down before entry",
      "Bucket on the ground and engine idle while anybody is in the pit. Spoil stays well back from the edge."}},
    {wet_electric,
     {"Electric tools only on a GFCI",
      "No electric tool or pump in a wet pit unless it is on a ground-fault interrupter."}},
    {bond,
     {"Bonding jumper on before metal is cut",
      "Main and services may carry house current. Clamp a bonding jumper across before any metal pipe is parted, and "
      "keep it on until the work is done. A tingle or a spark: stop, keep hands off, call the power company."}},
    {static_charge,
     {"Plastic holds static: wet it first",
      "Dry plastic pipe can hold a static charge. Wet the pipe and the ground by it with water before tools touch it, "
      "and let nothing burnable be about."}},
    {powered,
     {"Powered feed: one hand on the shut-off",
      "Powered feed: no loose sleeves, cuffs or gloves at the drive; one person has the shut-off in hand; power off "
      "before anyone touches the bar."}},
    {asbestos,
     {"Asbestos: trained crew, keep it wet",
      "Asbestos cement. A competent person classifies the work before it starts; only trained people handle it. Keep "
      "the cut wet, carry chips away with the water and bag them wet. No abrasive saw, no dry scraping, no blowing or "
      "dry sweeping."}},
    {brittle,
     {"Cast iron cracks: no hammer, no pry",
      "Cast iron cracks without warning. No hammering beyond a light sounding, no prying on the bar or the service, "
      "chain taken up evenly and no more than holds."}},
    {wire,
     {"Never cut a wire in concrete pipe",
      "Never cut a wire or rod of concrete pipe on your own judgment: it is what holds the pipe. Saddle, place and "
      "grouting are the maker's and the engineer's to say."}},
    {blanket,
     {"PVC shatters: blanket on, cut slowly",
      "PVC can shatter along its length. Cover the pipe with a heavy blanket with a hole for the tool, stand behind "
      "it, "
      "cut slowly with a sharp shell cutter that keeps its coupon, and do not cut a scratched, sunburned or hot "
      "pipe."}},
    {polyethylene,
     {"Only a saddle made for polyethylene",
      "Polyethylene creeps: use only a saddle made for it and for this diameter, and no plain strap or U-bolt. A "
      "squeezed or kinked length is not tapped."}},
    {coupon,
     {"Account for every coupon",
      "Account for every coupon. One left in the main ends up in a meter, a valve or a house."}},
    {poor_wall,
     {"Poor main: have a repair clamp open",
      "The order says this main is {condition}. A repair clamp of its size lies open at the edge of the pit before the "
      "cut. "
      "Watch the pipe, not the tool."}},
    {encasement,
     {"Tape up every cut in the film",
      "Every cut in the film is taped shut before cover; iron left bare there rusts there."}},
    {lead,
     {"Lead service found: stop and report it",
      "A lead, or gray soft-metal, service found in the pit: stop, do not shake or cut it, tell the utility. It is not "
      "joined to again without their word."}},
    {slack,
     {"Lay the service with slack, and bed it",
      "Lay the service with slack at the main, and bed it. A tap fails by being pulled or levered long after the crew "
      "has left."}},
}};
static_assert(complete(table), "every caution, in the order of CautionWord");

}  // namespace cautions_table

const CautionTable& cautions() { return cautions_table::table; }

}  // namespace mainbore::words::english
