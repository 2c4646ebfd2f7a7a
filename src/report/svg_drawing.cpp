#include "report/svg_drawing.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "report/drawing.hpp"
#include "report/sheet_lines.hpp"
#include "report/svg_canvas.hpp"

namespace mainbore::report {
namespace {

std::string plain(double value, int decimals = 2) {
  std::string text;
  append_number(text, value, decimals);
  return text;
}

std::string xy(double x, double y) { return coordinate(x) + " " + coordinate(y); }

std::string_view name_of_thing(NearbyThing what) { return nearby_names[static_cast<std::size_t>(what)]; }

// A figure: heading, drawing, caption. The drawing may be missing; the caption then says why.
class Figure {
 public:
  Figure(HtmlWriter& out, std::string_view heading) : out_(out) { out_.start("figure").element("h3", heading); }
  // Closes it, and tells the room taken.
  FigureRoom caption(std::string_view text, double drawing = 0.0) {
    out_.element("figcaption", text).end().line();
    constexpr double heading_and_rule = 24.0;
    Lines lines(31.3);
    lines.add(text);
    return {heading_and_rule + 12.0 * lines.count(), drawing * 377.0 / canvas_width};
  }

 private:
  HtmlWriter& out_;
};

FigureRoom not_drawn(HtmlWriter& out, std::string_view heading, std::string_view why) {
  return Figure(out, heading).caption("Not drawn: " + std::string(why));
}

bool nothing_is_cut(const Plan& plan) { return plan.verdict == Verdict::no_go || plan.method.kind == Method::none; }

// ---- the main across
// --------------------------------------------------------------------------------------------------

// The dashed outline of what is fitted, in a drawing turned so that the tap is on top: drawn for its place only.
void fitting_outline(Canvas& canvas, Method method, At centre, double radius, double bore, double thread_out) {
  const double crown = centre.y - radius;
  const double half = std::max(bore * 1.25, 6.0);
  if (method == Method::direct) {
    const double foot = crown - thread_out;
    canvas.box({centre.x - half, foot - 26.0}, 2.0 * half, 26.0, "dash");
    canvas.line({centre.x - half - 8.0, foot - 15.0}, {centre.x + half + 8.0, foot - 15.0}, "dash");
    return;
  }
  // Strap all round, and a boss or branch over the hole.
  canvas.circle(centre, radius + 5.0, "dash");
  canvas.box({centre.x - half - 4.0, crown - 16.0}, 2.0 * half + 8.0, 12.0, "dash");
  canvas.box({centre.x - half, crown - 42.0}, 2.0 * half, 26.0, "dash");
}

void draw_section(Canvas& canvas, const Plan& plan, const SectionDrawing& drawing, At centre, double scale) {
  const auto on_paper = [&](Length length) { return length / units::inch * scale; };
  const double radius = on_paper(drawing.radius);
  const bool left = drawing.turn_degrees > 180.0;
  // Words stand on the side of the tap.
  const auto column = [&](double x) { return left ? canvas_width - x : x; };
  const Anchor anchor = left ? Anchor::end : Anchor::start;

  if (drawing.bore) {
    const double bore = on_paper(*drawing.bore);
    canvas.path("M" + xy(centre.x - radius, centre.y) + "a" + xy(radius, radius) + " 0 1 1 " + xy(2 * radius, 0) + "a" +
                    xy(radius, radius) + " 0 1 1 " + xy(-2 * radius, 0) + "ZM" + xy(centre.x - bore, centre.y) + "a" +
                    xy(bore, bore) + " 0 1 1 " + xy(2 * bore, 0) + "a" + xy(bore, bore) + " 0 1 1 " + xy(-2 * bore, 0) +
                    "Z",
                "fill");
    canvas.circle(centre, bore, "cut pipe-bore");
  }
  canvas.circle(centre, radius, "cut pipe-outside");
  for (int hour = 0; hour < 12; ++hour) {
    const double turn = hour * std::numbers::pi / 6.0;
    const At out{std::sin(turn), -std::cos(turn)};
    const double reach = hour % 3 == 0 ? 7.0 : 4.0;
    canvas.line({centre.x + out.x * (radius + 2.0), centre.y + out.y * (radius + 2.0)},
                {centre.x + out.x * (radius + reach), centre.y + out.y * (radius + reach)}, "thin");
  }
  const auto clear_of_tap = [&](double degrees) { return std::fabs(drawing.turn_degrees - degrees) > 20.0; };
  if (clear_of_tap(0.0) && clear_of_tap(360.0))
    canvas.words({centre.x, centre.y - radius - 11.0}, {"12", {}, {}, {}}, Anchor::middle);
  if (clear_of_tap(90.0)) canvas.words({centre.x + radius + 10.0, centre.y + 4.0}, {"3", {}, {}, {}});
  if (clear_of_tap(270.0)) canvas.words({centre.x - radius - 10.0, centre.y + 4.0}, {"9", {}, {}, {}}, Anchor::end);

  // Turned so that the tap is on top.
  canvas.begin_turned(drawing.turn_degrees, centre);
  const double hole = drawing.hole ? on_paper(*drawing.hole) : 0.0;
  const double thread_out = drawing.thread_out ? on_paper(*drawing.thread_out) : 0.0;
  if (hole > 0.0) {
    const double outer = std::sqrt(std::max(radius * radius - hole * hole, 0.0));
    const double bore = drawing.bore ? on_paper(*drawing.bore) : radius * 0.9;
    const double inner = std::sqrt(std::max(bore * bore - hole * hole, 0.0));
    canvas.box({centre.x - hole, centre.y - radius - 1.5}, 2.0 * hole, radius - inner + 3.0, "blank");
    canvas.line({centre.x - hole, centre.y - outer}, {centre.x - hole, centre.y - inner}, "cut");
    canvas.line({centre.x + hole, centre.y - outer}, {centre.x + hole, centre.y - inner}, "cut");
  }
  if (drawing.thread_in) {
    const double in = on_paper(*drawing.thread_in);
    const double foot = hole - in / 32.0;
    const double top = hole + thread_out / 32.0;
    canvas.path("M" + xy(centre.x - top, centre.y - radius - thread_out) + "L" +
                    xy(centre.x + top, centre.y - radius - thread_out) + "L" +
                    xy(centre.x + foot, centre.y - radius + in) + "L" + xy(centre.x - foot, centre.y - radius + in) +
                    "Z",
                "thread");
  }
  fitting_outline(canvas, plan.method.kind, centre, radius, hole, thread_out);
  canvas.line({centre.x, centre.y - radius - 54.0}, {centre.x, centre.y + radius - 3.0}, "axis");
  canvas.end_turned();

  const double turn = drawing.turn_degrees * std::numbers::pi / 180.0;
  const At axis{std::sin(turn), -std::cos(turn)};
  const At across{-axis.y, axis.x};
  const auto beside_axis = [&](double out, double side) {
    return At{centre.x + axis.x * out + across.x * side, centre.y + axis.y * out + across.y * side};
  };
  const double side = left ? -1.0 : 1.0;
  const bool direct = plan.method.kind == Method::direct;
  const std::string fitted = plan.method.tap.label() + " in " +
                             (direct                               ? "stop"
                              : plan.method.kind == Method::saddle ? "saddle"
                                                                   : "sleeve");
  struct Pointed {
    At spot;
    Label label;
  };
  std::vector<Pointed> pointed = {
      {beside_axis(radius + 50.0, 0.0), {"at ", {}, {}, plan.location.clock.label() + " o'clock"}},
      {beside_axis(radius + thread_out + (direct ? 8.0 : 10.0), side * std::max(hole, 6.0)), {fitted, {}, {}, {}}}};
  if (plan.method.hole) {
    pointed.push_back(
        {beside_axis(radius - 2.0, side * hole), {"hole ", Measure(*plan.method.hole), "method.hole", {}}});
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
    canvas.leader({centre.x + std::sin(at) * mid, centre.y - std::cos(at) * mid}, {column(244.0), centre.y + 34.0},
                  {"wall ", Measure(*plan.main.wall_nominal), "main.wall_nominal", {}}, anchor);
  }
  if (plan.makeup && plan.makeup->far_wall_clearance) {
    const double x = centre.x;
    canvas.words({x, centre.y + 22.0}, {"tap to far wall", {}, {}, {}}, Anchor::middle, "t clear");
    canvas.words({x, centre.y + 36.0}, {{}, Measure(*plan.makeup->far_wall_clearance), "makeup.far_wall_clearance", {}},
                 Anchor::middle, "t clear");
  }
  const double base = centre.y + radius;
  for (const double x : {centre.x - radius, centre.x + radius})
    canvas.line({x, centre.y + 4.0}, {x, base + 24.0}, "thin");
  canvas.across(centre.x - radius, centre.x + radius, base + 20.0, {"outside ", Measure(*plan.main.od), "main.od", {}});
}

// ---- threads in the wall
// ----------------------------------------------------------------------------------------------

class ThreadsOnPaper {
 public:
  static constexpr double middle = canvas_width / 2.0;
  static constexpr double half_hole = 84.0;
  static constexpr double crown = 50.0;

