// Writes down what a plan is made with, where planning takes the value.
#pragma once

#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "mainbore/calculation.hpp"
#include "mainbore/evidence.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/rules.hpp"

namespace mainbore::planning {

class Findings;

// Of a value that rests on no publication.
inline constexpr Basis usual_practice{};

// Of a verdict nothing is written down, and of decisions only what is recalled, for the caution that is made of it.
class Recorder {
 public:
  explicit Recorder(PlanDepth depth) : depth_(depth) {}

  // `from`: where the basis does not say by itself that it is a rule's, the job's or the settings'.
  void take(PlanPart part, Taken what, const Basis& basis, Detail value = {}, From from = From::table) {
    if (keeps(basis)) put(part, what, basis, value, from_of(basis, from));
  }
  void measured(PlanPart part, Taken what, const Basis& instrument, Detail value) {
    if (keeps(instrument)) put(part, what, instrument, value, From::measured);
  }
  void assumed(PlanPart part, Taken what, const Basis& basis, Detail value) {
    if (keeps(basis)) put(part, what, basis, value, From::assumed);
  }
  // A row may be weaker than the table it stands in.
  void column(Taken what, const Pipe& pipe, PipeColumn column, Detail value);
  // What a method was refused for, which `tried` has written down as it was taken.
  void refused(const Recorder& tried, const Finding& why);
  // All that another has written down.
  void add(Recorder other);

  [[nodiscard]] bool calculates() const { return depth_ == PlanDepth::whole; }
  void calculated(Calculation made) {
    if (!calculates()) return;
    if (calculations_.capacity() == 0) calculations_.reserve(32);
    calculations_.push_back(std::move(made));
  }
  [[nodiscard]] std::vector<Calculation> calculations() && { return std::move(calculations_); }

  struct Item {
    Evidence evidence;
    const Basis* stands = nullptr;  // where the basis stands, in the tables, the rules or for good
  };
  [[nodiscard]] const std::vector<Item>& list() const { return list_; }

  static From from_of(const Basis& basis, From otherwise);

 private:
  [[nodiscard]] bool keeps(const Basis& basis) const {
    return depth_ == PlanDepth::whole || (depth_ == PlanDepth::decisions && is_recalled(basis));
  }
  void put(PlanPart part, Taken what, const Basis& basis, Detail value, From from);

  PlanDepth depth_;
  std::vector<Item> list_;
  std::vector<Calculation> calculations_;
};

// The one caution of whatever the plan counts on and nobody has read: nothing where there is no such value.
[[nodiscard]] std::optional<Finding> recalled_caution(const Recorder& taken, std::span<const Findings* const> findings);

// The list of a plan whose findings and method are final: part by part, each item once.
[[nodiscard]] std::vector<Evidence> evidence_for(const Plan& plan, const Recorder& taken);
// The calculations, part by part, those of a refused method last.
[[nodiscard]] std::vector<Calculation> calculations_of(Recorder&& taken);

}  // namespace mainbore::planning
