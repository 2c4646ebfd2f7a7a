// Which value from outside the project is being compared: what docs/verification.md is made from.
//
// Where the environment names a file in MAINBORE_CHECK_LOG, every assertion that read a number of a reference table is
// written to it, as it was evaluated: table, line, column, test, expression. Run with -s, for the framework tells of
// assertions that hold only then.
#pragma once

#include <string>

namespace mainbore::test {

// A number read from a reference table: "npt_dimensions.csv:4", "pitch_gauge".
struct ReferenceRead {
  std::string where;
  std::string column;
};

// The last one that was read since the last call; empty: none. An assertion reads one table: in which order the two sides of
// a comparison are worked out is the compiler's choice.
[[nodiscard]] ReferenceRead take_last_read();

}  // namespace mainbore::test