  ThreadsOnPaper(const Plan& plan, const ThreadsDrawing& drawing)
      : plan_(plan), drawing_(drawing), scale(half_hole / (drawing.hole / units::inch)) {
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
    canvas.words({0.0, 12.0}, {"cut across the pipe", {}, {}, {}}, Anchor::start, "t soft");
    canvas.words({canvas_width - 3.0, 12.0}, {"cut along the pipe", {}, {}, {}}, Anchor::end, "t soft");
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
    canvas.words({middle, 34.0},
                 {{},
                  Measure(drawing_.complete_threads, Kind::ratio),
                  "engagement.complete_threads",
                  " complete threads",
                  plain(drawing_.complete_threads)},
                 Anchor::middle, "t strong");
  }

  void dimensions(Canvas& canvas) const {
    const double left = middle - half_width_ - 10.0;
    canvas.line({left - 4.0, depth(drawing_.drop)}, {middle - half_hole, depth(drawing_.drop)}, "thin");
    canvas.upright(left, crown, depth(drawing_.drop), {}, Anchor::end);
    canvas.words({left - 5.0, crown - 3.0}, {"drop", {}, {}, {}}, Anchor::end);
    canvas.words({left - 5.0, crown + 11.0}, {{}, Measure(drawing_.drop), {}, {}}, Anchor::end);
    const double right = middle + half_width_ + 8.0;
    for (const double y : {crown, depth(drawing_.wall)})
      canvas.line({middle + half_width_, y}, {right + 4.0, y}, "thin");
    canvas.upright(right, crown, depth(drawing_.wall), {}, Anchor::start);
    const double y = (crown + depth(drawing_.wall)) / 2.0;
    canvas.words({right + 6.0, y - 2.0}, {"wall", {}, {}, {}});
    canvas.words({right + 6.0, y + 11.0}, {{}, Measure(drawing_.wall), "main.wall_min", {}});
  }

  void stop(Canvas& canvas) const {
    const double inner = half_hole - on_paper(drawing_.thread_height) - 2.0;
    const double y = depth(*drawing_.stop_end);
    canvas.line({middle - inner, y}, {middle + inner, y}, "axis");
    canvas.words({canvas_width, height - 4.0},
                 {"stop, made up, ends ", Measure(*drawing_.stop_end), "makeup.engaged_length", " deep"}, Anchor::end);
    canvas.line({middle + inner - 30.0, y}, {middle + inner - 22.0, height - 15.0}, "thin");
  }

