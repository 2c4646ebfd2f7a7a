// The options of every command: one table of them for the parser and its help pages, the manual page and completions.
// What includes this pays for the option library.
#pragma once

#include <CLI/CLI.hpp>
#include <memory>
#include <optional>
#include <string>

#include "cli/batch_command.hpp"
#include "cli/explain_command.hpp"
#include "cli/identify_command.hpp"
#include "cli/new_command.hpp"
#include "cli/plan_command.hpp"
#include "cli/record_command.hpp"
#include "cli/rules_command.hpp"
#include "cli/schema_command.hpp"
#include "cli/table_command.hpp"
#include "cli/trial_command.hpp"

namespace mainbore::cli {

// What a command line asks for, a part a command. The part of the command named is filled.
struct Requests {
  std::optional<std::string> output;  // -o of whichever command
  PlanRequest plan;
  BatchRequest batch;
  ExplainRequest explain;
  IdentifyRequest identify;
  TrialRequest trial;
  TableRequest table;
  RulesRequest rules;
  SchemaRequest schema;
  NewRequest new_job;
  RecordRequest record;
};

// A parser that fills `requests`, which must outlive it.
[[nodiscard]] std::unique_ptr<CLI::App> command_parser(Requests& requests);

}  // namespace mainbore::cli
