// The load list: what the steps use, described for this plan. A step says what it uses; nothing comes on the list
// otherwise. Its words stand in words/load.hpp.
#include <algorithm>
#include <array>
#include <cmath>

#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"
#include "words/load.hpp"
#include "words/terms.hpp"
#include "work/aboard.hpp"
#include "work/words_at_hand.hpp"

namespace mainbore {
namespace {

using words::LoadWord;

class LoadList {
 public:
  LoadList(const Plan& plan, Audience audience) : plan_(plan), audience_(audience) {}

  std::vector<LoadItem> all(std::span<const Step> procedure, std::span<const Step> contingencies) && {
    if (plan_.verdict == Verdict::no_go || plan_.method.kind == Method::none) return {};
    for (const auto& steps : {procedure, contingencies}) {
      for (const Step& step : steps) use(step);
    }
    list_.reserve(40);
    group_ = LoadGroup::fit;
    fittings();
    consumables();
    group_ = LoadGroup::machine;
    machine();
    group_ = LoadGroup::measure;
    measuring();
    group_ = LoadGroup::keep_safe;
    for_the_material();
    in_case();
    for (const ApprovedItem* item : plan_.method.fittings) approved(*item);
    if (plan_.from_settings.aboard != nullptr) work::count_aboard(plan_, *plan_.from_settings.aboard, audience_, list_);
    return std::move(list_);
  }

 private:
  void use(const Step& step) {
    for (const std::string_view thing : step.uses) {
      if (!uses(thing)) used_.push_back(thing);
    }
  }
  [[nodiscard]] bool uses(std::string_view key) const {
    return std::find(used_.begin(), used_.end(), key) != used_.end();
  }
  void add(std::string_view key, Words item, std::string size, int quantity, Words check = {}) {
    if (!uses(key)) return;
    list_.push_back({key, std::move(item), std::move(size), quantity, std::move(check), {}, group_});
  }
  // What the approved list has for a thing.
  void approved(const ApprovedItem& chosen) {
    constexpr std::array<std::string_view, approved_kind_count> keys = {
        "service-saddle",         "corporation-stop", "tapping-sleeve", "shell-cutter",
        "combined-drill-and-tap", "machine-saddle",   "chain"};
    const std::string_view key = keys[static_cast<std::size_t>(chosen.kind)];
    for (LoadItem& item : list_) {
      if (item.key != key) continue;
      item.stock = chosen.stock;
      item.check =
          said(LoadWord::approved, {{"named", approved_in_words(chosen, audience_)}}) + std::string(item.check);
    }
  }
  void add(std::string_view key, LoadWord item, std::string size = {}) { add(key, said(item), std::move(size), 1); }
  void add(std::string_view key, LoadWord item, std::string size, LoadWord check) {
    add(key, said(item), std::move(size), 1, said(check));
  }
  [[nodiscard]] Words said(LoadWord word) const { return Words::standing(say(word, audience_.language)); }
  [[nodiscard]] std::string said(LoadWord word, std::initializer_list<words::Figure> figures) const {
    return say(word, audience_.language, figures);
  }
  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, audience_); }
  [[nodiscard]] static std::string name(NominalSize size) { return size.label() + " in"; }
  [[nodiscard]] std::string tap() const { return name(plan_.method.tap); }
  [[nodiscard]] std::string thread() const {
    return std::string(plan_.method.thread ? name_of(*plan_.method.thread)
                                           : say(LoadWord::by_machine, audience_.language));
  }
  [[nodiscard]] bool wet() const { return plan_.job.main.is_pressurized(); }