  const Plan& plan_;
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

// ---- along the main
// ---------------------------------------------------------------------------------------------------

class AlongOnPaper {
 public:
  AlongOnPaper(const Plan& plan, const AlongDrawing& drawing, UnitSystem system)
      : plan_(plan),
        drawing_(drawing),
        system_(system),
        scale((canvas_width - 12.0) / ((drawing.to - drawing.from) / units::inch)) {
    half_ = std::max(drawing.radius ? on_paper(*drawing.radius) : 8.0, 4.0);
    lay_labels();
    axis_ = 14.0 * rows_ + 24.0 + half_;
    std::size_t dimensions = 0;
    for (const AlongThing& thing : drawing.things) dimensions += thing.kept ? 1 : 0;
    dimensions_ = drawing.looked ? std::min<std::size_t>(dimensions, most_dimensions) : 2;
    if (drawing.planned != Length() || dimensions_ == 0) ++dimensions_;  // the shift, or word that there is nothing
    height = axis_ + half_ + 8.0 + 17.0 * static_cast<double>(dimensions_) + 22.0;
  }

  [[nodiscard]] double on_paper(Length length) const { return length / units::inch * scale; }
  [[nodiscard]] double at(Length along) const { return 6.0 + on_paper(along - drawing_.from); }

  void draw(Canvas& canvas) const {
    canvas.box({0.0, axis_ - half_}, canvas_width, 2.0 * half_, "fill");
    for (const AlongThing& thing : drawing_.things) {
      if (thing.least) zone(canvas, thing.along, *thing.least);
    }
    for (const double y : {axis_ - half_, axis_ + half_}) canvas.line({0.0, y}, {canvas_width, y}, "cut");
    canvas.line({0.0, axis_}, {canvas_width, axis_}, "axis");
    for (std::size_t i = 0; i < drawing_.things.size(); ++i) thing(canvas, drawing_.things[i], labels_[i]);
    places(canvas);
    double y = axis_ + half_ + 22.0;
    if (drawing_.looked) distances(canvas, y);
    else blanks(canvas, y);
    canvas.words({0.0, height - 4.0}, {"- way", {}, {}, {}}, Anchor::start, "t soft");
    canvas.words({canvas_width - 3.0, height - 4.0}, {"+ way", {}, {}, {}}, Anchor::end, "t soft");
    canvas.scale_bar({130.0, height - 8.0});
  }

 private:
  static constexpr std::size_t most_dimensions = 4;
  struct LabelPlace {
    double x = 0.0;
    int row = 0;
  };

  // Names over the pipe, each in the lowest row where it runs into no other. Row 0, nearest the pipe, is the tap's.
  void lay_labels() {
    std::vector<double> ends{};
    for (const AlongThing& thing : drawing_.things) {
      const double half = width_of(name_of_thing(thing.what)) / 2.0;
      const double x = std::clamp(at(thing.along), half, canvas_width - half);
      std::size_t row = 0;
      while (row < ends.size() && ends[row] > x - half) ++row;
      if (row == ends.size()) ends.push_back(0.0);
      ends[row] = x + half + 8.0;
      labels_.push_back({x, static_cast<int>(row) + 1});
    }
    rows_ = static_cast<double>(ends.size()) + 1.0;
  }

  [[nodiscard]] double row_y(int row) const { return axis_ - half_ - 18.0 - 14.0 * row; }

  void zone(Canvas& canvas, Length along, Length least) const {
    const double from = std::max(at(along - least), 0.0);
    const double to = std::min(at(along + least), canvas_width);
    canvas.box({from, axis_ - half_ - 3.0}, to - from, 2.0 * half_ + 6.0, "zone");
  }

  void thing(Canvas& canvas, const AlongThing& thing, const LabelPlace& label) const {
    const double x = at(thing.along);
    const double reach = half_ + 5.0;
    switch (thing.what) {
      case NearbyThing::joint:
        canvas.line({x - 1.5, axis_ - reach}, {x - 1.5, axis_ + reach}, "cut");
        canvas.line({x + 1.5, axis_ - reach}, {x + 1.5, axis_ + reach}, "cut");
        break;
      case NearbyThing::bell:
        canvas.path("M" + xy(x - 7.0, axis_ - half_) + "L" + xy(x - 3.0, axis_ - reach) + "L" +
                        xy(x + 5.0, axis_ - reach) + "L" + xy(x + 5.0, axis_ + reach) + "L" +
                        xy(x - 3.0, axis_ + reach) + "L" + xy(x - 7.0, axis_ + half_) + "Z",
                    "blank cut");
        break;
      case NearbyThing::valve:
        canvas.path("M" + xy(x - 8.0, axis_ - reach) + "L" + xy(x + 8.0, axis_ + reach) + "L" +
                        xy(x + 8.0, axis_ - reach) + "L" + xy(x - 8.0, axis_ + reach) + "Z",
                    "blank cut");
        break;
      case NearbyThing::tap:
      case NearbyThing::saddle:
        canvas.circle({x, axis_}, std::min(half_, 5.0), "blank cut");
        break;
      case NearbyThing::fitting:
      case NearbyThing::repair_clamp:
        canvas.box({x - 6.0, axis_ - reach}, 12.0, 2.0 * reach, "blank cut");
        break;
      default:
        canvas.line({x, axis_ - reach}, {x, axis_ + reach}, "dash");
        break;
    }
    const double y = row_y(label.row);
    canvas.line({label.x, y + 2.0}, {x, axis_ - reach}, "thin");
    canvas.words({label.x, y}, {std::string(name_of_thing(thing.what)), {}, {}, {}}, Anchor::middle);
  }

  void places(Canvas& canvas) const {
    const double x = at(drawing_.planned);
    const double top = axis_ - half_;
    const bool moved = drawing_.planned != Length();
    if (moved) {
      const double asked = at(Length());
      canvas.path("M" + xy(asked, top) + "l-5 -10h10Z", "blank edge");
    }
    canvas.path("M" + xy(x, top) + "l-6 -12h12Z", "head");
    const double hole = plan_.method.hole ? std::max(on_paper(*plan_.method.hole / 2.0), 2.0) : 2.0;
    canvas.circle({x, axis_}, hole, "head");
    canvas.words({x, top - 15.0}, {"TAP HERE", {}, {}, {}}, Anchor::middle, "t strong clear");
  }

