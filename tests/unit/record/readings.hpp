// A job of the examples, and readings of it that leave nothing open.
#pragma once

#include <fstream>
#include <sstream>
#include <string>

#include "mainbore/job_file.hpp"
#include "mainbore/readings_file.hpp"
#include "support/catch.hpp"
#include "unit/planning/jobs.hpp"

namespace mainbore::test {

inline std::string text_of_example(const std::string& name) {
  std::ifstream file(MAINBORE_SOURCE_DIR "/examples/" + name);
  std::ostringstream text;
  text << file.rdbuf();
  REQUIRE_FALSE(text.str().empty());
  return text.str();
}

inline Job example_job() {
  return *read_job(text_of_example("jobs/ductile_iron_direct.json"), "job", Catalog::builtin()).job;
}

// With these laid over them.
inline Readings example_readings(std::vector<Setting> settings = {}) {
  const ReadingsFile read =
      read_readings(text_of_example("readings/AV-1041.json"), "readings", Catalog::builtin(), settings);
  REQUIRE(read.readings);
  return *read.readings;
}

inline TapRecord record_of(const Job& job, const Readings& readings, UnitSystem units = UnitSystem::us) {
  return tap_record(job, readings, planner_under(default_rules()), units);
}

inline TapRecord example_record(std::vector<Setting> settings = {}) {
  return record_of(example_job(), example_readings(std::move(settings)));
}

}  // namespace mainbore::test
