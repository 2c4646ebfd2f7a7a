// Writes down the calculations of a plan, where each is made: formula, figures, result, limit (calculation.hpp).
//
// Each function takes what its check has worked out, and works nothing out itself. Of a verdict or of decisions none does anything.
#pragma once

#include <initializer_list>

#include "mainbore/calculation.hpp"
#include "planning/checks.hpp"
#include "planning/laid_line.hpp"

namespace mainbore::planning {

// ---- figures that go in

// `otherwise`: where the basis does not say by itself that it is a rule's, the job's or the settings'.
[[nodiscard]] CalculationInput figure(Detail value, const Basis& basis, From otherwise = From::table);
template <class T>
[[nodiscard]] CalculationInput figure(const Rule<T>& rule) {
  return figure(Measure(rule.value), rule.basis, From::rule);
}
template <class T>
[[nodiscard]] CalculationInput figure(const Rule<T>& rule, Kind kind) {
  return figure(Measure(rule.value, kind), rule.basis, From::rule);
}
[[nodiscard]] CalculationInput figure(const Pipe& pipe, PipeColumn column, Length value);
[[nodiscard]] CalculationInput given(Measure value);
// A known length of saddle or stop, by the job or the approved list.
[[nodiscard]] CalculationInput length_of(const FittingFacts::Fact<Length>& fact);
[[nodiscard]] CalculationInput given_or(bool stated, Measure value, const Basis& basis);
[[nodiscard]] CalculationInput worked_out(Formula by, Measure value);
// Of no source: what the geometry or another fact already says.
[[nodiscard]] CalculationInput plain(double value, Kind kind = Kind::ratio);
// A diameter of the main, as measured or by its table; a wall of it.
[[nodiscard]] CalculationInput diameter(const Context& context, const ResolvedMain& main, Length value);
[[nodiscard]] CalculationInput least_wall(const ResolvedMain& main);
[[nodiscard]] CalculationInput nominal_wall(const ResolvedMain& main);

// ---- a calculation, put together

class Worked {
 public:
  Worked(PlanPart part, Formula formula, std::initializer_list<CalculationInput> inputs, Measure result,
         Detail of = {});
  Worked& at_most(const CalculationInput& limit) { return bound(limit, false); }
  Worked& at_least(const CalculationInput& limit) { return bound(limit, true); }
  operator Calculation() { return std::move(made_); }  // NOLINT implicit by design

 private:
  Worked& bound(const CalculationInput& limit, bool least);
  Calculation made_;
};

// ---- those with many figures, by family

void write_threads(const Site& site, const TapThread& thread, Candidate& candidate);
void write_makeup(const Site& site, const TapThread& thread, Candidate& candidate);
void write_chain(const Site& site, Length on_truck, Candidate& candidate);
void write_clamp(const Site& site, Candidate& candidate);
void write_marks(const Site& site, const Candidate& candidate, const MarksPlan& marks,
                 std::optional<Length> greatest_wall, Recorder& taken);
// A line piece by piece, with what each loses.
struct LineLosses {
  const hydraulics::ServiceLine& line;
  const hydraulics::ServiceLosses& losses;
  bool thickest_walls = false;  // of the tubing, which leave the least bore
};
void write_losses(const Context& context, const LaidLine& laid, const ServicePlan& service, const LineLosses& of,
                  Recorder& taken);
void write_flush(const Context& context, const LaidLine& laid, const FlushPlan& flush, Recorder& taken);
void write_fill(const Context& context, const LaidLine& laid, const FillPlan& fill, Recorder& taken);
void write_pit(const Site& site, const PitPlan& plan, const Rule<double>& swell, Recorder& taken);

}  // namespace mainbore::planning
