#include <algorithm>

#include "mainbore/finding_words.hpp"
#include "support/catch.hpp"
#include "support/reference_table.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;

namespace {
Verdict verdict_at(Job job, double psi) {
  job.main.pressure = psi * units::psi;
  return plan_of(job).verdict;
}
}  // namespace

// 90 psi by hand and 250 psi powered: common practice, no source; here the figures of an invented machine.
TEST_CASE("a machine's feed limits hold to the pound") {
  Job job = sound_job();
  job.service.stop_rating = 400.0 * units::psi;
  job.machine.feed = Feed::hand;
  CHECK(verdict_at(job, 90.0) == Verdict::go);
  CHECK(verdict_at(job, 90.1) == Verdict::hold);
  job.machine.feed = Feed::powered;
  CHECK(verdict_at(job, 250.0) == Verdict::go);
  CHECK(verdict_at(job, 250.1) == Verdict::hold);
}

// 20 psi: New York State Sanitary Code, 5-1.27.
TEST_CASE("a line under the pressure of any water system is a caution, and never more") {
  Job job = sound_job();
  for (const double psi : {20.0, 19.9, 1.0}) {
    job.main.pressure = psi * units::psi;
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::go);
    const Finding* const low = find(plan, FindingCode::pressure_system_low);
    CHECK((low != nullptr) == (psi < 20.0));
    if (low != nullptr) CHECK(low->severity == Severity::caution);
  }
  job.main.pressurized = false;
  CHECK_FALSE(has(plan_of(job), FindingCode::pressure_system_low));
  Job falls = sound_job();
  falls.main.pressure_low = 12.0 * units::psi;
  CHECK(plan_of(falls).verdict == Verdict::go);
  CHECK(find(plan_of(falls), FindingCode::pressure_system_low)->value == Measure(12.0 * units::psi));
}

TEST_CASE("the feed that serves is chosen when none is asked for") {
  Job job = sound_job();
  job.main.pressure = 90.0 * units::psi;
  CHECK(plan_of(job).setup.feed == Feed::hand);
  job.main.pressure = 91.0 * units::psi;
  CHECK(plan_of(job).setup.feed == Feed::powered);
}

TEST_CASE("a line over the feed limit says what to reduce the main to") {
  Job job = sound_job();
  job.machine.feed = Feed::hand;
  job.main.pressure = 120.0 * units::psi;
  const Plan plan = plan_of(job);
  REQUIRE(plan.pressure.reduce_to);
  CHECK(*plan.pressure.reduce_to / units::psi == 90.0);
  REQUIRE(plan.pressure.governed_by);
  CHECK(plan.pressure.governed_by->link == PressureLink::feed);
  const Finding* finding = find(plan, FindingCode::pressure_over_feed_limit);
  REQUIRE(finding != nullptr);
  CHECK(finding->margin()->base() == Approx(-30.0));
}

TEST_CASE("a stop's rating is met by another stop, not by lowering the main") {
  Job job = sound_job();
  job.service.stop_rating = 60.0 * units::psi;
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::hold);
  CHECK(has(plan, FindingCode::pressure_over_stop_rating));
  CHECK_FALSE(plan.pressure.reduce_to);
}

TEST_CASE("no tap on a main over its own rating") {
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.class_name = "C900 DR 18";  // 235 psi at 73 degF
  job.machine.feed = Feed::powered;
  job.service.stop_rating = 400.0 * units::psi;
  CHECK(verdict_at(job, 235.0) != Verdict::no_go);
  CHECK(verdict_at(job, 235.1) == Verdict::no_go);
  SECTION("and a warm plastic main is rated for less") {
    job.main.temperature = Temperature::fahrenheit(90);  // 0.75 x 235 = 176.25
    CHECK(verdict_at(job, 176.2) != Verdict::no_go);
    CHECK(verdict_at(job, 176.3) == Verdict::no_go);
  }
  SECTION("unless reading its class may show that it is not over") {
    job.main.class_name.clear();
    CHECK(verdict_at(job, 170.0) == Verdict::hold);
  }
  SECTION("and over 140 degF not at all") {
    job.main.temperature = Temperature::fahrenheit(141);
    CHECK(verdict_at(job, 20.0) == Verdict::no_go);
  }
}

