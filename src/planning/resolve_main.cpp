#include <algorithm>
#include <array>
#include <functional>
#include <iterator>
#include <numbers>
#include <string>

#include "mainbore/mechanics/rating.hpp"
#include "planning/checks.hpp"
#include "planning/instrument.hpp"

namespace mainbore::planning {
namespace {

constexpr double pi = std::numbers::pi;

std::string squeezed(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c >= 'A' && c <= 'Z') {
      out += static_cast<char>(c - 'A' + 'a');
    } else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
      out += c;
    }
  }
  return out;
}

// Does the job's text name this series' standard? "C900" is in "AWWA C900", "D2241" in "ASTM D2241"; a basis may be named
// in words ("iron pipe size", "IPS").
bool names_series(const std::string& wanted, const PipeSeries& series) {
  return squeezed(series.standard).find(wanted) != std::string::npos ||
         squeezed(series.basis).find(wanted) != std::string::npos || squeezed(series.id) == wanted;
}

// Whether a short text has a word in it, looked for without a call: it is asked of every series.
bool holds(std::string_view text, std::string_view word) {
  for (std::size_t at = 0; at + word.size() <= text.size(); ++at) {
    std::size_t same = 0;
    while (same < word.size() && text[at + same] == word[same]) ++same;
    if (same == word.size()) return true;
  }
  return false;
}

// The designation inside a class as written: "C900 DR 18" holds "c900".
bool class_names_series(std::string_view class_text, const PipeSeries& series) {
  return std::any_of(series.designations.begin(), series.designations.end(),
                     [&](const std::string& designation) { return holds(class_text, designation); });
}

// Keys of one length differ in the middle or at the end ("pc250" and "pc350", "cl51" and "cl52"): few need a call.
bool is_class_key(std::string_view key, std::string_view wanted) {
  return key.size() == wanted.size() && key[key.size() / 2] == wanted[key.size() / 2] && key.back() == wanted.back() &&
         key == wanted;
}

// Keeps the pipes that satisfy `fits`; when none does, keeps all and returns false.
template <class Predicate>
bool narrow(std::vector<const Pipe*>& pipes, Predicate fits) {
  const auto first = std::find_if(pipes.begin(), pipes.end(), fits);
  if (first == pipes.end()) return pipes.empty();
  pipes.erase(std::remove_if(std::next(first), pipes.end(), std::not_fn(fits)), pipes.end());
  pipes.erase(pipes.begin(), first);
  return true;
}

// The same by what is asked of their series, once a series: its pipes stand together.
template <class Predicate>
bool narrow_by_series(std::vector<const Pipe*>& pipes, Predicate fits) {
  const PipeSeries* asked = nullptr;
  bool answer = false;
  return narrow(pipes, [&](const Pipe* pipe) {
    if (pipe->series != asked) {
      asked = pipe->series;
      answer = fits(*asked);
    }
    return answer;
  });
}

bool laid_in(const PipeSeries& series, int year) {
  return (!series.laid_from || year >= *series.laid_from) && (!series.laid_to || year <= *series.laid_to);
}

std::optional<Length> least_wall(const Pipe& pipe) {
  if (!pipe.wall) return std::nullopt;
  return *pipe.wall - pipe.wall_minus;
}

// The worst to plan for: least guaranteed wall, then the smaller pipe, in which a hole drops further, then the lower
// class. An unknown wall is worse than any known one.
bool worse(const Pipe* a, const Pipe* b) {
  const auto wall_a = least_wall(*a);
  const auto wall_b = least_wall(*b);
  if (wall_a.has_value() != wall_b.has_value()) return !wall_a;
  if (wall_a && *wall_a != *wall_b) return *wall_a < *wall_b;
  if (a->od && b->od && *a->od != *b->od) return *a->od < *b->od;
  return a->rating && b->rating && *a->rating < *b->rating;
}

