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

class ThreadsOnPaper {
 public:
  static constexpr double middle = canvas_width / 2.0;
  static constexpr double half_hole = 84.0;
  static constexpr double crown = 50.0;

  explicit ThreadsOnPaper(const ThreadsDrawing& drawing)
      : drawing_(drawing), scale(half_hole / (drawing.hole / units::inch)) {
    radius_ = on_paper(drawing.radius);
    bore_ = radius_ - on_paper(drawing.wall);
    half_width_ = std::min(122.0, 0.97 * bore_);
    Length lowest = std::max(drawing.foot, drawing.wall);
    if (drawing.nominal_wall) lowest = std::max(lowest, *drawing.nominal_wall);
    foot_ = std::max(depth(lowest), crown + surface(bore_, half_width_) + radius_ - bore_);
    below_ = foot_;
    if (drawing.stop_end) below_ = depth(*drawing.stop_end);
    height = std::max(foot_, below_) + 24.0;
  }

  [[nodiscard]] double on_paper(Length length) const { return length / units::inch * scale; }
  [[nodiscard]] double depth(Length length) const { return crown + on_paper(length); }

  void draw(Canvas& canvas) const {
    canvas.words({0.0, 12.0}, canvas.label(DrawingWord::cut_across), Anchor::start, "t soft");
    canvas.words({canvas_width - 3.0, 12.0}, canvas.label(DrawingWord::cut_along), Anchor::end, "t soft");
    walls(canvas);
    for (const ThreadTurn& turn : drawing_.complete) {
      tooth(canvas, turn, -1.0, "tooth whole left");
      tooth(canvas, turn, 1.0, "tooth whole right");
    }
    for (const ThreadTurn& turn : drawing_.across) tooth(canvas, turn, -1.0, "tooth part left");
    for (const ThreadTurn& turn : drawing_.along) tooth(canvas, turn, 1.0, "tooth part right");
    band(canvas);
    dimensions(canvas);
    if (drawing_.stop_end) stop(canvas);
    canvas.scale_bar({2.0, height - 8.0});
  }

 private:
  // Drop of a circle's top at a distance from its middle.
  static double surface(double radius, double x) { return radius - std::sqrt(std::max(radius * radius - x * x, 0.0)); }

  void walls(Canvas& canvas) const {
    constexpr int steps = 12;
    std::string d = "M";
    for (int i = 0; i <= steps; ++i) {
      const double x = half_width_ + (half_hole - half_width_) * i / steps;
      d += (i == 0 ? "" : "L") + xy(middle - x, crown + surface(radius_, x));
    }
    for (int i = steps; i >= 0; --i) {
      const double x = half_width_ + (half_hole - half_width_) * i / steps;
      d += "L" + xy(middle - x, crown + radius_ - bore_ + surface(bore_, x));
    }
    canvas.path(d + "Z", "fill cut");
    canvas.box({middle + half_hole, crown}, half_width_ - half_hole, on_paper(drawing_.wall), "fill cut wall");
    // The rest of the surface, where the hole is.
    canvas.line({middle - half_width_ - 14.0, crown}, {middle + half_hole, crown}, "dash");
    if (drawing_.nominal_wall) {
      canvas.line({middle + half_hole, depth(*drawing_.nominal_wall)},
                  {middle + half_width_, depth(*drawing_.nominal_wall)}, "dash");
    }
  }

  // Height of the thread at a depth: a ridge from nothing to full and back in each pitch.
  [[nodiscard]] double ridge(Length at) const {
    const double turns = (at - drawing_.drop) / drawing_.pitch;
    const double part = turns - std::floor(turns);
    return on_paper(drawing_.thread_height) * (1.0 - std::fabs(2.0 * part - 1.0));
  }

  void tooth(Canvas& canvas, const ThreadTurn& turn, double side, std::string_view style) const {
    const double wall = middle + side * half_hole;
    const double turns = (turn.from - drawing_.drop) / drawing_.pitch;
    const Length crest = drawing_.drop + (std::floor(turns + 1e-9) + 0.5) * drawing_.pitch;
    std::string d = "M" + xy(wall, depth(turn.from)) + "L" + xy(wall - side * ridge(turn.from), depth(turn.from));
    if (crest > turn.from && crest < turn.to)
      d += "L" + xy(wall - side * on_paper(drawing_.thread_height), depth(crest));
    d += "L" + xy(wall - side * ridge(turn.to), depth(turn.to)) + "L" + xy(wall, depth(turn.to)) + "Z";
    canvas.path(d, style);
  }

