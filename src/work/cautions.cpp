// The cautions that go with a kind of job. Each is here because somebody was hurt where it was missing, or because a
// rule asks for it; the comment or the basis says which.
#include "words/cautions.hpp"

#include "mainbore/measure.hpp"
#include "mainbore/mechanics/boring.hpp"
#include "mainbore/work.hpp"
#include "words/fill.hpp"
#include "words/terms.hpp"

namespace mainbore {
namespace {

using words::CautionWord;

class Cautions {
 public:
  Cautions(const Plan& plan, Audience audience) : plan_(plan), audience_(audience) {}

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
  void add(std::string_view code, CautionWord word, std::string_view basis = {}) {
    const words::CautionText& said = words::caution_text(word, audience_.language);
    list_.push_back({code, Words::standing(said.text), said.brief, basis});
  }
  void add(std::string_view code, CautionWord word, std::initializer_list<words::Figure> figures,
           std::string_view basis = {}) {
    const words::CautionText& said = words::caution_text(word, audience_.language);
    list_.push_back({code, words::filled(said.text, figures, audience_.language), said.brief, basis});
  }
  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, audience_); }
  [[nodiscard]] bool wet() const { return plan_.job.main.pressurised.value_or(true); }

  void who_decides() { add("caution.who-decides", CautionWord::who_decides); }

  void the_right_pipe() {
    // A crew took a plastic gas tube inside an old metal pipe for a water service (Evansville, 2004, two dead); exposed
    // lines have been taken for the marked ones more than once.
    add("caution.identify", CautionWord::identify);
    // A gas line lay directly under the water line, its mark off by feet (Coleman).
    add("caution.other-lines", CautionWord::other_lines, "29 CFR 1926.651(b)");
  }

  void the_water() {
    if (!wet()) add("caution.prove-empty", CautionWord::prove_empty);
    // A replaced valve blew off a 10 in main; the pit filled at once; two died, one of them going in after the other.
    add("caution.shut-off", CautionWord::shut_off, "Maryland FACE report 97MD049");
    out_of_line();
    add("caution.read-zero", CautionWord::read_zero);
    add("caution.trapped-air", CautionWord::trapped_air);
    if (wet()) pit_fills();
    add("caution.eyes", CautionWord::eyes);
    add("caution.clean", CautionWord::clean);
  }

  void pit_fills() {
    std::string flow;
    std::string time;
    if (plan_.open_hole) flow = show(plan_.open_hole->flow);
    if (plan_.open_hole && plan_.excavation && plan_.excavation->fill) {
      time = format_measure(Measure(*plan_.excavation->fill), audience_, Toward::less);
    }
    add("caution.pit-fills", CautionWord::pit_fills, {{"flow", flow}, {"time", time}});
  }

  void out_of_line() {
    std::string pressure;
    std::string hole;
    std::string push;
    if (wet() && plan_.method.hole) {
      pressure = on_gauge(plan_.pressure.line, audience_);
      hole = show(*plan_.method.hole);
      push = in_round_figures(mechanics::bar_push(plan_.pressure.line, *plan_.method.hole), audience_);
    }
    add("caution.out-of-line", CautionWord::out_of_line, {{"pressure", pressure}, {"hole", hole}, {"push", push}},
        "Maryland FACE report 97MD049");
  }

  void the_pit() {
    // A lone plumber at a tap in an unprotected trench was found late (New York FACE 07NY033). The drowned rescuer:
    // above.
    add("caution.not-alone", CautionWord::not_alone, "New York FACE report 07NY033");
    std::string depth;
    std::string least_depth;
    if (plan_.excavation) {
      depth = on_tape(plan_.excavation->pit.depth, audience_, Toward::more);
    } else if (const auto cover = plan_.job.main.known_cover(); cover && plan_.main.od) {
      least_depth = on_tape(*cover + *plan_.main.od, audience_, Toward::more);
    }
    add("caution.pit", CautionWord::pit, {{"depth", depth}, {"least_depth", least_depth}},
        "29 CFR 1926.651(c), 1926.651(k), 1926.652(a)");
    add("caution.wet-ground", CautionWord::wet_ground, "29 CFR 1926 subpart P, appendix A");
    add("caution.digger", CautionWord::digger, "29 CFR 1926.651(j)");
  }

  void the_current() {
    add("caution.wet-electric", CautionWord::wet_electric, "California FACE report 96CA014");
    // Mains and services carry the neutral current of houses.
    if (is_metallic(plan_.main.material)) add("caution.bond", CautionWord::bond);
    if (is_plastic(plan_.main.material)) add("caution.static", CautionWord::static_charge);
    if (plan_.setup.feed == Feed::powered) add("caution.powered", CautionWord::powered);
  }

  void the_main() {
    switch (plan_.main.material) {
      case Material::asbestos_cement:
        add("caution.asbestos", CautionWord::asbestos, "29 CFR 1926.1101");
        break;
      case Material::cast_iron:
        add("caution.brittle", CautionWord::brittle);
        break;
      case Material::concrete_cylinder:
        add("caution.wire", CautionWord::wire);
        break;
      case Material::pvc:
      case Material::pvco:
        add("caution.blanket", CautionWord::blanket);
        break;
      case Material::polyethylene:
        add("caution.polyethylene", CautionWord::polyethylene);
        break;
      case Material::ductile_iron:
      case Material::steel:
      case Material::galvanized_steel:
      case Material::copper:
        break;
    }
    if (is_plastic(plan_.main.material) || plan_.method.kind == Method::saddle || plan_.method.kind == Method::sleeve) {
      add("caution.coupon", CautionWord::coupon);
    }
    if (const auto& condition = plan_.job.main.condition; condition && *condition != Condition::sound) {
      const std::string_view seen = condition_names[static_cast<std::size_t>(*condition)];
      add("caution.poor-wall", CautionWord::poor_wall, {{"condition", words::term(seen, audience_.language)}});
    }
    if (plan_.job.main.encased.value_or(false)) add("caution.encasement", CautionWord::encasement);
  }

  void the_service() {
    add("caution.lead", CautionWord::lead);
    add("caution.slack", CautionWord::slack);
  }

  const Plan& plan_;
  Audience audience_;
  std::vector<Caution> list_;
};

}  // namespace

std::vector<Caution> cautions(const Plan& plan, Audience audience) { return Cautions(plan, audience).all(); }

}  // namespace mainbore
