// The plans of the jobs that are shipped as examples.
#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "mainbore/job_file.hpp"
#include "support/catch.hpp"
#include "unit/planning/jobs.hpp"

namespace mainbore::test {

inline std::vector<Plan> example_plans() {
  std::vector<Plan> plans;
  for (const auto& entry : std::filesystem::directory_iterator(MAINBORE_SOURCE_DIR "/examples/jobs")) {
    std::ifstream in(entry.path());
    const std::string text((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
    const JobFile read = read_job(text, entry.path().filename().string(), Catalog::builtin());
    REQUIRE(read.job);
    plans.push_back(plan_of(*read.job));
  }
  REQUIRE(plans.size() > 5);
  return plans;
}

}  // namespace mainbore::test
