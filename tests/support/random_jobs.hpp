// How many random jobs a property is asked of: as many as the suite has time for, or more if MAINBORE_RANDOM_JOBS says so.
#pragma once

#include <algorithm>
#include <cstdlib>

namespace mainbore::test {

inline int random_jobs(int in_the_suite) {
  const char* const asked = std::getenv("MAINBORE_RANDOM_JOBS");
  return asked == nullptr ? in_the_suite : std::max(in_the_suite, std::atoi(asked));
}

}  // namespace mainbore::test
