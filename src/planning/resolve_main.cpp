#include <algorithm>
#include <cmath>
#include <utility>

#include "catalog/class_meaning.hpp"
#include "mainbore/mechanics/rating.hpp"
#include "planning/calculations.hpp"
#include "planning/candidates.hpp"

namespace mainbore::planning {
namespace {

std::optional<Length> least_wall_of(const Pipe& pipe) {
  if (!pipe.wall) return std::nullopt;
  return *pipe.wall - pipe.wall_minus;
}

// The worst to plan for: least guaranteed wall, then the smaller pipe, in which a hole drops further, then the lower
// class. An unknown wall is worse than any known one.
bool worse(const Pipe* a, const Pipe* b) {
  const auto wall_a = least_wall_of(*a);
  const auto wall_b = least_wall_of(*b);
  if (wall_a.has_value() != wall_b.has_value()) return !wall_a;
  if (wall_a && *wall_a != *wall_b) return *wall_a < *wall_b;
  if (a->od && b->od && *a->od != *b->od) return *a->od < *b->od;
  return a->rating && b->rating && *a->rating < *b->rating;
}

// The thickest that a gauge may read on any of these pipes. Of pipes that measure differently outside it is that of the
// thinnest such, because the tape may tell of them yet.
std::optional<Length> thickest_of(const std::vector<const Pipe*>& pipes) {
  const auto reads = [](const Pipe* pipe) {
    if (pipe->wall) return std::optional(thickest_reading(*pipe));
    return pipe->plausible ? std::optional(pipe->plausible->wall_to) : std::nullopt;
  };
  std::optional<Length> least;
  for (const Pipe* one : pipes) {
    std::optional<Length> most;
    for (const Pipe* other : pipes) {
      if (!told_apart(*one, *other)) most = std::max(most, reads(other));
    }
    if (most && (!least || *most < *least)) least = most;
  }
  return least;
}

// Checks the gauge's reading; returns it when it can be believed.
std::optional<Length> believed_wall(const Context& context, const ResolvedMain& main, Said& said) {
  const auto& measured = context.job().main.wall;
  const std::optional<Length>& od = main.od;
  if (!measured) return std::nullopt;
  const Basis& gauge = context.rules.measuring.wall_uncertainty.basis;
  if (od && !over(0.5 * *od, *measured)) {
    said.findings.add(FindingCode::main_wall_impossible, Severity::hold)
        .value(*measured)
        .at_most(0.5 * *od)
        .basis(gauge);
    return std::nullopt;
  }
  const std::optional<Length> thickest = thickest_of(main.candidates);
  if (thickest && over(*measured, *thickest)) {
    said.findings.add(FindingCode::main_wall_impossible, Severity::hold)
        .value(*measured)
        .at_most(*thickest)
        .basis(gauge);
    return std::nullopt;
  }
  return measured;
}

// The reading that tells the candidates apart, where they differ outside. A wall tells none apart: what it reads is what
// years have left of it. One that is taken already is not asked for again. What each reading means is for the whole plan.
std::optional<SettlingReading> settling_reading(const Context& context, const std::vector<const Pipe*>& pipes,
                                                bool diameter_known) {
  const Pipe& first = *pipes.front();
  const bool differs =
      std::any_of(pipes.begin(), pipes.end(), [&](const Pipe* pipe) { return told_apart(*pipe, first); });
  if (diameter_known || !differs) return std::nullopt;
  SettlingReading reading{ReadingId::circumference, {}};
  if (!context.whole()) return reading;
  for (const Pipe* pipe : pipes) {
    if (!pipe->od) continue;
    const LengthRange tape = whole_marks(tape_range(*pipe, context.rules));
    const auto same = std::find_if(reading.readings.begin(), reading.readings.end(), [&](const ReadingMeans& means) {
      return std::fabs(means.low.base() - tape.low.base()) < 0.01 &&
             std::fabs(means.high.base() - tape.high.base()) < 0.01;
    });
    if (same != reading.readings.end()) {
      ++same->also;
    } else {
      reading.readings.push_back({Measure(tape.low, Kind::tape), Measure(tape.high, Kind::tape), pipe, 0});
    }
  }
  std::stable_sort(reading.readings.begin(), reading.readings.end(),
                   [](const auto& a, const auto& b) { return a.low.base() < b.low.base(); });
  return reading;
}

// The diameters that the pipe may really have: what was read, with the instrument's error, of what the candidates can be.
void bound_diameter(ResolvedMain& main, const std::optional<MeasuredDiameter>& measured) {
  main.od_least = main.od_low;
  main.od_greatest = main.od_high;
  if (!measured) return;
  const LengthRange read = widened({measured->value, measured->value}, measured->uncertainty);
  main.od_least = main.od_low && within(*main.od_low, read) ? *main.od_low : read.low;
  main.od_greatest = main.od_high && within(*main.od_high, read) ? *main.od_high : read.high;
}

void resolve_diameter(const Context& context, ResolvedMain& main, Said& said,
                      const std::optional<MeasuredDiameter>& measured) {
  std::optional<Length> least;
  std::optional<Length> greatest;
  for (const Pipe* pipe : main.candidates) {
    if (!pipe->od) continue;
    const LengthRange range = diameter_range(*pipe);
    if (!least || *pipe->od < *least) least = pipe->od;
    if (!greatest || *pipe->od > *greatest) greatest = pipe->od;
    if (!main.od_low || range.low < *main.od_low) main.od_low = range.low;
    if (!main.od_high || range.high > *main.od_high) main.od_high = range.high;
  }
  bound_diameter(main, measured);
  if (main.od_low && main.od_high) {
    const LengthRange read = widened({*main.od_low, *main.od_high}, context.rules.measuring.od_uncertainty.value);
    main.caliper_low = read.low;
    main.caliper_high = read.high;
  }
  if (measured) {
    main.od = measured->value;
    return;
  }
  if (main.governing != nullptr && main.governing->od) main.od = main.governing->od;
  else main.od = least;
  if (!main.od) {
    said.findings.add(FindingCode::main_od_unknown, Severity::hold)
        .basis(context.rules.measuring.circumference_uncertainty.basis);
  } else if (over(*greatest - *least, 0.06 * units::inch)) {
    said.findings.add(FindingCode::main_od_unsettled, Severity::hold)
        .with(Measure(*least), Measure(*greatest))
        .basis(main.governing->series->basis_of(PipeColumn::od));
  }
}

// Of a wall and how far it may lie below, the weaker column: the least wall is no better known than its tolerance.
const Basis& deciding_wall(const Pipe& pipe) {
  const PipeSeries& series = *pipe.series;
  const bool by_tolerance =
      pipe.wall_minus > Length() && pipe.how_of(PipeColumn::wall_minus) > pipe.how_of(PipeColumn::wall);
  return series.basis_of(by_tolerance ? PipeColumn::wall_minus : PipeColumn::wall);
}

void resolve_wall(const Context& context, ResolvedMain& main, Said& said) {
  const Pipe* pipe = main.governing;
  const Rule<Length>& gauge = context.rules.measuring.wall_uncertainty;
  if (const auto measured = believed_wall(context, main, said)) {
    main.wall_nominal = measured;
    main.wall_least = std::max(*measured - gauge.value, Length());
    main.wall_basis = WallBasis::measured;
    said.taken.measured(PlanPart::pipe, Taken::gauge, gauge.basis, Measure(*measured));
    if (said.taken.calculates()) {
      said.taken.calculated(
          Worked(PlanPart::pipe, Formula::wall_by_gauge, {nominal_wall(main), figure(gauge)}, *main.wall_least));
    }
    auto asked = class_wall_reading(pipe, context.rules);
    const bool tabulated = asked.has_value();
    // No wall is tabulated: the least that the weakest class can have been made with.
    if (!asked && pipe != nullptr && pipe->plausible) asked = pipe->plausible->wall_from;
    if (asked && over(*asked, *measured)) {
      said.findings.add(FindingCode::main_wall_thin, Severity::hold)
          .value(*measured)
          .at_least(*asked)
          .with(std::string_view(pipe->class_name),
                main.material == Material::steel ? Detail(name_of(main.material)) : Detail())
          .basis(tabulated ? deciding_wall(*pipe) : pipe->series->plausible_basis, gauge.basis);
    }
  } else if (pipe != nullptr && pipe->wall) {
    main.wall_nominal = pipe->wall;
    main.wall_least = least_wall_of(*pipe);
    main.wall_basis = WallBasis::catalog;
    said.assume({"main.wall", Measure(*main.wall_least), "the least wall a sound pipe of this class may have",
                 "gauge the wall at the tap"});
    said.taken.assumed(PlanPart::pipe, Taken::pipe_wall, pipe->series->basis_of(PipeColumn::wall_minus),
                       Measure(*main.wall_least));
    if (said.taken.calculates()) {
      said.taken.calculated(Worked(
          PlanPart::pipe, Formula::wall_by_table,
          {figure(*pipe, PipeColumn::wall, *pipe->wall), figure(*pipe, PipeColumn::wall_minus, pipe->wall_minus)},
          *main.wall_least));
    }
  }
}

// Which edition of its standard a pipe was bought under. An older name is never read as the newer one.
enum class Edition : std::uint8_t { earlier, later, unknown };

Edition edition_of(const Pipe& pipe, const MainFacts& facts, const ClassWords& card) {
  const int rerated = *pipe.series->rerated;
  if (facts.installed && *facts.installed < rerated) return Edition::earlier;
  const auto names = [&](const std::vector<ClassWord>& known) {
    return std::any_of(card.words.begin(), card.words.end(), [&](const ClassWord& word) {
      return (word.mark == ClassMark::class_number || word.mark == ClassMark::number) && means(word, known);
    });
  };
  if (names(pipe.earlier->names)) return Edition::earlier;
  // "PC 235", "Class 235": the figure itself.
  const ClassWord figure{ClassMark::pressure_class, static_cast<int>(std::lround(*pipe.rating / units::psi)) * 1000};
  if (std::find(card.words.begin(), card.words.end(), figure) != card.words.end() || names({figure})) {
    return Edition::later;
  }
  return facts.installed && *facts.installed > rerated ? Edition::later : Edition::unknown;
}

// The least rating of the candidates.
void rate_by_class(const Context& context, ResolvedMain& main, Said& said, const ClassWords& card) {
  bool edition_assumed = false;
  const Pipe* least = nullptr;
  const auto& wall = context.job().main.wall;
  const auto too_thin_for = [&](const Pipe& pipe) {
    return wall && pipe.plausible && over(pipe.plausible->wall_from, *wall);
  };
  std::optional<Pressure>
      least_with_surge;  // another pipe's than the least rating, where that one's class covers a surge
  for (const Pipe* pipe : main.candidates) {
    if (!pipe->rating) {
      main.rating_unsettled = true;
      continue;
    }
    const Edition edition = pipe->earlier ? edition_of(*pipe, context.job().main, card) : Edition::later;
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
    least = pipe;
  }
  if (least != nullptr) {
    if (main.rating_basis == &least->series->earlier_basis) {
      said.taken.take(PlanPart::pipe, Taken::pipe_rating, *main.rating_basis, Measure(*main.rating));
    } else {
      said.taken.column(Taken::pipe_rating, *least, PipeColumn::rating, Measure(*main.rating));
    }
  }
  if (!main.greatest_rating) main.greatest_rating = main.rating;
  if (main.rating) main.surge_covered = *least_with_surge - *main.rating;
  if (edition_assumed && !context.job().main.rating) {
    said.assume({"main.rating", Measure(*main.rating), "the same pipe was rated lower before its standard was revised",
                 "find the year it was laid, or read the pressure class (PC) printed on the pipe"});
    said.taken.assumed(PlanPart::pipe, Taken::pipe_rating, *main.rating_basis, Measure(*main.rating));
  }
}

// The utility knows its main better than a card does, but no class of the pipe was made for more than the greatest.
void rate_by_utility(const Context& context, ResolvedMain& main, Said& said) {
  const auto& stated = context.job().main.rating;
  if (!stated) return;
  const bool known = !main.rating_unsettled && main.greatest_rating;
  main.rating_unsettled = false;
  if (known && *stated > *main.greatest_rating) {
    said.assume({"main.rating", Measure(*main.greatest_rating), "no class that this pipe can be was rated for more",
                 "have the utility look into the rating it states"});
    said.taken.assumed(PlanPart::pipe, Taken::pipe_rating, *main.rating_basis, Measure(*main.greatest_rating));
    if (*main.rating == *main.greatest_rating) return;  // settled, by the pipe
    main.rating = main.greatest_rating;
  } else {
    main.rating = *stated;
  }
  main.rated_as = {};
  main.rating_basis = &stated_in_job;
  said.taken.take(PlanPart::pipe, Taken::pipe_rating, stated_in_job, Measure(*main.rating));
  main.surge_covered = Pressure();
}

void derate(const Context& context, ResolvedMain& main, Said& said) {
  const MaterialFacts& facts = context.catalog.facts(main.material);
  if (facts.temperature_factors.empty()) return;
  if (!context.job().main.temperature) {
    said.assume({"main.temperature", Measure(temperature_assumed),
                 "buried mains are seldom warmer, and no credit is taken for cold",
                 "hold a thermometer to the bare pipe"});
    said.taken.assumed(PlanPart::pipe, Taken::pipe_temperature, facts.temperature_basis, Measure(temperature_assumed));
    return;
  }
  said.taken.measured(PlanPart::pipe, Taken::pipe_temperature, stated_in_job, Measure(*context.job().main.temperature));
  const auto factor = temperature_factor(context, facts, *context.job().main.temperature);
  main.temperature_factor = factor.value_or(0.0);
  said.taken.take(PlanPart::pipe, Taken::temperature_factor, facts.temperature_basis,
                  Measure(main.temperature_factor, Kind::ratio));
  if (main.rating) {
    const Pressure of_class = *main.rating;
    main.rating = main.temperature_factor * of_class;
    if (said.taken.calculates()) {
      said.taken.calculated(Worked(PlanPart::pressure, Formula::derated_rating,
                                   {figure(Measure(main.temperature_factor, Kind::ratio), facts.temperature_basis),
                                    figure(Measure(of_class), *main.rating_basis)},
                                   *main.rating));
    }
  }
  if (main.greatest_rating) main.greatest_rating = main.temperature_factor * *main.greatest_rating;
  main.surge_covered = main.temperature_factor * main.surge_covered;
  if (!factor) {
    said.findings.add(FindingCode::pressure_too_warm, Severity::stop)
        .with(Measure(*context.job().main.temperature))
        .basis(facts.temperature_basis);
  }
}

// How far the pipe may lie under and over its table decides what is counted on.
void take_dimensions(Recorder& taken, const Pipe& pipe) {
  if (pipe.od) taken.column(Taken::pipe_diameter, pipe, PipeColumn::od, Measure(*pipe.od));
  if (pipe.wall) taken.column(Taken::pipe_wall, pipe, PipeColumn::wall, Measure(*pipe.wall));
  const auto tolerance = [&](Taken what, PipeColumn column, Length value) {
    if (value > Length()) taken.column(what, pipe, column, Measure(value));
  };
  if (pipe.od) tolerance(Taken::diameter_tolerance, PipeColumn::od_minus, pipe.od_minus);
  if (pipe.od) tolerance(Taken::diameter_tolerance, PipeColumn::od_plus, pipe.od_plus);
  if (pipe.wall) tolerance(Taken::wall_tolerance, PipeColumn::wall_minus, pipe.wall_minus);
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

ResolvedMain resolve_main(const Context& context, const PipesOnRecord& record, Said& said) {
  ResolvedMain main;
  main.material = context.material();
  main.size = context.size();
  Candidates found = find_candidates(context, record, said);
  main.candidates = std::move(found.pipes);
  if (!main.candidates.empty()) {
    main.governing = *std::min_element(main.candidates.begin(), main.candidates.end(), worse);
    take_dimensions(said.taken, *main.governing);
  }
  resolve_diameter(context, main, said, found.measured);
  resolve_wall(context, main, said);
  rate_by_class(context, main, said, record.by_class);
  rate_by_utility(context, main, said);
  derate(context, main, said);

  if (main.candidates.size() > 1) {
    main.settle = settling_reading(context, main.candidates, found.measured.has_value());
    said.assume({"main.class", std::string_view(main.governing->class_name), "the weakest pipe that fits what is known",
                 main.settle ? "read the class cast or stenciled on the pipe, or take the reading below"
                             : "read the class cast or stenciled on the pipe"});
    said.taken.assumed(PlanPart::pipe, Taken::pipe_class, main.governing->series->basis_of(PipeColumn::wall),
                       std::string_view(main.governing->class_name));
    said.findings.add(FindingCode::main_class_unknown, Severity::caution)
        .with(std::string_view(main.governing->class_name), static_cast<int>(main.candidates.size()),
              main.settle ? Detail(name_of(main.settle->id)) : Detail())
        .basis(main.governing->series->basis_of(PipeColumn::wall));
  }
  return main;
}

}  // namespace mainbore::planning
