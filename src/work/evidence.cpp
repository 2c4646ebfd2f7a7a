#include "mainbore/evidence.hpp"

#include <algorithm>
#include <utility>

#include "mainbore/wording.hpp"

namespace mainbore {
namespace {

bool same(const Evidence& a, const Evidence& b) {
  return a.what == b.what && a.finding == b.finding && a.basis.source == b.basis.source && a.basis.how == b.basis.how &&
         a.basis.utility == b.basis.utility && a.basis.reference == b.basis.reference;
}

class EvidenceList {
 public:
  explicit EvidenceList(const Plan& plan) : plan_(plan) {}

  std::vector<Evidence> all() && {
    list_.reserve(48);
    the_pipe();
    the_tap();
    the_pressures();
    the_readings();
    the_service();
    the_cleaning();
    the_pit();
    for (const Finding& finding : plan_.findings) {
      for (const Basis* basis : finding.basis) {
        if (basis != nullptr) put({{}, finding.code, {}, from_of(*basis, From::table), *basis});
      }
    }
    return std::move(list_);
  }

 private:
  [[nodiscard]] static From from_of(const Basis& basis, From otherwise) {
    if (basis.how == How::stated || basis.how == How::stated_in_settings) return From::given;
    return basis.rule ? From::rule : otherwise;
  }
  void put(Evidence item) {
    const bool known = std::any_of(list_.begin(), list_.end(), [&](const Evidence& other) { return same(item, other); });
    if (!known) list_.push_back(std::move(item));
  }
  void add(std::string_view what, const Basis* basis, Detail value = {}, From otherwise = From::table) {
    if (basis != nullptr) put({what, {}, value, from_of(*basis, otherwise), *basis});
  }
  template <class T>
  void add_rule(std::string_view what, const Rule<T>& rule) {
    put({what, {}, {}, from_of(rule.basis, From::rule), rule.basis});
  }
  // A row may be weaker than the table it stands in.
  void add_column(std::string_view what, const Pipe& pipe, PipeColumn column, Detail value) {
    Basis basis = pipe.series->basis_of(column);
    basis.how = pipe.how_of(column);
    put({what, {}, value, From::table, basis});
  }
  [[nodiscard]] bool taps() const { return plan_.method.kind != Method::none; }
  [[nodiscard]] bool measured() const { return plan_.job.main.od || plan_.job.main.circumference; }

  void the_pipe() {
    const ResolvedMain& main = plan_.main;
    if (const Pipe* pipe = main.governing; pipe != nullptr && pipe->series != nullptr) {
      if (pipe->od) add_column("pipe diameter", *pipe, PipeColumn::od, Measure(*pipe->od));
      if (pipe->wall) add_column("pipe wall", *pipe, PipeColumn::wall, Measure(*pipe->wall));
      if (pipe->rating) add_column("pipe rating", *pipe, PipeColumn::rating, Measure(*pipe->rating));
      // How far the pipe may lie under and over its table decides what is counted on.
      if (pipe->od && pipe->od_minus > Length()) add_column("diameter tolerance", *pipe, PipeColumn::od_minus, Measure(pipe->od_minus));
      if (pipe->od && pipe->od_plus > Length()) add_column("diameter tolerance", *pipe, PipeColumn::od_plus, Measure(pipe->od_plus));
      if (pipe->wall && pipe->wall_minus > Length()) add_column("wall tolerance", *pipe, PipeColumn::wall_minus, Measure(pipe->wall_minus));
    }
    if (main.rating) add("pipe rating", main.rating_basis, Measure(*main.rating));
    const Rules* const rules = plan_.rules;
    if (rules == nullptr) return;
    if (plan_.job.main.od) measure("diameter by calliper", *main.od, rules->od_uncertainty);
    else if (measured()) measure("diameter by tape", *main.od, rules->circumference_uncertainty);
    if (main.wall_basis == WallBasis::measured && main.wall_nominal) measure("wall by gauge", *main.wall_nominal, rules->wall_uncertainty);
  }
  void measure(std::string_view what, Length value, const Rule<Length>& error) {
    put({what, {}, Measure(value), From::measured, error.basis});
  }