  // The diameter anything that seats on the pipe must suit: measured, or all that it may still turn out to be.
  [[nodiscard]] std::string seat() const {
    const ResolvedMain& main = plan_.main;
    const bool measured = plan_.job.main.od || plan_.job.main.circumference;
    if (!measured && main.od_low && main.od_high && *main.od_low < *main.od_high) {
      return said(LoadWord::od_between,
                  {{"low", on_caliper(*main.od_low, audience_)}, {"high", on_caliper(*main.od_high, audience_)}});
    }
    return main.od ? said(LoadWord::od, {{"od", on_caliper(*main.od, audience_)}}) : said(LoadWord::od_unknown, {});
  }
  // What fits round the main, with an outlet or without.
  [[nodiscard]] std::string on_main(const std::string& outlet) const {
    return said(LoadWord::on_main, {{"main", name(plan_.main.size)}, {"seat", seat()}, {"tap", outlet}});
  }

  void fittings() {
    const int count = plan_.method.count;
    const std::string rated = said(LoadWord::rated, {{"pressure", pressure_in_words(rating_needed())}});
    switch (plan_.method.kind) {
      case Method::direct:
        add("corporation-stop", stop(LoadWord::stop), tap(), count, said(LoadWord::stop_check, {{"rated", rated}}));
        break;
      case Method::saddle:
        add("service-saddle", said(saddle(), {{"marked", marked(usual_saddle())}}), on_main(tap()), count,
            said(LoadWord::saddle_check, {{"asked", as_asked()}, {"rated", rated}}));
        add("corporation-stop", stop(LoadWord::stop_bore), tap(), count,
            said(LoadWord::stop_bore_check, {{"rated", rated}}));
        break;
      case Method::sleeve:
        add("tapping-sleeve", said(LoadWord::sleeve), on_main(tap()), count,
            said(LoadWord::sleeve_check, {{"asked", as_asked()}, {"rated", rated}}));
        add("tapping-valve", said(LoadWord::valve), tap(), count, said(LoadWord::valve_check, {{"rated", rated}}));
        break;
      case Method::none:
        break;
    }
    const bool branch = plan_.method.kind == Method::sleeve;
    add("support", LoadWord::support, "", branch ? LoadWord::support_sleeve : LoadWord::support_stop);
    const std::string service = name(plan_.job.service.size.value_or(plan_.method.tap));
    if (count > 1) {
      add("branch-fittings", said(LoadWord::branch_fittings, {{"count", std::to_string(count)}, {"tap", tap()}}),
          service, 1, said(LoadWord::branch_fittings_check));
    }
    add("service-pipe", said(branch ? LoadWord::branch_pipe : LoadWord::service_pipe), service, count,
        said(branch ? LoadWord::branch_pipe_check : LoadWord::service_pipe_check));
  }
  [[nodiscard]] std::string stop(LoadWord word) const {
    const std::string mark = marked(usual_stop());
    return said(word, {{"thread", thread()}, {"marked", mark}});
  }

  // What fittings are marked for unless more is asked for: on a list of many orders these are one item.
  [[nodiscard]] Pressure usual_stop() const {
    return plan_.rules == nullptr ? Pressure() : plan_.rules->pressure.stop_rating.value;
  }
  [[nodiscard]] Pressure usual_saddle() const {
    return plan_.rules == nullptr ? Pressure() : plan_.rules->pressure.saddle_rating.value;
  }
  [[nodiscard]] std::string marked(Pressure usual) const {
    const bool usual_is_enough = usual == Pressure() || rating_needed() <= usual;
    if (usual_is_enough) return {};
    return said(LoadWord::marked, {{"pressure", pressure_in_words(next_rating(rating_needed()))}});
  }
  // Fittings are made for steps of pressure (common practice): those that want nearly the same are one item.
  [[nodiscard]] static Pressure next_rating(Pressure needed) {
    constexpr double step = 25.0;
    return std::ceil(needed / (step * units::psi) - 1e-9) * step * units::psi;
  }

  // The utility's own words, where its rules have any on this fitting.
  [[nodiscard]] std::string as_asked() const {
    const FittingSpecification* asked = plan_.method.specification;
    return asked == nullptr ? std::string() : said(LoadWord::as_asked, {{"text", asked->text}});
  }

