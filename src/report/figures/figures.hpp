// The drawings of a sheet as figures with caption: put on paper as they are, or a sentence on why they are not.
#pragma once

#include <string>

#include "mainbore/language.hpp"
#include "mainbore/plan.hpp"
#include "report/html_writer.hpp"

namespace mainbore::report {

// The height a figure takes on paper, in units of the print style: of its words, and of its drawing at the full width
// of a column.
struct FigureRoom {
  double words = 0.0;
  double drawing = 0.0;
};

// `prefix` makes the ids of this sheet unique in a page of several. A figure the plan has no facts for takes no room.
FigureRoom write_section_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix);
FigureRoom write_threads_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix);
FigureRoom write_along_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix);
FigureRoom write_machine_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix);
FigureRoom write_pit_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix);
FigureRoom write_profile_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix);

}  // namespace mainbore::report
