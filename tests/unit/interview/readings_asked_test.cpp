// The readings of a finished tap, asked line by line: the same settings in either language.
#include "interview/readings_asked.hpp"

#include <fstream>
#include <sstream>

#include "mainbore/readings_file.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "unit/interview/person.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

struct Asked {
  std::optional<std::vector<Setting>> told;
  std::string heard;
};

// Of the shipped job of a direct tap; `lines` answer the questions in order, and Enter the rest.
Asked asked(std::string lines, Language language) {
  std::ifstream file(MAINBORE_SOURCE_DIR "/examples/jobs/ductile_iron_direct.json");
  std::ostringstream job;
  job << file.rdbuf();
  const Plan plan = planner_under(default_rules()).plan(*read_job(job.str(), "job", Catalog::builtin()).job);
  std::istringstream in(lines + std::string(60, '\n'));
  std::ostringstream out;
  Asked result;
  result.told = interview::ask_readings(in, out, plan, {UnitSystem::us, language}, Catalog::builtin());
  result.heard = out.str();
  return result;
}

std::string flat(const Asked& result) {
  std::string text;
  for (const Setting& setting : result.told.value()) text += setting.path + '=' + setting.value + '\n';
  return text;
}

}  // namespace

TEST_CASE("readings answered in Spanish are those answered in English") {
  const Asked english =
      asked("\n2026-05-04\n07:30\n10:15\n70 psi\n\n28-1/2 in\n.28 in\n\n7 ft\n\n\nsound\n1:30\n", Language::english);
  const Asked spanish =
      asked("\n2026-05-04\n07:30\n10:15\n70 lb/pulg2\nno s\u00e9\n28-1/2 pulg\n.28 pulg\n\n7 pies\n\n\nsano\n1:30\n",
            Language::spanish);
  INFO(spanish.heard);
  CHECK(flat(spanish) == flat(english));
  CHECK(flat(english).find("condition=sound") != std::string::npos);
  CHECK(spanish.heard.find("Presi\u00f3n de l\u00ednea (m\u00e1ximo 100 psi)") != std::string::npos);
}

TEST_CASE("a reading that cannot be taken is asked for again, and stop records nothing") {
  const Asked again = asked("\n04.05.\n?\n2026-05-04\n7\n7:00\n", Language::spanish);
  CHECK(again.heard.find("\"04.05.\" no es un d\u00eda del calendario") != std::string::npos);
  CHECK(again.heard.find("\"7\" no es una hora del d\u00eda") != std::string::npos);
  CHECK(flat(again) == "date=2026-05-04\nstart=7:00\n");
  CHECK_FALSE(asked("\nalto\n", Language::spanish).told);
  CHECK_FALSE(asked("\nstop\n", Language::english).told);
}
