// The text report: the plan's parts in the order of use. All engineering is the plan's.
#include <algorithm>
#include <cmath>

#include "mainbore/evidence.hpp"
#include "mainbore/finding_words.hpp"
#include "mainbore/fingerprint.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/report.hpp"
#include "mainbore/rule_words.hpp"
#include "report/card.hpp"
#include "report/settings_words.hpp"
#include "report/text_page.hpp"
#include "report/text_water.hpp"
#include "words/card.hpp"
#include "words/steps.hpp"

namespace mainbore {
namespace {

using report::columns;
using report::TextPage;
using words::StepWord;

std::string sentence_case(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

// "main.stop_rating" -> "main stop rating"
std::string path_in_words(std::string_view path) {
  std::string words(path);
  std::replace_if(
      words.begin(), words.end(), [](char c) { return c == '.' || c == '_'; }, ' ');
  return words;
}

std::string pipe_in_words(const Pipe& pipe) {
  std::string text = pipe.series != nullptr ? pipe.series->title : std::string();
  if (!pipe.class_name.empty()) text += (text.empty() ? "" : ", ") + pipe.class_name;
  return text;
}

class TextReport {
 public:
  TextReport(const Plan& plan, const TextOptions& options)
      : plan_(plan), options_(options), page_(options.width, options.color) {}

  std::string all() && {
    report::write_card(page_, report::card_of(plan_, audience()));
    if (options_.language == Language::english && options_.why) why();
    if (options_.language != Language::english && options_.why) {
      translated_findings();
      translated_cautions();
    }
    if (options_.materials) load();
    if (options_.steps) {
      steps();
      trouble();
    }
    if (options_.why) {
      // What is translated stands first; the rest says that it is not.
      if (options_.language != Language::english) {
        page_.blank();
        page_.paragraph(say(words::CardWord::english_from_here, options_.language));
        why();
      }
      sources();
      fingerprint();
    }
    return std::move(page_).take();
  }

 private:
  [[nodiscard]] Audience audience() const { return {options_.units, options_.language}; }
  [[nodiscard]] std::string_view said(StepWord word) const { return say(word, options_.language); }

  void translated_findings() {
    page_.heading(say(words::CardWord::findings_in_full, options_.language));
    const std::string action = "    " + std::string(say(words::CardWord::action, options_.language));
    for (const Severity severity : {Severity::stop, Severity::hold, Severity::caution, Severity::note}) {
      for (const Finding* finding : of(severity)) {
        const FindingText& text = text_of(finding->code, options_.language);
        page_.coded(sentence_case(std::string(text.title)), name_of(finding->code), 4, "  - ");
        page_.paragraph(detail_of(*finding, audience(), plan_.stop_numbers), 4);
        page_.paragraph(fix_of(*finding, audience(), plan_.stop_numbers), 8, action);
      }
    }
  }

  void translated_cautions() {
    page_.heading(say(words::CardWord::cautions_in_full, options_.language));
    for (const Caution& caution : cautions(plan_, audience())) {
      page_.paragraph(caution.text.view(), 4, "  ! ");
      utility_says(caution.code, 4);
    }
  }

  void why() {
    the_order();
    stops();
    holds();
    the_tap();
    rejected();
    threads();
    makeup();
    pressures();
    setup();
    place();
    report::water_sections(page_, plan_, options_.units);
    assumed();
    settings();
    settle();
    found();
    always();
  }

  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, options_.units); }
  [[nodiscard]] std::string caliper(Length length) const { return on_caliper(length, options_.units); }
  [[nodiscard]] std::string show_detail(const Detail& detail) const {
    std::string text;
    append_detail(text, detail, options_.units);
    return text;
  }
  [[nodiscard]] static std::string number(double value, int decimals = 2) {
    std::string text;
    append_number(text, value, decimals);
    return text;
  }
  [[nodiscard]] static std::string name(NominalSize size) { return size.label() + " in"; }
  [[nodiscard]] bool wet() const { return plan_.job.main.is_pressurized(); }
  [[nodiscard]] bool taps() const { return plan_.method.kind != Method::none; }

