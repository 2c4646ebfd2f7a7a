#include "report/card.hpp"

#include <algorithm>
#include <cmath>

#include "mainbore/measure.hpp"
#include "mainbore/report.hpp"
#include "report/settings_words.hpp"

namespace mainbore::report {
namespace {

std::string sentence_case(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

class CardWriter {
 public:
  CardWriter(const Plan& plan, UnitSystem system) : plan_(plan), system_(system) {}

  Card all() && {
    verdict();
    order();
    if (no_go()) stops();
    else {
      readings();
      setup();
      card_.marks = bar_marks(plan_, system_);
      card_.makeup = makeup_in_words(plan_);
      in_short();
      bring();
    }
    holds();
    odd();
    for (const Caution& caution : cautions(plan_, system_)) card_.cautions.push_back(caution.brief);
    return std::move(card_);
  }

 private:
  [[nodiscard]] bool no_go() const { return plan_.verdict == Verdict::no_go || plan_.method.kind == Method::none; }
  [[nodiscard]] bool wet() const { return plan_.job.main.pressurised.value_or(true); }
  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, system_); }
  [[nodiscard]] std::string up(Length length) const { return on_rule(length, system_, Toward::more); }
  [[nodiscard]] std::string down(Length length) const { return on_rule(length, system_, Toward::less); }

  void verdict() {
    switch (plan_.verdict) {
      case Verdict::go:
        card_.verdict = "GO - tap as planned, inside the stop numbers";
        break;
      case Verdict::hold:
        card_.verdict = "HOLD - do not cut until every hold is cleared";
        break;
      case Verdict::no_go:
        card_.verdict = "NO-GO - do not tap";
        break;
    }
    // The verdict stands above; the rest of the sentence says for what.
    std::string what = sentence_case(summary_of(plan_, system_).sentence());
    if (!no_go()) what += ' ' + where();
    card_.what.push_back(std::move(what));
  }

  [[nodiscard]] std::string where() const {
    const Location& place = plan_.location;
    std::string text = "At " + place.clock.label();
    if (plan_.method.count > 1) text += " and " + place.other_clock.label() + " in turn";
    text += " o'clock";
    if (std::fabs(place.shift.base()) > 1e-9) {
      text += ", " + on_tape(abs(place.shift), system_, Toward::more) + " the " + (place.shift > Length() ? "+" : "-") +
              " way from the place asked";
    }
    return text + '.';
  }

  void order() {
    const Job& job = plan_.job;
    for (const std::string* text : {&job.id, &job.place, &job.date, &job.crew}) {
      if (!text->empty()) card_.order += (card_.order.empty() ? "" : "; ") + *text;
    }
  }

  void stops() {
    for (const Finding& finding : plan_.findings) {
      if (finding.severity != Severity::stop) continue;
      card_.stops.push_back(stop_of(finding, system_, plan_.readings));
    }
  }

  void readings() {
    for (const Reading& reading : plan_.readings) {
      const std::string_view unit = shown(Measure(0.0, reading.kind()), system_).unit;
      card_.readings.push_back({sentence_case(std::string(words_of(reading.id))), bounds_in_words(reading, system_), std::string(unit)});
    }
  }

  void holds() {
    for (const Clears clears : {Clears::office, Clears::site}) {
      for (const Finding& finding : plan_.findings) {
        if (finding.severity != Severity::hold || clears_by(finding.code) != clears) continue;
        CardHold& hold = card_.holds.emplace_back();
        hold.number = static_cast<int>(card_.holds.size());
        hold.clears = clears;
        hold.text = line_of(finding, system_, plan_.readings);
        if (finding.limit) hold.unit = shown(*finding.limit, system_).unit;
      }
    }
  }

  void setup() {
    const Setup& setup = plan_.setup;
    const auto line = [&](std::string label, std::string text) { card_.setup.push_back({std::move(label), std::move(text)}); };
    switch (plan_.method.kind) {
      case Method::direct: {
        if (setup.saddle_od) line("Machine seat", "for " + on_calliper(*setup.saddle_od, system_) + " outside; it must not rock");
        if (setup.chain) line("Chain", chain(*setup.chain));
        if (setup.clamp && setup.clamp->stud_torque)
          line("Stud torque", "the maker's; holding takes about " + show(setup.clamp->stud_torque->usual) + " on each");
        break;
      }
      case Method::saddle:
        line("Machine seat", "on the outlet of the open stop, by its adapter, held up");
        if (plan_.method.hole) line("Cutter", "not over " + down(*plan_.method.hole) + "; passes the open stop freely");
        break;
      case Method::sleeve:
        line("Machine seat", "bolted to the tapping valve, machine and valve on blocks");
        break;
      case Method::none:
        break;
    }
    std::string feed = setup.feed == Feed::hand ? "by hand" : "powered";
    if (wet() && setup.push > Force()) feed += "; line pushes the bar with " + show(setup.push) + ": hold by screw";
    line("Feed", std::move(feed));
  }

