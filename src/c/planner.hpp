// What a planner of the C interface keeps.
#pragma once

#include "mainbore.h"
#include "mainbore/language.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/settings.hpp"

struct mainbore_planner {
  mainbore::Settings settings;
  mainbore::FromSettings from;  // what was taken for every job: the rules
  mainbore::Planner planner;
};

namespace mainbore::c {

// The bits of `what` in mainbore.h.
struct Asked {
  unsigned kind = MAINBORE_VERDICT;
  std::optional<UnitSystem> units;
  std::optional<Language> language;
  JsonStyle style = JsonStyle::pretty;
  bool rows = true;
};
// Nothing where a bit is set that means nothing, or two that exclude each other.
[[nodiscard]] std::optional<Asked> asked_by(unsigned what);

}  // namespace mainbore::c