  [[nodiscard]] std::vector<const Finding*> of(Severity severity) const {
    std::vector<const Finding*> list;
    for (const Finding& finding : plan_.findings) {
      if (finding.severity == severity) list.push_back(&finding);
    }
    return list;
  }

  void the_order() {
    const Job& job = plan_.job;
    const std::string rules = under_own_rules() ? documents_in_words(*plan_.rules) : std::string();
    if (job.id.empty() && job.place.empty() && job.date.empty() && job.crew.empty() && job.note.empty() &&
        rules.empty())
      return;
    page_.heading("THE ORDER");
    const auto given = [&](std::string_view label, const std::string& text) {
      if (!text.empty()) page_.field(label, text);
    };
    given("Order", job.id);
    given("Place", job.place);
    given("Planned for", job.date);
    given("Crew", job.crew);
    given("Note", job.note);
    given("Rules", rules);
  }

  // Whose rule decided, where a utility has rules of its own. Without, all are defaults.
  [[nodiscard]] bool under_own_rules() const { return plan_.rules != nullptr && plan_.rules->has_own(); }
  [[nodiscard]] std::string whose(const Finding& finding) const {
    if (!under_own_rules()) return {};
    const std::string words = decided_in_words(finding);
    return words.empty() ? words : " " + words;
  }

  // A blank as long as a reading is wide.
  [[nodiscard]] std::string blank_for(const Measure& measure) const {
    return std::string("________") + report::hard_space + std::string(shown(measure, options_.units).unit);
  }

  // Complete threads, never one more than there are.
  [[nodiscard]] std::string threads(double count) const {
    return format_measure(Measure(count, Kind::threads), options_.units, Toward::less);
  }
  [[nodiscard]] std::string force(Force force) const { return in_round_figures(force, options_.units); }
  // Along the bar or the pipe, by the rule.
  [[nodiscard]] std::string up(Length length) const { return on_rule(length, options_.units, Toward::more); }
  [[nodiscard]] std::string down(Length length) const { return on_rule(length, options_.units, Toward::less); }

  [[nodiscard]] std::string at_most(Measure bound) const { return format_measure(bound, options_.units, Toward::less); }

  void stops() {
    const auto list = of(Severity::stop);
    if (list.empty()) return;
    page_.heading("WHAT STOPS IT", "and the way forward");
    numbered(list, false);
  }

  void holds() {
    const auto list = of(Severity::hold);
    if (list.empty()) return;
    if (plan_.verdict == Verdict::no_go) {
      page_.heading("ALSO OPEN", "to settle before it is planned again");
    } else {
      page_.heading("HOLDS IN FULL", "in the order of the checks");
    }
    numbered(list, true);
  }

  void numbered(const std::vector<const Finding*>& list, bool blanks) {
    int count = 0;
    for (const Finding* finding : list) {
      std::string lead = std::to_string(++count) + ".";
      lead.insert(0, lead.size() < 3 ? 3 - lead.size() : 0, ' ');
      page_.coded(sentence_case(std::string(text_of(finding->code).title)), name_of(finding->code), 4, lead + " ");
      page_.paragraph(detail_of(*finding, options_.units, plan_.stop_numbers) + whose(*finding), 4);
      page_.paragraph(fix_of(*finding, options_.units, plan_.stop_numbers), 8, "    Do: ");
      if (blanks) page_.paragraph(blank_line(*finding), 8, "    --> ");
    }
  }

  [[nodiscard]] std::string blank_line(const Finding& finding) const {
    std::string text(reading_for(finding.code));
    text += ": ";
    const bool readable = finding.limit && !shown(*finding.limit, options_.units).unit.empty();
    text += readable ? blank_for(*finding.limit) : std::string("________________");
    return text + std::string(2, report::hard_space) + " by ________";
  }