  void distances(Canvas& canvas, double y) const {
    std::vector<const AlongThing*> nearest;
    for (const AlongThing& thing : drawing_.things) {
      if (thing.kept) nearest.push_back(&thing);
    }
    std::stable_sort(nearest.begin(), nearest.end(),
                     [](const AlongThing* a, const AlongThing* b) { return *a->kept < *b->kept; });
    if (nearest.size() > most_dimensions) nearest.resize(most_dimensions);
    const double tap = at(drawing_.planned);
    if (nearest.empty() && drawing_.planned == Length()) {
      canvas.words({canvas_width / 2.0, axis_ + half_ + 16.0}, {"nothing to keep clear of in this stretch", {}, {}, {}},
                   Anchor::middle);
      return;
    }
    canvas.line({tap, axis_ + half_}, {tap, y - 18.0 + 17.0 * static_cast<double>(dimensions_)}, "thin");
    if (drawing_.planned != Length()) {
      const double asked = at(Length());
      canvas.line({asked, axis_ + half_}, {asked, y + 3.0}, "thin");
      canvas.across(std::min(tap, asked), std::max(tap, asked), y,
                    {"moved ", Measure(abs(drawing_.planned), Kind::distance), {}, " from the place asked"});
      y += 17.0;
    }
    for (const AlongThing* thing : nearest) {
      const double x = at(thing->along);
      canvas.line({x, axis_ + half_ + 5.0}, {x, y + 3.0}, "thin");
      const std::string least = ", at least " + format_measure(Measure(*thing->least, Kind::distance), system_);
      canvas.across(std::min(x, tap), std::max(x, tap), y,
                    {std::string(name_of_thing(thing->what)) + " ", Measure(*thing->kept, Kind::distance), {}, least});
      y += 17.0;
    }
  }

  void blanks(Canvas& canvas, double y) const {
    const double tap = at(drawing_.planned);
    const double reach = on_paper(drawing_.ask);
    canvas.box({tap - reach, axis_ - half_ - 3.0}, 2.0 * reach, 2.0 * half_ + 6.0, "dash");
    for (const double x : {tap - reach, tap + reach}) canvas.line({x, axis_ + half_}, {x, y + 3.0}, "thin");
    canvas.across(tap - reach, tap, y, {});
    canvas.across(tap, tap + reach, y, {});
    canvas.words({tap, y + 16.0}, {"at least ", Measure(drawing_.ask, Kind::distance), {}, " clear each way"},
                 Anchor::middle);
    canvas.words({2.0, axis_ - half_ - 6.0}, {"nearest: _______", {}, {}, {}});
    canvas.words({canvas_width - 6.0, axis_ - half_ - 6.0}, {"nearest: _______", {}, {}, {}}, Anchor::end);
  }

  const Plan& plan_;
  const AlongDrawing& drawing_;
  UnitSystem system_;
  double half_ = 0.0;
  double axis_ = 0.0;
  double rows_ = 1.0;
  std::size_t dimensions_ = 0;
  std::vector<LabelPlace> labels_;

 public:
  double scale;
  double height = 0.0;
};

// ---- the machine
// ------------------------------------------------------------------------------------------------------

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
    const At centre{middle, crown_ + radius_};
    if (drawing_.bore) canvas.circle(centre, on_paper(*drawing_.bore), "edge");
    canvas.circle(centre, radius_, "cut pipe-outside");
    if (drawing_.method == Method::direct) on_pipe(canvas, centre);
    else on_stop(canvas, centre);
    bar(canvas);
    depths(canvas);
    canvas.scale_bar({2.0, height - 8.0});
  }

 private:
  // Outlines of the machine are for its place only: nobody gave its shape.
  void on_pipe(Canvas& canvas, At centre) const {
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
      return At{centre.x + side * on_paper(at.right), centre.y - on_paper(at.up)};
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
      canvas.words({middle, centre.y + radius_ + 18.0},
                   {"chain ", Measure(plan_.setup.chain->needed), "setup.chain.needed", ", hook to hook"},
                   Anchor::middle);
    }
  }

  void on_stop(Canvas& canvas, At centre) const {
    const double half = std::max(on_paper(drawing_.bar) * 1.4, 8.0);
    canvas.circle(centre, radius_ + 5.0, "dash");
    canvas.box({middle - half - 5.0, crown_ - 16.0}, 2.0 * half + 10.0, 12.0, "dash");
    canvas.box({middle - half, crown_ - 46.0}, 2.0 * half, 30.0, "dash");
    canvas.line({middle - half - 10.0, crown_ - 31.0}, {middle + half + 10.0, crown_ - 31.0}, "edge");
    if (crown_ - 64.0 > 18.0) canvas.box({middle - half - 3.0, 18.0}, 2.0 * half + 6.0, crown_ - 64.0, "dash");
    canvas.words({middle, centre.y + radius_ + 20.0}, {"machine stands on the open stop", {}, {}, {}}, Anchor::middle);
  }

