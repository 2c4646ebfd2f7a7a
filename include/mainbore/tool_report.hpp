// The answers of identify, what_if, trial_taps and pocket_table, to be read.
//
// Nothing is worked out here: every number is the answer's. Text is at most `width` columns wide (40 to 200; the table
// needs and takes 100), ends with a line break and carries no control character but line breaks. The same answer gives
// the same bytes.
#pragma once

#include <span>
#include <string>

#include "mainbore/identify.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/mechanics/trial_taps.hpp"
#include "mainbore/pocket_table.hpp"
#include "mainbore/what_if.hpp"

namespace mainbore {

// "  Line pressure ......... 70 psi. Up to 90 psi; at 91 psi hold: line pressure over the feed limit"
[[nodiscard]] std::string what_if_text(std::span<const WhatIf> facts, UnitSystem system, int width = 80);

// What the pipe may be, what each would allow, what to read next; the warnings first, always.
[[nodiscard]] std::string identify_text(const Identification& found, UnitSystem system, int width = 80);

// The trials as given, what was wanted, and what came of it.
struct TrialSheet {
  std::span<const mechanics::TrialTap> trials;
  InverseLength threads_per_inch;
  mechanics::MakeupGoal wanted;
  mechanics::TrialLimits limits;
  mechanics::TrialResult result;
  FromSettings from_settings = {};
};
[[nodiscard]] std::string trial_taps_text(const TrialSheet& sheet, UnitSystem system, int width = 80);

// By pocket_lines(), one line each, at most 100 columns.
[[nodiscard]] std::string pocket_table_text(const PocketTable& table, UnitSystem system);
// The same as a page of its own for screen and print: no script, nothing from elsewhere, no meaning by color.
[[nodiscard]] std::string pocket_table_html(const PocketTable& table, UnitSystem system);

}  // namespace mainbore