  void the_tap() {
    if (!taps() || plan_.verdict == Verdict::no_go) return;
    const ChosenMethod& method = plan_.method;
    page_.heading("THE TAP");
    std::string how = sentence_case(std::string(name_of(method.kind)));
    how += method.kind == Method::direct ? " tap" : "";
    if (method.count > 1) how += ", " + std::to_string(method.count) + " taps of equal capacity to one";
    page_.field("Method", how);
    page_.field("Tap", name(method.tap) + (method.count > 1 ? " each" : ""));
    if (method.thread) page_.field("Thread", std::string(name_of(*method.thread)) + ", tool and stop alike");
    if (method.hole)
      page_.field(method.kind == Method::direct ? "Hole over the threads" : "Hole in the main",
                  method.kind == Method::saddle
                      ? "under " + show(*method.hole) + ": the largest that passes the open stop"
                      : show(*method.hole));
    if (method.section_left) {
      page_.field("Strength left in pipe",
                  show(Measure(100.0 * *method.section_left, Kind::percent)) + " of a whole pipe, as a beam");
    }
    if (method.specification != nullptr) {
      const FittingSpecification& asked = *method.specification;
      page_.field(method.kind == Method::sleeve ? "Sleeve as asked" : "Saddle as asked",
                  asked.text + (asked.basis.reference != nullptr ? " (" + *asked.basis.reference + ")" : ""));
    }
    utility_says(words_id_of(method), 2);
    main_lines();
    const Setup& setup = plan_.setup;
    if (setup.machine != nullptr && method.kind != Method::sleeve) {
      page_.field("Machine", setup.machine->title + ", " + std::string(name_of(setup.feed)) + " feed" +
                                 (setup.machine->maker_figures ? "" : "; conservative figures, not its maker's"));
    }
  }

  void main_lines() {
    const ResolvedMain& main = plan_.main;
    std::string pipe = name(main.size) + " " + std::string(name_of(main.material));
    if (main.governing != nullptr && !main.governing->class_name.empty()) pipe += ", " + main.governing->class_name;
    if (main.candidates.size() > 1) pipe += " (the weakest of " + std::to_string(main.candidates.size()) + " that fit)";
    const bool by_another_name = main.candidates.size() == 1 && !main.rated_as.empty() &&
                                 main.rated_as != std::string_view(main.governing->class_name);
    if (by_another_name) pipe += ", rated as " + std::string(main.rated_as);
    page_.field("Main", pipe);
    if (main.od) {
      std::string od = caliper(*main.od);
      if (main.caliper_low && main.caliper_high) {
        od +=
            "; may measure " + format_between(Measure(*main.caliper_low), Measure(*main.caliper_high), options_.units);
      }
      page_.field("Outside diameter", od);
    }
    if (main.wall_nominal) {
      std::string wall =
          show(*main.wall_nominal) + (main.wall_basis == WallBasis::measured ? " measured" : " by the tables");
      if (main.wall_least) wall += "; planned with: " + show(*main.wall_least);
      page_.field("Wall", wall);
    }
    // Each the worst of its kind, so that they need not be of one pipe.
    if (main.candidates.size() > 1 && !main.rated_as.empty() && main.rated_as != main.governing->class_name) {
      page_.field("Rating", show(*main.rating) + ", the lowest that fits (" + std::string(main.rated_as) +
                                "); the wall is the thinnest that fits: the worst of each");
    }
  }

