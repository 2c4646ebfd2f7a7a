#include <numbers>

#include "support/catch.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Catch::Approx;

namespace {
double inches(std::optional<Length> length) { return length.value() / units::inch; }
}  // namespace

TEST_CASE("a known class gives its diameter, its wall and the wall it guarantees") {
  const Plan plan = plan_of(sound_job());
  REQUIRE(plan.main.candidates.size() == 1);
  CHECK(inches(plan.main.od) == 9.05);
  CHECK(inches(plan.main.wall_nominal) == 0.25);
  CHECK(inches(plan.main.wall_least) == Approx(0.20));
  CHECK(plan.main.rating.value() / units::psi == 350.0);
}

TEST_CASE("an unknown class is planned as the thinnest that fits") {
  Job job = sound_job();
  job.main.class_name.clear();
  const Plan plan = plan_of(job);
  CHECK(plan.main.candidates.size() > 1);
  CHECK(plan.main.governing->class_name == "PC 350");
  CHECK(has(plan, FindingCode::main_class_unknown));
  CHECK_FALSE(plan.main.settle);  // all measure alike outside, and a wall tells none apart
}

TEST_CASE("old pit-cast iron of two diameters asks for the circumference") {
  Job job = sound_job();
  job.main.material = Material::cast_iron;
  job.main.size = NominalSize::inches(6);
  job.main.class_name.clear();
  job.main.installed = 1905;
  const Plan plan = plan_of(job);
  CHECK(has(plan, FindingCode::main_od_unsettled));
  REQUIRE(plan.main.settle);
  CHECK(plan.main.settle->id == ReadingId::circumference);

  SECTION("and a tape round it tells class A from the others") {
    job.main.circumference = 21.7 * units::inch;  // 6.90 in
    const Plan measured = plan_of(job);
    CHECK_FALSE(has(measured, FindingCode::main_od_unsettled));
    for (const Pipe* pipe : measured.main.candidates) CHECK(inches(pipe->od) < 7.10);
  }
}

// No dimension of asbestos cement is tabulated, but a reading that no such pipe can give is found out all the same.
TEST_CASE("asbestos cement is held against what it can measure") {
  Job job = sound_job();
  job.main.material = Material::asbestos_cement;
  job.main.class_name = "Class 150";
  job.main.circumference = 29.5 * units::inch;  // 9.39 in outside
  job.main.wall = 0.72 * units::inch;
  CHECK(plan_of(job).verdict == Verdict::go);
  SECTION("a tape that reads too little or too much") {
    for (const double circumference : {26.0, 35.0}) {
      INFO(circumference);
      job.main.circumference = circumference * units::inch;
      const Plan plan = plan_of(job);
      CHECK(has(plan, FindingCode::main_od_contradicts));
      CHECK(plan.verdict == Verdict::hold);
    }
  }
  SECTION("a wall thinner than the class can have been made with") {
    job.main.wall = 0.55 * units::inch;
    CHECK(has(plan_of(job), FindingCode::main_wall_thin));
    job.main.class_name = "Class 100";
    CHECK_FALSE(has(plan_of(job), FindingCode::main_wall_thin));
  }
  SECTION("a wall thicker than any") {
    job.main.wall = 1.6 * units::inch;
    CHECK(has(plan_of(job), FindingCode::main_wall_impossible));
  }
  SECTION("and of an unknown class the weakest decides") {
    job.main.class_name.clear();
    job.main.wall = 0.45 * units::inch;
    const Plan plan = plan_of(job);
    CHECK(plan.main.governing->class_name == "Class 100");
    CHECK_FALSE(has(plan, FindingCode::main_wall_thin));
    job.main.wall = 0.35 * units::inch;
    CHECK(has(plan_of(job), FindingCode::main_wall_thin));
  }
}