  [[nodiscard]] std::string chain(const ChainPlan& chain) const {
    std::string text = "at least " + up(chain.needed) + ", hook to hook; " + down(chain.available) + " with ";
    text += chain.extensions == 0 ? "no" : std::to_string(chain.extensions);
    return text + (chain.extensions == 1 ? " extension" : " extensions");
  }

  // The figures that make the tap, right under what it is.
  void in_short() {
    std::string text;
    const auto add = [&](const std::string& part) { text += (text.empty() ? "" : "; ") + part; };
    if (plan_.setup.chain && plan_.method.kind == Method::direct) add("chain " + up(plan_.setup.chain->needed));
    for (const BarMark& mark : card_.marks) {
      if (mark.key == (plan_.method.kind == Method::direct ? "stop-tapping" : "through")) {
        add((plan_.method.kind == Method::direct ? std::string("stop") + hard_space + "tapping: " : "through: ") + std::string(mark.where));
      }
    }
    if (plan_.makeup) add(in_quarter_turns(plan_.makeup->wrench_turns) + " by wrench");
    if (!text.empty()) card_.what.push_back(sentence_case(std::move(text)) + '.');
  }

  void bring() {
    const auto list = materials(plan_, system_);
    for (std::size_t group = 0; group < load_group_names.size(); ++group) {
      CardGroup things{std::string(load_group_names[group]), {}};
      for (const LoadItem& item : list) {
        if (item.group != static_cast<LoadGroup>(group)) continue;
        std::string name(item.key);
        std::replace(name.begin(), name.end(), '-', ' ');
        if (item.quantity > 1) name.insert(0, std::to_string(item.quantity) + " x ");
        // A thread or a size; a range of diameters stands with the set-up.
        constexpr std::size_t longest_size = 18;
        if (!item.size.empty() && item.size.size() <= longest_size) name += ' ' + item.size;
        things.things.push_back(std::move(name));
      }
      if (!things.things.empty()) card_.bring.push_back(std::move(things));
    }
  }

  // What another part of the card says by its figures or its blanks.
  [[nodiscard]] static bool said_above(FindingCode code) {
    return code == FindingCode::makeup_by_trial || code == FindingCode::machine_push_by_hand ||
           code == FindingCode::direct_recalled_thread;
  }

  void odd() {
    if (const std::string taken = settings_line(plan_.from_settings); !taken.empty()) card_.odd.push_back("From settings: " + taken);
    if (!plan_.job.note.empty()) card_.odd.push_back("Note: " + plan_.job.note);
    for (const Severity severity : {Severity::caution, Severity::note}) {
      for (const Finding& finding : plan_.findings) {
        if (finding.severity == severity && !said_above(finding.code)) card_.odd.push_back(line_of(finding, system_, plan_.readings));
      }
    }
    for (const RejectedMethod& reject : plan_.method.rejected) {
      card_.odd.push_back("Not " + std::string(name_of(reject.kind)) + ": " + line_of(reject.why, system_));
    }
    for (const Assumption& assumed : plan_.main.assumed) {
      if (assumed.because.empty()) continue;
      card_.odd.push_back("Assumed " + assumed_in_words(assumed, system_));
    }
  }

  const Plan& plan_;
  UnitSystem system_;
  Card card_;
};

}  // namespace

std::string assumed_in_words(const Assumption& assumed, UnitSystem system) {
  std::string text(assumed.path);
  std::replace_if(text.begin(), text.end(), [](char c) { return c == '.' || c == '_'; }, ' ');
  std::string value;
  const auto* const measure = std::get_if<Measure>(&assumed.value);
  if (measure != nullptr && measure->kind() == Kind::pressure) value = on_gauge(measure->as<-2, 1, 0>(), system);
  else append_detail(value, assumed.value, system);
  return text + (value.empty() ? "" : ": " + value);
}

Card card_of(const Plan& plan, UnitSystem system) { return CardWriter(plan, system).all(); }

}  // namespace mainbore::report
