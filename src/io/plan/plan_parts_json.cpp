#include "io/plan/plan_parts_json.hpp"

namespace mainbore::io {
namespace {

constexpr double grams(Force weight) { return 453.59237 * (weight / units::lbf); }

// Quantities, of which many may be absent.
class Put {
 public:
  Put(JsonWriter& out, UnitSystem system) : out_(out), system_(system) {}

  void operator()(std::string_view key, Measure value) const { out_.quantity(key, value, system_); }
  void operator()(std::string_view key, NominalSize value) const { out_.size(key, value); }
  template <class T>
  void operator()(std::string_view key, const std::optional<T>& value) const {
    if (value) (*this)(key, *value);
  }
  void distance(std::string_view key, Length value) const { (*this)(key, Measure(value, Kind::distance)); }
  void ratio(std::string_view key, double value) const { out_.number(key, value, ratio_places); }

 private:
  JsonWriter& out_;
  UnitSystem system_;
};

void write_demand(JsonWriter& out, const DemandPlan& demand, const Put& put, const WriteBases& bases) {
  out.begin_object("demand");
  put("flow", Measure(demand.flow));
  put("domestic", Measure(demand.domestic));
  put("continuous", Measure(demand.continuous));
  put("sprinklers", Measure(demand.sprinklers));
  if (demand.code) out.word("code", name_of(*demand.code));
  if (demand.fixture_units) put.ratio("fixture_units", *demand.fixture_units);
  bases({&demand.basis, 1});
  out.end_object();
}

void write_friction(JsonWriter& out, const ServicePlan& service, const Put& put, const WriteBases& bases) {
  out.begin_object("friction");
  out.word("method", friction_method_names[static_cast<std::size_t>(service.method)]);
  if (service.method == FrictionMethod::hazen_williams) {
    put.ratio("c", service.c);
  } else {
    out.number("roughness_in", service.roughness / units::inch, 6);
    put("water", Measure(service.temperature));
  }
  bases({&service.friction_basis, 1});
  out.end_object();
}

void write_losses(JsonWriter& out, const ServicePlan& service, const Put& put) {
  out.begin_array("losses");
  for (const LossItem& item : service.losses) {
    out.begin_object();
    out.word("part", name_of(item.part));
    put("loss", Measure(item.loss));
    if (item.counted_as) put.distance("counted_as", *item.counted_as);
    put("left", Measure(item.left));
    out.end_object();
  }
  out.end_array();
  out.begin_array("profile");
  for (const ProfilePoint& point : service.profile) {
    out.begin_object();
    out.text("at", point.at);
    put.distance("along", point.along);
    put.distance("height", point.height);
    put("pressure", Measure(point.pressure));
    out.end_object();
  }
  out.end_array();
}

void write_swab(JsonWriter& out, const SwabMix& swab, const Put& put) {
  out.begin_object("swab");
  out.number("stock_percent", swab.stock.percent(), 2);
  out.flag("stock_assumed", swab.stock_assumed);
  out.number("strength_percent", swab.wanted.percent(), 2);
  put("finished", Measure(swab.finished));
  if (swab.liquid) {
    // The units on a jug; a gallon or a liter is too coarse.
    constexpr Volume fluid_ounce = units::gallon / 128.0;
    out.number("stock_fl_oz", swab.liquid->stock / fluid_ounce, 1);
    out.number("stock_ml", 1000.0 * (swab.liquid->stock / units::liter), 0);
    out.number("water_fl_oz", swab.liquid->water / fluid_ounce, 1);
    out.number("water_ml", 1000.0 * (swab.liquid->water / units::liter), 0);
    out.number("fl_oz_per_gal", swab.fluid_ounces_per_gallon(), 1);
    out.number("ml_per_l", swab.milliliters_per_liter(), 1);
  }
  if (swab.dry) {
    out.number("product_oz", 16.0 * (*swab.dry / units::lbf), 2);
    out.number("product_g", grams(*swab.dry), 1);
  }
  out.end_object();
}

void write_flushing(JsonWriter& out, std::string_view key, const sanitary::Flushing& flushing, const Put& put) {
  out.begin_object(key);
  put("flow", Measure(flushing.flow));
  put("time", Measure(flushing.time));
  out.end_object();
}

void write_agents(JsonWriter& out, const std::vector<AgentDose>& agents) {
  out.begin_array("dechlorination");
  for (const AgentDose& dose : agents) {
    out.begin_object();
    out.text("agent", dose.agent->name);
    out.number("ounces", 16.0 * (dose.weight / units::lbf), ratio_places);
    out.number("grams", grams(dose.weight), 1);
    out.end_object();
  }
  out.end_array();
}

void write_fills(JsonWriter& out, const std::vector<FillPlan>& fills, const Put& put) {
  if (fills.empty()) return;
  out.begin_array("fills");
  for (const FillPlan& fill : fills) {
    out.begin_object();
    put.ratio("mg_per_l", fill.dose->dose.mg_per_liter());
    out.number("chlorine_ounces", 16.0 * (fill.chlorine / units::lbf), ratio_places);
    out.begin_array("products");
    for (const FillProduct& product : fill.products) {
      out.begin_object();
      out.text("product", product.name);
      put.ratio("percent", product.strength.percent());
      if (product.weight) {
        out.number("ounces", 16.0 * (*product.weight / units::lbf), ratio_places);
        out.number("grams", grams(*product.weight), 1);
      }
      if (product.volume) {
        out.number("fluid_ounces", 128.0 * (*product.volume / units::gallon), ratio_places);
        out.number("millilitres", 1000.0 * (*product.volume / units::liter), 1);
      }
      out.end_object();
    }
    out.end_array();
    write_agents(out, fill.agents);
    out.end_object();
  }
  out.end_array();
}

}  // namespace

void write_open_hole(JsonWriter& out, const OpenHole& hole, UnitSystem system) {
  const Put put(out, system);
  out.begin_object("open_hole");
  put("bore", Measure(hole.bore));
  put("flow", Measure(hole.flow));
  put("push", Measure(hole.push));
  put("jet", Measure(hole.jet));
  out.end_object();
}

void write_service(JsonWriter& out, const ServicePlan& service, UnitSystem system, const WriteBases& bases) {
  const Put put(out, system);
  out.begin_object("service");
  write_demand(out, service.demand, put, bases);
  put("supply", Measure(service.supply));
  out.begin_object("line");
  out.word("material", name_of(service.tube->tubing));
  put("size", service.tube->size);
  put("bore", Measure(service.tube->bore));
  put.distance("length", service.length);
  put.distance("rise", service.rise);
  const Basis* const tube_basis = &service.tube->basis;
  bases({&tube_basis, 1});
  out.end_object();
  out.whole("taps", service.taps);
  put("tap", service.tap);
  write_friction(out, service, put, bases);
  if (service.meter != nullptr) {
    out.begin_object("meter");
    put("size", service.meter->size);
    put("safe_maximum", Measure(service.meter->safe_maximum));
    out.flag("assumed", service.meter_assumed);
    const Basis* const meter_basis = &service.meter->basis;
    bases({&meter_basis, 1});
    out.end_object();
  }
  write_losses(out, service, put);
  put("residual", Measure(service.residual));
  put("residual_least", Measure(service.residual_least));
  put("residual_wanted", Measure(service.residual_wanted));
  put("available", Measure(service.available.flow));
  put("velocity", Measure(service.velocity));
  out.begin_object("smallest");
  put("tap", service.smallest_tap);
  put("line", service.smallest_line);
  put("meter", service.smallest_meter);
  out.end_object();
  out.begin_array("equal_taps");
  for (const EqualTaps& taps : service.equal_taps) {
    out.begin_object();
    put("size", taps.size);
    put.ratio("by_velocity", taps.by_velocity);
    put.ratio("by_rule", taps.by_rule);
    put.ratio("by_runs", taps.by_runs);
    out.end_object();
  }
  out.end_array();
  out.end_object();
}

void write_cleaning(JsonWriter& out, const CleaningPlan& cleaning, UnitSystem system, const WriteBases& bases) {
  const Put put(out, system);
  out.begin_object("sanitary");
  write_swab(out, cleaning.swab, put);
  if (const auto& flush = cleaning.flush) {
    out.begin_object("flush");
    write_flushing(out, "full", flush->full, put);
    write_flushing(out, "least", flush->least, put);
    put("available", Measure(flush->available));
    put.ratio("changes", flush->changes);
    put("line_holds", Measure(flush->full.line_volume));
    put("discharged", Measure(flush->full.discharged));
    put.ratio("chlorine_mg_per_l", flush->chlorine.mg_per_liter());
    write_agents(out, flush->agents);
    out.end_object();
  }
  out.flag("as_main", cleaning.as_main);
  if (cleaning.as_main) {
    out.begin_array("doses");
    for (const ChlorineDose* dose : cleaning.doses) {
      out.begin_object();
      out.text("method", dose->method);
      put.ratio("mg_per_l", dose->dose.mg_per_liter());
      put("hold", Measure(dose->hold, Kind::time_span));
      if (dose->hold_most) put("hold_most", Measure(*dose->hold_most, Kind::time_span));
      put.ratio("left_mg_per_l", dose->residual.mg_per_liter());
      const Basis* const basis = &dose->basis;
      bases({&basis, 1});
      out.end_object();
    }
    out.end_array();
    write_fills(out, cleaning.fills, put);
  }
  out.end_object();
}

void write_pit(JsonWriter& out, const PitPlan& pit, UnitSystem system) {
  const Put put(out, system);
  constexpr std::array<std::string_view, 3> systems = {"not required", "needs finding", "required"};
  out.begin_object("excavation");
  put.distance("depth", pit.pit.depth);
  put.distance("cover", pit.cover);
  out.begin_object("bottom");
  put.distance("along", pit.pit.along);
  put.distance("across", pit.pit.across);
  put.distance("far_side", pit.main_to_far_wall);
  out.end_object();
  out.begin_object("top");
  put.distance("along", pit.top.along);
  put.distance("across", pit.top.across);
  out.end_object();
  out.begin_object("soil");
  out.word("type", name_of(pit.soil.type));
  out.begin_array("because");
  for (const excavation::SoilReason reason : pit.soil.reasons) out.word({}, name_of(reason));
  out.end_array();
  out.end_object();
  out.word("protective_system", systems[static_cast<std::size_t>(pit.protective_system)]);
  if (pit.protection) out.word("protection", protection_names[static_cast<std::size_t>(*pit.protection)]);
  put.ratio("slope", pit.pit.slope);
  if (pit.slope) {
    put.ratio("steepest_slope", pit.slope->run);
    out.flag("short_term", pit.slope->short_term);
  }
  if (pit.upright_lower) {
    out.begin_object("upright_lower");
    put.distance("height", pit.upright_lower->height);
    put.ratio("slope_above", pit.upright_lower->slope_above);
    out.end_object();
  }
  if (pit.benches) {
    out.begin_object("benches");
    put.distance("first", pit.benches->first);
    put.distance("later", pit.benches->later);
    out.end_object();
  }
  put("bank", Measure(pit.bank, Kind::earth));
  if (pit.bank_otherwise) put("bank_otherwise", Measure(*pit.bank_otherwise, Kind::earth));
  put("loose", Measure(pit.loose, Kind::earth));
  put("weight", Measure(pit.weight));
  out.begin_object("spoil");
  put.distance("height", pit.spoil.height);
  put.distance("base", pit.spoil.base);
  put.distance("setback", pit.setback);
  put.distance("occupied", pit.occupied);
  out.end_object();
  out.begin_object("way_out");
  out.flag("required", pit.ladder);
  out.whole("ladders", pit.ladders);
  put.distance("ladder_length", pit.ladder_length);
  put.distance("travel", pit.egress_travel);
  out.end_object();
  out.flag("atmosphere_test", pit.atmosphere_test);
  out.flag("engineer_design", pit.engineer_design);
  out.flag("guardrail", pit.guardrail);
  if (pit.tapers) {
    out.begin_object("tapers");
    put.distance("merging", pit.tapers->merging);
    put.distance("shifting", pit.tapers->shifting);
    put.distance("shoulder", pit.tapers->shoulder);
    out.end_object();
  }
  out.begin_object("locate");
  put.ratio("notice_working_days", pit.notice_days);
  put("zone_half_width", Measure(pit.zone_half_width));
  out.text("own_mark", pit.own_mark);
  out.text("stop_mark", pit.stop_mark);
  out.end_object();
  put.distance("hanging", pit.hanging);
  out.flag("joint_hangs", pit.joint_hangs);
  if (pit.fill) put("fill", Measure(*pit.fill));
  out.end_object();
}

void write_not_checked(JsonWriter& out, const Plan& plan) {
  out.begin_array("not_checked");
  for (const NotChecked& part : not_checked(plan)) {
    out.begin_object();
    out.text("what", part.what);
    out.text("give", part.give);
    out.end_object();
  }
  out.end_array();
}

}  // namespace mainbore::io