namespace {

// Whether the surge holds the job at this line pressure, to the tenth of a psi.
bool surge_over(Job job, double line) {
  job.main.pressure = line * units::psi;
  return has(plan_of(job), FindingCode::pressure_surge_over_rating);
}

Job main_of(Material material, const char* class_name, double size = 8) {
  Job job = sound_job();
  job.main.material = material;
  job.main.size = NominalSize::inches(size);
  job.main.class_name = class_name;
  job.machine.feed = Feed::powered;
  return job;
}

}  // namespace

// PVC: recurring surge within the rating, occasional within 1.6 times it.
TEST_CASE("a surge that nobody calls occasional is taken to recur") {
  Job job = main_of(Material::pvc, "C900 DR 25");
  job.main.installed = 2015;  // 165 psi
  job.main.surge = 60.0 * units::psi;
  CHECK_FALSE(surge_over(job, 105.0));
  CHECK(surge_over(job, 105.1));
  SECTION("and one that is called occasional may reach 1.6 times the rating") {
    job.main.surge = 10.0 * units::psi;
    job.main.occasional_surge = 164.0 * units::psi;
    CHECK_FALSE(surge_over(job, 100.0));
    CHECK(surge_over(job, 100.1));
  }
  SECTION("and where none is given the usual one recurs") {
    job.main.surge.reset();
    CHECK_FALSE(surge_over(job, 125.0));
    CHECK(surge_over(job, 125.1));
  }
  SECTION("and a warm pipe bears less of it") {
    job.main.temperature = Temperature::fahrenheit(90);  // 0.75 x 165 = 123.75
    CHECK_FALSE(surge_over(job, 63.7));
    CHECK(surge_over(job, 63.8));
  }
}

TEST_CASE("an occasional surge is judged as the textbook's example") {
  const ReferenceTable table("pvc_short_term.csv");
  for (const ReferenceRow& row : table.rows()) {
    INFO(row.where());
    Job job = main_of(Material::pvc, "C900 DR 18");
    job.main.installed = 2015;
    job.main.temperature = Temperature::fahrenheit(60);
    job.main.pressure = row.number("line") * units::psi;
    job.main.surge = 0.0 * units::psi;
    job.main.occasional_surge = row.number("occasional_surge") * units::psi;
    CHECK_FALSE(has(plan_of(job), FindingCode::pressure_surge_over_rating));
    job.main.occasional_surge = 250.0 * units::psi;
    const Plan plan = plan_of(job);
    const Finding* finding = find(plan, FindingCode::pressure_surge_over_rating);
    REQUIRE(finding != nullptr);
    CHECK(finding->limit->base() == Approx(row.number("allowed")).margin(table.tolerance()));
  }
}

TEST_CASE("polyethylene bears a recurring surge over its rating, and the plan says that this is recalled") {
  Job job = main_of(Material::polyethylene, "DR 17");  // 100 psi, PE 3408
  job.main.standard = "pe-diod";
  job.main.surge = 60.0 * units::psi;
  CHECK_FALSE(surge_over(job, 90.0));
  CHECK(surge_over(job, 90.1));
  job.main.pressure = 80.0 * units::psi;
  const auto counts_on_factor = [](const Plan& plan) {
    return std::any_of(plan.evidence.begin(), plan.evidence.end(),
                       [](const Evidence& item) { return item.what == Taken::surge_allowance && is_recalled(item); });
  };
  CHECK(counts_on_factor(plan_of(job)));
  CHECK(has(plan_of(job), FindingCode::value_recalled));
  job.main.surge = 10.0 * units::psi;  // within the rating
  CHECK_FALSE(counts_on_factor(plan_of(job)));
}

