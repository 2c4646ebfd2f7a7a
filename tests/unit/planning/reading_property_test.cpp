// A reading equal to a stop number is inside it: each bound as it is printed, read back as a gauge reads it.
#include <string>
#include <vector>

#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "unit/planning/random_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

Measure read_back(std::string_view text, Kind kind) {
  const ParsedMeasure read = parse_measure(text, kind);
  INFO(text);
  REQUIRE(read);
  return read.value;
}

// The bounds in the words of a report: "at least 0.31 in", "21-3/8 in to 21-15/16 in".
std::vector<Measure> bounds_as_printed(const StopNumber& reading, UnitSystem system) {
  const std::string text = bounds_in_words(reading, system);
  for (const std::string_view lead : {"at least ", "at most "}) {
    if (text.starts_with(lead)) return {read_back(std::string_view(text).substr(lead.size()), reading.kind())};
  }
  const std::size_t to = text.find(" to ");
  REQUIRE(to != std::string::npos);
  return {read_back(text.substr(0, to), reading.kind()), read_back(text.substr(to + 4), reading.kind())};
}

void enter(Job& job, const Plan& plan, ReadingId id, Measure read) {
  switch (id) {
    case ReadingId::line_pressure:
      job.main.pressure = Pressure::from_base(read.base());
      return;
    case ReadingId::wall:
      job.main.wall = Length::from_base(read.base());
      return;
    case ReadingId::circumference:
      job.main.circumference = Length::from_base(read.base());
      return;
    case ReadingId::pipe_temperature:
      job.main.temperature = Temperature::fahrenheit(read.base());
      return;
    case ReadingId::joint_distance: {
      Nearby joint;
      joint.what = NearbyThing::joint;
      joint.along = plan.location.shift + Length::from_base(read.base());
      if (!job.nearby) job.nearby.emplace();
      job.nearby->push_back(joint);
      return;
    }
    case ReadingId::surge:
      job.main.surge = Pressure::from_base(read.base());
      return;
    case ReadingId::air_temperature:
      job.air_temperature = Temperature::fahrenheit(read.base());
      return;
  }
}

std::string verdict_and_holds(const Plan& plan) {
  std::string text = std::string(name_of(plan.verdict)) + " " + std::string(name_of(plan.method.kind));
  for (const Finding& finding : plan.findings) {
    if (finding.severity >= Severity::hold) text += " " + std::string(name_of(finding.code));
  }
  return text;
}

std::string in_words(const Job& job) {
  std::string text = std::string(name_of(*job.main.material)) + " " + job.main.size->label() + " [" +
                     job.main.class_name + "] tap " + job.service.size->label() + " at " +
                     std::to_string(job.main.pressure->base()) + " psi";
  const auto add = [&](const char* name, double value) {
    text += std::string(", ") + name + " " + std::to_string(value);
  };
  if (job.main.wall) add("wall", job.main.wall->base());
  if (job.main.od) add("od", job.main.od->base());
  if (job.main.circumference) add("circumference", job.main.circumference->base());
  if (job.main.installed) add("laid", *job.main.installed);
  if (job.main.temperature) add("temperature", job.main.temperature->fahrenheit());
  if (job.main.rating) add("rated", job.main.rating->base());
  if (job.main.surge) add("surge", job.main.surge->base());
  if (job.main.occasional_surge) add("occasional surge", job.main.occasional_surge->base());
  if (job.machine.given) {
    add("seat from", job.machine.given->saddle_od_from->base());
    add("seat to", job.machine.given->saddle_od_to->base());
  }
  return text;
}

}  // namespace

TEST_CASE("a reading equal to a stop number as printed is inside it") {
  RandomJobs random(21);
  const int jobs = random_jobs(3000);
  for (int i = 0; i < jobs; ++i) {
    const Job job = half_read_job(random);
    const Plan before = plan_of(job);
    INFO(in_words(job) << ": " << verdict_and_holds(before));
    for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
      // Each by itself, then the least of all together, then the greatest.
      std::array<Job, 2> together = {job, job};
      std::string all;
      for (const StopNumber& reading : before.stop_numbers) {
        const std::vector<Measure> bounds = bounds_as_printed(reading, system);
        enter(together[0], before, reading.id, bounds.front());
        enter(together[1], before, reading.id, bounds.back());
        all += bounds_in_words(reading, system) + ", ";
        for (const Measure bound : bounds) {
          Job read = job;
          enter(read, before, reading.id, bound);
          const Plan after = plan_of(read);
          INFO(words_of(reading.id) << " " << bounds_in_words(reading, system) << ", read " << bound.base() << ": "
                                    << verdict_and_holds(after));
          CHECK(after.verdict <= before.verdict);
        }
      }
      for (const Job& read : together) {
        const Plan after = plan_of(read);
        INFO("all of " << all << ": " << verdict_and_holds(after));
        CHECK(after.verdict <= before.verdict);
      }
    }
  }
}