TEST_CASE("contradictions are holds with the reason") {
  Job job = sound_job();
  SECTION("ductile iron laid in 1938") {
    job.main.installed = 1938;
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::main_year_contradicts));
    CHECK(plan.verdict == Verdict::hold);
  }
  SECTION("PVC to a standard of 1975, laid when there was other PVC") {
    job.main.material = Material::pvc;
    job.main.class_name = "C900 DR 18";
    job.main.installed = 1974;
    const Plan plan = plan_of(job);
    REQUIRE(has(plan, FindingCode::main_year_contradicts));
    CHECK(std::get<std::string_view>(find(plan, FindingCode::main_year_contradicts)->details[0]) == "AWWA C900");
    job.main.installed = 1975;
    CHECK_FALSE(has(plan_of(job), FindingCode::main_year_contradicts));
    job.main.class_name = "D2241 SDR 21";
    job.main.installed = 1974;
    CHECK_FALSE(has(plan_of(job), FindingCode::main_year_contradicts));
  }
  SECTION("a main laid after the day of the tap") {
    job.main.installed = 2027;
    job.date = "2026-05-04";
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::main_not_yet_laid));
    CHECK(plan.verdict == Verdict::hold);
    job.main.installed = 2026;
    CHECK_FALSE(has(plan_of(job), FindingCode::main_not_yet_laid));
    job.main.installed = 2027;
    job.date = "the fourth of May";
    CHECK_FALSE(has(plan_of(job), FindingCode::main_not_yet_laid));
  }
  SECTION("steel, galvanized steel and copper from before they were made into pipe") {
    for (const Material material : {Material::steel, Material::galvanized_steel, Material::copper}) {
      INFO(name_of(material));
      job.main.material = material;
      job.main.class_name.clear();
      job.main.size = NominalSize::inches(4);
      job.main.installed = 1810;
      CHECK(has(plan_of(job), FindingCode::main_year_contradicts));
      job.main.installed = 1958;
      CHECK_FALSE(has(plan_of(job), FindingCode::main_year_contradicts));
    }
  }
  SECTION("a circumference that no such pipe has") {
    job.main.circumference = 24.0 * units::inch;
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::main_od_contradicts));
    CHECK(plan.verdict == Verdict::hold);
  }
  SECTION("a wall thicker than the radius") {
    job.main.wall = 5.0 * units::inch;
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::main_wall_impossible));
    CHECK(plan.verdict == Verdict::hold);
    CHECK(plan.main.wall_basis == WallBasis::catalog);
  }
  SECTION("a plastic wall thicker than any that is made") {
    job.main.material = Material::pvc;
    job.main.class_name.clear();
    job.main.wall = 0.66 * units::inch;
    CHECK_FALSE(has(plan_of(job), FindingCode::main_wall_impossible));
    job.main.wall = 0.85 * units::inch;  // DR 14 is 0.646
    CHECK(has(plan_of(job), FindingCode::main_wall_impossible));
    CHECK(plan_of(job).verdict == Verdict::hold);
  }
  SECTION("a dimension ratio in the wall's place") {
    job.main.wall = 0.9 * units::inch;
    CHECK(has(plan_of(job), FindingCode::main_wall_impossible));
  }
  SECTION("iron-pipe-size diameter called C900") {
    job.main.material = Material::pvc;
    job.main.class_name = "C900 DR 18";
    job.main.od = 8.625 * units::inch;
    const Plan plan = plan_of(job);
    REQUIRE(has(plan, FindingCode::main_od_contradicts));
    CHECK(plan.verdict == Verdict::hold);
    // It names the pipe the reading would fit.
    CHECK(find(plan, FindingCode::main_od_contradicts)->details[1].index() != 0);
  }
  SECTION("a class that is not made in this size") {
    job.main.class_name = "PC 150";
    CHECK(has(plan_of(job), FindingCode::main_class_not_made));
  }
  SECTION("tape and caliper that disagree") {
    job.main.od = 9.05 * units::inch;
    job.main.circumference = 30.0 * units::inch;
    CHECK(has(plan_of(job), FindingCode::main_readings_disagree));
  }
  SECTION("a size nobody makes") {
    job.main.size = NominalSize::inches(7);
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::main_not_in_catalogue));
    CHECK(plan.verdict != Verdict::go);
  }
}

TEST_CASE("a measured wall counts for its reading less the gauge's uncertainty") {
  Job job = sound_job();
  job.main.wall = 0.27 * units::inch;
  const Plan plan = plan_of(job);
  CHECK(plan.main.wall_basis == WallBasis::measured);
  CHECK(inches(plan.main.wall_nominal) == 0.27);
  CHECK(inches(plan.main.wall_least) == Approx(0.26));
}

