#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "report/figures/drawing.hpp"
#include "report/figures/figure.hpp"
#include "report/figures/figures.hpp"
#include "report/figures/svg_canvas.hpp"
#include "words/drawings.hpp"

namespace mainbore::report {
namespace {

using words::DrawingWord;

// The dashed outline of what is fitted, in a drawing turned so that the tap is on top: drawn for its place only.
void fitting_outline(Canvas& canvas, Method method, At center, double radius, double bore, double thread_out) {
  const double crown = center.y - radius;
  const double half = std::max(bore * 1.25, 6.0);
  if (method == Method::direct) {
    const double foot = crown - thread_out;
    canvas.box({center.x - half, foot - 26.0}, 2.0 * half, 26.0, "dash");
    canvas.line({center.x - half - 8.0, foot - 15.0}, {center.x + half + 8.0, foot - 15.0}, "dash");
    return;
  }
  // Strap all round, and a boss or branch over the hole.
  canvas.circle(center, radius + 5.0, "dash");
  canvas.box({center.x - half - 4.0, crown - 16.0}, 2.0 * half + 8.0, 12.0, "dash");
  canvas.box({center.x - half, crown - 42.0}, 2.0 * half, 26.0, "dash");
}

// The wall, and the hours of a clock face round it where the tap is not.
void draw_wall(Canvas& canvas, const SectionDrawing& drawing, At center, double scale) {
  const auto on_paper = [&](Length length) { return length / units::inch * scale; };
  const double radius = on_paper(drawing.radius);
  if (drawing.bore) {
    const double bore = on_paper(*drawing.bore);
    canvas.path("M" + xy(center.x - radius, center.y) + "a" + xy(radius, radius) + " 0 1 1 " + xy(2 * radius, 0) + "a" +
                    xy(radius, radius) + " 0 1 1 " + xy(-2 * radius, 0) + "ZM" + xy(center.x - bore, center.y) + "a" +
                    xy(bore, bore) + " 0 1 1 " + xy(2 * bore, 0) + "a" + xy(bore, bore) + " 0 1 1 " + xy(-2 * bore, 0) +
                    "Z",
                "fill");
    canvas.circle(center, bore, "cut pipe-bore");
  }
  canvas.circle(center, radius, "cut pipe-outside");
  for (int hour = 0; hour < 12; ++hour) {
    const double turn = hour * std::numbers::pi / 6.0;
    const At out{std::sin(turn), -std::cos(turn)};
    const double reach = hour % 3 == 0 ? 7.0 : 4.0;
    canvas.line({center.x + out.x * (radius + 2.0), center.y + out.y * (radius + 2.0)},
                {center.x + out.x * (radius + reach), center.y + out.y * (radius + reach)}, "thin");
  }
  const auto clear_of_tap = [&](double degrees) { return std::fabs(drawing.turn_degrees - degrees) > 20.0; };
  if (clear_of_tap(0.0) && clear_of_tap(360.0))
    canvas.words({center.x, center.y - radius - 11.0}, {"12", {}, {}, {}}, Anchor::middle);
  if (clear_of_tap(90.0)) canvas.words({center.x + radius + 10.0, center.y + 4.0}, {"3", {}, {}, {}});
  if (clear_of_tap(270.0)) canvas.words({center.x - radius - 10.0, center.y + 4.0}, {"9", {}, {}, {}}, Anchor::end);
}

// Turned so that the tap is on top.
void draw_tap(Canvas& canvas, Method method, const SectionDrawing& drawing, At center, double scale) {
  const auto on_paper = [&](Length length) { return length / units::inch * scale; };
  const double radius = on_paper(drawing.radius);
  canvas.begin_turned(drawing.turn_degrees, center);
  const double hole = drawing.hole ? on_paper(*drawing.hole) : 0.0;
  const double thread_out = drawing.thread_out ? on_paper(*drawing.thread_out) : 0.0;
  if (hole > 0.0) {
    const double outer = std::sqrt(std::max(radius * radius - hole * hole, 0.0));
    const double bore = drawing.bore ? on_paper(*drawing.bore) : radius * 0.9;
    const double inner = std::sqrt(std::max(bore * bore - hole * hole, 0.0));
    canvas.box({center.x - hole, center.y - radius - 1.5}, 2.0 * hole, radius - inner + 3.0, "blank");
    canvas.line({center.x - hole, center.y - outer}, {center.x - hole, center.y - inner}, "cut");
    canvas.line({center.x + hole, center.y - outer}, {center.x + hole, center.y - inner}, "cut");
  }
  if (drawing.thread_in) {
    const double in = on_paper(*drawing.thread_in);
    const double foot = hole - in / 32.0;
    const double top = hole + thread_out / 32.0;
    canvas.path("M" + xy(center.x - top, center.y - radius - thread_out) + "L" +
                    xy(center.x + top, center.y - radius - thread_out) + "L" +
                    xy(center.x + foot, center.y - radius + in) + "L" + xy(center.x - foot, center.y - radius + in) +
                    "Z",
                "thread");
  }
  fitting_outline(canvas, method, center, radius, hole, thread_out);
  canvas.line({center.x, center.y - radius - 54.0}, {center.x, center.y + radius - 3.0}, "axis");
  canvas.end_turned();
}

void draw_section(Canvas& canvas, const Plan& plan, const SectionDrawing& drawing, At center, double scale) {
  const auto on_paper = [&](Length length) { return length / units::inch * scale; };
  const double radius = on_paper(drawing.radius);
  const double hole = drawing.hole ? on_paper(*drawing.hole) : 0.0;
  const double thread_out = drawing.thread_out ? on_paper(*drawing.thread_out) : 0.0;
  const bool left = drawing.turn_degrees > 180.0;
  // Words stand on the side of the tap.
  const auto column = [&](double x) { return left ? canvas_width - x : x; };
  const Anchor anchor = left ? Anchor::end : Anchor::start;

  draw_wall(canvas, drawing, center, scale);
  draw_tap(canvas, plan.method.kind, drawing, center, scale);

  const double turn = drawing.turn_degrees * std::numbers::pi / 180.0;
  const At axis{std::sin(turn), -std::cos(turn)};
  const At across{-axis.y, axis.x};
  const auto beside_axis = [&](double out, double side) {
    return At{center.x + axis.x * out + across.x * side, center.y + axis.y * out + across.y * side};
  };
  const double side = left ? -1.0 : 1.0;
  const bool direct = plan.method.kind == Method::direct;
  const DrawingWord fitted = direct                               ? DrawingWord::stop
                             : plan.method.kind == Method::saddle ? DrawingWord::saddle
                                                                  : DrawingWord::sleeve;
  struct Pointed {
    At spot;
    Label label;
  };
  std::vector<Pointed> pointed = {
      {beside_axis(radius + 50.0, 0.0),
       canvas.label(DrawingWord::at_clock, {}, {}, {{"clock", plan.location.clock.label()}})},
      {beside_axis(radius + thread_out + (direct ? 8.0 : 10.0), side * std::max(hole, 6.0)),
       canvas.label(fitted, {}, {}, {{"size", plan.method.tap.label() + " in"}})}};
  if (plan.method.hole) {
    pointed.push_back({beside_axis(radius - 2.0, side * hole),
                       canvas.label(DrawingWord::hole, Measure(*plan.method.hole), "method.hole")});
  }
  // The words stand over each other as what they point at does, so that no lines cross.
  std::stable_sort(pointed.begin(), pointed.end(),
                   [](const Pointed& a, const Pointed& b) { return a.spot.y < b.spot.y; });
  double row = 20.0;
  for (const Pointed& point : pointed) {
    canvas.leader(point.spot, {column(244.0), row}, point.label, anchor);
    row += 34.0;
  }
  // The wall is pointed at where the tap is not.
  if (drawing.bore && plan.main.wall_nominal) {
    const double at = (left ? 235.0 : 125.0) * std::numbers::pi / 180.0;
    const double mid = (radius + on_paper(*drawing.bore)) / 2.0;
    canvas.leader({center.x + std::sin(at) * mid, center.y - std::cos(at) * mid}, {column(244.0), center.y + 34.0},
                  canvas.label(DrawingWord::wall, Measure(*plan.main.wall_nominal), "main.wall_nominal"), anchor);
  }
  if (plan.makeup && plan.makeup->far_wall_clearance) {
    const double x = center.x;
    canvas.words({x, center.y + 22.0}, canvas.label(DrawingWord::to_far_wall), Anchor::middle, "t clear");
    const Length clear = *plan.makeup->far_wall_clearance;
    canvas.words({x, center.y + 36.0},
                 {{}, Measure(clear), "makeup.far_wall_clearance", {}, on_rule(clear, canvas.system(), Toward::less)},
                 Anchor::middle, "t clear");
  }
  const double base = center.y + radius;
  for (const double x : {center.x - radius, center.x + radius})
    canvas.line({x, center.y + 4.0}, {x, base + 24.0}, "thin");
  canvas.across(center.x - radius, center.x + radius, base + 20.0,
                canvas.label(DrawingWord::outside, Measure(*plan.main.od), "main.od"));
}

}  // namespace

FigureRoom write_section_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix) {
  const std::string_view heading = say(DrawingWord::section, audience.language);
  const auto drawing = section_drawing(plan);
  if (nothing_is_cut(plan)) return {};
  if (!drawing) return not_drawn(out, heading, say(DrawingWord::measure_first, audience.language), audience.language);
  Figure figure(out, heading);
  constexpr double radius = 60.0;
  const double scale = radius / (drawing->radius / units::inch);
  const double room = drawing->turn_degrees > 180.0 ? canvas_width - 116.0 : 116.0;
  const At center{room, 110.0};
  constexpr double height = 200.0;
  const auto show = [&](Measure measure) { return format_measure(measure, audience); };
  const std::string wall = plan.main.wall_nominal ? show(*plan.main.wall_nominal) : std::string();
  const std::string hole = plan.method.hole ? show(*plan.method.hole) : std::string();
  const std::string thread = drawing->thread_in ? show(*drawing->thread_in) : std::string();
  const std::string text = say(DrawingWord::section_said, audience.language,
                               {{"od", show(*plan.main.od)},
                                {"wall", wall},
                                {"clock", plan.location.clock.label()},
                                {"hole", hole},
                                {"thread", thread}});
  {
    Canvas canvas(out, audience, prefix + "section", height, {scale}, heading, text);
    draw_section(canvas, plan, *drawing, center, scale);
    canvas.scale_bar({drawing->turn_degrees > 180.0 ? 4.0 : 240.0, height - 10.0}, 36.0);
  }
  const bool direct = plan.method.kind == Method::direct;
  const DrawingWord drawn = !direct              ? DrawingWord::dashes_fitting
                            : drawing->thread_in ? DrawingWord::thread_black
                                                 : DrawingWord::dashes_stop;
  std::string caption(say(drawing->bore ? DrawingWord::seen_along : DrawingWord::wall_not_drawn, audience.language));
  return figure.caption((caption += ' ').append(say(drawn, audience.language)), height);
}

}  // namespace mainbore::report
