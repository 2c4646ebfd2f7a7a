#include "mainbore/pocket_table.hpp"

#include "mainbore/tool_report.hpp"
#include "support/approx.hpp"
#include "support/plan_under.hpp"
#include "support/reference_table.hpp"
#include "support/rules_of.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

const PocketTable& whole_table() {
  static const PocketTable table = [] {
    PocketOptions options;
    options.machine = truck_machine();
    return pocket_table(planner_under(default_rules()), options);
  }();
  return table;
}

// A job written out here, apart from pocket_job(): this pipe, everything else sound.
Job job_on(const Pipe& pipe, NominalSize tap, Method method) {
  Job job = sound_job();
  job.main.material = pipe.series->material;
  job.main.size = pipe.size;
  job.main.standard = pipe.series->id;
  job.main.class_name = pipe.class_name;
  job.main.pressure = 40.0 * units::psi;
  job.main.surge = Pressure();
  job.service.size = tap;
  job.service.method = method;
  // The table leaves the lengths of saddle and stop to the day's plan.
  job.service.saddle_height = Length();
  job.service.stop_length = Length();
  return job;
}

void compare(const PocketCell& cell, const PocketTap& said, Method method) {
  std::optional<NominalSize> go;
  std::optional<NominalSize> any;
  for (const NominalSize tap : pocket_taps) {
    const Plan plan = plan_of(job_on(*cell.pipe, tap, method));
    const bool done = plan.verdict != Verdict::no_go && plan.method.kind == method && plan.method.count == 1;
    if (done && !any) any = tap;
    if (done && plan.verdict == Verdict::go && !go) go = tap;
  }
  INFO(cell.pipe->series->id << " " << cell.pipe->size.label() << " " << cell.pipe->class_name << " "
                             << name_of(method));
  REQUIRE(said.go == go);
  REQUIRE(said.largest() == any);
  REQUIRE(said.held.has_value() == (any != go));
  REQUIRE(said.hold.has_value() == said.held.has_value());
  REQUIRE(said.refused.has_value() == !any.has_value());
}

}  // namespace

TEST_CASE("every cell of the pocket table says what the planner decides") {
  REQUIRE(whole_table().cells.size() == Catalog::builtin().pipes().size());
  for (const PocketCell& cell : whole_table().cells) {
    compare(cell, cell.direct, Method::direct);
    compare(cell, cell.saddle, Method::saddle);
    if (const auto largest = cell.direct.largest()) {
      const Plan plan = plan_of(job_on(*cell.pipe, *largest, Method::direct));
      REQUIRE(cell.threads_nominal.has_value() == plan.engagement.has_value());
      if (plan.engagement) {
        CHECK(*cell.threads_nominal == plan.engagement->at_nominal.complete_threads);
        CHECK(cell.wall_needed == plan.engagement->wall_needed);
      }
      CHECK(cell.od == plan.setup.saddle_od);
      REQUIRE(cell.chain_needed.has_value() == plan.setup.chain.has_value());
      if (plan.setup.chain) {
        CHECK(cell.chain_needed == plan.setup.chain->needed);
        CHECK(cell.chain_extensions == plan.setup.chain->extensions);
      }
    }
    if (const auto largest = cell.saddle.largest()) {
      const Plan plan = plan_of(job_on(*cell.pipe, *largest, Method::saddle));
      CHECK(cell.od == plan.main.od);
    }
  }
}

TEST_CASE("the job behind a cell is settled to its one pipe") {
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    INFO(pipe.series->id << " " << pipe.size.label() << " " << pipe.class_name);
    const Plan plan = plan_of(pocket_job(pipe, NominalSize::inches(0.75), Method::saddle, {}));
    REQUIRE(plan.main.candidates.size() == 1);
    REQUIRE(plan.main.candidates.front() == &pipe);
  }
}

TEST_CASE("threads in the pocket table are those worked out apart from it") {
  PocketOptions options;
  options.materials = {Material::ductile_iron};
  options.thread = ThreadStandard::npt;
  const PocketTable table = pocket_table(planner_under(default_rules()), options);
  const ReferenceTable reference("iron_threads_in_class_wall.csv");
  int compared = 0;
  for (const PocketCell& cell : table.cells) {
    if (!cell.direct.largest() || !cell.threads_nominal) continue;
    for (const auto& row : reference.rows()) {
      if (row.text("tap") != cell.direct.largest()->label() || row.number("od") != cell.pipe->od->base() ||
          row.number("wall") != cell.pipe->wall->base()) {
        continue;
      }
      INFO(row.where());
      CHECK(*cell.threads_nominal == Approx(row.number("threads")).margin(reference.tolerance()));
      CHECK(cell.threads_judged);
      ++compared;
    }
  }
  CHECK(compared >= 5);
}