  void bar(Canvas& canvas) const {
    const double half = std::max(on_paper(drawing_.bar), 2.0);
    const double point = drawing_.standoff ? crown_ - on_paper(*drawing_.standoff) : crown_ - 30.0;
    canvas.path("M" + xy(middle - half, 4.0) + "V" + coordinate(point - half * 0.6) + "L" + xy(middle, point) + "L" +
                    xy(middle + half, point - half * 0.6) + "V4",
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
      canvas.words({left, top}, {"Depths not drawn:", {}, {}, {}});
      canvas.words({left, top + 15.0}, {"the wall is not known.", {}, {}, {}});
      return;
    }
    // The bore shows below the wall.
    if (drawing_.through) deepest = std::max(deepest, 1.5 * *drawing_.through);
    const double step = room / (deepest / units::inch);
    const auto y_of = [&](Length depth) { return top + depth / units::inch * step; };
    if (drawing_.through) canvas.box({left, top}, canvas_width - left, y_of(*drawing_.through) - top, "fill");
    canvas.line({left, top}, {canvas_width, top}, "cut");
    if (drawing_.through) canvas.line({left, y_of(*drawing_.through)}, {canvas_width, y_of(*drawing_.through)}, "edge");
    canvas.words({left, 12.0}, {"depth of the point below the", {}, {}, {}}, Anchor::start, "t soft");
    canvas.words({left, 25.0}, {"outside of the pipe", {}, {}, {}}, Anchor::start, "t soft");

    const double drill = left + 8.0;
    canvas.words({drill, top - 18.0}, {direct ? "drill" : "cutter", {}, {}, {}}, Anchor::start, "t strong");
    canvas.words({drill, top - 5.0}, {"mark 1: touch", {}, {}, {}});
    const Length end = drawing_.full ? *drawing_.full : *drawing_.through;
    canvas.upright(drill, top, y_of(end), {}, Anchor::start);
    if (drawing_.through)
      mark(canvas, drill, y_of(*drawing_.through), "2: through",
           {{}, Measure(*drawing_.through), drawing_.by_marks ? "marks.breakthrough" : "main.wall_nominal", {},
            on_rule(*drawing_.through, canvas.system(), Toward::less)});
    if (drawing_.full)
      mark(canvas, drill, y_of(*drawing_.full), "full width",
           {{}, Measure(*drawing_.full), drawing_.by_marks ? "marks.full_width" : "setup.drill_stroke", {},
            on_rule(*drawing_.full, canvas.system(), Toward::more)});
    if (!direct) return;

    const double tap = left + 90.0;
    canvas.words({tap, top - 18.0}, {"tap", {}, {}, {}}, Anchor::start, "t strong");
    canvas.words({tap, top - 5.0}, {"mark 3: catches", {}, {}, {}});
    if (drawing_.tap_stop) {
      canvas.upright(tap, top, y_of(*drawing_.tap_stop), {}, Anchor::start);
      mark(canvas, tap, y_of(*drawing_.tap_stop), "4: STOP", {{}, Measure(*drawing_.tap_stop), "makeup.tip_depth", {}});
    } else {
      canvas.line({tap, top}, {tap, top + room}, "dash");
      canvas.words({tap + 6.0, top + room - 17.0}, {"4: STOP", {}, {}, {}}, Anchor::start, "t strong");
      canvas.words({tap + 6.0, top + room - 3.0}, {"by trial: ____", {}, {}, {}});
    }
  }

  static void mark(Canvas& canvas, double x, double y, std::string_view word, const Label& depth) {
    canvas.line({x - 6.0, y}, {x + 6.0, y}, "cut");
    canvas.words({x + 8.0, y - 3.0}, {std::string(word), {}, {}, {}}, Anchor::start,
                 word.ends_with("STOP") ? "t strong clear" : "t clear");
    canvas.words({x + 8.0, y + 11.0}, depth, Anchor::start, "t clear");
  }

  const Plan& plan_;
  const MachineDrawing& drawing_;
  double crown_ = 0.0;
  double radius_ = 0.0;

 public:
  double scale = 1.0;
  double height = 0.0;
};

// ---- the pit
// ----------------------------------------------------------------------------------------------------------

class PitOnPaper {
 public:
  PitOnPaper(const Plan& plan, const PitDrawing& drawing) : plan_(plan), drawing_(drawing) {
    const Length wide = drawing.near_edge.right - drawing.spoil_heel.right;
    Length above = drawing.spoil_top.up;
    if (drawing.rails) above = std::max(above, *drawing.rails);
    const Length tall = above - drawing.far_foot.up;
    scale = std::min((canvas_width - room_for_depths) / (wide / units::inch), tallest / (tall / units::inch));
    // What lies over the ground, and the words over that: two rows for the spoil, or one for the ladder.
    ground_ = 34.0 + std::max((drawing.spoil_top.up - drawing.ground) / units::inch * scale, row_over_pit - 4.0);
    if (drawing.rails) ground_ = std::max(ground_, 20.0 + (*drawing.rails - drawing.ground) / units::inch * scale);
    bottom_ = y(drawing.far_foot.up);
    height = std::max(bottom_, depth_words() + 15.0 - 24.0) + 28.0;
  }

  void draw(Canvas& canvas) const {
    ground(canvas);
    spoil(canvas);
    if (drawing_.rails) ladder(canvas);
    walls(canvas);
    canvas.circle(spot({}), drawing_.radius / units::inch * scale, "fill cut pit-main");
    widths(canvas);
    depths(canvas);
    canvas.scale_bar({drawing_.mirrored ? canvas_width - 138.0 : 2.0, bottom_ + 18.0}, 40.0);
  }

 private:
  static constexpr double room_for_depths = 74.0;
  static constexpr double tallest = 150.0;
  static constexpr double row_over_pit = 20.0;  // of the dimension over the pit

  [[nodiscard]] double x(Length right) const {
    const double along = 2.0 + (right - drawing_.spoil_heel.right) / units::inch * scale;
    return drawing_.mirrored ? canvas_width - along : along;
  }
  [[nodiscard]] double y(Length up) const { return ground_ + (drawing_.ground - up) / units::inch * scale; }
  [[nodiscard]] At spot(Spot at) const { return {x(at.right), y(at.up)}; }
  // Away from the spoil, and words that begin on that side of a point, or end there.
  [[nodiscard]] double away(double distance) const { return drawing_.mirrored ? -distance : distance; }
  [[nodiscard]] Anchor begins() const { return drawing_.mirrored ? Anchor::end : Anchor::start; }
  [[nodiscard]] Anchor ends() const { return drawing_.mirrored ? Anchor::start : Anchor::end; }
  static std::string d(std::initializer_list<At> spots) {
    std::string text;
    for (const At& at : spots) text += (text.empty() ? "M" : "L") + xy(at.x, at.y);
    return text;
  }
  // In the middle over a point, kept on the paper.
  static void centred(Canvas& canvas, At at, double room, const Label& label) {
    canvas.words({std::clamp(at.x, room / 2.0, canvas_width - room / 2.0), at.y}, label, Anchor::middle);
  }
  static void dimension(Canvas& canvas, double from, double to, double at, const Label& label) {
    canvas.across(std::min(from, to), std::max(from, to), at, label);
  }

