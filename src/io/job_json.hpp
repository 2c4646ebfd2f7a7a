// The job as part of something larger: the plan repeats the job it was made for.
#pragma once

#include "io/json_writer.hpp"
#include "mainbore/job.hpp"

namespace mainbore::io {

// As an object under `key`, or on its own without one.
void write_job(JsonWriter& out, std::string_view key, const Job& job, UnitSystem system);

}  // namespace mainbore::io
