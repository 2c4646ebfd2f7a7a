// The job as part of something larger: the plan repeats the job it was made for.
#pragma once

#include "io/text/json_writer.hpp"
#include "mainbore/job.hpp"
#include "mainbore/settings.hpp"

namespace mainbore::io {

// As an object under `key`, or on its own without one.
void write_job(JsonWriter& out, std::string_view key, const Job& job, UnitSystem system);

// What was taken from a settings file, as "settings"; nothing where there was none. Facts are written as a job's.
void write_settings(JsonWriter& out, const FromSettings& from, UnitSystem system);

}  // namespace mainbore::io
