// How the program ends: what scripts branch on.
#pragma once

#include "mainbore/finding.hpp"

namespace mainbore::cli {

enum ExitStatus : int {
  exit_go = 0,
  exit_no_go = 1,
  exit_unreadable = 2,  // a job, a rules file or a table could not be understood
  exit_hold = 3,
  exit_usage = 64,     // the command line is wrong
  exit_no_input = 66,  // an input cannot be opened
  exit_internal = 70,
  exit_no_output = 74,  // the result cannot be written
  exit_stopped = 130,   // given up before anything was written, as a shell reports an interrupt
};

struct ExitMeaning {
  ExitStatus status;
  const char* meaning;
};
inline constexpr ExitMeaning exit_meanings[] = {
    {exit_go, "Go; or what was asked for is printed."},
    {exit_no_go, "No-go: not by any method the planner may offer."},
    {exit_unreadable, "A job, a rules file or a table could not be read; every fault is listed on standard error."},
    {exit_hold, "Hold: may be tapped once each listed hold is cleared."},
    {exit_usage, "The command line is wrong."},
    {exit_no_input, "An input cannot be opened."},
    {exit_internal, "An internal error."},
    {exit_no_output, "The result cannot be written."},
    {exit_stopped, "The questions of new were left before their end; nothing is written."},
};

[[nodiscard]] constexpr ExitStatus exit_status(Verdict verdict) {
  return verdict == Verdict::go ? exit_go : verdict == Verdict::hold ? exit_hold : exit_no_go;
}

}  // namespace mainbore::cli
