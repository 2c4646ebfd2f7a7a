#include <algorithm>
#include <cmath>

#include "report/figures/drawing.hpp"
#include "report/figures/figure.hpp"
#include "report/figures/figures.hpp"
#include "report/figures/svg_canvas.hpp"
#include "words/drawings.hpp"

namespace mainbore::report {
namespace {

using words::DrawingWord;

class MachineOnPaper {
 public:
  static constexpr double middle = 88.0;

  MachineOnPaper(const Plan& plan, const MachineDrawing& drawing) : plan_(plan), drawing_(drawing) {
    // The machine stands over the pipe by what is known of it, or by half a diameter.
    Length above = drawing.radius;
    if (drawing.standoff) above = *drawing.standoff + 1.5 * units::inch;
    if (drawing.chain) above = std::max(above, drawing.chain->hook.up - drawing.radius + 2.0 * units::inch);
    const double tall = (2.0 * drawing.radius + above) / units::inch;
    Length wide = drawing.radius + 0.6 * units::inch;
    if (drawing.chain) wide = std::max({wide, drawing.chain->hook.right, drawing.chain->radius});
    scale = std::min(168.0 / tall, 78.0 / (wide / units::inch));
    crown_ = 20.0 + on_paper(above);
    radius_ = on_paper(drawing.radius);
    height = std::max(crown_ + 2.0 * radius_ + 40.0, 196.0);
  }

  [[nodiscard]] double on_paper(Length length) const { return length / units::inch * scale; }

  void draw(Canvas& canvas) const {
    const At center{middle, crown_ + radius_};
    if (drawing_.bore) canvas.circle(center, on_paper(*drawing_.bore), "edge");
    canvas.circle(center, radius_, "cut pipe-outside");
    if (drawing_.method == Method::direct) on_pipe(canvas, center);
    else on_stop(canvas, center);
    bar(canvas);
    depths(canvas);
    canvas.scale_bar({2.0, height - 8.0});
  }

 private:
  // Outlines of the machine are for its place only: nobody gave its shape.
  void on_pipe(Canvas& canvas, At center) const {
    const double base = drawing_.chain ? on_paper(drawing_.chain->hook.up) - radius_ : 14.0;
    const double half = drawing_.chain ? on_paper(drawing_.chain->hook.right) : 30.0;
    const double body = std::max(on_paper(drawing_.bar) * 1.8, 9.0);
    // Machine saddle: between the round pipe and the flat base.
    const double seat = std::min(body + 8.0, radius_ * 0.8);
    const double dip = radius_ - std::sqrt(radius_ * radius_ - seat * seat);
    canvas.path("M" + xy(middle - seat, crown_ + dip) + "A" + xy(radius_, radius_) + " 0 0 1 " +
                    xy(middle + seat, crown_ + dip) + "V" + coordinate(crown_ - 7.0) + "H" + coordinate(middle - seat) +
                    "Z",
                "fill edge");
    canvas.box({middle - body, 18.0}, 2.0 * body, crown_ - 25.0, "dash");
    canvas.line({middle - half - 4.0, crown_ - base}, {middle + half + 4.0, crown_ - base}, "dash");
    if (!drawing_.chain) return;
    const ChainDrawing& chain = *drawing_.chain;
    const auto spot = [&](Spot at, double side) {
      return At{center.x + side * on_paper(at.right), center.y - on_paper(at.up)};
    };
    const At right = spot(chain.hook, 1.0);
    const At left = spot(chain.hook, -1.0);
    const At right_touch = spot(chain.touch, 1.0);
    const At left_touch = spot(chain.touch, -1.0);
    const double r = on_paper(chain.radius);
    canvas.path("M" + xy(right.x, right.y) + "L" + xy(right_touch.x, right_touch.y) + "A" + xy(r, r) + " 0 " +
                    (chain.touch.up > Length() ? "1" : "0") + " 1 " + xy(left_touch.x, left_touch.y) + "L" +
                    xy(left.x, left.y),
                "chain");
    for (const At hook : {right, left}) canvas.circle(hook, 3.0, "blank cut");
    if (plan_.setup.chain) {
      canvas.words({middle, center.y + radius_ + 18.0},
                   canvas.label(DrawingWord::chain, Measure(plan_.setup.chain->needed), "setup.chain.needed"),
                   Anchor::middle);
    }
  }

