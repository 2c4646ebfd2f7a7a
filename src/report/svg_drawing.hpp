// The four drawings of a sheet as figures with caption: put on paper as they are, or a sentence on why they are not.
#pragma once

#include <string>

#include "mainbore/plan.hpp"
#include "report/html_writer.hpp"

namespace mainbore::report {

// `prefix` makes the ids of this sheet unique in a page of several. They return the height taken on paper, in the units
// of a canvas.
double write_section_figure(HtmlWriter& out, const Plan& plan, UnitSystem system, const std::string& prefix);
double write_threads_figure(HtmlWriter& out, const Plan& plan, UnitSystem system, const std::string& prefix);
double write_along_figure(HtmlWriter& out, const Plan& plan, UnitSystem system, const std::string& prefix);
double write_machine_figure(HtmlWriter& out, const Plan& plan, UnitSystem system, const std::string& prefix);

}  // namespace mainbore::report
