#include "report/figures/figure.hpp"

#include "report/figures/svg_canvas.hpp"
#include "report/sheet_lines.hpp"

namespace mainbore::report {

std::string plain(double value, int decimals) {
  std::string text;
  append_number(text, value, decimals);
  return text;
}

std::string xy(double x, double y) { return coordinate(x) + " " + coordinate(y); }

Figure::Figure(HtmlWriter& out, std::string_view heading) : out_(out) { out_.start("figure").element("h3", heading); }

FigureRoom Figure::caption(std::string_view text, double drawing) {
  out_.prose_element("figcaption", text).end().line();
  constexpr double heading_and_rule = 24.0;
  Lines lines(31.3);
  lines.add(text);
  return {heading_and_rule + 12.0 * lines.count(), drawing * 377.0 / canvas_width};
}

FigureRoom not_drawn(HtmlWriter& out, std::string_view heading, std::string_view why, Language language) {
  return Figure(out, heading).caption(say(words::DrawingWord::not_drawn, language, {{"why", why}}));
}

bool nothing_is_cut(const Plan& plan) { return plan.verdict == Verdict::no_go || plan.method.kind == Method::none; }

}  // namespace mainbore::report
