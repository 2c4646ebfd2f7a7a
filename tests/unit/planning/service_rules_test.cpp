// What a utility asks of the service, of the day and of joints: each rule set by it alone, held where the fact is missing,
// and never the better for having been written.
#include <string>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/job_file.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "support/rules_of.hpp"
#include "unit/planning/jobs.hpp"
#include "unit/planning/whole_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

// How near to it a thing may lie before the tap is moved, by halves of an inch.
double kept_from(const Rules& rules, NearbyThing what) {
  for (double inches = 0.5; inches < 100; inches += 0.5) {
    Job job = sound_job();
    job.nearby = {at(what, inches)};
    if (!has(plan_under(job, rules), FindingCode::place_moved)) return inches;
  }
  return 0.0;
}

double joint_read(const Rules& rules) {
  return plan_under(sound_job(), rules).stop_number(ReadingId::joint_distance)->at_least->base();
}

void held(const Job& job, const Rules& rules, FindingCode code) {
  const Plan plan = plan_under(job, rules);
  INFO(name_of(code));
  CHECK(has(plan, code));
  CHECK(plan.verdict == Verdict::hold);
}

}  // namespace

TEST_CASE("bell and plain end keep distances of their own, and a joint the larger") {
  const Rules both = rules_of(R"({"place": {"clearances": {"bell": "30 in",
    "plain end": {"value": "12 in", "reason": "r"}, "joint": {"value": "12 in", "reason": "r"}}}})");
  CHECK(kept_from(both, NearbyThing::bell) == 30);
  CHECK(kept_from(both, NearbyThing::plain_end) == 12);
  CHECK(kept_from(both, NearbyThing::joint) == 30);
  CHECK(joint_read(both) == 30);
  // A joint that the utility sets is that of a joint; bell and plain end stay as they are.
  const Rules joint = rules_of(R"({"place": {"clearances": {"joint": {"value": "12 in", "reason": "r"}}}})");
  CHECK(kept_from(joint, NearbyThing::joint) == 12);
  CHECK(kept_from(joint, NearbyThing::bell) == 24);
  // One end made looser leaves a joint as it was.
  const Rules end = rules_of(R"({"place": {"clearances": {"plain end": {"value": "12 in", "reason": "r"}}}})");
  CHECK(kept_from(end, NearbyThing::joint) == 24);
  CHECK(kept_from(end, NearbyThing::plain_end) == 12);
}

TEST_CASE("cover of the service, and what it stays clear of, are held where short or not known") {
  const Rules rules = rules_of(R"({"line": {"least_cover": "5 ft", "from_gas": "3 ft", "from_electric": "1 ft",
                                            "from_sewer": "18 in"}})");
  Job job = sound_job();
  held(job, rules, FindingCode::service_cover_unknown);
  held(job, rules, FindingCode::service_line_near_unknown);
  LineFacts& line = job.service.line;
  line.cover = 5.0 * units::foot;
  line.gas = 3.0 * units::foot;
  line.electric = 1.0 * units::foot;
  line.sewer = 18.0 * units::inch;
  CHECK(plan_under(job, rules).verdict == Verdict::go);
  CHECK(plan_of(job).verdict == Verdict::go);
  for (const auto fact : {&LineFacts::gas, &LineFacts::electric, &LineFacts::sewer}) {
    Job near = job;
    near.service.line.*fact = *(near.service.line.*fact) - 0.1 * units::inch;
    held(near, rules, FindingCode::service_line_near);
    (near.service.line.*fact).reset();
    held(near, rules, FindingCode::service_line_near_unknown);
  }
  line.cover = 59.9 * units::inch;
  held(job, rules, FindingCode::service_cover);
}

// 5 ft from a sewer: International Plumbing Code, 603.2.
TEST_CASE("a service closer to another line than is usual is a caution, where the utility asks for no distance") {
  const std::array<std::pair<std::optional<Length> LineFacts::*, Length>, 3> lines = {
      {{&LineFacts::gas, 12.0 * units::inch},
       {&LineFacts::electric, 12.0 * units::inch},
       {&LineFacts::sewer, 5.0 * units::foot}}};
  for (const auto& [fact, usual] : lines) {
    Job job = sound_job();
    job.service.line.*fact = usual;
    CHECK_FALSE(has(plan_of(job), FindingCode::service_line_close));
    for (const Length way : {usual - 0.1 * units::inch, Length()}) {
      job.service.line.*fact = way;
      const Plan plan = plan_of(job);
      CHECK(plan.verdict == Verdict::go);
      REQUIRE(has(plan, FindingCode::service_line_close));
      CHECK(find(plan, FindingCode::service_line_close)->severity == Severity::caution);
    }
    const Rules rules = rules_of(R"({"line": {"from_gas": "3 in", "from_electric": "3 in", "from_sewer": "3 in"}})");
    CHECK_FALSE(has(plan_under(job, rules), FindingCode::service_line_close));
    held(job, rules, FindingCode::service_line_near);
  }
}