TEST_CASE("asbestos cement is brittle: its class covers line and surge together") {
  Job job = main_of(Material::asbestos_cement, "Class 150");
  job.main.circumference = 29.5 * units::inch;
  job.main.surge = 60.0 * units::psi;
  CHECK_FALSE(surge_over(job, 90.0));
  CHECK(surge_over(job, 90.1));
  CHECK(plan_of(job).verdict == Verdict::go);
  SECTION("seldom or often") {
    job.main.surge = 10.0 * units::psi;
    job.main.occasional_surge = 60.0 * units::psi;
    CHECK_FALSE(surge_over(job, 90.0));
    CHECK(surge_over(job, 90.1));
  }
  SECTION("and an unknown surge is the usual one") {
    job.main.surge.reset();
    CHECK_FALSE(surge_over(job, 110.0));
    CHECK(surge_over(job, 110.1));
    const Plan plan = plan_of(job);
    CHECK(std::any_of(plan.main.assumed.begin(), plan.main.assumed.end(),
                      [](const Assumption& a) { return a.path == "main.surge"; }));
  }
}

TEST_CASE("iron carries its surge on top of the class") {
  Job job = main_of(Material::cast_iron, "Class B", 6);  // 86 psi, and 100 of surge
  job.main.wall = 0.5 * units::inch;
  job.main.surge = 110.0 * units::psi;
  CHECK_FALSE(surge_over(job, 76.0));
  CHECK(surge_over(job, 76.1));
}

// Class 150 was DR 18 until the edition of 2007 rated it 235; its class covers a surge of 34 psi besides.
TEST_CASE("PVC of an old class has the old rating") {
  Job job = main_of(Material::pvc, "C900 DR 18", 6);
  const auto rating = [&] { return plan_of(job).main.rating.value() / units::psi; };
  SECTION("by its name") {
    for (const char* name : {"Class 150", "C900 Class 150", "CL 150"}) {
      INFO(name);
      job.main.class_name = name;
      job.main.standard = "C900";
      CHECK(rating() == 150.0);
      job.main.installed = 2015;  // the name is still the old one
      CHECK(rating() == 150.0);
      job.main.installed.reset();
    }
  }
  SECTION("by the year it was laid") {
    job.main.installed = 1995;
    CHECK(rating() == 150.0);
    CHECK(plan_of(job).main.rated_as == "Class 150");
    job.main.installed = 2007;  // of either edition
    CHECK(rating() == 150.0);
    job.main.installed = 2008;
    CHECK(rating() == 235.0);
    CHECK(plan_of(job).main.rated_as == "DR 18");
  }
  SECTION("and where neither tells, the lesser, and the plan says so") {
    const auto assumed = [&] {
      const Plan plan = plan_of(job);
      return std::any_of(plan.main.assumed.begin(), plan.main.assumed.end(),
                         [](const Assumption& a) { return a.path == "main.rating"; });
    };
    CHECK(rating() == 150.0);
    CHECK(assumed());
    job.main.class_name = "PC 235";
    CHECK(rating() == 235.0);
    CHECK_FALSE(assumed());
    job.main.installed = 1990;  // no such class was made then
    CHECK(rating() == 150.0);
  }
  SECTION("with the surge that the old class covers") {
    job.main.installed = 1995;
    job.main.surge = 50.0 * units::psi;
    CHECK_FALSE(surge_over(job, 134.0));
    CHECK(surge_over(job, 134.1));
  }
  SECTION("and a line over it is held until the utility has spoken") {
    job.main.installed = 1995;
    job.main.surge = 0.0 * units::psi;
    CHECK(verdict_at(job, 160.0) == Verdict::hold);
    CHECK(has(plan_of(job), FindingCode::pressure_over_pipe_rating) == false);
    job.main.rating = 200.0 * units::psi;
    CHECK(plan_of(job).main.rating.value() / units::psi == 200.0);
    job.main.rating = 300.0 * units::psi;  // more than the pipe was ever rated for
    CHECK(rating() == 235.0);
  }
  SECTION("but sizes that had no class then keep theirs") {
    job.main.size = NominalSize::inches(16);
    job.main.installed = 1995;
    CHECK(rating() == 235.0);
  }
}

