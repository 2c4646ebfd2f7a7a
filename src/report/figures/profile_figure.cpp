#include <algorithm>
#include <utility>

#include "report/figures/drawing.hpp"
#include "report/figures/figure.hpp"
#include "report/figures/figures.hpp"
#include "report/figures/svg_canvas.hpp"
#include "words/drawings.hpp"
#include "words/terms.hpp"

namespace mainbore::report {
namespace {

using words::DrawingWord;

// Of two words, one under the other.
std::pair<std::string, std::string> in_two(std::string_view words) {
  const std::size_t space = words.rfind(' ');
  return {std::string(words.substr(0, space)), std::string(words.substr(space + 1))};
}

class ProfileOnPaper {
 public:
  static constexpr double height = 150.0;

  ProfileOnPaper(const Plan& plan, const ProfileDrawing& drawing, Audience audience)
      : service_(*plan.service),
        drawing_(drawing),
        audience_(audience),
        scale((bottom - top) / ((drawing.highest - drawing.lowest) / units::psi)) {
    const std::size_t columns = drawing.steps.size() + (drawing.least ? 1 : 0);
    column_ = (canvas_width - left) / static_cast<double>(columns);
    const auto fits = [&](Pressure pressure) { return width_of(format_measure(pressure, audience)) <= column_; };
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
      names(canvas, last, DrawingWord::least_bore);
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

  void names(Canvas& canvas, std::size_t column, DrawingWord word) const {
    const auto [first, second] = in_two(say(word, audience_.language));
    names(canvas, column, first, {second, {}, {}, {}});
  }

  void value(Canvas& canvas, std::size_t column, Pressure left_behind, std::string_view path) const {
    Label label{{}, Measure(left_behind), path, {}};
    label.rounded = on_gauge(left_behind, audience_, Toward::less);
    if (!with_unit) label.rounded.resize(label.rounded.find(' '));
    canvas.words({middle(column), y(left_behind) - 4.0}, label, Anchor::middle, "t clear");
  }

  void step(Canvas& canvas, std::size_t column) const {
    const PressureStep& step = drawing_.steps[column];
    const std::string_view part = words::term(name_of(step.part), audience_.language);
    switch (step.part) {
      case LossPart::corporation_stop:
        names(canvas, column, DrawingWord::tap_and_stop);
        break;
      case LossPart::curb_stop:
        names(canvas, column, DrawingWord::curb_stop);
        break;
      case LossPart::line:
        names(canvas, column, part, {{}, Measure(service_.length, Kind::distance), "service.line.length", {}});
        break;
      case LossPart::rise:
        names(canvas, column, part, {{}, Measure(service_.rise, Kind::distance), "service.line.rise", {}});
        break;
      case LossPart::fittings:
      case LossPart::meter:
        names(canvas, column, part, {});
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
    both(supply, say(DrawingWord::in_main, audience_.language), drawing_.supply, "service.supply");
    both(wanted, say(DrawingWord::wanted, audience_.language), drawing_.wanted, "service.residual_wanted");
  }

  const ServicePlan& service_;
  const ProfileDrawing& drawing_;
  Audience audience_;
  double column_ = 0.0;

 public:
  double scale;            // units to the psi
  bool with_unit = false;  // every column has room for a pressure with its unit
};

}  // namespace

FigureRoom write_profile_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix) {
  const auto said = [&](DrawingWord word, std::initializer_list<words::Figure> figures = {}) {
    return say(word, audience.language, figures);
  };
  const std::string_view heading = say(DrawingWord::profile, audience.language);
  const auto drawing = profile_drawing(plan);
  if (!drawing) return {};
  Figure figure(out, heading);
  const ServicePlan& service = *plan.service;
  const std::string flow = format_measure(service.demand.flow, audience);
  std::string text = said(DrawingWord::profile_said, {{"flow", flow}, {"supply", on_gauge(service.supply, audience)}});
  for (const PressureStep& step : drawing->steps) {
    text += said(DrawingWord::profile_behind, {{"part", words::term(name_of(step.part), audience.language)},
                                               {"pressure", on_gauge(step.after, audience, Toward::less)}});
  }
  if (drawing->least)
    text += said(DrawingWord::profile_least, {{"pressure", on_gauge(*drawing->least, audience, Toward::less)}});
  text += said(DrawingWord::profile_wanted, {{"pressure", on_gauge(drawing->wanted, audience)}});
  const ProfileOnPaper paper(plan, *drawing, audience);
  {
    Canvas canvas(out, audience, prefix + "profile", ProfileOnPaper::height, {paper.scale, "psi"}, heading, text);
    paper.draw(canvas);
  }
  const std::string_view unit = shown(service.supply, audience).unit;
  std::string caption =
      said(DrawingWord::profile_caption, {{"flow", flow}, {"unit", paper.with_unit ? std::string_view() : unit}});
  if (drawing->lowest < Pressure()) caption += " " + said(DrawingWord::not_arriving);
  if (service.meter == nullptr) caption += " " + said(DrawingWord::meter_left_out);
  else if (service.meter_assumed)
    caption += " " + said(DrawingWord::meter_assumed, {{"size", service.meter->size.label() + " in"}});
  return figure.caption(caption, ProfileOnPaper::height);
}

}  // namespace mainbore::report
