// What the boxes of a sheet take: a list in the page, hidden, that its script reads. Each entry is a reading of the record:
// its name, kind and unit, the ends of what can be, and the bounds of its stop number as they are printed.
#pragma once

#include <string>

#include "mainbore/language.hpp"
#include "mainbore/plan.hpp"
#include "report/html_writer.hpp"

namespace mainbore::report {

// The names under which boxes of the page stand in a readings file.
[[nodiscard]] std::string reads_of(ReadingId id);
enum class HoldBox : std::uint8_t { found, by };
[[nodiscard]] std::string reads_of(FindingCode hold, HoldBox box);

void write_boxes(HtmlWriter& out, const Plan& plan, Audience audience);

}  // namespace mainbore::report
