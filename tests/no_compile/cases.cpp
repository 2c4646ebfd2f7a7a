// Mistakes that the types refuse, one a name. See CMakeLists.txt.
#include "mainbore/job.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/nominal_size.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/rules_file.hpp"
#include "mainbore/units.hpp"

using namespace mainbore;

[[maybe_unused]] const Length wall = 0.25 * units::inch;
[[maybe_unused]] const Pressure line = 90.0 * units::psi;
[[maybe_unused]] const NominalSize size = NominalSize::inches(8);
Job job;

void takes_length(Length);
void takes_size(NominalSize);

#if defined(A_PRESSURE_PLUS_A_LENGTH)
const auto sum = line + wall;
#elif defined(A_PRESSURE_LESS_A_FORCE)
const auto rest = line - line * wall * wall;
#elif defined(A_PRESSURE_COMPARED_WITH_A_LENGTH)
const bool less = line < wall;
#elif defined(A_PRESSURE_TIMES_A_LENGTH_AS_A_FORCE)
const Force push = line * wall;
#elif defined(A_NOMINAL_SIZE_AS_A_LENGTH)
const Length outside = size;
#elif defined(A_NOMINAL_SIZE_FOR_A_LENGTH)
void call() { takes_length(size); }
#elif defined(A_LENGTH_AS_A_NOMINAL_SIZE)
const NominalSize named = wall;
#elif defined(A_LENGTH_FOR_A_NOMINAL_SIZE)
void call() { takes_size(wall); }
#elif defined(A_NOMINAL_SIZE_PLUS_A_LENGTH)
const auto sum = size + wall;
#elif defined(A_NOMINAL_SIZE_COMPARED_WITH_A_LENGTH)
const bool same = size == wall;
#elif defined(A_BARE_NUMBER_AS_A_LENGTH)
const Length bare = 0.25;
#elif defined(A_BARE_NUMBER_FOR_A_LENGTH)
void call() { takes_length(0.25); }
#elif defined(A_BARE_NUMBER_AS_A_NOMINAL_SIZE)
const NominalSize bare = 8;
#elif defined(A_BARE_NUMBER_AS_A_PRESSURE_OF_A_JOB)
void call() { job.main.pressure = 82.0; }
#elif defined(A_LENGTH_AS_A_BARE_NUMBER)
const double bare = wall;
#elif defined(A_LENGTH_PLUS_A_BARE_NUMBER)
const auto sum = wall + 0.25;
#elif defined(A_LENGTH_AS_A_PRESSURE_OF_A_JOB)
void call() { job.main.pressure = wall; }
#elif defined(A_SQUARE_ROOT_OF_A_LENGTH)
const auto root = sqrt(wall);
#elif defined(A_PLAN_UNDER_RULES_THAT_ARE_GONE)
const Plan made = plan(job, Catalog::builtin(), *load_rules(Catalog::builtin()).rules);
#elif defined(A_PLANNER_UNDER_RULES_THAT_OTHERS_KEEP)
void call(const Rules& rules) { const Planner planner(rules); }
#elif defined(A_PLANNER_UNDER_TABLES_THAT_OTHERS_KEEP)
void call(const Catalog& catalog) { const Planner planner(catalog, *load_rules(catalog).rules); }
#else
void plan_under(std::shared_ptr<const Catalog> catalog) {
  const Planner planner(catalog, *load_rules(*catalog).rules);
  const Plan made = Planner(*load_rules(Catalog::builtin()).rules).plan(job);
}
const Length twice = wall + wall;
const Force push = line * wall * wall;
void call() {
  takes_length(wall);
  takes_size(size);
  job.main.pressure = line;
}
#endif