  void band(Canvas& canvas) const {
    const double top = depth(drawing_.drop);
    const double bottom = depth(drawing_.wall);
    const double inner = half_hole - on_paper(drawing_.thread_height) - 2.0;
    if (drawing_.wall > drawing_.drop) {
      canvas.line({middle - inner, top}, {middle + inner, top}, "dash");
      canvas.line({middle - inner, bottom}, {middle + inner, bottom}, "dash");
      canvas.line({middle, 38.0}, {middle, (top + bottom) / 2.0}, "thin");
      canvas.circle({middle, (top + bottom) / 2.0}, 1.6, "dot");
    }
    Label count = canvas.label(DrawingWord::complete_threads, Measure(drawing_.complete_threads, Kind::ratio),
                               "engagement.complete_threads");
    count.rounded = plain(drawing_.complete_threads);
    canvas.words({middle, 34.0}, count, Anchor::middle, "t strong");
  }

  void dimensions(Canvas& canvas) const {
    const double left = middle - half_width_ - 10.0;
    canvas.line({left - 4.0, depth(drawing_.drop)}, {middle - half_hole, depth(drawing_.drop)}, "thin");
    canvas.upright(left, crown, depth(drawing_.drop), {}, Anchor::end);
    canvas.words({left - 5.0, crown - 3.0}, canvas.label(DrawingWord::drop), Anchor::end);
    canvas.words({left - 5.0, crown + 11.0}, {{}, Measure(drawing_.drop), {}, {}}, Anchor::end);
    const double right = middle + half_width_ + 8.0;
    for (const double y : {crown, depth(drawing_.wall)})
      canvas.line({middle + half_width_, y}, {right + 4.0, y}, "thin");
    canvas.upright(right, crown, depth(drawing_.wall), {}, Anchor::start);
    const double y = (crown + depth(drawing_.wall)) / 2.0;
    canvas.words({right + 6.0, y - 2.0}, canvas.label(DrawingWord::wall_alone));
    canvas.words({right + 6.0, y + 11.0}, {{}, Measure(drawing_.wall), "main.wall_min", {}});
  }

  void stop(Canvas& canvas) const {
    const double inner = half_hole - on_paper(drawing_.thread_height) - 2.0;
    const double y = depth(*drawing_.stop_end);
    canvas.line({middle - inner, y}, {middle + inner, y}, "axis");
    canvas.words({canvas_width, height - 4.0},
                 canvas.label(DrawingWord::stop_ends, Measure(*drawing_.stop_end), "makeup.engaged_length"),
                 Anchor::end);
    canvas.line({middle + inner - 30.0, y}, {middle + inner - 22.0, height - 15.0}, "thin");
  }

  const ThreadsDrawing& drawing_;
  double radius_ = 0.0;
  double bore_ = 0.0;
  double half_width_ = 0.0;
  double foot_ = 0.0;
  double below_ = 0.0;

 public:
  double scale;
  double height = 0.0;
};

}  // namespace

FigureRoom write_threads_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix) {
  if (nothing_is_cut(plan) || plan.method.kind != Method::direct) return {};
  const auto said = [&](DrawingWord word, std::initializer_list<words::Figure> figures = {}) {
    return say(word, audience.language, figures);
  };
  const std::string_view heading = say(DrawingWord::threads, audience.language);
  const auto drawing = threads_drawing(plan);
  if (!drawing) {
    return not_drawn(out, heading, said(plan.engagement ? DrawingWord::no_measures : DrawingWord::gauge_first),
                     audience.language);
  }
  Figure figure(out, heading);
  const auto show = [&](Measure measure) { return format_measure(measure, audience); };
  const std::string text = said(DrawingWord::threads_said, {{"wall", show(drawing->wall)},
                                                            {"drop", show(drawing->drop)},
                                                            {"count", plain(drawing->complete_threads)},
                                                            {"whole", std::to_string(drawing->complete.size())}});
  const ThreadsOnPaper paper(*drawing);
  {
    Canvas canvas(out, audience, prefix + "threads", paper.height, {paper.scale}, heading, text);
    paper.draw(canvas);
  }
  std::string caption = said(DrawingWord::threads_black) + " " +
                        said(drawing->nominal_wall ? DrawingWord::at_least_wall_dashed : DrawingWord::at_least_wall) +
                        " ";
  if (plan.engagement->judged) {
    caption += said(DrawingWord::threads_required, {{"count", plain(plan.engagement->required)}});
  } else {
    caption += said(DrawingWord::largest_decides);
  }
  if (!drawing->height_known) caption += " " + said(DrawingWord::height_usual);
  return figure.caption(caption, paper.height);
}

}  // namespace mainbore::report
