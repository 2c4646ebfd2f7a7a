// One function a member of the plan, in the order of the document.
#include <algorithm>
#include <vector>

#include "io/job/job_json.hpp"
#include "io/plan/plan_parts_json.hpp"
#include "io/text/json_writer.hpp"
#include "mainbore/calculation.hpp"
#include "mainbore/evidence.hpp"
#include "mainbore/finding_words.hpp"
#include "mainbore/fingerprint.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/report.hpp"
#include "mainbore/rule_fields.hpp"
#include "mainbore/work.hpp"
#include "work/words_at_hand.hpp"

namespace mainbore {
namespace {

class PlanWriter {
 public:
  PlanWriter(std::string& text, const Plan& plan, UnitSystem system, JsonStyle style, PlanScope scope)
      : out_(text, style), plan_(plan), system_(system), words_(scope == PlanScope::whole) {}

  void write() {
    out_.begin_object();
    out_.whole("format", plan_format);
    io::write_job(out_, "job", plan_.job, system_);
    if (plan_.rules != nullptr) write_rules(*plan_.rules);
    io::write_settings(out_, plan_.from_settings, system_);
    if (words_) write_fingerprint();
    out_.word("verdict", name_of(plan_.verdict));
    if (const auto who = waits_for(plan_)) out_.word("waits_for", name_of(*who));
    out_.text("summary", summary_of(plan_, system_).whole());
    write_main();
    write_method();
    if (plan_.approved != nullptr) write_approved(*plan_.approved);
    if (plan_.engagement) write_engagement(*plan_.engagement);
    if (plan_.makeup) write_makeup(*plan_.makeup);
    write_pressure();
    write_setup();
    write_marks();
    write_location();
    write_parts();
    write_readings();
    write_holds();
    write_findings();
    if (words_) write_load_and_steps();
    write_cautions();
    if (words_) {
      write_evidence();
      write_calculations();
    }
    write_sources();
    out_.end_object();
  }

 private:
  void write_rules(const Rules& rules) {
    put_text("rules", rules.name);
    if (rules.documents.empty()) return;
    out_.begin_array("rules_documents");
    for (const RulesDocument& document : rules.documents) {
      out_.begin_object();
      for (const DocumentLine& line : document_lines()) put_text(line.key, document.*line.text);
      out_.end_object();
    }
    out_.end_array();
  }
  // Quantities, of which many may be absent. The overloads keep the members below a line each.
  void put(std::string_view key, Measure value) { out_.quantity(key, value, system_); }
  void put(std::string_view key, NominalSize value) { out_.size(key, value); }
  template <class T>
  void put(std::string_view key, const std::optional<T>& value) {
    if (value) put(key, *value);
  }
  void put_bound(std::string_view key, Measure value, Toward toward) { out_.bound(key, value, system_, toward); }
  void put_text(std::string_view key, std::string_view value) {
    if (!value.empty()) out_.text(key, value);
  }
  void put_ratio(std::string_view key, double value) { out_.number(key, value, io::ratio_places); }

  void put_detail(std::string_view key, const Detail& detail) {
    if (const auto* measure = std::get_if<Measure>(&detail)) put(key, *measure);
    if (const auto* size = std::get_if<NominalSize>(&detail)) put(key, *size);
    if (const auto* text = std::get_if<std::string_view>(&detail)) out_.text(key, *text);
    if (const auto* word = std::get_if<ShortText>(&detail)) out_.text(key, word->view());
    if (const auto* whole = std::get_if<int>(&detail)) out_.whole(key, *whole);
    if (const auto* clock = std::get_if<ClockPosition>(&detail)) out_.word(key, clock->label());
  }

  // The list, and what of it was chosen.
  void write_approved(const ApprovedList& list) {
    out_.begin_object("approved");
    put_text("file", list.file);
    put_text("name", list.name);
    put_text("edition", list.edition);
    out_.begin_array("fittings");
    for (const ApprovedItem* item : plan_.method.fittings) write_item(*item);
    out_.end_array();
    out_.end_object();
  }
  void write_item(const ApprovedItem& item) {
    out_.begin_object();
    out_.word("kind", name_of(item.kind));
    put_text("stock", item.stock);
    put_text("text", item.text);
    if (item.size != NominalSize()) put("size", item.size);
    if (item.thread) out_.word("thread", name_of(*item.thread));
    put("od_from", item.od_from);
    put("od_to", item.od_to);
    if (item.straps) out_.whole("straps", *item.straps);
    put("torque", item.torque);
    put("rating", item.rating);
    put("length", item.length);
    put("diameter", item.diameter);
    out_.end_object();
  }