  void rejected() {
    if (plan_.method.rejected.empty()) return;
    page_.heading("NOT USED", "and why");
    for (const RejectedMethod& reject : plan_.method.rejected) {
      std::string text = (reject.count > 1 ? std::to_string(reject.count) + " x " : std::string()) + name(reject.tap) +
                         " " + std::string(name_of(reject.kind)) + ": " + detail_of(reject.why, options_.units) +
                         whose(reject.why);
      page_.coded(text, name_of(reject.why.code), 4, "  - ");
    }
    if (const auto& smaller = plan_.method.smaller_taps; smaller && plan_.verdict == Verdict::hold) {
      page_.paragraph("To put to the office in its place: " + std::to_string(smaller->count) + " direct taps of " +
                          name(smaller->tap) + ", which carry as much, at least " +
                          on_tape(smaller->spacing, options_.units, Toward::more) + " apart on " +
                          on_tape(smaller->barrel, options_.units, Toward::more) +
                          " of clear barrel. Each is then planned as an order of its own.",
                      4, "  - ");
    }
  }

  void threads() {
    if (!plan_.engagement || plan_.verdict == Verdict::no_go) return;
    const ThreadsInWall& in_wall = *plan_.engagement;
    // Where a published largest tap decides, the count that did not is no requirement.
    page_.heading("THREADS IN THE WALL", in_wall.judged ? "complete ones, all the way round"
                                                        : "for information: the published largest tap decides");
    page_.field("At the wall given", threads(in_wall.at_nominal.complete_threads));
    if (in_wall.at_least) page_.field("At the least wall", threads(in_wall.at_least->complete_threads));
    if (in_wall.judged) {
      page_.field("Required", number(in_wall.required) + " threads");
      if (in_wall.wall_needed) page_.field("Wall for that count", show(*in_wall.wall_needed));
    }
    if (in_wall.judged && in_wall.margin) {
      page_.field("Margin of wall", show(abs(*in_wall.margin)) + (*in_wall.margin < Length() ? " short" : " to spare"));
    }
    if (in_wall.strip_load && in_wall.end_load) {
      page_.field("To strip them takes",
                  force(*in_wall.strip_load) + "; the line pushes with " + force(*in_wall.end_load));
    }
  }

  void makeup() {
    if (!plan_.makeup || plan_.verdict == Verdict::no_go) return;
    const MakeupPlan& plan = *plan_.makeup;
    page_.heading("MAKE-UP", "how deep to tap, how far the stop goes in");
    const double past = plan.makeup.turns_past_gauge;
    page_.field("Stop the tap", in_quarter_turns(std::fabs(past)) + (past < 0 ? " short of" : " past") + " gauge (" +
                                    up(abs(plan.makeup.stop_past_gauge)) + ")");
    if (plan.tip_depth) page_.field("Tap point then lies", up(*plan.tip_depth) + " below the outside of the pipe");
    page_.field("Stop in by hand", in_quarter_turns(plan.makeup.hand_tight_turns));
    page_.field("Then by wrench", in_quarter_turns(plan.wrench_turns));
    page_.field("Threads left showing", number(plan.threads_showing, 1));
    if (plan.far_wall_clearance) page_.field("Tool to the far wall", down(*plan.far_wall_clearance));
    if (plan.protrusion) {
      page_.field("End of the stop", up(abs(*plan.protrusion)) +
                                         (*plan.protrusion < Length() ? " short of the bore" : " inside the bore"));
    }
  }

  void pressures() {
    if (plan_.pressure.limits.empty()) return;
    const PressureChain& chain = plan_.pressure;
    page_.heading("PRESSURES", "every link the water meets");
    const auto& seldom = plan_.job.main.occasional_surge;
    page_.field("Line", show(chain.line) + (chain.surge ? ", and a surge of " + show(*chain.surge) : "") +
                            (seldom ? ", on occasion of " + show(*seldom) : ""));
    for (const PressureLimit& limit : chain.limits) {
      const Pressure margin = limit.limit - chain.line;
      std::string text = at_most(limit.limit);
      text.resize(std::max<std::size_t>(text.size(), 9), report::hard_space);
      text += margin < Pressure() ? " over by " + show(-margin) : " " + show(margin) + " to spare";
      if (chain.governed_by && chain.governed_by->link == limit.link)
        text += std::string(1, report::hard_space) + " <-- the least";
      page_.field(sentence_case(std::string(name_of(limit.link))), text);
    }
    if (plan_.open_hole) {
      page_.field("If it lets go",
                  show(plan_.open_hole->flow) + " at most, the jet pushing with " + force(plan_.open_hole->jet));
    }
    if (const StopNumber* lowered = lower_the_main_to(plan_))
      page_.field("Lower the main to", bare_bounds(*lowered, options_.units) + " or less");
  }

