// Rules as a utility would write them, for tests.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"

namespace mainbore::test {

// The defaults with this text laid over them; nothing: the defaults.
inline Rules rules_of(const std::string& text) {
  std::vector<RuleText> files;
  if (!text.empty()) files.push_back({"own.json", text});
  RulesFile read = load_rules(Catalog::builtin(), files);
  for (const Diagnostic& d : read.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
  REQUIRE(read.rules);
  return std::move(*read.rules);
}

}  // namespace mainbore::test
