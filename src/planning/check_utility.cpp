// What no default asks, only a utility's own standard: mains that are left alone, seasons, cover, the smallest tap.
#include <algorithm>
#include <cstdint>
#include <string_view>

#include "mainbore/rule_fields.hpp"
#include "planning/checks.hpp"
#include "planning/main_in_question.hpp"

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
  // The distance to a joint is a stop number of every plan.
  if (!plan.job.nearby || path == clearance_path(NearbyThing::joint)) return true;
  return std::any_of(plan.job.nearby->begin(), plan.job.nearby->end(),
                     [&](const Nearby& thing) { return clearance_path(thing.what) == path; });
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
  if (within("pit.")) return plan.excavation.has_value();
  if (within("cleaning.")) return plan.cleaning.has_value();
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