  [[nodiscard]] LoadWord saddle() const {
    if (plan_.main.material == Material::polyethylene) return LoadWord::saddle_polyethylene;
    return is_plastic(plan_.main.material) ? LoadWord::saddle_pvc : LoadWord::saddle;
  }

  void machine() {
    const Setup& setup = plan_.setup;
    std::string travel;
    std::string pressure;
    if (setup.travel_needed) travel = on_rule(*setup.travel_needed, audience_, Toward::more);
    if (plan_.pressure.line > Pressure() && wet()) pressure = pressure_in_words(most_pressure());
    const bool own = setup.machine != nullptr && setup.machine->maker_figures && plan_.method.kind != Method::sleeve;
    const std::string title = own ? setup.machine->title : std::string();
    // The feed apart: one machine of the yard may be fed by hand for one order and powered for the next.
    add("tapping-machine", said(LoadWord::machine, {{"title", title}}), tap(), 1,
        said(LoadWord::machine_check, {{"travel", travel}, {"pressure", pressure}}));
    add("powered-feed", LoadWord::powered_feed);
    switch (plan_.method.kind) {
      case Method::direct:
        machine_on_pipe();
        break;
      case Method::saddle:
        add("shell-cutter", said(LoadWord::cutter), said(LoadWord::for_stop, {{"tap", tap()}}), 1,
            said(LoadWord::cutter_check));
        add("test-pump", LoadWord::pump_saddle);
        add("stop-adapter", LoadWord::stop_adapter, tap(), LoadWord::stop_adapter_check);
        break;
      case Method::sleeve:
        add("shell-cutter", said(LoadWord::cutter_pilot), said(LoadWord::outlet, {{"tap", tap()}}), 1,
            said(LoadWord::cutter_pilot_check));
        add("test-pump", LoadWord::pump_sleeve);
        add("valve-adapter", LoadWord::valve_adapter, tap(), LoadWord::valve_adapter_check);
        break;
      case Method::none:
        break;
    }
    std::string usual;
    std::string high;
    if (plan_.method.kind == Method::direct && setup.clamp && setup.clamp->stud_torque) {
      usual = show(setup.clamp->stud_torque->usual);
      high = show(setup.clamp->stud_torque->high);
    }
    add("torque-wrench", said(LoadWord::torque_wrench), "", 1,
        said(LoadWord::torque_wrench_check, {{"usual", usual}, {"high", high}}));
    add("wrenches", LoadWord::wrenches, "", LoadWord::wrenches_check);
  }

  void machine_on_pipe() {
    const Setup& setup = plan_.setup;
    const std::string od =
        setup.saddle_od ? said(LoadWord::od, {{"od", on_caliper(*setup.saddle_od, audience_)}}) : seat();
    add("machine-saddle", LoadWord::machine_saddle, od, LoadWord::machine_saddle_check);
    add("machine-gasket", said(LoadWord::gaskets), "", plan_.method.count, said(LoadWord::gaskets_check));
    add("spare-gasket", LoadWord::spare_gaskets, "", LoadWord::spare_gaskets_check);
    const std::string length = setup.chain ? on_rule(setup.chain->needed, audience_, Toward::more) : std::string();
    add("chain", said(LoadWord::chain), "", 1, said(LoadWord::chain_check, {{"length", length}}));
    add("chain-extension", said(LoadWord::extension), "", setup.chain ? setup.chain->extensions : 0);
    add("insertion-tool", LoadWord::insertion_tool, tap(), LoadWord::insertion_tool_check);
    const bool plastic = is_plastic(plan_.main.material);
    add("combined-drill-and-tap", plastic ? LoadWord::cutter_and_tap : LoadWord::drill_and_tap, tap() + " " + thread(),
        LoadWord::tool_check);
    add("trial-piece", LoadWord::trial_piece, tap() + " " + thread(), LoadWord::trial_piece_check);
  }