void narrow_by_card(Context& context, std::vector<const Pipe*>& pipes) {
  const MainFacts& facts = context.job().main;
  bool class_made = true;
  if (!facts.standard.empty()) {
    const std::string wanted = squeezed(facts.standard);
    class_made = narrow_by_series(pipes, [&](const PipeSeries& series) { return names_series(wanted, series); });
  }
  if (!facts.class_name.empty()) {
    const std::string text = squeezed(facts.class_name);
    if (facts.standard.empty()) {
      narrow_by_series(pipes, [&](const PipeSeries& series) { return class_names_series(text, series); });
    }
    const std::string key = class_key(facts.class_name);
    // A class that only names the standard ("C900") says nothing more.
    if (!key.empty()) {
      class_made &= narrow(pipes, [&](const Pipe* pipe) {
        return std::any_of(pipe->class_keys.begin(), pipe->class_keys.end(),
                           [&](const std::string& known) { return is_class_key(known, key); });
      });
    }
  }
  if (!class_made && !pipes.empty()) {
    // First and last of each kind of class: the tables list one kind after the other.
    std::array<Detail, 4> listed;
    const PipeSeries* kind = nullptr;
    std::size_t at = 0;
    for (const Pipe* pipe : pipes) {
      if (pipe->series != kind) {
        at = kind == nullptr ? 0 : at + 2;
        if (at >= listed.size()) break;
        kind = pipe->series;
        listed[at] = std::string_view(pipe->class_name);
      } else {
        listed[at + 1] = std::string_view(pipe->class_name);
      }
    }
    context.common.add(FindingCode::main_class_not_made, Severity::hold)
        .with(listed[0], listed[1], listed[2], listed[3])
        .basis(pipes.front()->series->basis_of(PipeColumn::wall));
  }
}

void check_year(Context& context) {
  const auto& year = context.job().main.installed;
  const auto day = day_in(context.job().date);
  if (!year || !day || !day->exists() || *year <= day->year) return;
  context.common.add(FindingCode::main_not_yet_laid, Severity::hold).with(*year, day->year);
}

void narrow_by_year(Context& context, std::vector<const Pipe*>& pipes) {
  if (!context.job().main.installed || pipes.empty()) return;
  const int year = *context.job().main.installed;
  if (narrow_by_series(pipes, [&](const PipeSeries& series) { return laid_in(series, year); })) {
    const auto made = [&](const Pipe* pipe) { return !pipe->since_rerating || year >= *pipe->series->rerated; };
    if (narrow(pipes, made)) return;
    const Pipe& newer = *pipes.front();
    context.common.add(FindingCode::main_year_contradicts, Severity::hold)
        .with(std::string_view(newer.class_name), year, *newer.series->rerated)
        .basis(newer.series->earlier_basis);
    return;
  }
  // Name the series that comes nearest to having been laid then.
  const PipeSeries* nearest = pipes.front()->series;
  for (const Pipe* pipe : pipes) {
    const PipeSeries& series = *pipe->series;
    if (year < series.laid_from.value_or(year) && series.laid_from < nearest->laid_from) nearest = &series;
    if (year > series.laid_to.value_or(year) && series.laid_to > nearest->laid_to) nearest = &series;
  }
  context.common.add(FindingCode::main_year_contradicts, Severity::hold)
      .with(name_of(context.plan.main.material), year, nearest->laid_from ? Detail(*nearest->laid_from) : Detail(),
            nearest->laid_to ? Detail(*nearest->laid_to) : Detail())
      .basis(nearest->laid_basis);
}

struct MeasuredDiameter {
  Length value;
  Length uncertainty;
  const Basis* basis = nullptr;
};

std::optional<MeasuredDiameter> measured_diameter(Context& context) {
  const MainFacts& facts = context.job().main;
  const Rules& rules = context.rules;
  std::optional<MeasuredDiameter> by_tape;
  if (facts.circumference) {
    by_tape = {*facts.circumference / pi, rules.circumference_uncertainty.value / pi,
               &rules.circumference_uncertainty.basis};
  }
  if (!facts.od) return by_tape;
  const MeasuredDiameter by_calliper{*facts.od, rules.od_uncertainty.value, &rules.od_uncertainty.basis};
  if (by_tape && over(abs(by_calliper.value - by_tape->value), by_calliper.uncertainty + by_tape->uncertainty)) {
    context.common.add(FindingCode::main_readings_disagree, Severity::hold)
        .value(by_calliper.value)
        .at_most(by_tape->value)
        .basis(*by_calliper.basis, *by_tape->basis);
  }
  return by_calliper;
}