  void setup() {
    if (!taps() || plan_.verdict == Verdict::no_go || plan_.method.kind == Method::sleeve) return;
    const Setup& setup = plan_.setup;
    page_.heading("SET-UP");
    // On a saddle the machine stands on the stop: it needs no seat of its own and no chain.
    if (plan_.method.kind == Method::direct) {
      if (setup.saddle_od) page_.field("Machine saddle", "for " + caliper(*setup.saddle_od) + " outside diameter");
      if (setup.chain) {
        page_.field("Chain needed", up(setup.chain->needed) + ", hook to hook");
        page_.field("Chain made up", show(Measure(setup.chain->available, Kind::tape)) + " with " +
                                         std::to_string(setup.chain->extensions) +
                                         (setup.chain->extensions == 1 ? " extension" : " extensions"));
      }
      if (setup.clamp) clamp(*setup.clamp);
    }
    if (wet() && setup.push > Force()) page_.field("Push on the bar", force(setup.push) + " at line pressure");
    // Worked out for a drill with a point; a shell cutter has none.
    const bool twist_drill = plan_.method.kind == Method::direct && !is_plastic(plan_.main.material);
    if (setup.drill && twist_drill) {
      page_.field("Drill counted",
                  show(*setup.drill) +
                      (setup.drill_is_bound ? ", the largest hole: this thread's own drill is not listed" : ""));
    }
    if (setup.drill_stroke && twist_drill) {
      page_.field("Touch to breakthrough", up(*setup.drill_stroke) + " of feed");
    }
    if (setup.travel_needed) page_.field("Bar travel needed", up(*setup.travel_needed));
    if (setup.drill_load && twist_drill) {
      const auto& load = *setup.drill_load;
      page_.field("Feed on a sharp drill", force(load.low.thrust) + " to " + force(load.high.thrust) + ", turning " +
                                               show(load.low.torque) + " to " + show(load.high.torque));
    }
  }

  void clamp(const ClampPlan& clamp) {
    const Force cut = plan_.setup.cut_thrust;
    page_.field("Hold it down with",
                force(clamp.force) + (cut > Force() ? ", " + force(cut) + " of it for the cutter" : ""));
    if (clamp.tension) page_.field("In each leg of chain", force(*clamp.tension));
    if (clamp.stud_torque) {
      page_.field("Stud torque", "what the machine's maker says; holding takes about " +
                                     show(clamp.stud_torque->usual) + " dry, " + show(clamp.stud_torque->low) +
                                     " well greased, " + show(clamp.stud_torque->high) + " rusty");
    }
    if (clamp.ovality)
      page_.field("Pipe out of round", "at most " + show(Measure(100.0 * *clamp.ovality, Kind::percent)));
  }

  void place() {
    if (!taps() || plan_.verdict == Verdict::no_go) return;
    const Location& location = plan_.location;
    page_.heading("PLACE");
    std::string along = "at the place asked";
    if (std::fabs(location.shift.base()) > 1e-9) {
      along = on_tape(abs(location.shift), options_.units, Toward::more) + " the " +
              (location.shift > Length() ? "+" : "-") + " way from the place asked";
    }
    page_.field("Along the main", along);
    page_.field("Round the pipe",
                location.clock.label() + " o'clock" +
                    (plan_.method.count > 1 ? " and " + location.other_clock.label() + " in turn" : ""));
    if (plan_.method.spacing) {
      page_.field("Taps apart",
                  "at least " + on_tape(*plan_.method.spacing, options_.units, Toward::more) + " along the main");
    }
    for (const Clearing& clearing : location.clearings) {
      page_.field("Clear of " + std::string(nearby_names[static_cast<std::size_t>(clearing.what)]),
                  on_tape(clearing.kept, options_.units, Toward::less) + "; at least " +
                      least_in_words(plan_, clearing, options_.units));
    }
  }

