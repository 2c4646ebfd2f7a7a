// What the figures of a sheet have in common: heading, drawing, caption.
#pragma once

#include <string>
#include <string_view>

#include "mainbore/plan.hpp"
#include "report/figures/figures.hpp"
#include "report/html_writer.hpp"

namespace mainbore::report {

// A number without its unit.
[[nodiscard]] std::string plain(double value, int decimals = 2);
// A point of a path.
[[nodiscard]] std::string xy(double x, double y);

// The drawing may be missing; the caption then says why.
class Figure {
 public:
  Figure(HtmlWriter& out, std::string_view heading);
  // Closes it, and tells the room taken.
  FigureRoom caption(std::string_view text, double drawing = 0.0);

 private:
  HtmlWriter& out_;
};

// By the words for why.
FigureRoom not_drawn(HtmlWriter& out, std::string_view heading, std::string_view why, Language language);

[[nodiscard]] bool nothing_is_cut(const Plan& plan);

}  // namespace mainbore::report