TEST_CASE("a utility's own rules move the table") {
  const std::vector<RuleText> own = {{"district.json",
                                      R"({"name": "Ashby Vale", "direct": {"largest": [
             {"material": "ductile iron", "main_from": "4 in", "largest": "5/8 in"}]},
           "saddle": {"largest": [{"material": "PVC", "largest": "none", "why": "cut in a tee"}]}})"}};
  const RulesFile read = load_rules(Catalog::builtin(), own);
  REQUIRE(read.rules);
  PocketOptions options;
  options.main_from = NominalSize::inches(6);
  options.main_to = NominalSize::inches(8);
  const PocketTable table = pocket_table(planner_under(*read.rules), options);
  int iron = 0;
  for (const PocketCell& cell : table.cells) {
    CHECK(cell.pipe->size >= NominalSize::inches(6));
    CHECK(cell.pipe->size <= NominalSize::inches(8));
    if (cell.pipe->series->material == Material::ductile_iron) {
      CHECK(cell.direct.largest() == NominalSize::inches(0.625));
      ++iron;
    } else {
      CHECK_FALSE(cell.direct.largest());
    }
    if (cell.pipe->series->material == Material::pvc) {
      REQUIRE(cell.saddle.refused);
      CHECK(cell.saddle.refused->code == FindingCode::saddle_not_allowed);
    }
  }
  CHECK(iron > 0);
}

TEST_CASE("threads counted by recalled dimensions are marked, also where the utility's requirement judges them") {
  const Rules own = rules_of(R"({"direct": {"required_threads": {"value": 3, "reference": "Standard 4.1"}}})");
  PocketOptions options;
  options.materials = {Material::ductile_iron};
  options.main_from = options.main_to = NominalSize::inches(6);
  const PocketTable table = pocket_table(planner_under(own), options);
  REQUIRE_FALSE(table.cells.empty());
  for (const PocketCell& cell : table.cells) {
    CHECK(cell.threads_judged);
    CHECK(cell.threads_recalled);
  }
  const std::string text = pocket_table_text(table, UnitSystem::us);
  INFO(text);
  CHECK(text.find(" ~") != std::string::npos);
  CHECK(text.find("From recalled thread dimensions: check this value.") != std::string::npos);
  CHECK(text.find("judged by the maximum") == std::string::npos);
}

TEST_CASE("the table is of mains: what a utility asks of day and service leaves it as it is") {
  const std::vector<RuleText> own = {{"district.json", R"({"place": {"least_cover": "5 ft"}, "main": {
    "closed_season": [{"from": "11-01", "to": "04-01"}, {"from": "03-20", "to": "05-10"}], "coldest_air": "20 degF"},
    "line": {"least_cover": "5 ft", "from_gas": "3 ft", "from_electric": "1 ft", "from_sewer": "10 ft"},
    "water": {"most_premises": 1, "by_dwellings": [{"dwellings_from": 1, "tap": "5/8 in", "line": "1 in", "meter": "1 in"}]}})"}};
  const RulesFile read = load_rules(Catalog::builtin(), own);
  REQUIRE(read.rules);
  PocketOptions options;
  options.materials = {Material::ductile_iron, Material::pvc};
  options.main_from = NominalSize::inches(6);
  options.main_to = NominalSize::inches(12);
  const PocketTable usual = pocket_table(planner_under(default_rules()), options);
  const PocketTable table = pocket_table(planner_under(*read.rules), options);
  REQUIRE(table.cells.size() == usual.cells.size());
  for (std::size_t i = 0; i < table.cells.size(); ++i) {
    CHECK(table.cells[i].direct.go == usual.cells[i].direct.go);
    CHECK(table.cells[i].saddle.go == usual.cells[i].saddle.go);
  }
}

TEST_CASE("no figure of a machine holds a tap of a table that has no machine") {
  for (const PocketCell& cell : pocket_table(planner_under(default_rules()), {}).cells) {
    CHECK(cell.direct.hold != FindingCode::machine_figures_missing);
  }
}

TEST_CASE("lines of the pocket table hold every cell once and only equals together") {
  std::size_t cells = 0;
  for (const PocketLine& line : pocket_lines(whole_table())) {
    REQUIRE(line.first <= line.last);
    for (const PocketCell* cell = line.first; cell <= line.last; ++cell) {
      ++cells;
      CHECK(cell->pipe->series == line.first->pipe->series);
      CHECK(cell->pipe->size == line.first->pipe->size);
      CHECK(cell->direct.largest() == line.first->direct.largest());
      CHECK(cell->direct.go == line.first->direct.go);
      CHECK(cell->saddle.largest() == line.first->saddle.largest());
      CHECK(cell->od == line.first->od);
      CHECK(line.governing->threads_least.value_or(0.0) <= cell->threads_least.value_or(0.0));
    }
  }
  CHECK(cells == whole_table().cells.size());
}
