#include "planning/candidates.hpp"

#include <algorithm>
#include <array>
#include <numbers>
#include <string>

#include "catalog/class_meaning.hpp"

namespace mainbore::planning {
namespace {

using std::numbers::pi;

// ---- narrowing

// Whether what was had in this way may remove a pipe.
bool removes(const Basis& basis) {
  switch (basis.how) {
    case How::published:
    case How::derived:
    case How::stated:
    case How::stated_in_settings:
    case How::stated_in_approved_list:
      return true;
    case How::common_practice:
    case How::memory:
      return false;
  }
  return false;
}

struct Narrowing {
  bool fits = true;               // some pipe is spoken against by nothing
  const Pipe* doubted = nullptr;  // one that only recollection speaks against; it stays
  const Basis* removed_by = nullptr;
};

// The one place where candidates go. `against` gives what speaks against a pipe, nothing where it fits. When no pipe fits,
// all stay.
template <class Pipes, class Against>
Narrowing narrow(Pipes& pipes, Against against) {
  Narrowing result;
  if (pipes.empty()) return result;
  result.fits = std::any_of(pipes.begin(), pipes.end(), [&](const Pipe* pipe) { return against(*pipe) == nullptr; });
  if (!result.fits) return result;
  const auto goes = [&](const Pipe* pipe) {
    const Basis* const basis = against(*pipe);
    if (basis == nullptr) return false;
    if (removes(*basis)) {
      result.removed_by = basis;
      return true;
    }
    if (result.doubted == nullptr) result.doubted = pipe;
    return false;
  };
  pipes.erase(std::remove_if(pipes.begin(), pipes.end(), goes), pipes.end());
  return result;
}

// ---- the card

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

// "pvc-c900", "ductile-iron sizes": a series by its own name, or by words of its standard or its diameters.
bool names_series(const std::string& wanted, const PipeSeries& series) {
  return squeezed(series.standard).find(wanted) != std::string::npos ||
         squeezed(series.basis).find(wanted) != std::string::npos || squeezed(series.id) == wanted;
}

// What is told of a class that nothing listed is called: first and last of each kind, as the tables have one kind after
// the other.
void tell_class_not_made(Said& said, std::span<const Pipe* const> pipes) {
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
  said.findings.add(FindingCode::main_class_not_made, Severity::hold)
      .with(listed[0], listed[1], listed[2], listed[3])
      .basis(pipes.front()->series->basis_of(PipeColumn::wall));
}

void tell_stray(Said& said, const ClassWords& words) {
  said.findings.add(FindingCode::main_class_word, Severity::hold)
      .with(words.stray, words.stray_of ? Detail(name_of(*words.stray_of)) : Detail());
}

void narrow_by_card(const Context& context, PipesOnRecord& known) {
  Said& said = known.said;
  std::pmr::vector<const Pipe*>& pipes = known.pipes;
  const MainFacts& facts = context.job().main;
  std::string series_named;
  if (!facts.class_name.empty()) known.by_class = context.catalog.read_class(facts.class_name, context.material());
  if (!facts.standard.empty()) {
    known.by_standard = context.catalog.read_class(facts.standard, context.material());
    const bool plain = known.by_standard.stray.empty() && known.by_standard.words.empty();
    if (!plain) {
      series_named = squeezed(facts.standard);
      const bool named = std::any_of(pipes.begin(), pipes.end(),
                                     [&](const Pipe* pipe) { return names_series(series_named, *pipe->series); });
      if (named) known.by_standard = {};
      else series_named.clear();
    }
  }
  for (ClassWords* words : {&known.by_class, &known.by_standard}) {
    if (words->stray.empty()) continue;
    tell_stray(said, *words);
    known.by_class = known.by_standard = {};  // a card with a word that nobody knows settles nothing
    return;
  }
  if (known.by_class.empty() && known.by_standard.empty() && series_named.empty()) return;

  const auto named = [&](const Pipe& pipe) {
    return of_standard(pipe, known.by_class) && of_standard(pipe, known.by_standard) &&
           of_class(known.by_standard, pipe.names) &&
           (series_named.empty() || names_series(series_named, *pipe.series));
  };
  const Narrowing by_name = narrow(pipes, [&](const Pipe& pipe) {
    const bool meant = named(pipe) && of_class(known.by_class, pipe.names) && !compound_left_out(known.by_class, pipe);
    return meant ? nullptr : &stated_in_job;
  });
  if (by_name.removed_by != nullptr) said.taken.take(PlanPart::pipe, Taken::pipe_class, *by_name.removed_by);
  if (by_name.fits) {
    known.settles_series |= !series_named.empty();
    return;
  }
  const auto usual = std::find_if(pipes.begin(), pipes.end(), [&](const Pipe* pipe) {
    return named(*pipe) && of_class(known.by_class, pipe->usual_names);
  });
  if (usual == pipes.end()) {
    tell_class_not_made(said, pipes);
    known.by_class = known.by_standard = {};
    return;
  }
  const Pipe& meant = **usual;
  static_cast<void>(narrow(pipes, [&](const Pipe& pipe) { return named(pipe) ? nullptr : &stated_in_job; }));
  static_cast<void>(narrow(pipes, [&](const Pipe& pipe) {
    return of_class(known.by_class, pipe.usual_names) ? nullptr : &meant.series->usual_basis;
  }));
  said.findings.add(FindingCode::main_by_recollection, Severity::caution)
      .with(std::string_view(meant.class_name))
      .basis(meant.series->usual_basis);
}

// ---- the year

void check_year(const Context& context, Said& said) {
  const auto& year = context.job().main.installed;
  if (!year) return;
  const auto day = day_in(context.job().date);
  if (!day || !day->exists() || *year <= day->year) return;
  said.findings.add(FindingCode::main_not_yet_laid, Severity::hold).with(*year, day->year);
}

// Names the series that comes nearest to having been laid then.
void tell_year_contradicts(const Context& context, Said& said, std::span<const Pipe* const> pipes, int year) {
  const PipeSeries* nearest = pipes.front()->series;
  for (const Pipe* pipe : pipes) {
    const PipeSeries& series = *pipe->series;
    if (year < series.laid_from.value_or(year) && series.laid_from < nearest->laid_from) nearest = &series;
    if (year > series.laid_to.value_or(year) && series.laid_to > nearest->laid_to) nearest = &series;
  }
  // Where others of the material were laid then, it is the standard that the year does not fit.
  const auto others = context.catalog.series();
  const bool of_standard = std::any_of(others.begin(), others.end(), [&](const PipeSeries& series) {
    return series.material == context.material() && laid_in(series, year);
  });
  said.findings.add(FindingCode::main_year_contradicts, Severity::hold)
      .with(of_standard ? std::string_view(nearest->standard) : name_of(context.material()), year,
            nearest->laid_from ? Detail(*nearest->laid_from) : Detail(),
            nearest->laid_to ? Detail(*nearest->laid_to) : Detail())
      .basis(nearest->laid_basis);
}

void narrow_by_year(const Context& context, PipesOnRecord& record) {
  Said& said = record.said;
  std::pmr::vector<const Pipe*>& pipes = record.pipes;
  if (!context.job().main.installed || pipes.empty()) return;
  const int year = *context.job().main.installed;
  const Narrowing by_years =
      narrow(pipes, [&](const Pipe& pipe) { return laid_in(*pipe.series, year) ? nullptr : &pipe.series->laid_basis; });
  if (!by_years.fits) return tell_year_contradicts(context, said, pipes, year);
  if (by_years.removed_by != nullptr) said.taken.take(PlanPart::pipe, Taken::years_laid, *by_years.removed_by, year);
  if (by_years.doubted != nullptr) {
    const PipeSeries& series = *by_years.doubted->series;
    said.findings.add(FindingCode::main_by_recollection, Severity::caution)
        .with(Detail(), std::string_view(series.title), series.laid_from ? Detail(*series.laid_from) : Detail(),
              series.laid_to ? Detail(*series.laid_to) : Detail())
        .basis(series.laid_basis);
  }
  const Narrowing by_edition = narrow(pipes, [&](const Pipe& pipe) {
    return !pipe.since_rerating || year >= *pipe.series->rerated ? nullptr : &pipe.series->earlier_basis;
  });
  if (by_edition.removed_by != nullptr)
    said.taken.take(PlanPart::pipe, Taken::years_laid, *by_edition.removed_by, year);
  if (by_edition.fits) return;
  const Pipe& newer = *pipes.front();
  said.findings.add(FindingCode::main_year_contradicts, Severity::hold)
      .with(std::string_view(newer.class_name), year, *newer.series->rerated)
      .basis(newer.series->earlier_basis);
}

// ---- the diameter

std::optional<MeasuredDiameter> measured_diameter(const Context& context, Said& said) {
  const MainFacts& facts = context.job().main;
  const Rules& rules = context.rules;
  std::optional<MeasuredDiameter> by_tape;
  if (facts.circumference) {
    by_tape = {*facts.circumference / pi, rules.measuring.circumference_uncertainty.value / pi,
               &rules.measuring.circumference_uncertainty.basis};
    said.taken.measured(PlanPart::pipe, Taken::tape, *by_tape->basis, Measure(by_tape->value));
  }
  if (!facts.od) return by_tape;
  const MeasuredDiameter by_caliper{*facts.od, rules.measuring.od_uncertainty.value,
                                    &rules.measuring.od_uncertainty.basis};
  said.taken.measured(PlanPart::pipe, Taken::caliper, *by_caliper.basis, Measure(by_caliper.value));
  if (by_tape && over(abs(by_caliper.value - by_tape->value), by_caliper.uncertainty + by_tape->uncertainty)) {
    said.findings.add(FindingCode::main_readings_disagree, Severity::hold)
        .value(by_caliper.value)
        .at_most(by_tape->value)
        .basis(*by_caliper.basis, *by_tape->basis);
  }
  return by_caliper;
}

bool fits_diameter(const Pipe& pipe, const MeasuredDiameter& measured) {
  return !pipe.od || within(measured.value, widened(diameter_range(pipe), measured.uncertainty));
}

// Where no diameter is tabulated, a reading must still be one that a pipe of this name can have: by its series, or else
// more than its nominal inches, and not half as much again (old small pit-cast pipe comes nearest to that).
void check_untabulated_diameter(const Context& context, Said& said, const std::vector<const Pipe*>& pipes,
                                const MeasuredDiameter& measured) {
  if (std::any_of(pipes.begin(), pipes.end(), [](const Pipe* pipe) { return pipe->od.has_value(); })) return;
  Length least = context.size().number() * units::inch;
  Length greatest = 1.5 * least + 1.0 * units::inch;
  const Basis* basis = measured.basis;
  if (!pipes.empty() && pipes.front()->plausible) {
    least = pipes.front()->plausible->od_from;
    greatest = pipes.front()->plausible->od_to;
    basis = &pipes.front()->series->plausible_basis;
  }
  const bool small = over(least, measured.value);
  if (!small && !over(measured.value, greatest)) return;
  said.findings.add(FindingCode::main_od_contradicts, Severity::hold)
      .value(measured.value)
      .at_most(small ? least : greatest)
      .basis(*basis, *measured.basis);
}

// The reading may be right and the card wrong: which other pipe of this nominal size reads so?
Detail pipe_that_reads(const Context& context, const MeasuredDiameter& measured) {
  for (std::size_t m = 0; m < material_count; ++m) {
    for (const Pipe& pipe : context.catalog.pipes(static_cast<Material>(m), context.size())) {
      if (pipe.od && fits_diameter(pipe, measured)) return std::string_view(pipe.series->title);
    }
  }
  return {};
}

void narrow_by_diameter(const Context& context, Said& said, std::vector<const Pipe*>& pipes,
                        const MeasuredDiameter& measured) {
  check_untabulated_diameter(context, said, pipes, measured);
  const Narrowing by_reading =
      narrow(pipes, [&](const Pipe& pipe) { return fits_diameter(pipe, measured) ? nullptr : &stated_in_job; });
  if (by_reading.fits) return;
  const auto gap = [&](const Pipe* pipe) { return pipe->od ? abs(*pipe->od - measured.value).base() : 1e9; };
  const Pipe* nearest =
      *std::min_element(pipes.begin(), pipes.end(), [&](auto* a, auto* b) { return gap(a) < gap(b); });
  said.findings.add(FindingCode::main_od_contradicts, Severity::hold)
      .value(measured.value)
      .at_most(*nearest->od)
      .with(std::string_view(nearest->class_name), pipe_that_reads(context, measured))
      .basis(nearest->series->basis_of(PipeColumn::od), *measured.basis);
}

// In most countries a metric name is that of another pipe than the one listed here. The tape tells; a record that names
// the standard has told already.
void check_metric_name(const Context& context, Said& said, const std::vector<const Pipe*>& pipes,
                       const PipesOnRecord& record) {
  const NominalSize size = context.size();
  if (size.dn() == 0 || record.settles_series || record.by_class.names_standard() ||
      record.by_standard.names_standard()) {
    return;
  }
  const auto listed = std::find_if(pipes.begin(), pipes.end(), [](const Pipe* pipe) { return pipe->od.has_value(); });
  if (listed == pipes.end()) return;  // its diameter is asked for as it is
  said.findings.add(FindingCode::main_size_metric, Severity::hold)
      .with(size.dn(), size, name_of(context.material()), Measure(*(*listed)->od))
      .basis((*listed)->series->basis_of(PipeColumn::od), context.rules.measuring.circumference_uncertainty.basis);
}

}  // namespace

PipesOnRecord pipes_on_record(const Context& context) {
  PipesOnRecord record(context);
  const std::span<const Pipe> listed = context.catalog.pipes(context.material(), context.size());
  record.pipes.reserve(listed.size());
  for (const Pipe& pipe : listed) record.pipes.push_back(&pipe);
  if (listed.empty()) {
    record.said.findings.add(FindingCode::main_not_in_catalogue, Severity::hold)
        .with(name_of(context.material()), context.size());
  }
  narrow_by_card(context, record);
  check_year(context, record.said);
  narrow_by_year(context, record);
  return record;
}

Candidates find_candidates(const Context& context, const PipesOnRecord& record, Said& said) {
  Candidates found{{record.pipes.begin(), record.pipes.end()}, measured_diameter(context, said)};
  if (found.measured) narrow_by_diameter(context, said, found.pipes, *found.measured);
  else check_metric_name(context, said, found.pipes, record);
  return found;
}

}  // namespace mainbore::planning