TEST_CASE("air colder than the utility taps in holds the job, and is read on the day") {
  const Rules rules = rules_of(R"({"main": {"coldest_air": "20 degF"}})");
  Job job = sound_job();
  held(job, rules, FindingCode::main_air_unknown);
  job.air_temperature = Temperature::fahrenheit(20);
  const Plan mild = plan_under(job, rules);
  CHECK(mild.verdict == Verdict::go);
  REQUIRE(mild.stop_number(ReadingId::air_temperature) != nullptr);
  CHECK(mild.stop_number(ReadingId::air_temperature)->at_least->base() == 20);
  job.air_temperature = Temperature::fahrenheit(19.5);
  held(job, rules, FindingCode::main_air_cold);
  CHECK(plan_of(job).stop_number(ReadingId::air_temperature) == nullptr);
}

TEST_CASE("sizes by dwellings ask for the largest that a row holding has") {
  const Rules rules = rules_of(R"({"water": {"by_dwellings": [
    {"dwellings_from": 1, "dwellings_to": 1, "tap": "3/4 in", "line": "3/4 in", "meter": "5/8 in"},
    {"dwellings_from": 2, "dwellings_to": 4, "tap": "1 in", "line": "1-1/4 in", "meter": "1 in"},
    {"dwellings_from": 3, "dwellings_to": 4, "tap": "1-1/2 in"}]}})");
  Job job = sound_job();
  held(job, rules, FindingCode::service_dwellings_unknown);
  job.service.dwellings = 1;
  job.service.meter = NominalSize::inches(0.625);
  job.service.line.size = NominalSize::inches(1);
  const auto asks = [&](std::string_view what) {
    const Plan plan = plan_under(job, rules);
    for (const Finding& finding : plan.findings) {
      if (finding.code != FindingCode::service_dwellings_size) continue;
      if (detail_of(finding, UnitSystem::us).find(what) != std::string::npos) return true;
    }
    return false;
  };
  CHECK_FALSE(has(plan_under(job, rules), FindingCode::service_dwellings_size));
  job.service.dwellings = 2;
  CHECK(asks("service line of 1-1/4 in or larger; this one is 1 in"));
  CHECK(asks("meter of 1 in or larger; this one is 5/8 in"));
  CHECK_FALSE(asks("a tap"));
  job.service.meter.reset();
  CHECK(asks("meter of 1 in or larger, and the job names none"));
  job.service.dwellings = 4;
  CHECK(asks("a tap of 1-1/2 in or larger"));
  job.service.dwellings = 5;
  held(job, rules, FindingCode::service_dwellings_unlisted);
}

TEST_CASE("one connection for one premises") {
  const Rules rules = rules_of(R"({"water": {"most_premises": 1}})");
  Job job = sound_job();
  held(job, rules, FindingCode::service_premises_unknown);
  job.service.premises = 1;
  CHECK(plan_under(job, rules).verdict == Verdict::go);
  job.service.premises = 2;
  held(job, rules, FindingCode::service_premises);
}

