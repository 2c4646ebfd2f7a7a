// The cautions that go with a kind of job. Each is here because somebody was hurt where it was missing, or because a
// rule asks for it; the comment or the basis says which.
#include "mainbore/measure.hpp"
#include "mainbore/mechanics/boring.hpp"
#include "mainbore/work.hpp"

namespace mainbore {
namespace {

class Cautions {
 public:
  Cautions(const Plan& plan, UnitSystem system) : plan_(plan), system_(system) {}

  std::vector<Caution> all() && {
    list_.reserve(32);
    who_decides();
    the_right_pipe();
    the_water();
    the_pit();
    the_current();
    the_main();
    the_service();
    return std::move(list_);
  }

 private:
  void add(std::string_view code, std::string_view brief, Words text, std::string_view basis = {}) {
    list_.push_back({code, std::move(text), brief, basis});
  }
  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, system_); }
  [[nodiscard]] bool wet() const { return plan_.job.main.pressurised.value_or(true); }

  void who_decides() {
    add("caution.who-decides", "Utility, makers, code and site decide",
        "The utility, the makers of machine and fittings, the local code and the competent person on site decide. "
        "Where they say otherwise, or see something that is not on this sheet, follow them.");
  }

  void the_right_pipe() {
    // A crew took a plastic gas tube inside an old metal pipe for a water service (Evansville, 2004, two dead); exposed
    // lines have been taken for the marked ones more than once.
    add("caution.identify", "Prove it is the water main, two ways",
        "Prove that this is the drinking-water main by two independent means before the machine goes on. Metal, colour "
        "and paint are no proof. Yellow mark or any smell, hiss or bubbling: leave, keep flames and phones away, call "
        "the emergency number and the gas owner from a distance.");
    // A gas line lay directly under the water line, its mark off by feet (Coleman).
    add("caution.other-lines", "Find every marked line by hand",
        "Find every marked line by hand before a machine digs near it, and look beside and under the main as well. "
        "Marks can be off; private lines are not marked.",
        "29 CFR 1926.651(b)");
  }

  void the_water() {
    if (!wet()) {
      add("caution.prove-empty", "A drained main can refill: lock, watch",
        "A drained main can fill again. Lock and tag the valves, open the lowest outlet and leave it open, and treat "
          "the main as full until water has stopped there and stayed stopped.");
    }
    // A replaced valve blew off a 10 in main; the pit filled at once; two died, one of them going in after the other.
    add("caution.shut-off", "Shut-off valves found and turned",
        "Know which valves shut this main down. Have them found, uncovered and turned before the cut, with somebody at "
        "hand who can close them.",
        "Maryland FACE report 97MD049");
    add("caution.out-of-line", "Nobody in line with the bar or stop",
        out_of_line_text(), "Maryland FACE report 97MD049");
    add("caution.read-zero", "Gauge at zero, or nothing is opened",
        "Nothing is slackened, unscrewed or lifted until the valve is shut, the bleed is open and the gauge stands at "
        "zero and stays there. If it does not stay, leave everything mounted and call for the shut-down.");
    add("caution.trapped-air", "Let air out slowly: it flies",
        "Let air out of main, machine and service slowly. Trapped air stores force that water does not: a fitting that "
        "lets go on air flies.");
    if (wet()) add("caution.pit-fills", "If it lets go the pit fills: get out",
        pit_fills_text());
    add("caution.eyes", "Hard hat, eye and face protection",
        "Hard hat, eye protection, boots with toe caps, gloves off where something turns; a face shield at the "
        "machine.");
    add("caution.clean", "Keep pit water off tap, tool and stop",
        "Water in the pit is dirty water. Keep it below the tap; disinfect tool, stop and pipe face as the utility "
        "asks; no hose end in the pit without an air gap.");
  }

  [[nodiscard]] std::string pit_fills_text() const {
    std::string text = "A stop or tool that lets go can fill the pit in minutes.";
    if (plan_.open_hole) {
      text = "A stop or tool that lets go spills up to " + show(plan_.open_hole->flow) + " into the pit";
      const bool timed = plan_.excavation && plan_.excavation->fill;
      text += timed ? ", over the main in " + format_measure(Measure(*plan_.excavation->fill), system_, Toward::less) + "." : ", and fills it in minutes.";
    }
    return text + " Keep a sump pump running and the way out clear of hoses and tools.";
  }

  [[nodiscard]] std::string out_of_line_text() const {
    std::string text =
        "Keep head and body out of line with the bar, the stop and any plug that is under pressure. Nobody stands "
        "where a part would fly.";
    if (wet() && plan_.method.hole) {
      text += " At " + on_gauge(plan_.pressure.line, system_) + " the water pushes on a " + show(*plan_.method.hole) +
              " hole with " + show(mechanics::bar_push(plan_.pressure.line, *plan_.method.hole)) + ".";
    }
    return text;
  }