TEST_CASE("a main whose rating nobody knows is held until the utility gives it") {
  for (const Material material : {Material::steel, Material::galvanized_steel, Material::concrete_cylinder}) {
    INFO(name_of(material));
    Job job = main_of(material, "", material == Material::galvanized_steel ? 2 : 16);
    job.service.size = NominalSize::inches(0.75);
    const Plan plan = plan_of(job);
    const Finding* finding = find(plan, FindingCode::pressure_rating_unknown);
    REQUIRE(finding != nullptr);
    CHECK(finding->severity == Severity::hold);
    job.main.rating = 150.0 * units::psi;
    const Plan rated = plan_of(job);
    CHECK_FALSE(has(rated, FindingCode::pressure_rating_unknown));
    REQUIRE_FALSE(rated.pressure.limits.empty());
    CHECK(rated.pressure.limits.begin()->link == PressureLink::pipe);
    CHECK(rated.pressure.limits.begin()->limit / units::psi == 150.0);
    // Nothing is known of a surge allowance inside it.
    job.main.surge = 60.0 * units::psi;
    CHECK_FALSE(surge_over(job, 90.0));
    CHECK(surge_over(job, 90.1));
    job.main.pressure = 151.0 * units::psi;
    CHECK(plan_of(job).verdict == Verdict::no_go);
  }
}

TEST_CASE("the utility's rating settles what an unknown class leaves open") {
  Job job = main_of(Material::cast_iron, "", 6);
  job.main.installed = 1910;
  job.main.wall = 0.45 * units::inch;
  job.main.circumference = 22.3 * units::inch;
  CHECK(has(plan_of(job), FindingCode::pressure_over_pipe_rating) == false);  // 7.10 in: class B to D, 86 psi
  job.main.circumference.reset();
  job.main.od.reset();
  CHECK(has(plan_of(job), FindingCode::pressure_over_pipe_rating));  // class A, 43 psi, may be it
  job.main.rating = 100.0 * units::psi;
  CHECK_FALSE(has(plan_of(job), FindingCode::pressure_over_pipe_rating));
  job.main.rating = 60.0 * units::psi;
  CHECK(has(plan_of(job), FindingCode::pressure_over_pipe_rating));
  SECTION("but not over what a known class was made for") {
    job.main.class_name = "Class A";
    job.main.rating = 200.0 * units::psi;
    CHECK(plan_of(job).main.rating.value() / units::psi == 43.0);
  }
}

TEST_CASE("every class of ductile and spun iron has a rating, so none is held for want of one") {
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    const std::string& series = pipe.series->id;
    if (series != "di-thickness-class" && series != "ci-spun") continue;
    INFO(series << ' ' << pipe.size.label() << ' ' << pipe.class_name);
    CHECK(pipe.rating);
  }
}

TEST_CASE("a dry main has no feed limit to meet") {
  Job job = sound_job();
  job.main.pressure = 120.0 * units::psi;
  job.machine.feed = Feed::hand;
  job.main.pressurized = false;
  const Plan plan = plan_of(job);
  CHECK(plan.verdict == Verdict::go);
  CHECK(plan.setup.push.base() == 0.0);
}

TEST_CASE("a surge far over a fitting's rating holds the job") {
  Job job = sound_job();
  job.service.stop_rating = 100.0 * units::psi;  // 1.5 times: 150
  job.main.surge = 80.0 * units::psi;            // 70 + 80
  CHECK_FALSE(has(plan_of(job), FindingCode::pressure_surge_over_fitting));
  job.main.surge = 81.0 * units::psi;
  CHECK(has(plan_of(job), FindingCode::pressure_surge_over_fitting));
  CHECK(plan_of(job).verdict == Verdict::hold);
}