  void assumed() {
    if (plan_.main.assumed.empty()) return;
    page_.heading("ASSUMED", "and what takes the place of each");
    for (const Assumption& assumption : plan_.main.assumed) {
      std::string text = sentence_case(path_in_words(assumption.path));
      if (const std::string value = show_detail(assumption.value); !value.empty()) text += ": " + value;
      if (!assumption.because.empty()) text += ", " + std::string(assumption.because);
      text += ".";
      if (!assumption.settle.empty()) text += " Better: " + std::string(assumption.settle) + ".";
      page_.coded(text, assumption.path, 4, "  - ");
    }
  }

  void settings() {
    const auto list = report::settings_words(plan_.from_settings, options_.units);
    if (list.empty()) return;
    page_.heading("FROM SETTINGS", "the job and the command line come first");
    for (const auto& [label, text] : list) page_.field(label, text);
  }

  void settle() {
    if (!plan_.main.settle) return;
    const SettlingReading& settle = *plan_.main.settle;
    page_.heading("WHICH PIPE IS IT", "measure the " + std::string(name_of(settle.id)));
    for (const ReadingMeans& reading : settle.readings) {
      std::string text = reading.pipe != nullptr ? pipe_in_words(*reading.pipe) : std::string("not in the tables");
      if (reading.also > 0) text += ", or " + std::to_string(reading.also) + " more that read the same";
      page_.field(format_between(reading.low, reading.high, options_.units), text);
    }
    page_.field("anything else", "is not the pipe on the card: stop");
  }

  void found() {
    const auto list_of = [&](Severity severity) {
      for (const Finding* finding : of(severity)) {
        page_.coded(detail_of(*finding, options_.units, plan_.stop_numbers) + whose(*finding) + " " +
                        fix_of(*finding, options_.units, plan_.stop_numbers),
                    name_of(finding->code), 4, "  - ");
      }
    };
    if (of(Severity::caution).empty() && of(Severity::note).empty()) return;
    page_.heading("WATCH FOR", "found while planning");
    list_of(Severity::caution);
    list_of(Severity::note);
  }

  void always() {
    page_.heading("CAUTIONS", "read out at the pit, every time");
    for (const Caution& caution : cautions(plan_, options_.units)) {
      if (caution.basis.empty()) page_.paragraph(caution.text, 4, "  ! ");
      else page_.coded(caution.text, caution.basis, 4, "  ! ");
      utility_says(caution.code, 4);
    }
  }

  void load() {
    const auto list = load_list(plan_, audience());
    if (list.empty()) return;
    page_.heading(said(StepWord::load_heading), said(StepWord::load_beside));
    for (const LoadItem& item : list) {
      std::string text = (std::to_string(item.quantity) + " x ").append(item.item);
      if (!item.size.empty()) text += ", " + item.size;
      text += ".";
      if (item.aboard) text += ' ' + aboard_in_words(item, audience().language);
      if (!item.check.empty()) (text += " ").append(item.check);
      page_.paragraph(text, 6, "  [ ] ");
    }
  }

  // Where valves and chamber stand after a step that moved one of them.
  [[nodiscard]] std::string now(const RigState& state) const {
    std::string text;
    for (const ValveState& valve : valves_of(state, seat_of(plan_.method.kind), options_.language)) {
      ((text += text.empty() ? "" : ", ") += valve.name) += ' ';
      text += valve.stands;
    }
    return text;
  }