  void on_stop(Canvas& canvas, At center) const {
    const double half = std::max(on_paper(drawing_.bar) * 1.4, 8.0);
    canvas.circle(center, radius_ + 5.0, "dash");
    canvas.box({middle - half - 5.0, crown_ - 16.0}, 2.0 * half + 10.0, 12.0, "dash");
    canvas.box({middle - half, crown_ - 46.0}, 2.0 * half, 30.0, "dash");
    canvas.line({middle - half - 10.0, crown_ - 31.0}, {middle + half + 10.0, crown_ - 31.0}, "edge");
    if (crown_ - 64.0 > 18.0) canvas.box({middle - half - 3.0, 18.0}, 2.0 * half + 6.0, crown_ - 64.0, "dash");
    canvas.words({middle, center.y + radius_ + 20.0}, canvas.label(DrawingWord::on_open_stop), Anchor::middle);
  }

  void bar(Canvas& canvas) const {
    const double half = std::max(on_paper(drawing_.bar), 2.0);
    const double point = drawing_.standoff ? crown_ - on_paper(*drawing_.standoff) : crown_ - 30.0;
    const double shoulder = point - (drawing_.method == Method::direct ? half * 0.6 : 0.0);  // a shell cutter is flat
    canvas.path("M" + xy(middle - half, 4.0) + "V" + coordinate(shoulder) + "L" + xy(middle, point) + "L" +
                    xy(middle + half, shoulder) + "V4",
                "blank cut");
    canvas.line({middle, 2.0}, {middle, crown_ + 2.0 * radius_ - 4.0}, "axis");
    if (!drawing_.standoff || drawing_.method != Method::direct) return;
    const double x = 4.0;
    canvas.line({x, point}, {middle, point}, "thin");
    canvas.line({x, crown_}, {middle, crown_}, "thin");
    canvas.upright(x + 4.0, point, crown_, {{}, Measure(*drawing_.standoff), {}, {}}, Anchor::start);
  }

  // The strokes, drawn larger: depth of the tool's point below the outside of the pipe.
  void depths(Canvas& canvas) const {
    constexpr double left = 196.0;
    constexpr double top = 62.0;
    const double room = height - top - 34.0;
    Length deepest;
    for (const auto& depth : {drawing_.through, drawing_.full, drawing_.tap_stop}) {
      if (depth) deepest = std::max(deepest, *depth);
    }
    const bool direct = drawing_.method == Method::direct;
    if (!(deepest > Length())) {
      canvas.words({left, top}, canvas.label(DrawingWord::depths_missing));
      canvas.words({left, top + 15.0}, canvas.label(DrawingWord::wall_missing));
      return;
    }
    // The bore shows below the wall.
    if (drawing_.through) deepest = std::max(deepest, 1.5 * *drawing_.through);
    const double step = room / (deepest / units::inch);
    const auto y_of = [&](Length depth) { return top + depth / units::inch * step; };
    if (drawing_.through) canvas.box({left, top}, canvas_width - left, y_of(*drawing_.through) - top, "fill");
    canvas.line({left, top}, {canvas_width, top}, "cut");
    if (drawing_.through) canvas.line({left, y_of(*drawing_.through)}, {canvas_width, y_of(*drawing_.through)}, "edge");
    canvas.words({left, 12.0}, canvas.label(DrawingWord::depth_of_point), Anchor::start, "t soft");
    canvas.words({left, 25.0}, canvas.label(DrawingWord::below_outside), Anchor::start, "t soft");

    const double drill = left + 8.0;
    canvas.words({drill, top - 18.0}, canvas.label(direct ? DrawingWord::drill : DrawingWord::cutter), Anchor::start,
                 "t strong");
    canvas.words({drill, top - 5.0}, canvas.label(DrawingWord::mark_touch));
    const Length end = drawing_.full ? *drawing_.full : *drawing_.through;
    canvas.upright(drill, top, y_of(end), {}, Anchor::start);
    if (drawing_.through)
      mark(canvas, drill, y_of(*drawing_.through), DrawingWord::mark_through,
           {{},
            Measure(*drawing_.through),
            drawing_.by_marks ? "marks.breakthrough" : "main.wall_nominal",
            {},
            on_rule(*drawing_.through, canvas.system(), Toward::less)});
    if (drawing_.full) {
      // Under the words of the mark above, where a cutter has next to no point.
      constexpr double two_lines = 28.0;
      const double y = y_of(*drawing_.full);
      const double words = drawing_.through ? std::max(y, y_of(*drawing_.through) + two_lines) : y;
      mark(canvas, drill, y, DrawingWord::full_width,
           {{},
            Measure(*drawing_.full),
            drawing_.by_marks ? "marks.full_width" : "setup.drill_stroke",
            {},
            on_rule(*drawing_.full, canvas.system(), Toward::more)},
           words - y);
    }
    if (!direct) return;

    const double tap = left + 90.0;
    canvas.words({tap, top - 18.0}, canvas.label(DrawingWord::tap), Anchor::start, "t strong");
    canvas.words({tap, top - 5.0}, canvas.label(DrawingWord::mark_catches));
    if (drawing_.tap_stop) {
      canvas.upright(tap, top, y_of(*drawing_.tap_stop), {}, Anchor::start);
      mark(canvas, tap, y_of(*drawing_.tap_stop), DrawingWord::mark_stop,
           {{},
            Measure(*drawing_.tap_stop),
            "makeup.tip_depth",
            {},
            on_rule(*drawing_.tap_stop, canvas.system(), Toward::more)});
    } else {
      canvas.line({tap, top}, {tap, top + room}, "dash");
      canvas.words({tap + 6.0, top + room - 17.0}, canvas.label(DrawingWord::mark_stop), Anchor::start, "t strong");
      canvas.words({tap + 6.0, top + room - 3.0}, canvas.label(DrawingWord::by_trial));
    }
  }

