// Facts of a job that stand in another file under the job's own keys, such as "machine" and "crew" of a settings file:
// read and checked as in a job, but for what a whole job must have.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "io/job/job_fields.hpp"
#include "io/text/json_text.hpp"
#include "io/text/source_text.hpp"
#include "mainbore/diagnostic.hpp"

namespace mainbore::io {

struct JobPart {
  Job job;                             // whole only when there are no diagnostics
  std::vector<const JobField*> given;  // in the order of the table
  std::vector<Diagnostic> diagnostics;
};

// `members` are nodes of the text whose keys are a job's.
[[nodiscard]] JobPart read_job_part(const JsonText& json, const SourceText& source,
                                    std::span<const std::uint32_t> members, const Catalog& catalog);

}  // namespace mainbore::io
