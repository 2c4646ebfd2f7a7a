// What a planner of the C interface keeps.
#pragma once

#include <optional>

#include "mainbore.h"
#include "mainbore/job_file.hpp"
#include "mainbore/language.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/settings.hpp"

struct mainbore_planner {
  mainbore::Settings settings;
  mainbore::FromSettings files_taken;  // of the files that the settings name, what was taken and what was set aside
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

// What the call asks for or else the settings say, and what was taken from them, in the order that the command takes it in.
struct InForce {
  UnitSystem units;
  Language language;
  FromSettings from;
};
[[nodiscard]] InForce in_force(const mainbore_planner& planner, const Asked& asked);

}  // namespace mainbore::c