  // How the numbers were had, the weakest of them, and the ids of their sources; remembers the sources for the end.
  void write_bases(std::span<const Basis* const> bases) {
    const Basis* weakest = nullptr;
    for (const Basis* basis : bases) {
      if (basis != nullptr && (weakest == nullptr || basis->how > weakest->how)) weakest = basis;
    }
    if (weakest != nullptr) out_.word("how", name_of(weakest->how));
    out_.begin_array("sources");
    for (std::size_t i = 0; i < bases.size(); ++i) {
      const Source* source = bases[i] == nullptr ? nullptr : bases[i]->source;
      bool repeated = source == nullptr;
      for (std::size_t j = 0; j < i && !repeated; ++j) repeated = bases[j] != nullptr && bases[j]->source == source;
      if (repeated) continue;
      remember(source);
      out_.text({}, source->id);
    }
    out_.end_array();
    for (const Basis* basis : bases) {
      if (basis != nullptr && basis->utility && basis->reference != nullptr) {
        out_.text("utility_rule", *basis->reference);
        break;
      }
    }
  }

  void write_pipe(const Pipe& pipe) {
    out_.text("standard", pipe.series->standard);
    put_text("class", pipe.class_name);
  }

  void write_fingerprint() {
    const Fingerprint made = fingerprint_of(plan_);
    out_.begin_object("fingerprint");
    out_.word("plan", made.plan);
    out_.word("program", made.program);
    out_.word("tables", made.tables);
    out_.word("rules", made.rules);
    out_.word("job", made.job);
    put_text("approved", made.approved);
    out_.end_object();
  }

  void write_main() {
    const ResolvedMain& main = plan_.main;
    out_.begin_object("main");
    out_.word("material", name_of(main.material));
    put("size", main.size);
    if (main.governing != nullptr) write_pipe(*main.governing);
    put("od", main.od);
    put("od_low", main.od_low);
    put("od_high", main.od_high);
    if (main.caliper_low) put_bound("caliper_low", Measure(*main.caliper_low), Toward::more);
    if (main.caliper_high) put_bound("caliper_high", Measure(*main.caliper_high), Toward::less);
    put("wall_nominal", main.wall_nominal);
    put("wall_min", main.wall_least);
    if (main.wall_basis != WallBasis::unknown) {
      out_.word("wall_basis", main.wall_basis == WallBasis::measured ? "measured" : "catalogue");
    }
    put("rating", main.rating);
    put_text("rated_as", main.rated_as);
    if (main.rating) put_ratio("temperature_factor", main.temperature_factor);
    out_.begin_array("candidates");
    for (const Pipe* pipe : main.candidates) {
      out_.begin_object();
      write_pipe(*pipe);
      out_.end_object();
    }
    out_.end_array();
    out_.begin_array("assumed");
    for (const Assumption& assumption : main.assumed) {
      out_.begin_object();
      out_.text("path", assumption.path);
      put_detail("value", assumption.value);
      put_text("because", assumption.because);
      put_text("settle", assumption.settle);
      out_.end_object();
    }
    out_.end_array();
    if (main.settle) write_settle(*main.settle);
    out_.end_object();
  }

  void write_settle(const SettlingReading& settle) {
    out_.begin_object("settle");
    out_.word("what", name_of(settle.id));
    out_.begin_array("readings");
    for (const ReadingMeans& reading : settle.readings) {
      out_.begin_object();
      put_bound("low", reading.low, Toward::more);
      put_bound("high", reading.high, Toward::less);
      if (reading.pipe != nullptr) write_pipe(*reading.pipe);
      if (reading.also > 0) out_.whole("also", reading.also);
      out_.end_object();
    }
    out_.end_array();
    out_.end_object();
  }