TEST_CASE("the pressure to read is one that lowering the main can meet") {
  Job job = sound_job();
  job.main.material = Material::cast_iron;
  job.main.size = NominalSize::inches(6);
  job.main.class_name.clear();  // class A, rated 43 psi, is among those it may be
  const Plan plan = plan_of(job);
  CHECK(has(plan, FindingCode::pressure_over_pipe_rating));
  const StopNumber* const line = plan.stop_number(ReadingId::line_pressure);
  REQUIRE(line != nullptr);
  CHECK(line->at_most->base() == 70.0);  // as it stands: no more is asked of a pipe that may be overrun
  // The class is not proved: the card names what may clear the hold, and a pipe known by its class is stopped.
  const auto found = std::find_if(plan.findings.begin(), plan.findings.end(),
                                  [](const Finding& f) { return f.code == FindingCode::pressure_over_pipe_rating; });
  CHECK(found->severity == Severity::hold);
  CHECK(line_of(*found, UnitSystem::us) == "Over the pipe's 43 psi: read class or circumference, or ask the utility");
  job.main.class_name = "Class A";
  CHECK(plan_of(job).verdict == Verdict::no_go);
}

TEST_CASE("a lowest pressure above the highest is a contradiction") {
  Job job = sound_job();
  job.main.pressure_low = *job.main.pressure;
  CHECK_FALSE(has(plan_of(job), FindingCode::pressure_low_over_line));
  job.main.pressure_low = *job.main.pressure + 1.0 * units::psi;
  CHECK(has(plan_of(job), FindingCode::pressure_low_over_line));
  CHECK(plan_of(job).verdict == Verdict::hold);
}

TEST_CASE("a ratio that the earlier edition did not know was not laid under it") {
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.standard = "C900";
  job.service.method = Method::saddle;
  for (const char* ratio : {"DR 21", "DR 17", "DR 27.5", "PC 200"}) {
    INFO(ratio);
    job.main.class_name = ratio;
    job.main.installed = 1990;
    CHECK(has(plan_of(job), FindingCode::main_year_contradicts));
    job.main.installed = 2007;
    CHECK_FALSE(has(plan_of(job), FindingCode::main_year_contradicts));
  }
  job.main.class_name = "DR 18";
  job.main.installed = 1990;
  CHECK_FALSE(has(plan_of(job), FindingCode::main_year_contradicts));
  for (const char* both : {"Class 150 DR 18", "DR18 CL150", "C900 Class 150 DR 18", "DR 18 Class 150"}) {
    INFO(both);
    job.main.class_name = both;
    CHECK_FALSE(has(plan_of(job), FindingCode::main_class_not_made));
    CHECK(plan_of(job).main.rating.value() / units::psi == 150.0);
  }
}

TEST_CASE("a gauged wall bounds what rating of asbestos cement is believed") {
  Job job = sound_job();
  job.main.material = Material::asbestos_cement;
  job.main.class_name.clear();
  job.main.rating = 200.0 * units::psi;
  job.main.circumference = 29.0 * units::inch;
  job.main.wall = 0.42 * units::inch;  // Class 150 has 0.6 in at the least
  CHECK(plan_of(job).main.rating.value() / units::psi == 100.0);
  job.main.pressure = 165.0 * units::psi;
  CHECK(plan_of(job).verdict == Verdict::no_go);
}

TEST_CASE("a surge over what a fitting may see names the fitting") {
  Job job = sound_job();
  auto machine = truck_machine();
  machine->body_rating = 100.0 * units::psi;
  job.machine.given = machine;
  job.main.pressure = 80.0 * units::psi;
  job.main.surge = 71.0 * units::psi;
  const Plan plan = plan_of(job);
  const Finding* finding = find(plan, FindingCode::pressure_surge_over_fitting);
  REQUIRE(finding != nullptr);
  CHECK(std::get<std::string_view>(finding->details[1]) == "machine");
  CHECK(std::get<Measure>(finding->details[2]).base() > 100.0);
}
