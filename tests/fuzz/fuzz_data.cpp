// Any bytes at all as one of the tables of --data: the tables are refused with a message that names the file, or they
// hold, and jobs can be planned under them. The first bytes say which table, and which stretch of it the rest stands in
// place of, so that what is tried is nearly a table.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "catalog/embedded.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/catalog_error.hpp"
#include "mainbore/field_tests.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/rules_file.hpp"
#include "text/foreign.hpp"

namespace {

using namespace mainbore;

void require(bool holds) {
  if (!holds) std::abort();
}

const std::vector<std::string> jobs = {
    R"({"main":{"material":"PVC","size":"6 in","class":"DR 18","pressure":"60 psi","temperature":"100 degF"},"service":{"size":"1 in"}})",
    R"({"main":{"material":"ductile iron","size":"8 in","pressure":"82 psi"},"service":{"size":"1 in","line":{"material":"copper, type K","length":"80 ft"},"demand":{"flow":"12 gpm"}}})",
};

DataFiles tables() {
  DataFiles files;
  for (const embedded::File& file : embedded::files()) {
    std::string& text = files[std::string(file.path)];
    for (const std::string_view piece : file.pieces) text += piece;
  }
  return files;
}

void plan_under(const std::shared_ptr<const Catalog>& tables) {
  const Catalog& catalog = *tables;
  RulesFile rules = load_rules(catalog);
  if (!rules.rules) return;
  const Planner planner(tables, *std::move(rules.rules));
  for (const std::string& text : jobs) {
    const JobFile read = read_job(text, "job.json", catalog);
    if (!read.job) continue;
    const std::string made = plan_to_json(planner.plan(*read.job), UnitSystem::us, JsonStyle::compact);
    require(!text::first_not_utf8(made) && made.find(":inf") == std::string::npos &&
            made.find(":nan") == std::string::npos);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const DataFiles sound = tables();
  if (size < 4) return 0;
  auto file = sound.begin();
  std::advance(file, data[0] % sound.size());
  DataFiles files = sound;
  std::string& text = files.at(file->first);
  const std::size_t at = (data[1] * 256u + data[2]) % text.size();
  text.replace(at, data[3] % 32, std::string(reinterpret_cast<const char*>(data) + 4, size - 4));
  try {
    const auto tables = std::make_shared<const Catalog>(files);
    (void)load_field_tests(*tables);
    plan_under(tables);
  } catch (const CatalogError& fault) {
    const std::string_view message = fault.what();
    require(message.find(".json") != std::string_view::npos && text::visible(message) == message);
  }
  return 0;
}