bool fits_diameter(const Pipe& pipe, const MeasuredDiameter& measured) {
  if (!pipe.od) return true;
  const DiameterRange readable = readable_diameter(pipe, measured.uncertainty);
  return !over(readable.low, measured.value) && !over(measured.value, readable.high);
}

// Where no diameter is tabulated, a reading must still be one that a pipe of this name can have: by its series, or else
// more than its nominal inches, and not half as much again (old small pit-cast pipe comes nearest to that).
void check_untabulated_diameter(Context& context, const std::vector<const Pipe*>& pipes, const MeasuredDiameter& measured) {
  if (std::any_of(pipes.begin(), pipes.end(), [](const Pipe* pipe) { return pipe->od.has_value(); })) return;
  Length least = context.plan.main.size.number() * units::inch;
  Length greatest = 1.5 * least + 1.0 * units::inch;
  const Basis* basis = measured.basis;
  if (!pipes.empty() && pipes.front()->plausible) {
    least = pipes.front()->plausible->od_from;
    greatest = pipes.front()->plausible->od_to;
    basis = &pipes.front()->series->plausible_basis;
  }
  const bool small = over(least, measured.value);
  if (!small && !over(measured.value, greatest)) return;
  context.common.add(FindingCode::main_od_contradicts, Severity::hold)
      .value(measured.value)
      .at_most(small ? least : greatest)
      .basis(*basis, *measured.basis);
}

void narrow_by_diameter(Context& context, std::vector<const Pipe*>& pipes, const MeasuredDiameter& measured) {
  check_untabulated_diameter(context, pipes, measured);
  if (pipes.empty() || narrow(pipes, [&](const Pipe* pipe) { return fits_diameter(*pipe, measured); })) return;
  const auto gap = [&](const Pipe* pipe) { return pipe->od ? abs(*pipe->od - measured.value).base() : 1e9; };
  const Pipe* nearest = *std::min_element(pipes.begin(), pipes.end(), [&](auto* a, auto* b) { return gap(a) < gap(b); });
  // The reading may be right and the card wrong: which other pipe of this nominal size reads so?
  Detail other;
  for (std::size_t m = 0; m < material_count && other.index() == 0; ++m) {
    for (const Pipe& pipe : context.catalog.pipes(static_cast<Material>(m), context.plan.main.size)) {
      if (pipe.od && fits_diameter(pipe, measured)) {
        other = std::string_view(pipe.series->title);
        break;
      }
    }
  }
  context.common.add(FindingCode::main_od_contradicts, Severity::hold)
      .value(measured.value)
      .at_most(*nearest->od)
      .with(std::string_view(nearest->class_name), other)
      .basis(nearest->series->basis_of(PipeColumn::od), *measured.basis);
}

// A wall tells little of the class, since pipe rusts and softens; but none grows thicker than it was made.
void narrow_by_wall(std::vector<const Pipe*>& pipes, Length measured) {
  narrow(pipes, [&](const Pipe* pipe) { return !pipe->wall || !over(measured, thickest_reading(*pipe)); });
}

// Checks the gauge's reading; returns it when it can be believed.
std::optional<Length> believed_wall(Context& context, const std::vector<const Pipe*>& pipes, std::optional<Length> od) {
  const auto& measured = context.job().main.wall;
  if (!measured) return std::nullopt;
  const Basis& gauge = context.rules.wall_uncertainty.basis;
  if (od && !over(0.5 * *od, *measured)) {
    context.common.add(FindingCode::main_wall_impossible, Severity::hold).value(*measured).at_most(0.5 * *od).basis(gauge);
    return std::nullopt;
  }
  std::optional<Length> thickest;
  for (const Pipe* pipe : pipes) {
    if (pipe->wall && (!thickest || thickest_reading(*pipe) > *thickest)) thickest = thickest_reading(*pipe);
    if (pipe->plausible && (!thickest || pipe->plausible->wall_to > *thickest)) thickest = pipe->plausible->wall_to;
  }
  if (thickest && over(*measured, *thickest)) {
    context.common.add(FindingCode::main_wall_impossible, Severity::hold)
        .value(*measured)
        .at_most(*thickest)
        .basis(gauge);
    return std::nullopt;
  }
  return measured;
}

