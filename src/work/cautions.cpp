// The cautions that go with a kind of job. Each is here because somebody was hurt where it was missing, or because a
// rule asks for it; the comment or the basis says which.
#include "words/cautions.hpp"

#include "mainbore/measure.hpp"
#include "mainbore/mechanics/boring.hpp"
#include "mainbore/work.hpp"
#include "words/fill.hpp"
#include "words/terms.hpp"
#include "work/words_at_hand.hpp"

namespace mainbore {
namespace {

using words::CautionWord;

// One caution that goes with a plan, before it is put into words.
struct Named {
  std::string_view code;
  CautionWord word;
  std::string_view basis;
};

class Cautions {
 public:
  explicit Cautions(const Plan& plan) : plan_(plan) {}

  std::vector<Named> all() && {
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
    list_.push_back({code, word, basis});
  }
  [[nodiscard]] bool wet() const { return plan_.job.main.is_pressurized(); }

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
    add("caution.out-of-line", CautionWord::out_of_line, "Maryland FACE report 97MD049");
    add("caution.read-zero", CautionWord::read_zero);
    add("caution.trapped-air", CautionWord::trapped_air);
    if (wet()) add("caution.pit-fills", CautionWord::pit_fills);
    add("caution.eyes", CautionWord::eyes);
    add("caution.clean", CautionWord::clean);
  }

  void the_pit() {
    // A lone plumber at a tap in an unprotected trench was found late (New York FACE 07NY033). The drowned rescuer:
    // above.
    add("caution.not-alone", CautionWord::not_alone, "New York FACE report 07NY033");
    const bool deep = plan_.finding(FindingCode::pit_protective_system) != nullptr;
    add("caution.pit", deep ? CautionWord::pit_deep : CautionWord::pit, "29 CFR 1926.651(c), 1926.651(k), 1926.652(a)");
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
    if (plan_.job.main.condition.value_or(Condition::sound) != Condition::sound) {
      add("caution.poor-wall", CautionWord::poor_wall);
    }
    if (plan_.job.main.encased.value_or(false)) add("caution.encasement", CautionWord::encasement);
  }

  void the_service() {
    add("caution.lead", CautionWord::lead);
    add("caution.slack", CautionWord::slack);
  }

  const Plan& plan_;
  std::vector<Named> list_;
};

// The figures of their sentences, by name.
class CautionFigures : public words::Figures {
 public:
  CautionFigures(const Plan& plan, Audience audience) : plan_(plan), audience_(audience) {}

  bool append(std::string& out, std::string_view name) const override {
    const std::size_t before = out.size();
    if (name == "flow" || name == "time") append_open_hole(out, name);
    else if (name == "depth" || name == "least_depth") append_depth(out, name);
    else if (name == "condition") append_condition(out);
    else append_bar(out, name);
    return out.size() != before;
  }

 private:
  // What the hole lets out, and how soon that fills the pit.
  void append_open_hole(std::string& out, std::string_view name) const {
    if (!plan_.open_hole) return;
    if (name == "flow") return append_measure(out, plan_.open_hole->flow, audience_);
    if (!plan_.excavation || !plan_.excavation->fill) return;
    append_measure(out, Measure(*plan_.excavation->fill), audience_, Toward::less);
  }
  void append_depth(std::string& out, std::string_view name) const {
    const auto cover = plan_.job.main.known_cover();
    if (plan_.excavation) {
      if (name == "depth") out += on_tape(plan_.excavation->pit.depth, audience_, Toward::more);
    } else if (name == "least_depth" && cover && plan_.main.od) {
      const Finding* const deep = plan_.finding(FindingCode::pit_protective_system);
      const Length depth = deep != nullptr && deep->value ? deep->value->as<Length>() : *cover + *plan_.main.od;
      out += on_tape(depth, audience_, Toward::more);
    }
  }
  void append_condition(std::string& out) const {
    const auto& condition = plan_.job.main.condition;
    if (condition) out += words::term(condition_names[static_cast<std::size_t>(*condition)], audience_.language);
  }
  // What drives the bar out of the machine.
  void append_bar(std::string& out, std::string_view name) const {
    const auto& hole = plan_.method.hole;
    const Pressure line = plan_.pressure.line;
    if (!plan_.job.main.is_pressurized() || !hole) return;
    if (name == "pressure") out += on_gauge(line, audience_);
    if (name == "hole") append_measure(out, *hole, audience_);
    if (name == "push") out += in_round_figures(mechanics::bar_push(line, *hole), audience_);
  }

  const Plan& plan_;
  Audience audience_;
};

}  // namespace

std::vector<Caution> cautions(const Plan& plan, Audience audience) {
  const CautionFigures figures(plan, audience);
  const std::vector<Named> named = Cautions(plan).all();
  std::vector<Caution> list;
  list.reserve(named.size());
  for (const Named& one : named) {
    const words::CautionText& said = words::caution_text(one.word, audience.language);
    Words text = words::stands(said.text) ? Words::standing(said.text)
                                          : Words(words::filled(said.text, figures, audience.language));
    list.push_back({one.code, std::move(text), said.brief, one.basis});
  }
  return list;
}

std::vector<std::string_view> work::caution_codes(const Plan& plan) {
  const std::vector<Named> named = Cautions(plan).all();
  std::vector<std::string_view> codes;
  codes.reserve(named.size());
  for (const Named& one : named) codes.push_back(one.code);
  return codes;
}

}  // namespace mainbore
