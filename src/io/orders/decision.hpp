// What was decided of an order, apart from whose order it is: the part of its record that its facts alone decide.
//
// It is written once, when it is decided. The record of the order, and those of others that say the same, hold its text as
// it stands.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "mainbore/finding_words.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/plan.hpp"

namespace mainbore::io {

enum class RecordShape : std::uint8_t {
  line,     // members of an object in JSON: "verdict":"go" ... "stops":[]
  row,      // cells of CSV from `verdict` to `reasons`, which is empty
  feature,  // properties of a feature: "verdict":"go" ... "stops":""
  none,     // the record is made from the plan itself: there is no text
};

struct Decision {
  Verdict verdict = Verdict::hold;
  std::optional<Clears> waits_for;
  std::string text;
};

// Into memory that `decision` may have already.
void decide(Decision& decision, const Plan& plan, RecordShape shape, UnitSystem units);
[[nodiscard]] Decision decision_of(const Plan& plan, RecordShape shape, UnitSystem units = UnitSystem::us);

}  // namespace mainbore::io