  void write_method() {
    const ChosenMethod& method = plan_.method;
    out_.begin_object("method");
    out_.word("kind", name_of(method.kind));
    if (method.kind != Method::none) {
      out_.whole("count", method.count);
      put("tap", method.tap);
    }
    if (method.thread) out_.word("thread", name_of(*method.thread));
    put("hole", method.hole);
    put("spacing", method.spacing);
    put_utility_words(words_id_of(method));
    if (method.specification != nullptr) {
      out_.begin_object("specification");
      out_.text("text", method.specification->text);
      if (const std::string* rule = method.specification->basis.reference) out_.text("utility_rule", *rule);
      out_.end_object();
    }
    if (const auto& smaller = method.smaller_taps) {
      out_.begin_object("smaller_taps");
      out_.whole("count", smaller->count);
      put("tap", smaller->tap);
      put("spacing", Measure(smaller->spacing, Kind::distance));
      put("barrel", Measure(smaller->barrel, Kind::distance));
      out_.end_object();
    }
    out_.begin_array("rejected");
    for (const RejectedMethod& rejected : method.rejected) {
      out_.begin_object();
      out_.word("kind", name_of(rejected.kind));
      out_.whole("count", rejected.count);
      put("tap", rejected.tap);
      out_.word("code", name_of(rejected.why.code));
      if (words_) out_.text("why", detail_of(rejected.why, system_));
      const DecidedBy decided = write_decided(rejected.why);
      if (decided.by == Decided::by_utility && decided.rule->reference != nullptr) {
        out_.text("utility_rule", *decided.rule->reference);
      }
      out_.end_object();
    }
    out_.end_array();
    out_.end_object();
  }

  void write_engagement(const ThreadsInWall& threads) {
    out_.begin_object("engagement");
    put_ratio("complete_threads", (threads.at_least ? *threads.at_least : threads.at_nominal).complete_threads);
    put_ratio("complete_threads_nominal", threads.at_nominal.complete_threads);
    put_ratio("required_threads", threads.required);
    put("wall_needed", threads.wall_needed);
    put("margin", threads.margin);
    out_.flag("judged", threads.judged);
    put("strip_load", threads.strip_load);
    put("end_load", threads.end_load);
    out_.end_object();
  }

  void write_makeup(const MakeupPlan& plan) {
    const mechanics::Makeup& makeup = plan.makeup;
    out_.begin_object("makeup");
    put_ratio("wrench_turns", plan.wrench_turns);
    put_ratio("threads_showing", plan.threads_showing);
    put_ratio("hand_tight_turns", makeup.hand_tight_turns);
    put("hand_tight_length", Measure(makeup.hand_tight_length));
    put_ratio("turns_past_gauge", makeup.turns_past_gauge);
    put("stop_past_gauge", Measure(makeup.stop_past_gauge));
    put("engaged_length", Measure(makeup.engaged_length));
    put("tip_depth", plan.tip_depth);
    put("far_wall_clearance", plan.far_wall_clearance);
    put("protrusion", plan.protrusion);
    out_.end_object();
  }

  void write_pressure() {
    const PressureChain& chain = plan_.pressure;
    out_.begin_object("pressure");
    put("line", Measure(chain.line));
    put("surge", chain.surge);
    if (chain.governed_by) {
      put_bound("limit", Measure(chain.governed_by->limit), Toward::less);
      out_.word("governed_by", name_of(chain.governed_by->link));
      put("margin", Measure(chain.governed_by->limit - chain.line));
    }
    if (const StopNumber* lowered = lower_the_main_to(plan_)) put_bound("reduce_to", *lowered->at_most, Toward::less);
    else if (chain.reduce_to) put_bound("reduce_to", *chain.reduce_to, Toward::less);
    out_.begin_array("limits");
    for (const PressureLimit& limit : chain.limits) {
      out_.begin_object();
      out_.word("link", name_of(limit.link));
      put_bound("limit", Measure(limit.limit), Toward::less);
      write_bases({&limit.basis, 1});
      out_.end_object();
    }
    out_.end_array();
    out_.end_object();
  }

  void write_setup() {
    const Setup& setup = plan_.setup;
    out_.begin_object("setup");
    if (setup.machine != nullptr) {
      out_.begin_object("machine");
      out_.text("id", setup.machine->id);
      put_text("title", setup.machine->title);
      out_.flag("maker_figures", setup.machine->maker_figures);
      out_.end_object();
      out_.word("feed", name_of(setup.feed));
    }
    if (setup.saddle_od) {
      out_.begin_object("machine_saddle");
      put("od", setup.saddle_od);
      out_.end_object();
    }
    if (setup.chain) {
      out_.begin_object("chain");
      put("needed", Measure(setup.chain->needed));
      put("available", Measure(setup.chain->available));
      out_.whole("extensions", setup.chain->extensions);
      put("leg", Measure(setup.chain->leg_degrees, Kind::angle));
      out_.end_object();
    }
    if (setup.clamp) write_clamp(*setup.clamp);
    put("thrust", Measure(setup.push));
    put("drill", setup.drill);
    if (setup.drill) out_.flag("drill_is_bound", setup.drill_is_bound);
    put("drill_stroke", setup.drill_stroke);
    if (setup.cut_thrust > Force()) put("cut_thrust", Measure(setup.cut_thrust));
    put("travel_needed", setup.travel_needed);
    if (setup.drill_load) {
      out_.begin_object("drill_load");
      put("thrust_low", Measure(setup.drill_load->low.thrust));
      put("thrust_high", Measure(setup.drill_load->high.thrust));
      put("torque_low", Measure(setup.drill_load->low.torque));
      put("torque_high", Measure(setup.drill_load->high.torque));
      out_.end_object();
    }
    out_.end_object();
  }