  void the_pit() {
    // A lone plumber at a tap in an unprotected trench was found late (New York FACE 07NY033). The drowned rescuer:
    // above.
    add("caution.not-alone", "Never alone; one stays out of the pit",
        "Never alone. One person stays out of the pit, in sight, with the means to call. Nobody goes into rising water "
        "or fallen earth after another: shut the main, call, and help from the edge.",
        "New York FACE report 07NY033");
    std::string pit =
        "A competent person looks at the pit before each shift, after rain and whenever water shows. At the depth the "
        "rule sets, and sooner if the ground shows any sign, slope, shore or shield it. Over a main under pressure "
        "keep a ladder in even a shallow pit.";
    if (plan_.excavation) {
      pit += " This one goes " + on_tape(plan_.excavation->pit.depth, system_, Toward::more) + " down.";
    } else if (const auto cover = plan_.job.main.known_cover(); cover && plan_.main.od) {
      pit +=
          " This one goes at least " + on_tape(*cover + *plan_.main.od, system_, Toward::more) + " down.";
    }
    add("caution.pit", "Walls looked at, ladder in, every time",
        std::move(pit), "29 CFR 1926.651(c), 1926.651(k), 1926.652(a)");
    add("caution.wet-ground", "Water in the pit: out, pump, look",
        "Ground that has been dug before is never the firm kind, and wet ground is the loose kind. Water in the pit: "
        "get out, pump, have it looked at again.",
        "29 CFR 1926 subpart P, appendix A");
    add("caution.digger", "Bucket down, spoil back, then go in",
        "Bucket on the ground and engine idle while anybody is in the pit. Spoil stays well back from the edge.",
        "29 CFR 1926.651(j)");
  }

  void the_current() {
    add("caution.wet-electric", "Electric tools only on a GFCI",
        "No electric tool or pump in a wet pit unless it is on a ground-fault interrupter.",
        "California FACE report 96CA014");
    if (is_metallic(plan_.main.material)) {
      // Mains and services carry the neutral current of houses.
      add("caution.bond", "Bond across before parting metal pipe",
        "Main and services may carry house current. Clamp a bonding jumper across before any metal pipe is parted, "
          "and keep it on until the work is done. A tingle or a spark: stop, keep hands off, call the power company.");
    }
    if (is_plastic(plan_.main.material)) {
      add("caution.static", "Plastic holds a charge: wet it first",
        "Dry plastic pipe can hold a static charge. Wet the pipe and the ground by it with water before tools touch "
          "it, and let nothing burnable be about.");
    }
    if (plan_.setup.feed == Feed::powered) {
      add("caution.powered", "Powered feed: one hand on the shut-off",
        "Powered feed: no loose sleeves, cuffs or gloves at the drive; one person has the shut-off in hand; power "
          "off before anyone touches the bar.");
    }
  }

  void the_main() {
    switch (plan_.main.material) {
      case Material::asbestos_cement:
        add("caution.asbestos", "Asbestos: trained crew, keep it wet",
        "Asbestos cement. A competent person classifies the work before it starts; only trained people handle it. "
            "Keep the cut wet, carry chips away with the water and bag them wet. No abrasive saw, no dry scraping, no "
            "blowing or dry sweeping.",
            "29 CFR 1926.1101");
        break;
      case Material::cast_iron:
        add("caution.brittle", "Cast iron cracks: no hammer, no pry",
        "Cast iron cracks without warning. No hammering beyond a light sounding, no prying on the bar or the "
            "service, chain taken up evenly and no more than holds.");
        break;
      case Material::concrete_cylinder:
        add("caution.wire", "Never cut a wire of concrete pipe",
        "Never cut a wire or rod of concrete pipe on your own judgement: it is what holds the pipe. Saddle, place "
            "and grouting are the maker's and the engineer's to say.");
        break;
      case Material::pvc:
      case Material::pvco:
        add("caution.blanket", "PVC shatters: blanket on, cut slowly",
        "PVC can shatter along its length. Cover the pipe with a heavy blanket with a hole for the tool, stand "
            "behind it, cut slowly with a sharp shell cutter that keeps its coupon, and do not cut a scratched, "
            "sun-burnt or hot pipe.");
        break;
      case Material::polyethylene:
        add("caution.polyethylene", "Only a saddle made for polyethylene",
        "Polyethylene creeps: use only a saddle made for it and for this diameter, and no plain strap or U-bolt. A "
            "squeezed or kinked length is not tapped.");
        break;
      case Material::ductile_iron:
      case Material::steel:
      case Material::galvanized_steel:
      case Material::copper:
        break;
    }
    if (is_plastic(plan_.main.material) || plan_.method.kind == Method::saddle || plan_.method.kind == Method::sleeve) {
      add("caution.coupon", "Account for every coupon",
        "Account for every coupon. One left in the main ends up in a meter, a valve or a house.");
    }
    if (plan_.job.main.condition && *plan_.job.main.condition != Condition::sound) {
      add("caution.poor-wall", "Poor main: repair clamp lies open",
        "This main is down as " +
                                   std::string(condition_names[static_cast<std::size_t>(*plan_.job.main.condition)]) +
                                   ". A repair clamp of its size lies open at the edge of the pit before the cut. "
                                   "Watch the pipe, not the tool.");
    }
    if (plan_.job.main.encased.value_or(false)) {
      add("caution.encasement", "Tape every cut in the film shut",
        "Every cut in the film is taped shut before cover; iron left bare there rusts there.");
    }
  }

  void the_service() {
    add("caution.lead", "Lead service found: stop and report it",
        "A lead, or grey soft-metal, service found in the pit: stop, do not shake or cut it, tell the utility. It is "
        "not joined to again without their word.");
    add("caution.slack", "Lay the service with slack, and bed it",
        "Lay the service with slack at the main, and bed it. A tap fails by being pulled or levered long after the "
        "crew has left.");
  }

  const Plan& plan_;
  UnitSystem system_;
  std::vector<Caution> list_;
};

}  // namespace

std::vector<Caution> cautions(const Plan& plan, UnitSystem system) { return Cautions(plan, system).all(); }

}  // namespace mainbore