// The reading that tells the candidates apart: circumference when they differ outside, wall when only inside. One that is
// taken already is not asked for again. What each reading means is for the whole plan.
std::optional<SettlingReading> settling_reading(const Context& context, bool diameter_known) {
  const ResolvedMain& main = context.plan.main;
  const std::vector<const Pipe*>& pipes = main.candidates;
  const bool wall_known = main.wall_basis == WallBasis::measured;
  const auto differs = [&](auto member) {
    return std::any_of(pipes.begin(), pipes.end(), [&](const Pipe* p) {
      return p->*member && pipes.front()->*member && abs(*(p->*member) - *(pipes.front()->*member)).base() > 0.02;
    });
  };
  const bool by_diameter = !diameter_known && differs(&Pipe::od);
  if (!by_diameter && (wall_known || !differs(&Pipe::wall))) return std::nullopt;
  SettlingReading reading{by_diameter ? ReadingId::circumference : ReadingId::wall, {}};
  if (!context.whole()) return reading;
  for (const Pipe* pipe : pipes) {
    Length low;
    Length high;
    if (by_diameter) {
      if (!pipe->od) continue;
      low = pi * (*pipe->od - pipe->od_minus);
      high = pi * (*pipe->od + pipe->od_plus);
    } else {
      if (!pipe->wall) continue;
      low = *pipe->wall - pipe->wall_minus;
      high = *pipe->wall + context.rules.wall_uncertainty.value;
    }
    const auto same = std::find_if(reading.readings.begin(), reading.readings.end(), [&](const ReadingMeans& means) {
      return std::fabs(means.low.base() - low.base()) < 0.01 && std::fabs(means.high.base() - high.base()) < 0.01;
    });
    if (same != reading.readings.end()) {
      ++same->also;
    } else {
      const Kind kind = by_diameter ? Kind::tape : Kind::length;
      reading.readings.push_back({Measure(low, kind), Measure(high, kind), pipe, 0});
    }
  }
  std::stable_sort(reading.readings.begin(), reading.readings.end(),
                   [](const auto& a, const auto& b) { return a.low.base() < b.low.base(); });
  return reading;
}

void resolve_diameter(Context& context, const std::optional<MeasuredDiameter>& measured) {
  ResolvedMain& main = context.plan.main;
  std::optional<Length> least;
  std::optional<Length> greatest;
  for (const Pipe* pipe : main.candidates) {
    if (!pipe->od) continue;
    if (!least || *pipe->od < *least) least = pipe->od;
    if (!greatest || *pipe->od > *greatest) greatest = pipe->od;
    if (!main.od_low || *pipe->od - pipe->od_minus < *main.od_low) main.od_low = *pipe->od - pipe->od_minus;
    if (!main.od_high || *pipe->od + pipe->od_plus > *main.od_high) main.od_high = *pipe->od + pipe->od_plus;
  }
  if (measured) {
    main.od = measured->value;
    return;
  }
  if (main.governing != nullptr && main.governing->od) main.od = main.governing->od;
  else main.od = least;
  if (!main.od) {
    context.common.add(FindingCode::main_od_unknown, Severity::hold).basis(context.rules.circumference_uncertainty.basis);
  } else if (over(*greatest - *least, 0.06 * units::inch)) {
    context.common.add(FindingCode::main_od_unsettled, Severity::hold)
        .with(Measure(*least), Measure(*greatest))
        .basis(main.governing->series->basis_of(PipeColumn::od));
  }
}

