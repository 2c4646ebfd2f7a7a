// The answers of identify, what_if, trial_taps and pocket_table as JSON and CSV, for scripts.
//
// Where a settings file was read, "settings" says what was taken from it, as in a plan; CSV has no place for it.
// As in a plan: a quantity is {"value", "unit"} in the units asked for, a nominal size is in nominal inches, what is
// not known is left out. Paths and columns only grow; `format` is raised if one ever changes its meaning.
#pragma once

#include <span>
#include <string>

#include "mainbore/job_file.hpp"
#include "mainbore/tool_report.hpp"

namespace mainbore {

inline constexpr int tool_format = 1;

// {"format": 1, "what_if": [{"path", "name", "given", "value", "at", "least", "greatest", "down": [], "up": []}]}
[[nodiscard]] std::string what_if_to_json(std::span<const WhatIf> facts, UnitSystem system, JsonStyle style,
                                          const FromSettings& from_settings = {});
// {"format": 1, "warnings": [], "od", "od_low", "od_high", "fits": [], "nearest": [], "not_judged": [], "next": []}
[[nodiscard]] std::string identification_to_json(const Identification& found, UnitSystem system, JsonStyle style);
// {"format": 1, "settled", "mark", "spread", "spread_turns", "doubts": [], "trials": []}
[[nodiscard]] std::string trial_taps_to_json(const TrialSheet& sheet, UnitSystem system, JsonStyle style);
// {"format": 1, "rules", "thread", "line", "cells": [{"material", "series", "size", "class", "direct", "saddle", ...}]}
[[nodiscard]] std::string pocket_table_to_json(const PocketTable& table, UnitSystem system, JsonStyle style);
// One row a cell (RFC 4180, lines ended by CR LF); the unit of a length stands in its heading: "wall_needed[in]".
[[nodiscard]] std::string pocket_table_to_csv(const PocketTable& table, UnitSystem system);

}  // namespace mainbore
