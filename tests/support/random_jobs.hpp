// How many random jobs a property is asked of: some thousands in the suite, as many as MAINBORE_RANDOM_JOBS says else.
#pragma once

#include <cstdlib>

namespace mainbore::test {

inline int random_jobs(int in_the_suite) {
  const char* const asked = std::getenv("MAINBORE_RANDOM_JOBS");
  return asked == nullptr ? in_the_suite : std::atoi(asked);
}

}  // namespace mainbore::test