void resolve_wall(Context& context) {
  ResolvedMain& main = context.plan.main;
  const Pipe* pipe = main.governing;
  const Rule<Length>& gauge = context.rules.wall_uncertainty;
  if (const auto measured = believed_wall(context, main.candidates, main.od)) {
    main.wall_nominal = measured;
    main.wall_least = std::max(*measured - gauge.value, Length());
    main.wall_basis = WallBasis::measured;
    auto asked = class_wall_reading(pipe, context.rules);
    const bool tabulated = asked.has_value();
    // No wall is tabulated: the least that the weakest class can have been made with.
    if (!asked && pipe != nullptr && pipe->plausible) asked = pipe->plausible->wall_from;
    if (asked && over(*asked, *measured)) {
      context.common.add(FindingCode::main_wall_thin, Severity::hold)
          .value(*measured)
          .at_least(*asked)
          .with(std::string_view(pipe->class_name))
          .basis(tabulated ? pipe->series->basis_of(PipeColumn::wall) : pipe->series->plausible_basis, gauge.basis);
    }
  } else if (pipe != nullptr && pipe->wall) {
    main.wall_nominal = pipe->wall;
    main.wall_least = least_wall(*pipe);
    main.wall_basis = WallBasis::catalogue;
    context.assume("main.wall", Measure(*main.wall_least), "the least wall a sound pipe of this class may have",
                   "gauge the wall at the tap");
  }
}

// Which edition of its standard a pipe was bought under. An older name is never read as the newer one.
enum class Edition : std::uint8_t { earlier, later, unknown };

Edition edition_of(const Pipe& pipe, const MainFacts& facts) {
  const int rerated = *pipe.series->rerated;
  if (facts.installed && *facts.installed < rerated) return Edition::earlier;
  if (!facts.class_name.empty()) {
    const std::string key = class_key(facts.class_name);
    const auto& names = pipe.earlier->class_keys;
    if (std::find(names.begin(), names.end(), key) != names.end()) return Edition::earlier;
    // "PC 235": the figure itself.
    if (key.ends_with(std::to_string(static_cast<int>(*pipe.rating / units::psi)))) return Edition::later;
  }
  return facts.installed && *facts.installed > rerated ? Edition::later : Edition::unknown;
}

// The least rating of the candidates.
void rate_by_class(Context& context) {
  ResolvedMain& main = context.plan.main;
  bool edition_assumed = false;
  const auto& wall = context.job().main.wall;
  const auto too_thin_for = [&](const Pipe& pipe) {
    return wall && pipe.plausible && over(pipe.plausible->wall_from, *wall);
  };
  std::optional<Pressure> least_with_surge;  // another pipe's than the least rating, where that one's class covers a surge
  for (const Pipe* pipe : main.candidates) {
    if (!pipe->rating) {
      main.rating_unsettled = true;
      continue;
    }
    const Edition edition = pipe->earlier ? edition_of(*pipe, context.job().main) : Edition::later;
    const bool earlier = edition != Edition::later;
    if (!too_thin_for(*pipe) && (!main.greatest_rating || *pipe->rating > *main.greatest_rating)) {
      main.greatest_rating = pipe->rating;
    }
    const Pressure rating = earlier ? pipe->earlier->rating : *pipe->rating;
    const Pressure with_surge = rating + (earlier ? pipe->earlier->surge : Pressure());
    if (!least_with_surge || with_surge < *least_with_surge) least_with_surge = with_surge;
    if (main.rating && rating >= *main.rating) continue;
    main.rating = rating;
    main.rated_as = earlier ? pipe->earlier->class_name : pipe->class_name;
    main.rating_basis = earlier ? &pipe->series->earlier_basis : &pipe->series->basis_of(PipeColumn::rating);
    edition_assumed = edition == Edition::unknown;
  }
  if (!main.greatest_rating) main.greatest_rating = main.rating;
  if (main.rating) main.surge_covered = *least_with_surge - *main.rating;
  if (edition_assumed && !context.job().main.rating) {
    context.assume("main.rating", Measure(*main.rating), "the same pipe was rated lower before its standard was revised",
                   "find the year it was laid, or read the pressure class (PC) printed on the pipe");
  }
}