  void ground(Canvas& canvas) const {
    const double far_end = drawing_.mirrored ? canvas_width : 0.0;
    canvas.line({far_end, ground_}, spot(drawing_.far_edge), "cut");
    canvas.line(spot(drawing_.near_edge), {canvas_width - far_end, ground_}, "cut");
    canvas.path(
        d({spot(drawing_.far_edge), spot(drawing_.far_foot), spot(drawing_.near_foot), spot(drawing_.near_edge)}),
        "cut pit");
  }

  void spoil(Canvas& canvas) const {
    canvas.path(d({spot(drawing_.spoil_heel), spot(drawing_.spoil_top), spot(drawing_.spoil_toe)}) + "Z",
                "fill edge spoil");
    const PitPlan& pit = *plan_.excavation;
    const At top = spot(drawing_.spoil_top);
    centred(canvas, {top.x, top.y - 18.0}, 116.0,
            {"spoil ", Measure(pit.spoil.height, Kind::distance), "excavation.spoil.height", " high,"});
    centred(canvas, {top.x, top.y - 5.0}, 116.0,
            {{}, Measure(pit.spoil.base, Kind::distance), "excavation.spoil.base", " wide"});
  }

  // Seen from the front, at the end of the pit: its width is a usual one.
  void ladder(Canvas& canvas) const {
    const double wide = std::max(16.0 * scale, 6.0);
    const double outer = x(drawing_.near_foot.right) - away(std::max(4.0 * scale, 3.0));
    const double inner = outer - away(wide);
    const double top = y(*drawing_.rails);
    for (const double rail : {outer, inner}) canvas.line({rail, top}, {rail, bottom_}, "edge rail");
    const double step = 12.0 * scale < 4.0 ? 24.0 * scale : 12.0 * scale;
    for (double rung = bottom_ - step; rung > ground_ - 1.0; rung -= step) {
      canvas.line({inner, rung}, {outer, rung}, "thin");
    }
    centred(
        canvas, {(inner + outer) / 2.0, std::min(top - 5.0, ground_ - row_over_pit - 4.0)}, 100.0,
        {"ladder ", Measure(plan_.excavation->ladder_length, Kind::distance), "excavation.way_out.ladder_length", {}});
  }

  void walls(Canvas& canvas) const {
    if (drawing_.shielded) {
      constexpr double plate = 4.0;
      for (const auto& [edge, side] : {std::pair(drawing_.far_edge, 1.0), std::pair(drawing_.near_edge, -1.0)}) {
        const double from = x(edge.right) + away(side);
        canvas.box({std::min(from, from + away(side * plate)), ground_}, plate, bottom_ - ground_, "dash");
      }
    }
    if (!drawing_.sloped && !drawing_.shielded) return;
    // Pointed at below the words of the set-back.
    const double at = std::max(ground_ + 0.6 * (bottom_ - ground_), std::min(ground_ + 34.0, bottom_));
    const double part = (at - ground_) / (bottom_ - ground_);
    const double face = x(drawing_.far_edge.right + part * (drawing_.far_foot.right - drawing_.far_edge.right));
    const At end{face - away(16.0), at};
    if (drawing_.shielded) {
      canvas.leader({face + away(3.0), at}, end, {"shield", {}, {}, {}}, ends());
    } else {
      canvas.leader({face, at}, end,
                    {"slope ", Measure(plan_.excavation->pit.slope, Kind::ratio), "excavation.slope", " to 1"}, ends());
    }
  }

  void widths(Canvas& canvas) const {
    const PitPlan& pit = *plan_.excavation;
    const double far_foot = x(drawing_.far_foot.right);
    const double near_foot = x(drawing_.near_foot.right);
    const double far_edge = x(drawing_.far_edge.right);
    const double near_edge = x(drawing_.near_edge.right);
    for (const double foot : {far_foot, near_foot}) canvas.line({foot, bottom_}, {foot, bottom_ + 24.0}, "thin");
    dimension(canvas, far_foot, near_foot, bottom_ + 20.0,
              {"bottom ", Measure(pit.pit.across, Kind::distance), "excavation.bottom.across", {}});
    if (drawing_.sloped) {
      const double row = ground_ - 8.0;
      for (const double edge : {far_edge, near_edge}) canvas.line({edge, ground_}, {edge, row - 4.0}, "thin");
      dimension(canvas, far_edge, near_edge, row, {});
      // Beside the rails of the ladder.
      canvas.words({(far_edge + x(Length())) / 2.0, row - 3.5},
                   {"top ", Measure(pit.top.across, Kind::distance), "excavation.top.across", {}}, Anchor::middle,
                   "t clear");
    }
    const double toe = x(drawing_.spoil_toe.right);
    const double row = ground_ + 14.0;
    for (const double end : {toe, far_edge}) canvas.line({end, ground_}, {end, row + 4.0}, "thin");
    dimension(canvas, toe, far_edge, row, {});
    canvas.words({toe - away(16.0), row + 4.0},
                 {"set back ", Measure(pit.setback, Kind::distance), "excavation.spoil.setback", {}}, ends());
  }

  // Lower baseline of the words on the depth: under those on the cover, which stand beside its middle.
  [[nodiscard]] double cover_words() const {
    return ground_ + std::max(0.5 * (y(drawing_.radius) - ground_), 13.0) + 11.0;
  }
  [[nodiscard]] double depth_words() const { return std::max(bottom_, cover_words() + 27.0); }

