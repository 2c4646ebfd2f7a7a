// A planner keeps what its plans point into; so do they.
#include "mainbore/planner.hpp"

#include <memory>
#include <stdexcept>
#include <utility>

#include "catalog/embedded.hpp"
#include "mainbore/report.hpp"
#include "support/catch.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

DataFiles builtin_files() {
  DataFiles files;
  for (const embedded::File& file : embedded::files()) {
    std::string& text = files[std::string(file.path)];
    for (const std::string_view piece : file.pieces) text += piece;
  }
  return files;
}

}  // namespace

TEST_CASE("a plan outlives its planner, its tables and its rules") {
  auto tables = std::make_shared<const Catalog>(builtin_files());
  const std::weak_ptr<const Catalog> watched = tables;
  {
    const Plan plan = Planner(tables, *load_rules(*tables).rules).plan(sound_job());
    tables.reset();
    CHECK_FALSE(watched.expired());
    CHECK(text_report(plan) == text_report(plan_of(sound_job())));
  }
  CHECK(watched.expired());
}

TEST_CASE("a copy of a planner plans as the planner does, and keeps as much") {
  std::optional<Planner> first(*load_rules(Catalog::builtin()).rules);
  const Planner second = *first;
  first.reset();
  CHECK(text_report(second.plan(sound_job())) == text_report(plan_of(sound_job())));
  CHECK(&second.catalog() == &Catalog::builtin());
}

TEST_CASE("a planner needs tables and rules") {
  CHECK_THROWS_AS(Planner(nullptr, Rules()), std::invalid_argument);
  CHECK_THROWS_AS(Planner(builtin_catalog(), std::shared_ptr<const Rules>()), std::invalid_argument);
}