TEST_CASE("a wall thinner than the class was made is never tapped directly") {
  Job job = sound_job();
  job.main.wall = 0.15 * units::inch;
  const Plan plan = plan_of(job);
  CHECK(has(plan, FindingCode::main_wall_thin));
  CHECK(plan.method.kind != Method::direct);
  REQUIRE(rejection(plan, Method::direct) != nullptr);
  CHECK(plan.verdict == Verdict::hold);
}

TEST_CASE("the old PVC class names are the same pipe") {
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.class_name = "C900 Class 150";
  job.main.installed = 1994;
  const Plan by_class = plan_of(job);
  job.main.class_name = "C900 DR 18";
  const Plan by_ratio = plan_of(job);
  REQUIRE(by_class.main.candidates.size() == 1);
  CHECK(by_class.main.governing == by_ratio.main.governing);
}

TEST_CASE("a gauged wall and the stop number for it are one threshold") {
  Job job = sound_job();  // least wall 0.20 in, so the gauge must read 0.21
  job.main.wall = 0.21 * units::inch;
  CHECK(plan_of(job).verdict == Verdict::go);
  job.main.wall = 0.20 * units::inch;
  CHECK(plan_of(job).verdict == Verdict::hold);

  // A plastic wall is as it was made: its least is 0.646 in, and a gauge that reads hundredths may say 0.64.
  job.main.material = Material::pvc;
  job.main.class_name = "C900 DR 14";
  job.main.wall = 0.645 * units::inch;
  CHECK_FALSE(has(plan_of(job), FindingCode::main_wall_thin));
  job.main.wall = 0.63 * units::inch;
  CHECK(has(plan_of(job), FindingCode::main_wall_thin));
}

TEST_CASE("a diameter that no pipe of the name can have is a contradiction, tabulated or not") {
  Job job = sound_job();
  job.main.material = Material::asbestos_cement;
  job.main.class_name.clear();
  for (const double inches : {6.9, 40.0}) {
    job.main.od = inches * units::inch;
    CHECK(has(plan_of(job), FindingCode::main_od_contradicts));
  }
  job.main.od = 9.4 * units::inch;
  CHECK_FALSE(has(plan_of(job), FindingCode::main_od_contradicts));
}

TEST_CASE("a pipe colder than ice is held, whatever it is made of") {
  for (const Material material : {Material::ductile_iron, Material::cast_iron, Material::pvc}) {
    INFO(name_of(material));
    Job job = sound_job();
    job.main.material = material;
    job.main.class_name.clear();
    job.main.temperature = Temperature::fahrenheit(31.9);
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::main_freezing));
    CHECK(plan.verdict >= Verdict::hold);
    job.main.temperature = Temperature::fahrenheit(32);
    CHECK_FALSE(has(plan_of(job), FindingCode::main_freezing));
  }
}

TEST_CASE("a class that was never made is answered with those that were, kind by kind") {
  Job job = sound_job();
  job.main.class_name = "PC 999";
  const Plan plan = plan_of(job);
  const Finding* finding = find(plan, FindingCode::main_class_not_made);
  REQUIRE(finding != nullptr);
  const auto word = [&](std::size_t i) { return std::get<std::string_view>(finding->details[i]); };
  CHECK(word(0).starts_with("PC "));
  CHECK(finding->details[1].index() == 0);  // in this size there is one pressure class
  CHECK(word(2).starts_with("TC "));
  CHECK(word(3).starts_with("TC "));
}

TEST_CASE("a wall read too thin rests on the column that decides what is thin") {
  const Pipe* recalled = nullptr;
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    const bool weaker = pipe.wall && pipe.wall_minus > Length() && pipe.how_of(PipeColumn::wall) == How::published &&
                        pipe.how_of(PipeColumn::wall_minus) == How::memory;
    if (weaker && pipe.size == NominalSize::inches(8)) recalled = &pipe;
  }
  REQUIRE(recalled != nullptr);
  Job job = sound_job();
  job.main.material = recalled->series->material;
  job.main.size = recalled->size;
  job.main.class_name = recalled->class_name;
  job.main.wall = *recalled->wall - recalled->wall_minus - 0.02 * units::inch;
  const Plan plan = plan_of(job);
  const Finding* const thin = find(plan, FindingCode::main_wall_thin);
  REQUIRE(thin != nullptr);
  CHECK(thin->basis[0]->how == How::memory);
}