  void depths(Canvas& canvas) const {
    const PitPlan& pit = *plan_.excavation;
    const double cover = x(drawing_.near_edge.right) + away(10.0);
    const double depth = cover + away(9.0);
    const double crown = y(drawing_.radius);
    canvas.line({x(Length()), crown}, {cover + away(3.0), crown}, "thin");
    canvas.line({x(drawing_.near_foot.right), bottom_}, {depth + away(3.0), bottom_}, "thin");
    canvas.upright(cover, ground_, crown, {}, begins());
    canvas.upright(depth, ground_, bottom_, {}, begins());
    const double words = depth + away(5.0);
    canvas.words({words, cover_words() - 13.0}, {"cover", {}, {}, {}}, begins());
    canvas.words({words, cover_words()}, {{}, Measure(pit.cover, Kind::distance), "excavation.cover", {}}, begins());
    canvas.words({words, depth_words() - 13.0}, {"depth", {}, {}, {}}, begins());
    canvas.words({words, depth_words()}, {{}, Measure(pit.pit.depth, Kind::distance), "excavation.depth", {}},
                 begins());
  }

  const Plan& plan_;
  const PitDrawing& drawing_;
  double ground_ = 0.0;
  double bottom_ = 0.0;

 public:
  double scale = 1.0;
  double height = 0.0;
};

// ---- pressure to the customer
// -----------------------------------------------------------------------------------------

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
    if (!with_unit) label.rounded = plain(shown(left_behind, system_).value, shown(left_behind, system_).decimals);
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

FigureRoom write_section_figure(HtmlWriter& out, const Plan& plan, UnitSystem system, const std::string& prefix) {
  constexpr std::string_view heading = "The main at the tap";
  const auto drawing = section_drawing(plan);
  if (nothing_is_cut(plan)) return {};
  if (!drawing) return not_drawn(out, heading, "the outside diameter is not known. Measure it first.");
  Figure figure(out, heading);
  constexpr double radius = 60.0;
  const double scale = radius / (drawing->radius / units::inch);
  const double room = drawing->turn_degrees > 180.0 ? canvas_width - 116.0 : 116.0;
  const At centre{room, 110.0};
  constexpr double height = 200.0;
  const auto show = [&](Measure measure) { return format_measure(measure, system); };
  std::string text = "Section across the main, seen along it. Outside diameter " + show(*plan.main.od) + ". ";
  if (plan.main.wall_nominal) text += "Wall " + show(*plan.main.wall_nominal) + ". ";
  text += "The tap points to " + plan.location.clock.label() + " o'clock. ";
  if (plan.method.hole) text += "Hole " + show(*plan.method.hole) + " wide. ";
  if (drawing->thread_in)
    text += "The stop's thread, made up, reaches " + show(*drawing->thread_in) + " below the outside. ";
  {
    Canvas canvas(out, system, prefix + "section", height, {scale}, heading, text);
    draw_section(canvas, plan, *drawing, centre, scale);
    canvas.scale_bar({drawing->turn_degrees > 180.0 ? 4.0 : 240.0, height - 10.0}, 36.0);
  }
  std::string caption = drawing->bore ? "Seen along the main. " : "Wall not known, not drawn. ";
  caption +=
      plan.method.kind == Method::direct
          ? (drawing->thread_in ? "Black: thread of the stop. Dashes: its place only." : "Dashes: place of the stop.")
          : "Dashes: place of the fitting.";
  return figure.caption(caption, height);
}

FigureRoom write_threads_figure(HtmlWriter& out, const Plan& plan, UnitSystem system, const std::string& prefix) {
  constexpr std::string_view heading = "Threads in the wall";
  if (nothing_is_cut(plan) || plan.method.kind != Method::direct) return {};
  const auto drawing = threads_drawing(plan);
  if (!drawing) {
    return not_drawn(out, heading,
                     plan.engagement ? "no table gives the measures of this thread."
                                     : "the wall is not known. Gauge it at the tap first.");
  }
  Figure figure(out, heading);
  const auto show = [&](Measure measure) { return format_measure(measure, system); };
  const std::string text =
      "The wall at the hole, " + show(drawing->wall) +
      " thick, left half cut across the pipe, right half along it. At the sides the surface lies " +
      show(drawing->drop) + " lower, so that " + plain(drawing->complete_threads) +
      " threads close all the way round; " + std::to_string(drawing->complete.size()) + " whole ones are drawn black.";
  const ThreadsOnPaper paper(plan, *drawing);
  {
    Canvas canvas(out, system, prefix + "threads", paper.height, {paper.scale}, heading, text);
    paper.draw(canvas);
  }
  std::string caption = "Black: whole turns that close all round. White: part turns. At the least wall planned with";
  if (drawing->nominal_wall) caption += " (dashes: by the tables)";
  if (plan.engagement->judged) caption += ". Required: " + plain(plan.engagement->required) + ".";
  else caption += ". The published largest tap decides here, not their count.";
  if (!drawing->height_known) caption += " Height of thread not known, drawn as usual.";
  return figure.caption(caption, paper.height);
}

FigureRoom write_along_figure(HtmlWriter& out, const Plan& plan, UnitSystem system, const std::string& prefix) {
  constexpr std::string_view heading = "Along the main";
  const auto drawing = along_drawing(plan);
  if (!drawing) return {};
  Figure figure(out, heading);
  const auto show = [&](Length length) { return format_measure(Measure(length, Kind::distance), system); };
  std::string far;
  for (const AlongThing& thing : drawing->beyond) {
    far += (far.empty() ? "" : "; ") + std::string(name_of_thing(thing.what)) + " " + show(abs(thing.along)) + " the " +
           (thing.along < Length() ? "-" : "+") + " way";
  }
  std::string text = "The main from the side. ";
  if (!drawing->looked) text += "What lies near is not known. ";
  text += drawing->planned == Length() ? "The tap stands at the place asked. "
                                       : "The tap is moved " + show(abs(drawing->planned)) + " from the place asked. ";
  for (const AlongThing& thing : drawing->things) {
    text += std::string(name_of_thing(thing.what)) + " " + show(abs(thing.along - drawing->planned)) + " from the tap" +
            (thing.least ? ", at least " + show(*thing.least) : "") + ". ";
  }
  const AlongOnPaper paper(plan, *drawing, system);
  {
    Canvas canvas(out, system, prefix + "along", paper.height, {paper.scale}, heading, text);
    paper.draw(canvas);
  }
  std::string caption;
  if (!drawing->looked) caption += "Nobody has looked: uncover both ways, measure, write it in. ";
  else if (!drawing->things.empty()) caption += "Dark gray: keep out. ";
  if (drawing->planned != Length()) caption += "White mark: the place asked. ";
  if (!far.empty()) caption += "Farther off: " + far + ". ";
  if (plan.method.count > 1) caption += "The first of " + std::to_string(plan.method.count) + " taps is drawn.";
  return figure.caption(caption.empty() ? "From the side." : caption, paper.height);
}