  void write_clamp(const ClampPlan& clamp) {
    out_.begin_object("clamp");
    put("force", Measure(clamp.force));
    put("tension", clamp.tension);
    if (clamp.stud_torque) {
      out_.begin_object("stud_torque");
      put("low", Measure(clamp.stud_torque->low));
      put("usual", Measure(clamp.stud_torque->usual));
      put("high", Measure(clamp.stud_torque->high));
      out_.end_object();
    }
    if (clamp.ovality) put("ovality", Measure(100.0 * *clamp.ovality, Kind::percent));
    out_.end_object();
  }

  void write_location() {
    out_.begin_object("location");
    put("shift", Measure(plan_.location.shift, Kind::distance));
    out_.word("clock", plan_.location.clock.label());
    out_.begin_array("clearings");
    for (const Clearing& clearing : plan_.location.clearings) {
      out_.begin_object();
      out_.word("what", nearby_names[static_cast<std::size_t>(clearing.what)]);
      put("along", Measure(clearing.along, Kind::distance));
      put("kept", Measure(clearing.kept, Kind::distance));
      put("least", Measure(clearing.least, Kind::distance));
      out_.end_object();
    }
    out_.end_array();
    out_.end_object();
  }

  // What only some jobs ask for.
  void write_parts() {
    const io::WriteBases bases = [this](std::span<const Basis* const> list) { write_bases(list); };
    if (plan_.open_hole) io::write_open_hole(out_, *plan_.open_hole, system_);
    if (plan_.service) io::write_service(out_, *plan_.service, system_, bases);
    if (plan_.cleaning) io::write_cleaning(out_, *plan_.cleaning, system_, bases);
    if (plan_.excavation) io::write_pit(out_, *plan_.excavation, system_);
    io::write_not_checked(out_, plan_);
  }

  void write_readings() {
    out_.begin_array("readings");
    for (const StopNumber& reading : plan_.stop_numbers) {
      out_.begin_object();
      out_.word("id", name_of(reading.id));
      out_.text("what", words_of(reading.id));
      if (reading.at_least && reading.at_most) {
        const ShownRange range = shown_between(*reading.at_least, *reading.at_most, system_);
        out_.quantity("at_least", range.least);
        out_.quantity("at_most", range.most);
      } else {
        if (reading.at_least) put_bound("at_least", *reading.at_least, Toward::more);
        if (reading.at_most) put_bound("at_most", *reading.at_most, Toward::less);
      }
      out_.end_object();
    }
    out_.end_array();
  }

  void write_marks() {
    if (!plan_.marks) return;
    const MarksPlan& marks = *plan_.marks;
    out_.begin_object("marks");
    if (marks.at) {
      put("breakthrough", Measure(marks.at->breakthrough));
      put("full_width", marks.at->full_width);
      put("tap_catches", marks.at->catches);
      put("stop_tapping", marks.at->stop_tapping);
      put("stop_touches", marks.at->stop_touches);
    }
    put("never_past", marks.limit);
    put("tap_depth", marks.tap_depth);
    if (marks.tap_turns) put_ratio("tap_turns", *marks.tap_turns);
    put("drawn_back", marks.drawn_back);
    put("stop_drawn_back", marks.stop_drawn_back);
    put("clear", marks.clear);
    put("feed_pitch", marks.feed_pitch);
    out_.flag("by_trial", marks.by_trial);
    out_.end_object();
  }

  void write_holds() {
    out_.begin_array("holds");
    for (const Finding& finding : plan_.findings) {
      if (finding.severity != Severity::hold) continue;
      out_.begin_object();
      out_.word("code", name_of(finding.code));
      out_.word("clears", name_of(clears_by(finding.code)));
      if (words_) {
        out_.text("fix", fix_of(finding, system_, plan_.stop_numbers));
        out_.text("reading", reading_for(finding.code));
      }
      out_.end_object();
    }
    out_.end_array();
  }