  void steps() {
    const auto list = procedure(plan_, audience());
    if (list.empty()) return;
    page_.heading(said(StepWord::work_heading));
    std::string_view phase;
    int count = 0;
    for (const Step& step : list) {
      if (step.phase != phase) {
        phase = step.phase;
        page_.paragraph(phase, 1);
      }
      std::string lead = std::to_string(++count) + ".";
      lead.insert(0, lead.size() < 3 ? 3 - lead.size() : 0, ' ');
      page_.paragraph(mainbore::in_words(step), 4, lead + " ");
      if (step.moves_valves) page_.paragraph(now(step.state), 9, "    " + std::string(said(StepWord::work_now)));
      if (!step.hold_point.empty())
        page_.paragraph(std::string(said(StepWord::work_until)).append(step.hold_point), 8, "    [ ] ");
      utility_says(step.id, 4);
    }
  }

  void trouble() {
    const auto list = contingencies(plan_, audience());
    if (list.empty()) return;
    page_.heading(said(StepWord::trouble_heading));
    for (const Step& step : list) {
      page_.paragraph(mainbore::in_words(step), 4, "  - ");
      utility_says(step.id, 4);
    }
  }

  // Beside the program's own words, never in their place.
  void utility_says(std::string_view id, int indent) {
    const std::string words = utility_in_words(plan_, id, audience().language);
    if (!words.empty()) page_.paragraph(words, indent, std::string(static_cast<std::size_t>(indent), ' '));
  }

  [[nodiscard]] static std::string in_words(const Basis& basis) {
    if (basis.utility) {
      return "the utility's own rule" + (basis.reference != nullptr ? ": " + *basis.reference : std::string());
    }
    std::string text;
    if (basis.source != nullptr) {
      text = basis.source->title;
      if (!basis.source->where.empty()) text += ", " + basis.source->where;
    }
    switch (basis.how) {
      case How::published:
        return text + " (published)";
      case How::derived:
        return text.empty() ? "worked out by formula" : text + " (worked out from it)";
      case How::common_practice:
        if (text.empty()) return "common practice, no publication";
        return text.find("ommon practice") != std::string::npos ? text : text + " (common practice)";
      case How::stated:
        return "as the job gives it";
      case How::stated_in_settings:
        return "as the settings file gives it";
      case How::stated_in_approved_list:
        return "as the approved list gives it";
      case How::memory:
        return (text.empty() ? std::string("no publication") : text) + " (" + std::string(check_this_value) + ")";
    }
    return text;
  }

  // One entry a source: where it is, and all that rests on it.
  void sources() {
    struct Entry {
      std::string words;
      std::vector<std::string> uses;
    };
    std::vector<Entry> entries;
    for (const Evidence& item : plan_.evidence) {
      const std::string words = in_words(item.basis);
      const std::string use(words_of(item));
      auto entry = std::find_if(entries.begin(), entries.end(), [&](const Entry& e) { return e.words == words; });
      if (entry == entries.end()) entry = entries.insert(entry, Entry{words, {}});
      if (std::find(entry->uses.begin(), entry->uses.end(), use) == entry->uses.end()) entry->uses.push_back(use);
    }
    if (entries.empty()) return;
    page_.heading("WHERE THE NUMBERS COME FROM");
    for (const Entry& entry : entries) {
      std::string text = sentence_case(entry.words) + ": ";
      for (std::size_t i = 0; i < entry.uses.size(); ++i) text += (i == 0 ? "" : "; ") + entry.uses[i];
      page_.paragraph(text + ".", 4, "  - ");
    }
  }

  void fingerprint() {
    page_.heading("FINGERPRINT", "what must be the same for this plan to be made again");
    const Fingerprint made = fingerprint_of(plan_);
    page_.field("Plan", made.plan);
    page_.field("Program", "mainbore " + made.program);
    page_.field("Tables", made.tables);
    page_.field("Rules", made.rules);
    page_.field("Job", made.job);
  }

  const Plan& plan_;
  const TextOptions& options_;
  TextPage page_;
};

}  // namespace

std::string text_report(const Plan& plan, const TextOptions& options) { return TextReport(plan, options).all(); }

}  // namespace mainbore
