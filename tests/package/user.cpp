// The example of README.md, against the installed headers and library.
#include <mainbore/plan.hpp>
#include <mainbore/rules_file.hpp>

using namespace mainbore;

int main() {
  Job job;
  job.main.material = Material::ductile_iron;
  job.main.size = NominalSize::inches(8);
  job.main.pressure = 82.0 * units::psi;
  job.service.size = NominalSize::inches(1);
  const RulesFile rules = load_rules(Catalog::builtin());
  const Plan result = plan(job, Catalog::builtin(), *rules.rules);
  return result.verdict == Verdict::hold ? 0 : 1;
}