  // Whose rule it was.
  DecidedBy write_decided(const Finding& finding) {
    const DecidedBy decided = decided_by(finding);
    if (decided.by != Decided::by_no_rule) {
      out_.word("decided_by", decided.by == Decided::by_utility ? "utility" : "default");
    }
    return decided;
  }

  void write_findings() {
    out_.begin_array("findings");
    for (const Finding& finding : plan_.findings) {
      out_.begin_object();
      out_.word("code", name_of(finding.code));
      out_.word("severity", name_of(finding.severity));
      if (words_) {
        out_.text("title", text_of(finding.code).title);
        out_.text("detail", detail_of(finding, system_, plan_.stop_numbers));
      }
      put("value", finding.value);
      if (finding.limit) put_bound("limit", *finding.limit, finding.limit_is_least ? Toward::more : Toward::less);
      put("margin", finding.margin());
      if (words_) out_.text("fix", fix_of(finding, system_, plan_.stop_numbers));
      write_bases(finding.basis);
      const DecidedBy decided = write_decided(finding);
      if (decided.rule != nullptr && decided.rule->reason != nullptr)
        out_.text("utility_reason", *decided.rule->reason);
      out_.end_object();
    }
    out_.end_array();
  }

  void write_valves(const RigState& state) {
    const auto open = valves_open(state, seat_of(plan_.method.kind));
    out_.begin_object("valves");
    for (std::size_t i = 0; i + 1 < open.size(); ++i) out_.word(valve_keys[i], open[i] ? "open" : "shut");
    out_.word(valve_keys.back(), open.back() ? "pressure" : "zero");
    out_.end_object();
  }

  void write_steps(std::string_view key, const std::vector<Step>& steps) {
    out_.begin_array(key);
    for (const Step& step : steps) {
      out_.begin_object();
      out_.word("id", step.id);
      out_.text("phase", step.phase);
      if (step.condition.empty()) out_.text("text", step.action);
      else out_.text("text", in_words(step));
      put_text("condition", step.condition);
      out_.text("action", step.action);
      put_text("hold_point", step.hold_point);
      put_utility_words(step.id);
      if (step.moves_valves) write_valves(step.state);
      if (!step.uses.empty()) {
        out_.begin_array("uses");
        for (const std::string_view thing : step.uses) out_.word({}, thing);
        out_.end_array();
      }
      out_.end_object();
    }
    out_.end_array();
  }

  void write_load_and_steps() {
    const std::vector<Step> steps = procedure(plan_, system_);
    const std::vector<Step> trouble = contingencies(plan_, system_);
    out_.begin_array("materials");
    for (const LoadItem& item : work::load_list_of(plan_, system_, steps, trouble)) {
      out_.begin_object();
      out_.word("key", item.key);
      out_.word("group", load_group_keys[static_cast<std::size_t>(item.group)]);
      out_.text("item", item.item);
      put_text("size", item.size);
      put_text("stock", item.stock);
      out_.whole("quantity", item.quantity);
      if (item.aboard) out_.whole("aboard", *item.aboard);
      put_text("instead", item.instead);
      put_text("check", item.check);
      out_.end_object();
    }
    out_.end_array();
    write_steps("procedure", steps);
    write_steps("contingencies", trouble);
    write_record_form();
  }

  // Blank: what is to be written down once it is done.
  void write_record_form() {
    out_.begin_array("record");
    for (const RecordField& field : record_form(plan_)) {
      out_.begin_object();
      out_.word("field", field.key);
      out_.text("label", field.label);
      put_text("in_unit", unit_of(field, system_));
      out_.end_object();
    }
    out_.end_array();
  }

  // Beside the program's own words, never in their place.
  void put_utility_words(std::string_view id) {
    if (!words_ || plan_.rules == nullptr) return;
    if (const OwnWords* const own = own_words(*plan_.rules, id)) out_.text("utility_words", own->text);
  }

  // Their codes are always written: nothing switches a caution off.
  void write_cautions() {
    out_.begin_array("cautions");
    if (words_) write_cautions_in_words();
    else write_caution_codes();
    out_.end_array();
  }
  void write_cautions_in_words() {
    for (const Caution& caution : cautions(plan_, system_)) {
      out_.begin_object();
      out_.word("code", caution.code);
      put_utility_words(caution.code);
      out_.text("text", caution.text);
      put_text("basis", caution.basis);
      out_.end_object();
    }
  }
  void write_caution_codes() {
    for (const std::string_view code : work::caution_codes(plan_)) {
      out_.begin_object();
      out_.word("code", code);
      out_.end_object();
    }
  }