TEST_CASE("rules of the service and of the day never better a verdict, nor does a fact left out") {
  WholeJobs random(61);
  const auto inches = [&](int most) { return std::to_string(random.below(static_cast<std::size_t>(most))) + " in"; };
  const int sets = random_jobs(3000) / 20;
  int worse = 0;
  for (int i = 0; i < sets; ++i) {
    std::string text = R"({"line": {"least_cover": ")" + inches(90) + '"';
    for (const char* const key : {"from_gas", "from_electric", "from_sewer"}) {
      if (random.chance(40)) text += ", \"" + std::string(key) + "\": \"" + inches(120) + '"';
    }
    text += R"(}, "water": {"by_dwellings": [)";
    for (std::size_t row = random.below(3) + 1; row > 0; --row) {
      const std::size_t from = random.below(6);
      text += R"({"dwellings_from": )" + std::to_string(from) + R"(, "dwellings_to": )" +
              std::to_string(from + random.below(6)) + R"(, "tap": "1 in", "meter": ")" +
              (random.chance(50) ? "1 in" : "1-1/2 in") + "\"}" + (row > 1 ? ", " : "]");
    }
    if (random.chance(50)) text += R"(, "most_premises": )" + std::to_string(1 + random.below(3));
    text += "}";
    if (random.chance(60)) text += R"(, "main": {"coldest_air": ")" + std::to_string(random.below(60)) + " degF\"}";
    const std::string ends = R"(, "place": {"clearances": {"bell": {"value": ")" + inches(60) +
                             R"(", "reason": "r"}, "plain end": {"value": ")" + inches(60) + R"(", "reason": "r"}}})";
    const Rules rules = rules_of(text + "}");
    const Rules with_ends = rules_of(text + ends + "}");
    for (int j = 0; j < 20; ++j) {
      Job job = random.next();
      const Plan usual = plan_of(job);
      const Plan asked = plan_under(job, rules);
      INFO(text << "}\n" << job_to_json(job, UnitSystem::us, JsonStyle::compact));
      REQUIRE(asked.verdict >= usual.verdict);
      worse += asked.verdict > usual.verdict ? 1 : 0;
      Job silent = job;
      silent.air_temperature.reset();
      silent.service.dwellings.reset();
      silent.service.premises.reset();
      silent.service.line.cover.reset();
      silent.service.line.gas.reset();
      silent.service.line.electric.reset();
      silent.service.line.sewer.reset();
      REQUIRE(plan_under(silent, rules).verdict >= asked.verdict);
      // What may be either end is never judged by the smaller distance.
      Job ended = job;
      ended.nearby = {at(NearbyThing::joint, random.real(-80, 80))};
      const Plan joint = plan_under(ended, with_ends);
      for (const NearbyThing end : {NearbyThing::bell, NearbyThing::plain_end}) {
        ended.nearby->front().what = end;
        REQUIRE(joint.verdict >= plan_under(ended, with_ends).verdict);
      }
    }
  }
  CHECK(worse > 10);
}

TEST_CASE("inches and millimeters give the same plan") {
  WholeJobs random(62);
  const Rules rules =
      rules_of(R"({"line": {"least_cover": "48 in", "from_gas": "36 in"}, "place": {"least_cover": "42 in"}})");
  const int jobs = random_jobs(1500);
  for (int i = 0; i < jobs; ++i) {
    // By sixteenths, as a rule is read.
    std::vector<int> sixteenths;
    for (const double around : {0.3, 9.05, 28.4, 40.0, 24.0, 18.0, 50.0, 36.0}) {
      sixteenths.push_back(static_cast<int>(16.0 * around * random.real(0.8, 1.2)));
    }
    const auto job_in = [&](bool millimeters) {
      std::size_t next = 0;
      const auto length = [&] {
        const double inches = sixteenths[next++] / 16.0;
        return '"' + (millimeters ? std::to_string(25.4 * inches) + " mm" : std::to_string(inches) + " in") + '"';
      };
      std::string text =
          R"({"main": {"material": "ductile iron", "size": "8 in", "class": "PC 350", "pressure": "70 psi")";
      for (const char* const fact : {"wall", "od", "circumference", "cover"})
        text += ", \"" + std::string(fact) + "\": " + length();
      text += R"(}, "nearby": [{"what": "bell", "along": )" + length() + R"(}, {"what": "tap", "along": )" + length();
      text += R"(}], "service": {"size": "1 in", "line": {"cover": )" + length();
      return text + R"(, "gas": )" + length() + "}}}";
    };
    const JobFile inches = read_job(job_in(false), "in.json", Catalog::builtin());
    const JobFile millimeters = read_job(job_in(true), "mm.json", Catalog::builtin());
    for (const Diagnostic& d : inches.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
    INFO(job_in(false) << "\n" << job_in(true));
    REQUIRE(inches.job);
    REQUIRE(millimeters.job);
    const Plan one = plan_under(*inches.job, rules);
    const Plan other = plan_under(*millimeters.job, rules);
    CHECK(one.verdict == other.verdict);
    CHECK(one.method.kind == other.method.kind);
    REQUIRE(one.findings.size() == other.findings.size());
    for (std::size_t f = 0; f < one.findings.size(); ++f) CHECK(one.findings[f].code == other.findings[f].code);
  }
}