  static void mark(Canvas& canvas, double x, double y, DrawingWord word, const Label& depth, double lower = 0.0) {
    canvas.line({x - 6.0, y}, {x + 6.0, y}, "cut");
    canvas.words({x + 8.0, y + lower - 3.0}, canvas.label(word), Anchor::start,
                 word == DrawingWord::mark_stop ? "t strong clear" : "t clear");
    canvas.words({x + 8.0, y + lower + 11.0}, depth, Anchor::start, "t clear");
  }

  const Plan& plan_;
  const MachineDrawing& drawing_;
  double crown_ = 0.0;
  double radius_ = 0.0;

 public:
  double scale = 1.0;
  double height = 0.0;
};

}  // namespace

FigureRoom write_machine_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix) {
  const auto said = [&](DrawingWord word, std::initializer_list<words::Figure> figures = {}) {
    return say(word, audience.language, figures) + " ";
  };
  const std::string_view heading = say(DrawingWord::machine, audience.language);
  const auto drawing = machine_drawing(plan);
  if (nothing_is_cut(plan)) return {};
  if (!drawing) {
    const DrawingWord why = plan.method.kind == Method::sleeve ? DrawingWord::chosen_together : DrawingWord::od_unknown;
    return not_drawn(out, heading, say(why, audience.language), audience.language);
  }
  Figure figure(out, heading);
  const auto show = [&](Measure measure) { return format_measure(measure, audience); };
  const Setup& setup = plan.setup;
  const bool direct = drawing->method == Method::direct;
  const std::string degrees = setup.chain ? plain(std::fabs(setup.chain->leg_degrees), 0) : std::string();
  std::string text = said(direct ? DrawingWord::machine_on_pipe : DrawingWord::machine_on_stop);
  if (setup.chain && direct) {
    const std::string length = on_rule(setup.chain->needed, audience, Toward::more);
    text += said(DrawingWord::chain_said, {{"length", length}, {"degrees", degrees}});
  }
  if (drawing->full)
    text += said(DrawingWord::full_said, {{"length", on_rule(*drawing->full, audience, Toward::more)}});
  if (drawing->tap_stop)
    text += said(DrawingWord::stop_said, {{"length", on_rule(*drawing->tap_stop, audience, Toward::more)}});
  const MachineOnPaper paper(plan, *drawing);
  {
    Canvas canvas(out, audience, prefix + "machine", paper.height, {paper.scale}, heading, text);
    paper.draw(canvas);
  }
  std::string caption;
  if (direct) {
    if (setup.saddle_od)
      caption += said(DrawingWord::seat_caption, {{"diameter", on_caliper(*setup.saddle_od, audience)}});
    if (setup.chain) {
      const int count = setup.chain->extensions;
      const DrawingWord word = count == 0   ? DrawingWord::no_extension
                               : count == 1 ? DrawingWord::one_extension
                                            : DrawingWord::extensions;
      const std::string extensions = say(word, audience.language, {{"count", std::to_string(count)}});
      caption += said(setup.chain->leg_degrees < 0 ? DrawingWord::chain_outward : DrawingWord::chain_inward,
                      {{"length", show(Measure(setup.chain->available, Kind::tape))},
                       {"extensions", extensions},
                       {"degrees", degrees}});
    } else {
      caption += said(DrawingWord::chain_missing);
    }
  }
  if (drawing->standoff && drawing->travel) {
    const std::string needed =
        setup.travel_needed ? on_rule(*setup.travel_needed, audience, Toward::more) : std::string();
    caption += said(DrawingWord::travel,
                    {{"travel", show(*drawing->travel)}, {"standoff", show(*drawing->standoff)}, {"needed", needed}});
  } else {
    caption += said(DrawingWord::travel_missing);
  }
  caption += say(DrawingWord::stands_at, audience.language, {{"clock", plan.location.clock.label()}});
  return figure.caption(caption, paper.height);
}

}  // namespace mainbore::report