FigureRoom write_machine_figure(HtmlWriter& out, const Plan& plan, UnitSystem system, const std::string& prefix) {
  constexpr std::string_view heading = "Machine and bar";
  const auto drawing = machine_drawing(plan);
  if (nothing_is_cut(plan)) return {};
  if (!drawing) {
    return not_drawn(out, heading,
                     plan.method.kind == Method::sleeve ? "sleeve, valve and machine are chosen for each other."
                                                        : "the outside diameter is not known.");
  }
  Figure figure(out, heading);
  const auto show = [&](Measure measure) { return format_measure(measure, system); };
  const Setup& setup = plan.setup;
  const bool direct = drawing->method == Method::direct;
  std::string text =
      direct ? "The machine on the pipe, bar upright. " : "The machine on the stop of the saddle, bar upright. ";
  if (setup.chain && direct) {
    text += "Chain " + show(Measure(setup.chain->needed, Kind::tape)) + " hook to hook, legs " +
            plain(std::fabs(setup.chain->leg_degrees), 0) + " degrees from upright. ";
  }
  if (drawing->full) text += "From touch to full width the drill goes " + on_rule(*drawing->full, system, Toward::more) + ". ";
  if (drawing->tap_stop) text += "The tap stops with its point " + show(*drawing->tap_stop) + " below the outside. ";
  const MachineOnPaper paper(plan, *drawing);
  {
    Canvas canvas(out, system, prefix + "machine", paper.height, {paper.scale}, heading, text);
    paper.draw(canvas);
  }
  std::string caption;
  if (direct) {
    if (setup.saddle_od) caption += "Machine saddle for " + on_caliper(*setup.saddle_od, system) + " outside. ";
    if (setup.chain) {
      const int extensions = setup.chain->extensions;
      caption +=
          "Chain made up " + show(Measure(setup.chain->available, Kind::tape)) +
          (extensions == 0 ? ", no extension"
                           : ", " + std::to_string(extensions) + (extensions == 1 ? " extension" : " extensions")) +
          "; legs lean " + plain(std::fabs(setup.chain->leg_degrees), 0) + " deg " +
          (setup.chain->leg_degrees < 0 ? "outward going up. " : "inward going up. ");
    } else {
      caption += "Chain not drawn: anchors not known. ";
    }
  }
  if (drawing->standoff && drawing->travel) {
    caption +=
        "Bar travels " + show(*drawing->travel) + "; point drawn back stands " + show(*drawing->standoff) + " off. ";
    if (setup.travel_needed) caption += "Needed: " + show(Measure(*setup.travel_needed, Kind::tape)) + ". ";
  } else {
    caption += "Travel of the bar not known. ";
  }
  caption += "Dashes: its place only. Stands at " + plan.location.clock.label() + ".";
  return figure.caption(caption, paper.height);
}

FigureRoom write_pit_figure(HtmlWriter& out, const Plan& plan, UnitSystem system, const std::string& prefix) {
  constexpr std::string_view heading = "The pit";
  const auto drawing = pit_drawing(plan);
  if (!drawing) return {};
  Figure figure(out, heading);
  const PitPlan& pit = *plan.excavation;
  const auto show = [&](Length length) { return format_measure(Measure(length, Kind::distance), system); };
  std::string text = "Section across the main, seen along it. The pit is " + show(pit.pit.depth) + " deep and " +
                     show(pit.pit.across) + " wide at the bottom";
  if (drawing->sloped) {
    text += ", " + show(pit.top.across) + " at the top; its walls run out " + plain(pit.pit.slope) +
            " for each 1 they rise. ";
  } else {
    text += drawing->shielded ? ", its walls upright behind a shield. " : ", its walls upright. ";
  }
  text += "The main lies under " + show(pit.cover) + " of cover, " + show(pit.main_to_far_wall) +
          " from the wall on the spoil's side. The spoil stands " + show(pit.spoil.height) + " high and " +
          show(pit.spoil.base) + " wide, its foot " + show(pit.setback) + " back from the edge. ";
  if (drawing->rails) {
    text += "The ladder is " + show(pit.ladder_length) + " long, with " + show(plan.rules->ladder_extension.value) +
            " of its rails above the edge. ";
  }
  const PitOnPaper paper(plan, *drawing);
  {
    Canvas canvas(out, system, prefix + "pit", paper.height, {paper.scale}, heading, text);
    paper.draw(canvas);
  }
  std::string caption = "Seen along the main, the machine's side on the ";
  caption += drawing->mirrored ? "left. " : "right. ";
  if (pit.engineer_design) caption += "So deep an engineer designs the walls: drawn for its size only. ";
  else if (drawing->sloped) caption += "Slope for " + std::string(name_of(pit.soil.type)) + ". ";
  else if (drawing->shielded) caption += "Dashes: shield, its place only. ";
  else caption += "Walls upright only while nobody finds a sign of a cave-in. ";
  if (drawing->rails) caption += "Ladder at the end of the pit, drawn for its length.";
  return figure.caption(caption, paper.height);
}

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
    text += "; behind the " + std::string(name_of(step.part)) + " " + on_gauge(step.after, system);
  text += ". ";
  if (drawing->least) text += "With the least bore of the tubing " + on_gauge(*drawing->least, system) + ". ";
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
