// The example of README.md, against the installed headers and library.
#include <mainbore/mainbore.hpp>

using namespace mainbore;

static_assert(MAINBORE_VERSION_MAJOR >= 0);

int main() {
  Job job;
  job.main.material = Material::ductile_iron;
  job.main.size = NominalSize::inches(8);
  job.main.pressure = 82.0 * units::psi;
  job.service.size = NominalSize::inches(1);
  const Planner planner(*load_rules(Catalog::builtin()).rules);
  const Plan plan = planner.plan(job);
  return plan.verdict == Verdict::hold ? 0 : 1;
}
