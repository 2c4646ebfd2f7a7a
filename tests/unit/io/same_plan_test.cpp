// However the facts are written, the plan is the same: inches or millimeters, psi or kPa, whatever the order of the keys.
#include <array>
#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "mainbore/job_file.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"

using namespace mainbore;

namespace {

// The plan without the echo of the job, which keeps the order of its own table anyway.
std::string plan_text(const std::string& job) {
  static const Rules rules = *load_rules(Catalog::builtin()).rules;
  const JobFile read = read_job(job, "job.json", Catalog::builtin());
  for (const Diagnostic& told : read.diagnostics) UNSCOPED_INFO(format_diagnostic(told));
  REQUIRE(read.job);
  return plan_to_json(test::plan_under(*read.job, rules), UnitSystem::us, JsonStyle::compact);
}

struct Facts {
  double wall;      // in
  double pressure;  // psi
  double along;     // in
  double celsius;
  int tap;  // quarter inches
};

std::string number(double value, int decimals) {
  std::string text;
  append_number(text, value, decimals);
  return text;
}

std::string job_of(const Facts& facts, bool si, bool other_order) {
  const std::string wall = si ? number(facts.wall * 25.4, 6) + " mm" : number(facts.wall, 4) + " in";
  const std::string pressure =
      si ? number(facts.pressure * 6.894757293168361, 9) + " kPa" : number(facts.pressure, 2) + " psi";
  const std::string along = si ? number(facts.along * 0.0254, 9) + " m" : number(facts.along, 3) + " in";
  const std::string warmth = si ? number(facts.celsius, 1) + " degC" : number(facts.celsius * 1.8 + 32, 2) + " degF";
  const std::string tap = facts.tap == 3 ? "3/4 in" : facts.tap == 4 ? "1 in" : "2 in";
  const std::vector<std::string> members = {"\"material\":\"ductile iron\"",
                                            "\"size\":\"" + std::string(si ? "203.2 mm" : "8 in") + "\"",
                                            "\"class\":\"PC 350\"",
                                            "\"wall\":\"" + wall + "\"",
                                            "\"pressure\":\"" + pressure + "\"",
                                            "\"temperature\":\"" + warmth + "\"",
                                            "\"carries\":\"water\"",
                                            "\"condition\":\"sound\""};
  std::string main;
  for (std::size_t i = 0; i < members.size(); ++i) {
    main += (i == 0 ? "" : ",") + members[other_order ? members.size() - 1 - i : i];
  }
  const std::string near = "\"nearby\":[{\"what\":\"joint\",\"along\":\"" + along + "\"}]";
  const std::string service = "\"service\":{\"size\":\"" + tap + "\",\"thread\":\"NPT\"}";
  return other_order ? "{" + service + "," + near + ",\"main\":{" + main + "}}"
                     : "{\"main\":{" + main + "}," + near + "," + service + "}";
}

}  // namespace

TEST_CASE("units and the order of keys make no difference to a plan") {
  std::mt19937_64 random(20261125);
  const auto real = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random() % 10001) / 10000.0;
  };
  for (int i = 0; i < 400; ++i) {
    Facts facts{};
    facts.wall = std::round(real(0.15, 0.35) * 1000) / 1000;
    facts.pressure = std::round(real(20, 400) * 10) / 10;
    facts.along = std::round(real(-60, 60) * 4) / 4;
    facts.celsius = std::round(real(1, 38));
    facts.tap = std::array{3, 4, 8}[random() % 3];
    const std::string us = plan_text(job_of(facts, false, false));
    INFO(job_of(facts, false, false) << "\n" << job_of(facts, true, true));
    REQUIRE(plan_text(job_of(facts, true, false)) == us);
    REQUIRE(plan_text(job_of(facts, false, true)) == us);
  }
}
