#include <algorithm>

#include "report/figures/drawing.hpp"
#include "report/figures/figure.hpp"
#include "report/figures/figures.hpp"
#include "report/figures/svg_canvas.hpp"

namespace mainbore::report {
namespace {

class ProfileOnPaper {
 public:
  static constexpr double height = 150.0;

  ProfileOnPaper(const Plan& plan, const ProfileDrawing& drawing, UnitSystem system)
      : service_(*plan.service),
        drawing_(drawing),
        system_(system),
        scale((bottom - top) / ((drawing.highest - drawing.lowest) / units::psi)) {
    const std::size_t columns = drawing.steps.size() + (drawing.least ? 1 : 0);
    column_ = (canvas_width - left) / static_cast<double>(columns);
    const auto fits = [&](Pressure pressure) { return width_of(format_measure(pressure, system)) <= column_; };
    with_unit = (!drawing.least || fits(*drawing.least)) &&
                std::all_of(drawing.steps.begin(), drawing.steps.end(),
                            [&](const PressureStep& step) { return fits(step.after); });
  }

  void draw(Canvas& canvas) const {
    canvas.line({left, y(Pressure())}, {canvas_width, y(Pressure())}, "edge");
    canvas.line({left - 6.0, y(drawing_.wanted)}, {canvas_width, y(drawing_.wanted)}, "dash wanted");
    std::string d = "M" + xy(left - 6.0, y(drawing_.supply)) + "L" + xy(left, y(drawing_.supply));
    for (std::size_t i = 0; i < drawing_.steps.size(); ++i) d += level(i, drawing_.steps[i].after);
    canvas.path(d, "cut profile");
    for (std::size_t i = 0; i < drawing_.steps.size(); ++i) step(canvas, i);
    if (drawing_.least) {
      const std::size_t last = drawing_.steps.size();
      canvas.path("M" + xy(x(last), y(drawing_.steps.back().after)) + level(last, *drawing_.least), "edge");
      names(canvas, last, "least", {"bore", {}, {}, {}});
      value(canvas, last, *drawing_.least, "service.residual_least");
    }
    ends(canvas);
  }

 private:
  static constexpr double left = 62.0;
  static constexpr double top = 18.0;
  static constexpr double bottom = 114.0;

  [[nodiscard]] double x(std::size_t column) const { return left + column_ * static_cast<double>(column); }
  [[nodiscard]] double middle(std::size_t column) const { return x(column) + column_ / 2.0; }
  [[nodiscard]] double y(Pressure pressure) const { return bottom - (pressure - drawing_.lowest) / units::psi * scale; }
  // Down to what is left behind the part of a column, and on at that.
  [[nodiscard]] std::string level(std::size_t column, Pressure left_behind) const {
    return "L" + xy(x(column), y(left_behind)) + "L" + xy(x(column + 1), y(left_behind));
  }

  void names(Canvas& canvas, std::size_t column, std::string_view first, const Label& second) const {
    canvas.line({x(column + 1), bottom}, {x(column + 1), bottom + 4.0}, "thin");
    canvas.words({middle(column), bottom + 15.0}, {std::string(first), {}, {}, {}}, Anchor::middle);
    canvas.words({middle(column), bottom + 28.0}, second, Anchor::middle);
  }

  void value(Canvas& canvas, std::size_t column, Pressure left_behind, std::string_view path) const {
    Label label{{}, Measure(left_behind), path, {}};
    label.rounded = on_gauge(left_behind, system_, Toward::less);
    if (!with_unit) label.rounded.resize(label.rounded.find(' '));
    canvas.words({middle(column), y(left_behind) - 4.0}, label, Anchor::middle, "t clear");
  }

  void step(Canvas& canvas, std::size_t column) const {
    const PressureStep& step = drawing_.steps[column];
    switch (step.part) {
      case LossPart::corporation_stop:
        names(canvas, column, "tap and", {"stop", {}, {}, {}});
        break;
      case LossPart::curb_stop:
        names(canvas, column, "curb", {"stop", {}, {}, {}});
        break;
      case LossPart::line:
        names(canvas, column, "line", {{}, Measure(service_.length, Kind::distance), "service.line.length", {}});
        break;
      case LossPart::rise:
        names(canvas, column, "rise", {{}, Measure(service_.rise, Kind::distance), "service.line.rise", {}});
        break;
      case LossPart::fittings:
      case LossPart::meter:
        names(canvas, column, name_of(step.part), {});
        break;
    }
    value(canvas, column, step.after, "service.losses[" + std::to_string(column) + "].left");
  }

  // What the main gives, and what is wanted in the end, beside their lines and apart from each other.
  void ends(Canvas& canvas) const {
    constexpr double apart = 27.0;
    double supply = y(drawing_.supply);
    double wanted = y(drawing_.wanted);
    if (wanted >= supply) wanted = std::max(wanted, supply + apart);
    else supply = std::max(supply, wanted + apart);
    const auto both = [&](double at, std::string_view what, Pressure pressure, std::string_view path) {
      canvas.words({left - 9.0, at - 3.0}, {std::string(what), {}, {}, {}}, Anchor::end);
      canvas.words({left - 9.0, at + 10.0}, {{}, Measure(pressure), path, {}}, Anchor::end);
    };
    both(supply, "main", drawing_.supply, "service.supply");
    both(wanted, "wanted", drawing_.wanted, "service.residual_wanted");
  }

  const ServicePlan& service_;
  const ProfileDrawing& drawing_;
  UnitSystem system_;
  double column_ = 0.0;

 public:
  double scale;            // units to the psi
  bool with_unit = false;  // every column has room for a pressure with its unit
};

}  // namespace

FigureRoom write_profile_figure(HtmlWriter& out, const Plan& plan, UnitSystem system, const std::string& prefix) {
  constexpr std::string_view heading = "Pressure to the customer";
  const auto drawing = profile_drawing(plan);
  if (!drawing) return {};
  Figure figure(out, heading);
  const ServicePlan& service = *plan.service;
  const auto show = [&](Measure measure) { return format_measure(measure, system); };
  std::string text = "Pressure from the main to the customer at " + show(service.demand.flow) + ". " +
                     on_gauge(service.supply, system) + " in the main";
  for (const PressureStep& step : drawing->steps)
    text += "; behind the " + std::string(name_of(step.part)) + " " + on_gauge(step.after, system, Toward::less);
  text += ". ";
  if (drawing->least)
    text += "With the least bore of the tubing " + on_gauge(*drawing->least, system, Toward::less) + ". ";
  text += "At least " + on_gauge(drawing->wanted, system) + " is wanted.";
  const ProfileOnPaper paper(plan, *drawing, system);
  {
    Canvas canvas(out, system, prefix + "profile", ProfileOnPaper::height, {paper.scale, "psi"}, heading, text);
    paper.draw(canvas);
  }
  std::string caption = "What is left behind each at " + show(service.demand.flow);
  if (!paper.with_unit) caption += ", in " + std::string(shown(service.supply, system).unit);
  caption += ". Pressures to scale, lengths not. Dashes: least wanted. ";
  if (drawing->lowest < Pressure()) caption += "Under the line of nothing: this flow does not arrive. ";
  if (service.meter == nullptr) caption += "Meter not known, left out.";
  else if (service.meter_assumed) caption += "Meter assumed: " + service.meter->size.label() + " in.";
  return figure.caption(caption, ProfileOnPaper::height);
}

}  // namespace mainbore::report