  // A verdict alone has no list: what it names is in its findings.
  void write_evidence() {
    out_.begin_array("evidence");
    for (const Evidence& item : plan_.evidence) {
      out_.begin_object();
      out_.text("what", words_of(item));
      if (item.finding) out_.word("finding", name_of(*item.finding));
      put_detail("value", item.value);
      out_.word("from", name_of(item.from));
      out_.word("how", name_of(item.basis.how));
      if (item.basis.source != nullptr) {
        out_.text("source", item.basis.source->id);
        remember(item.basis.source);
      }
      if (item.basis.utility && item.basis.reference != nullptr) out_.text("utility_rule", *item.basis.reference);
      if (is_recalled(item)) out_.word("check", check_this_value);
      out_.end_object();
    }
    out_.end_array();
  }

  // Of a value and of a limit alike: where from, and how it was had.
  void write_had(const std::optional<Formula>& worked_out, From from, const Basis& basis) {
    if (worked_out) return out_.word("worked_out", text_of(*worked_out).id);
    out_.word("from", name_of(from));
    out_.word("how", name_of(basis.how));
    if (basis.source != nullptr) {
      out_.text("source", basis.source->id);
      remember(basis.source);
    }
    if (basis.utility && basis.reference != nullptr) out_.text("utility_rule", *basis.reference);
  }

  void put_figure(std::string_view key, Measure value) { out_.quantity(key, shown_in_calculation(value, system_)); }

  void write_calculation(const Calculation& made) {
    const FormulaText& text = text_of(made.formula);
    out_.begin_object();
    out_.word("id", text.id);
    out_.text("title", text.title);
    put_detail("of", made.of);
    out_.text("formula", text.text);
    out_.begin_array("inputs");
    for (std::size_t i = 0; i < made.inputs.size(); ++i) {
      out_.begin_object();
      out_.word("symbol", text.symbols[i].name);
      out_.text("what", text.symbols[i].what);
      if (const auto* measure = std::get_if<Measure>(&made.inputs[i].value)) put_figure("value", *measure);
      write_had(made.inputs[i].worked_out, made.inputs[i].from, made.inputs[i].basis);
      out_.end_object();
    }
    out_.end_array();
    put_figure("result", made.result);
    if (made.limit) {
      out_.begin_object("limit");
      put_figure(made.limit->is_least ? "at_least" : "at_most", made.limit->value);
      write_had(made.limit->worked_out, made.limit->from, made.limit->basis);
      out_.end_object();
    }
    // A tie goes up, in whichever units it was worked out.
    if (const auto share = made.utilization()) out_.number("utilization", *share * (1 + 1e-9), 4);
    if (made.refused) out_.flag("refused", true);
    out_.end_object();
  }

  void write_calculations() {
    out_.begin_array("calculations");
    for (const Calculation& made : plan_.calculations) write_calculation(made);
    out_.end_array();
  }

  // Each once; there are a dozen to a plan.
  void remember(const Source* source) {
    if (std::find(sources_.begin(), sources_.end(), source) == sources_.end()) sources_.push_back(source);
  }

  // By their ids, of which each is a key.
  void write_sources() {
    std::stable_sort(sources_.begin(), sources_.end(), [](const Source* a, const Source* b) { return a->id < b->id; });
    out_.begin_object("sources");
    std::string_view last;
    for (const Source* const source : sources_) {
      if (source->id == last) continue;
      last = source->id;
      out_.begin_object_named(source->id);
      out_.text("title", source->title);
      put_text("where", source->where);
      put_text("note", source->note);
      out_.end_object();
    }
    out_.end_object();
  }

  io::JsonWriter out_;
  const Plan& plan_;
  UnitSystem system_;
  bool words_;
  std::vector<const Source*> sources_;  // named by anything written so far
};

}  // namespace

void append_plan_json(std::string& out, const Plan& plan, UnitSystem system, JsonStyle style, PlanScope scope) {
  PlanWriter(out, plan, system, style, scope).write();
  if (style == JsonStyle::pretty) out += '\n';
}

std::string plan_to_json(const Plan& plan, UnitSystem system, JsonStyle style) {
  std::string text;
  append_plan_json(text, plan, system, style);
  return text;
}

}  // namespace mainbore