  // The most that the plan lets the gauge show when tapping: whatever is loaded must reach it.
  [[nodiscard]] Pressure most_pressure() const {
    const StopNumber* line = plan_.stop_number(ReadingId::line_pressure);
    return line != nullptr && line->at_most ? line->at_most->as<Pressure>() : plan_.pressure.line;
  }
  [[nodiscard]] Pressure rating_needed() const { return std::max(plan_.pressure.line, most_pressure()); }
  // As printed: the stop number itself, where the line is not over it.
  [[nodiscard]] std::string pressure_in_words(Pressure pressure) const {
    const StopNumber* line = plan_.stop_number(ReadingId::line_pressure);
    return line != nullptr && pressure == most_pressure() ? bare_bounds(*line, audience_)
                                                          : on_gauge(pressure, audience_, Toward::more);
  }

  void measuring() {
    add("rule", LoadWord::rule);
    add("pressure-gauge", said(LoadWord::gauge), "", 1,
        said(LoadWord::gauge_check,
             {{"most", pressure_in_words(rating_needed())}, {"line", on_gauge(plan_.pressure.line, audience_)}}));
    add("diameter-tape", LoadWord::tape_measure);
    const std::string_view material =
        plan_.main.wall_least ? words::term(name_of(plan_.main.material), audience_.language) : std::string_view();
    add("wall-gauge", said(LoadWord::wall_gauge), "", 1, said(LoadWord::wall_gauge_check, {{"material", material}}));
    add("thermometer", LoadWord::thermometer);
  }

  void for_the_material() {
    add("scraper", LoadWord::scraper);
    add("bonding-jumper", LoadWord::jumper, "", LoadWord::jumper_check);
    add("blanket", LoadWord::blanket);
    add("asbestos-kit", LoadWord::asbestos, "", LoadWord::asbestos_check);
    add("encasement-tape", LoadWord::film_tape, "", LoadWord::film_tape_check);
  }

  void consumables() {
    const bool plastic = is_plastic(plan_.main.material);
    const bool plastic_thread = plan_.method.kind == Method::direct && plastic;
    add("thread-sealant", plastic_thread ? LoadWord::tape : LoadWord::sealant, "",
        plastic_thread ? LoadWord::tape_check : LoadWord::sealant_check);
    add("cutting-grease", LoadWord::grease, "", plastic ? LoadWord::grease_plastic_check : LoadWord::grease_check);
    add("disinfectant", LoadWord::disinfectant, "", LoadWord::disinfectant_check);
  }

  // What turns a bad moment into a nuisance.
  void in_case() {
    add("trench-shield", LoadWord::shield, "", LoadWord::shield_check);
    add("ladder", LoadWord::ladder, "", LoadWord::ladder_check);
    add("sump-pump", LoadWord::pump, "", LoadWord::pump_check);
    add("valve-key", LoadWord::valve_key, "", LoadWord::valve_key_check);
    add("lock-and-tag", LoadWord::locks, "", LoadWord::locks_check);
    add("waste-hose", LoadWord::hose, "", LoadWord::hose_check);
    add("bucket", LoadWord::bucket, audience_.units == UnitSystem::us ? "5 gal" : "20 L", LoadWord::bucket_check);
    add("repair-clamp", LoadWord::clamp, on_main({}), LoadWord::clamp_check);
    add("plug", said(LoadWord::plug, {{"thread", thread()}}), tap(), 1, said(LoadWord::plug_check));
  }

  const Plan& plan_;
  Audience audience_;
  LoadGroup group_ = LoadGroup::fit;
  BoundedList<std::string_view, load_item_keys.size()> used_;  // each once
  std::vector<LoadItem> list_;
};

}  // namespace

std::vector<LoadItem> work::load_list_of(const Plan& plan, Audience audience, std::span<const Step> procedure,
                                         std::span<const Step> contingencies) {
  return LoadList(plan, audience).all(procedure, contingencies);
}

std::vector<LoadItem> load_list(const Plan& plan, Audience audience) {
  return work::load_list_of(plan, audience, procedure(plan, audience), contingencies(plan, audience));
}

}  // namespace mainbore
