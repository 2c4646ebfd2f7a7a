#include <algorithm>
#include <vector>

#include "report/figures/drawing.hpp"
#include "report/figures/figure.hpp"
#include "report/figures/figures.hpp"
#include "report/figures/svg_canvas.hpp"
#include "words/drawings.hpp"
#include "words/terms.hpp"

namespace mainbore::report {
namespace {

using words::DrawingWord;

std::string_view name_of_thing(NearbyThing what, Language language) {
  return words::term(nearby_names[static_cast<std::size_t>(what)], language);
}

class AlongOnPaper {
 public:
  AlongOnPaper(const Plan& plan, const AlongDrawing& drawing, Audience audience)
      : plan_(plan),
        drawing_(drawing),
        audience_(audience),
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
    canvas.words({0.0, height - 4.0}, canvas.label(DrawingWord::minus_way), Anchor::start, "t soft");
    canvas.words({canvas_width - 3.0, height - 4.0}, canvas.label(DrawingWord::plus_way), Anchor::end, "t soft");
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
      const double half = width_of(name_of_thing(thing.what, audience_.language)) / 2.0;
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
      case NearbyThing::plain_end:
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
    canvas.words({label.x, y}, {std::string(name_of_thing(thing.what, audience_.language)), {}, {}, {}},
                 Anchor::middle);
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
    canvas.words({x, top - 15.0}, canvas.label(DrawingWord::tap_here), Anchor::middle, "t strong clear");
  }

  static Label rounded(Label label, std::string text) {
    label.rounded = std::move(text);
    return label;
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
      canvas.words({canvas_width / 2.0, axis_ + half_ + 16.0}, canvas.label(DrawingWord::nothing_near), Anchor::middle);
      return;
    }
    canvas.line({tap, axis_ + half_}, {tap, y - 18.0 + 17.0 * static_cast<double>(dimensions_)}, "thin");
    if (drawing_.planned != Length()) {
      const double asked = at(Length());
      canvas.line({asked, axis_ + half_}, {asked, y + 3.0}, "thin");
      canvas.across(std::min(tap, asked), std::max(tap, asked), y,
                    rounded(canvas.label(DrawingWord::moved, Measure(abs(drawing_.planned), Kind::distance)),
                            on_tape(abs(drawing_.planned), audience_, Toward::more)));
      y += 17.0;
    }
    for (const AlongThing* thing : nearest) {
      const double x = at(thing->along);
      canvas.line({x, axis_ + half_ + 5.0}, {x, y + 3.0}, "thin");
      const std::string least = on_tape(*thing->least, audience_, Toward::more);
      canvas.across(std::min(x, tap), std::max(x, tap), y,
                    rounded(canvas.label(DrawingWord::thing_kept, Measure(*thing->kept, Kind::distance), {},
                                         {{"thing", name_of_thing(thing->what, audience_.language)}, {"least", least}}),
                            on_tape(*thing->kept, audience_, Toward::less)));
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
    canvas.words({tap, y + 16.0}, canvas.label(DrawingWord::clear_each_way, Measure(drawing_.ask, Kind::distance)),
                 Anchor::middle);
    canvas.words({2.0, axis_ - half_ - 6.0}, canvas.label(DrawingWord::nearest));
    canvas.words({canvas_width - 6.0, axis_ - half_ - 6.0}, canvas.label(DrawingWord::nearest), Anchor::end);
  }

  const Plan& plan_;
  const AlongDrawing& drawing_;
  Audience audience_;
  double half_ = 0.0;
  double axis_ = 0.0;
  double rows_ = 1.0;
  std::size_t dimensions_ = 0;
  std::vector<LabelPlace> labels_;

 public:
  double scale;
  double height = 0.0;
};

}  // namespace

FigureRoom write_along_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix) {
  const auto said = [&](DrawingWord word, std::initializer_list<words::Figure> figures = {}) {
    return say(word, audience.language, figures) + " ";
  };
  const std::string_view heading = say(DrawingWord::along, audience.language);
  const auto drawing = along_drawing(plan);
  if (!drawing) return {};
  Figure figure(out, heading);
  const auto kept = [&](Length length) { return on_tape(length, audience, Toward::less); };
  const auto needed = [&](Length length) { return on_tape(length, audience, Toward::more); };
  const auto name = [&](const AlongThing& thing) { return name_of_thing(thing.what, audience.language); };
  std::string far;
  for (const AlongThing& thing : drawing->beyond) {
    far += (far.empty() ? "" : "; ") + say(DrawingWord::far_thing, audience.language,
                                           {{"thing", name(thing)},
                                            {"distance", kept(abs(thing.along))},
                                            {"way", thing.along < Length() ? "-" : "+"}});
  }
  const bool moved = drawing->planned != Length();
  std::string text = said(DrawingWord::along_said);
  if (!drawing->looked) text += said(DrawingWord::near_unknown);
  text += moved ? said(DrawingWord::moved_said, {{"distance", needed(abs(drawing->planned))}})
                : said(DrawingWord::at_place);
  for (const AlongThing& thing : drawing->things) {
    text += said(DrawingWord::thing_said, {{"thing", name(thing)},
                                           {"distance", kept(abs(thing.along - drawing->planned))},
                                           {"least", thing.least ? needed(*thing.least) : std::string()}});
  }
  const AlongOnPaper paper(plan, *drawing, audience);
  {
    Canvas canvas(out, audience, prefix + "along", paper.height, {paper.scale}, heading, text);
    paper.draw(canvas);
  }
  std::string caption;
  if (!drawing->looked) caption += said(DrawingWord::nobody_looked);
  else if (!drawing->things.empty()) caption += said(DrawingWord::keep_out);
  if (moved) caption += said(DrawingWord::white_mark);
  if (!far.empty()) caption += said(DrawingWord::farther_off, {{"things", far}});
  if (plan.method.count > 1) caption += said(DrawingWord::first_of, {{"count", std::to_string(plan.method.count)}});
  return figure.caption(caption.empty() ? said(DrawingWord::from_the_side) : caption, paper.height);
}

}  // namespace mainbore::report
