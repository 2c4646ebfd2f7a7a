// Writes down what a plan is made with, where planning takes the value.
#pragma once

#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "mainbore/calculation.hpp"
#include "mainbore/evidence.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/rules.hpp"

namespace mainbore::planning {

class Findings;

// Of a value that rests on no publication.
inline constexpr Basis usual_practice{};

// Of a verdict alone nothing is written down: a recorder that is off costs a test of a flag.
class Recorder {
 public:
  explicit Recorder(bool on) : on_(on) {}

  // `from`: where the basis does not say by itself that it is a rule's, the job's or the settings'.
  void take(PlanPart part, Taken what, const Basis& basis, Detail value = {}, From from = From::table) {
    if (on_) put(part, what, basis, value, from_of(basis, from));
  }
  void measured(PlanPart part, Taken what, const Basis& instrument, Detail value) {
    if (on_) put(part, what, instrument, value, From::measured);
  }
  void assumed(PlanPart part, Taken what, const Basis& basis, Detail value) {
    if (on_) put(part, what, basis, value, From::assumed);
  }
  // A row may be weaker than the table it stands in.
  void column(Taken what, const Pipe& pipe, PipeColumn column, Detail value);
  // What a method was refused for, which `tried` has written down as it was taken.
  void refused(const Recorder& tried, const Finding& why);
  // All that another has written down.
  void add(const Recorder& other) {
    list_.insert(list_.end(), other.list_.begin(), other.list_.end());
    calculations_.insert(calculations_.end(), other.calculations_.begin(), other.calculations_.end());
  }

  [[nodiscard]] bool on() const { return on_; }
  void calculated(Calculation made) {
    if (on_) calculations_.push_back(std::move(made));
  }
  [[nodiscard]] const std::vector<Calculation>& calculations() const { return calculations_; }

  struct Item {
    Evidence evidence;
    const Basis* stands = nullptr;  // where the basis stands, in the tables, the rules or for good
  };
  [[nodiscard]] const std::vector<Item>& list() const { return list_; }

  static From from_of(const Basis& basis, From otherwise);

 private:
  void put(PlanPart part, Taken what, const Basis& basis, Detail value, From from);

  bool on_;
  std::vector<Item> list_;
  std::vector<Calculation> calculations_;
};

// The one caution of whatever the plan counts on and nobody has read: nothing where there is no such value.
[[nodiscard]] std::optional<Finding> recalled_caution(const Recorder& taken, std::span<const Findings* const> findings);

// The list of a plan whose findings and method are final: part by part, each item once.
[[nodiscard]] std::vector<Evidence> evidence_for(const Plan& plan, const Recorder& taken);
// The calculations, part by part, those of a refused method last.
[[nodiscard]] std::vector<Calculation> calculations_of(const Recorder& taken);

}  // namespace mainbore::planning
