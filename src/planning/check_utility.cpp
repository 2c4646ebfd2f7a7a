// What no default asks, only a utility's own standard: mains that are left alone, seasons and cold, cover, what the
// service keeps clear of, sizes by dwellings.
#include <algorithm>
#include <array>
#include <cstdint>
#include <string_view>

#include "mainbore/rule_fields.hpp"
#include "planning/checks.hpp"
#include "planning/main_in_question.hpp"
#include "rules/dwelling_sizes.hpp"

namespace mainbore::planning {
namespace {

// Whether the rule is for this pipe is open while the class is, or the year: then it holds the job, and does not stop it.
void judge_not_tapped(const Context& context, const ResolvedMain& main, Said& said) {
  const TapLimits& rows = context.rules.main.not_tapped;
  if (rows.empty()) return;
  const rules::MainInQuestion question = main_in_question(context, main);
  for (const std::uint32_t place : rows.near(main.material, main.size)) {
    const TapLimit& row = rows[place];
    if (!row.covers(main.material, main.size)) continue;
    rules::AsksOf asks{};
    const rules::Match fits = rules::match_any(row, question, &asks);
    if (fits == rules::Match::no) continue;
    if (!row.consent.empty()) {
      said.findings.add(FindingCode::rules_consent, Severity::hold)
          .with(Detail(), name_of(main.material), Detail(), std::string_view(row.consent))
          .basis(row.basis);
      continue;
    }
    if (fits == rules::Match::yes) {
      said.findings.add(FindingCode::main_not_tapped, Severity::stop)
          .with(name_of(main.material), main.size, std::string_view(row.why))
          .basis(row.basis);
      return;
    }
    said.findings.add(FindingCode::main_perhaps_not_tapped, Severity::hold)
        .with(name_of(main.material), main.size, std::string_view(row.why),
              asks == rules::AsksOf::pipe_class ? Detail() : Detail(fact_that_settles(asks)))
        .basis(row.basis);
  }
}

std::optional<YearDay> day_of(std::string_view text) {
  const auto day = day_in(text);
  return day && day->exists() ? std::optional(YearDay{day->month, day->day}) : std::nullopt;
}

void judge_season(const Context& context, const ResolvedMain& main, Said& said) {
  if (context.rules.main.closed_season.empty()) return;
  const rules::MainInQuestion question = main_in_question(context, main);
  const auto day = day_of(context.job().date);
  for (const ClosedSeason& season : context.rules.main.closed_season) {
    if (!season.covers(main.material, main.size) || rules::match_any(season, question) == rules::Match::no) continue;
    if (day && !season.holds_on(*day)) continue;
    said.findings.add(day ? FindingCode::season_closed : FindingCode::season_date_unknown, Severity::hold)
        .with(std::string_view(season.from_text), std::string_view(season.to_text),
              season.why.empty() ? Detail() : Detail(std::string_view(season.why)))
        .basis(season.basis);
    return;
  }
}

void judge_cover(const Context& context, Said& said) {
  const auto& least = context.rules.place.least_cover;
  const auto& greatest = context.rules.place.greatest_cover;
  if (!least.value && !greatest.value) return;
  const auto cover = context.job().main.known_cover();
  const auto limits = [](FindingBuilder finding, const auto& rule, bool is_least) {
    if (is_least) finding.at_least(Measure(*rule.value, Kind::distance));
    else finding.at_most(Measure(*rule.value, Kind::distance));
    finding.basis(rule.basis);
  };
  if (!cover) {
    limits(said.findings.add(FindingCode::place_cover_unknown, Severity::hold), least.value ? least : greatest,
           least.value.has_value());
    return;
  }
  const bool shallow = least.value && over(*least.value, *cover);
  if (!shallow && !(greatest.value && over(*cover, *greatest.value))) return;
  auto finding = said.findings.add(FindingCode::place_cover, Severity::hold);
  finding.value(Measure(*cover, Kind::distance)).with(shallow ? std::string_view("less") : std::string_view("more"));
  limits(finding, shallow ? least : greatest, shallow);
}

void judge_smallest_tap(const Context& context, Said& said) {
  const auto& rule = context.rules.water.smallest_tap;
  if (!rule.value || context.asked() >= *rule.value) return;
  said.findings.add(FindingCode::service_tap_small, Severity::hold)
      .with(context.asked(), *rule.value)
      .basis(rule.basis);
}

void judge_air(const Context& context, Said& said) {
  const auto& coldest = context.rules.main.coldest_air;
  const auto& air = context.job().air_temperature;
  if (!coldest.value || (air && !over(coldest.value->fahrenheit(), air->fahrenheit()))) return;
  auto finding = said.findings.add(air ? FindingCode::main_air_cold : FindingCode::main_air_unknown, Severity::hold);
  if (air) finding.value(Measure(*air));
  finding.at_least(Measure(*coldest.value)).basis(coldest.basis);
}

void judge_line_cover(const Context& context, Said& said) {
  const auto& least = context.rules.line.least_cover;
  const auto& cover = context.job().service.line.cover;
  if (!least.value || (cover && !over(*least.value, *cover))) return;
  auto finding =
      said.findings.add(cover ? FindingCode::service_cover : FindingCode::service_cover_unknown, Severity::hold);
  if (cover) finding.value(Measure(*cover, Kind::distance));
  finding.at_least(Measure(*least.value, Kind::distance)).basis(least.basis);
}

// Gas, electric line, sewer: each with the fact that says how far the service stays from it.
struct KeptFrom {
  NearbyThing what;
  Rule<std::optional<Length>> LineRules::*least;
  Rule<Length> LineRules::*usual;
  std::optional<Length> LineFacts::*way;
  std::string_view path;
};
constexpr std::array kept_from = {
    KeptFrom{NearbyThing::gas_line, &LineRules::from_gas, &LineRules::usual_from_gas, &LineFacts::gas,
             "service.line.gas"},
    KeptFrom{NearbyThing::electric_line, &LineRules::from_electric, &LineRules::usual_from_electric,
             &LineFacts::electric, "service.line.electric"},
    KeptFrom{NearbyThing::sewer, &LineRules::from_sewer, &LineRules::usual_from_sewer, &LineFacts::sewer,
             "service.line.sewer"},
};

// Codes except what no order says, such as the pipe of the sewer: no more than a caution.
void close_to(const Rule<Length>& usual, const KeptFrom& one, const std::optional<Length>& way, Said& said) {
  if (!way || !over(usual.value, *way)) return;
  said.findings.add(FindingCode::service_line_close, Severity::caution)
      .value(Measure(*way, Kind::distance))
      .at_least(Measure(usual.value, Kind::distance))
      .with(nearby_names[static_cast<std::size_t>(one.what)])
      .basis(usual.basis);
}

void judge_lines_near(const Context& context, Said& said) {
  for (const KeptFrom& one : kept_from) {
    const auto& least = context.rules.line.*one.least;
    const auto& way = context.job().service.line.*one.way;
    if (!least.value) {
      close_to(context.rules.line.*one.usual, one, way, said);
      continue;
    }
    if (way && !over(*least.value, *way)) continue;
    auto finding = said.findings.add(way ? FindingCode::service_line_near : FindingCode::service_line_near_unknown,
                                     Severity::hold);
    if (way) finding.value(Measure(*way, Kind::distance));
    finding.at_least(Measure(*least.value, Kind::distance))
        .with(nearby_names[static_cast<std::size_t>(one.what)], one.path)
        .basis(least.basis);
  }
}

void judge_dwellings(const Context& context, Said& said) {
  const auto& rows = context.rules.water.by_dwellings;
  if (rows.empty()) return;
  const ServiceFacts& service = context.job().service;
  if (!service.dwellings) {
    said.findings.add(FindingCode::service_dwellings_unknown, Severity::hold).basis(rows.front().basis);
    return;
  }
  const auto sizes = rules::least_sizes(context.rules.water, *service.dwellings);
  if (!sizes) {
    said.findings.add(FindingCode::service_dwellings_unlisted, Severity::hold)
        .with(*service.dwellings)
        .basis(rows.back().basis);
    return;
  }
  const auto judge = [&](std::string_view what, const rules::LeastSize& least, std::optional<NominalSize> stated) {
    if (!least.size || (stated && *stated >= *least.size)) return;
    said.findings.add(FindingCode::service_dwellings_size, Severity::hold)
        .with(what, *least.size, stated ? Detail(*stated) : Detail(), *service.dwellings)
        .basis(*least.basis);
  };
  judge("tap", sizes->tap, context.asked());
  judge("service line", sizes->line, service.line.size.value_or(context.asked()));
  judge("meter", sizes->meter, service.meter);
}

void judge_premises(const Context& context, Said& said) {
  const auto& most = context.rules.water.most_premises;
  const auto& premises = context.job().service.premises;
  if (!most.value || (premises && !over(static_cast<double>(*premises), *most.value))) return;
  auto finding = said.findings.add(premises ? FindingCode::service_premises : FindingCode::service_premises_unknown,
                                   Severity::hold);
  if (premises) finding.value(Measure(*premises, Kind::ratio));
  finding.at_most(Measure(*most.value, Kind::ratio)).basis(most.basis);
}

// A row bears on the pipes it is looser for, and on taps larger than usual.
bool row_bears_on(const Plan& plan, const LooserRule& rule) {
  if (plan.method.limit != rule.row || rule.material != plan.main.material) return false;
  const auto* const usual = std::get_if<NominalSize>(&rule.usual);
  if (usual != nullptr && plan.method.tap <= *usual) return false;
  const auto& pipes = plan.main.candidates;
  if (pipes.empty()) return plan.main.size >= *rule.main_from && plan.main.size <= *rule.main_to;
  return std::any_of(pipes.begin(), pipes.end(), [&](const Pipe* pipe) {
    return std::find(rule.pipes.begin(), rule.pipes.end(), pipe) != rule.pipes.end();
  });
}

bool clearance_bears_on(const Plan& plan, std::string_view path) {
  // The distance to a joint is a stop number of every plan, and a joint may be a bell or a plain end.
  if (!plan.job.nearby || path == clearance_path(NearbyThing::joint)) return true;
  const bool of_a_joint = path == clearance_path(NearbyThing::bell) || path == clearance_path(NearbyThing::plain_end);
  return std::any_of(plan.job.nearby->begin(), plan.job.nearby->end(), [&](const Nearby& thing) {
    return clearance_path(thing.what) == path || (of_a_joint && thing.what == NearbyThing::joint);
  });
}

// Whether a plan counts on a rule. In doubt it does: what is told needlessly does no harm.
bool bears_on(const Plan& plan, const LooserRule& rule) {
  const Method kind = plan.method.kind;
  const Job& job = plan.job;
  const std::string_view path = rule.path;
  const auto within = [&](std::string_view group) { return path.starts_with(group); };
  if (kind == Method::none) return false;
  if (rule.row != nullptr) return row_bears_on(plan, rule);
  if (within(clearances_path)) return clearance_bears_on(plan, path);
  if (within("pit."))
    return plan.excavation.has_value() || job.main.known_cover();  // its depth is judged by the cover alone
  if (within("cleaning.")) return plan.cleaning.has_value();
  if (path == "water.system_least") return true;
  if (within("water.")) return plan.service.has_value();
  if (within("direct.plastic") || within("machine.oval") || within("machine.chain_bearing") ||
      within("pressure.plastic")) {
    return is_plastic(plan.main.material);
  }
  if (within("direct.")) return kind == Method::direct;
  if (path == "saddle.hole_ratio") return kind == Method::saddle;
  if (path == "sleeve.hole_ratio") return kind == Method::sleeve;
  if (path == "pressure.stop_rating") return kind != Method::sleeve && !job.service.stop_rating;
  if (path == "pressure.saddle_rating") return kind != Method::direct && !job.service.saddle_rating;
  if (path == "pressure.surge_assumed") return !job.main.surge;
  if (path == "pressure.iron_surge_allowance") return is_iron(plan.main.material);
  if (path == "pressure.asbestos_cement_surge_allowance") return plan.main.material == Material::asbestos_cement;
  if (path == "pressure.polyethylene_recurring_surge_factor") {
    const auto& tubing = job.service.line.material;
    return plan.main.material == Material::polyethylene || tubing == Tubing::polyethylene || tubing == Tubing::pex;
  }
  return true;
}

}  // namespace

void check_utility(const Context& context, const ResolvedMain& main, Said& said) {
  judge_not_tapped(context, main, said);
  judge_season(context, main, said);
  judge_cover(context, said);
  judge_smallest_tap(context, said);
  judge_air(context, said);
  judge_line_cover(context, said);
  judge_lines_near(context, said);
  judge_dwellings(context, said);
  judge_premises(context, said);
}

void tell_looser_rules(const Rules& rules, const Plan& plan, Said& said) {
  for (const LooserRule& rule : rules.looser) {
    if (!bears_on(plan, rule)) continue;
    const std::string_view none = "none";
    const bool nothing = std::holds_alternative<std::monostate>(rule.usual);
    said.findings.add(FindingCode::rules_looser, Severity::note)
        .with(rule.path, rule.set, nothing ? Detail(none) : rule.usual,
              rule.basis.reason == nullptr ? Detail() : Detail(std::string_view(*rule.basis.reason)))
        .basis(rule.basis);
  }
}

}  // namespace mainbore::planning