  void the_tap() {
    if (plan_.catalog != nullptr && plan_.method.thread) {
      const TapThread* const thread = plan_.catalog->thread(*plan_.method.thread, plan_.method.tap);
      if (thread != nullptr) add("thread", &thread->basis, name_of(*plan_.method.thread));
    }
    if (plan_.method.limit != nullptr) add("largest tap", &plan_.method.limit->basis, plan_.method.limit->largest, From::rule);
    if (plan_.method.specification != nullptr) add("fitting asked for", &plan_.method.specification->basis, {}, From::rule);
    if (const Rules* rules = plan_.rules) {
      if (plan_.engagement) add_rule("threads required", rules->required_threads);
      if (plan_.makeup) {
        add_rule("wrench turns", rules->wrench_turns);
        add_rule("threads showing", rules->threads_showing);
      }
    }
  }

  void the_pressures() {
    for (const PressureLimit& limit : plan_.pressure.limits) add(name_of(limit.link), limit.basis, Measure(limit.limit));
    if (plan_.setup.machine != nullptr && taps()) add("machine", &plan_.setup.machine->basis);
    if (plan_.rules != nullptr && plan_.pressure.surge && !plan_.job.main.surge) {
      put({"surge", {}, Measure(*plan_.pressure.surge), From::assumed, plan_.rules->surge_assumed.basis});
    }
  }

  // What bounds each stop number, where nothing above does.
  void the_readings() {
    const Rules* const rules = plan_.rules;
    if (rules == nullptr) return;
    if (plan_.reading(ReadingId::circumference) != nullptr) add_rule("error of a tape", rules->circumference_uncertainty);
    if (plan_.reading(ReadingId::wall) != nullptr) add_rule("error of a wall gauge", rules->wall_uncertainty);
    if (plan_.reading(ReadingId::pipe_temperature) != nullptr && is_plastic(plan_.main.material)) {
      const bool wet = plan_.job.main.pressurised.value_or(true);
      add_rule("temperature of plastic", wet ? rules->plastic_wet_tap_coldest : rules->plastic_dry_tap_coldest);
      add_rule("temperature of plastic", wet ? rules->plastic_wet_tap_warmest : rules->plastic_dry_tap_warmest);
    }
    if (plan_.reading(ReadingId::joint_distance) == nullptr) return;
    for (const Clearance& clearance : rules->clearances) {
      if (clearance.what == NearbyThing::joint) add_rule("distance to a joint", clearance.least);
    }
  }

  void the_service() {
    if (!plan_.service) return;
    add("demand", plan_.service->demand.basis);
    add("bore of the tubing", &plan_.service->tube->basis);
    add("friction", plan_.service->friction_basis);
    if (plan_.catalog != nullptr) add("stops and fittings", &plan_.catalog->service_tables().fittings_basis);
    if (plan_.service->meter != nullptr) add("meter", &plan_.service->meter->basis);
  }

  void the_cleaning() {
    if (plan_.rules == nullptr || !plan_.cleaning) return;
    for (const ChlorineDose* dose : plan_.cleaning->doses) add("dose of chlorine", &dose->basis);
    add_rule("strength of the solution", plan_.rules->swab_percent);
    if (!plan_.cleaning->flush) return;
    add_rule("speed of the flush", plan_.rules->flush_velocity);
    add_rule("chlorine in the flush water", plan_.rules->flush_chlorine);
    if (plan_.catalog != nullptr) add("dechlorination", &plan_.catalog->service_tables().dechlorination_basis);
  }

  void the_pit() {
    const Rules* const rules = plan_.rules;
    if (rules == nullptr || !plan_.excavation) return;
    add_rule("slopes", rules->slope_type_c);
    add_rule("room in the pit", rules->room_along);
    add_rule("swell", rules->swell_earth);
    add_rule("tolerance zone", rules->tolerance_margin);
    add_rule("notice", rules->notice_days);
    if (plan_.excavation->upright_lower) add_rule("upright lower part", rules->vertical_lower);
    if (plan_.excavation->benches) add_rule("steps", rules->bench_first);
  }

  const Plan& plan_;
  std::vector<Evidence> list_;
};

}  // namespace

std::vector<Evidence> evidence_of(const Plan& plan) { return EvidenceList(plan).all(); }

std::string_view words_of(const Evidence& item) { return item.finding ? text_of(*item.finding).title : item.what; }

}  // namespace mainbore