// The utility knows its main better than a card does, but no class of the pipe was made for more than the greatest.
void rate_by_utility(Context& context) {
  ResolvedMain& main = context.plan.main;
  const auto& stated = context.job().main.rating;
  if (!stated) return;
  const bool known = !main.rating_unsettled && main.greatest_rating;
  main.rating_unsettled = false;
  if (known && *stated > *main.greatest_rating) {
    context.assume("main.rating", Measure(*main.greatest_rating), "no class that this pipe can be was rated for more",
                   "have the utility look into the rating it states");
    if (*main.rating == *main.greatest_rating) return;  // settled, by the pipe
    main.rating = main.greatest_rating;
  } else {
    main.rating = *stated;
  }
  main.rated_as = {};
  main.rating_basis = &stated_in_job;
  main.surge_covered = Pressure();
}

void derate(Context& context) {
  ResolvedMain& main = context.plan.main;
  const MaterialFacts& facts = context.catalog.facts(main.material);
  if (facts.temperature_factors.empty()) return;
  if (!context.job().main.temperature) {
    context.assume("main.temperature", Measure(temperature_assumed),
                   "buried mains are seldom warmer, and no credit is taken for cold",
                   "hold a thermometer to the bare pipe");
    return;
  }
  const auto factor = temperature_factor(context, facts, *context.job().main.temperature);
  main.temperature_factor = factor.value_or(0.0);
  if (main.rating) main.rating = main.temperature_factor * *main.rating;
  if (main.greatest_rating) main.greatest_rating = main.temperature_factor * *main.greatest_rating;
  main.surge_covered = main.temperature_factor * main.surge_covered;
  if (!factor) {
    context.common.add(FindingCode::pressure_too_warm, Severity::stop)
        .with(Measure(*context.job().main.temperature))
        .basis(facts.temperature_basis);
  }
}

}  // namespace

std::optional<double> temperature_factor(const Context& context, const MaterialFacts& facts, Temperature temperature) {
  std::pmr::vector<mechanics::TemperatureFactor> table(&context.memory);
  table.reserve(facts.temperature_factors.size());
  for (const CurvePoint& point : facts.temperature_factors) {
    table.push_back({Temperature::fahrenheit(point.x), point.y});
  }
  return mechanics::temperature_factor(table, temperature);
}

void resolve_main(Context& context) {
  ResolvedMain& main = context.plan.main;
  main.material = *context.job().main.material;
  main.size = *context.job().main.size;
  if (context.whole()) main.assumed.reserve(8);

  const std::span<const Pipe> listed = context.catalog.pipes(main.material, main.size);
  main.candidates.reserve(listed.size());
  for (const Pipe& pipe : listed) main.candidates.push_back(&pipe);
  if (listed.empty()) {
    context.common.add(FindingCode::main_not_in_catalogue, Severity::hold).with(name_of(main.material), main.size);
  }
  narrow_by_card(context, main.candidates);
  check_year(context);
  narrow_by_year(context, main.candidates);
  const auto measured = measured_diameter(context);
  if (measured) narrow_by_diameter(context, main.candidates, *measured);
  if (context.job().main.wall) narrow_by_wall(main.candidates, *context.job().main.wall);

  if (!main.candidates.empty()) {
    main.governing = *std::min_element(main.candidates.begin(), main.candidates.end(), worse);
  }
  resolve_diameter(context, measured);
  resolve_wall(context);
  rate_by_class(context);
  rate_by_utility(context);
  derate(context);

  if (main.candidates.size() > 1) {
    main.settle = settling_reading(context, measured.has_value());
    context.assume("main.class", std::string_view(main.governing->class_name),
                   "the weakest pipe that fits what is known",
                   main.settle ? "read the class cast or stencilled on the pipe, or take the reading below"
                               : "read the class cast or stencilled on the pipe");
    context.common.add(FindingCode::main_class_unknown, Severity::caution)
        .with(std::string_view(main.governing->class_name), static_cast<int>(main.candidates.size()),
              main.settle ? Detail(name_of(main.settle->id)) : Detail())
        .basis(main.governing->series->basis_of(PipeColumn::wall));
  }
}

}  // namespace mainbore::planning
