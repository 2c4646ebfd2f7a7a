#include <algorithm>
#include <initializer_list>
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
  // As the text has it: room to be given, by the tape.
  static Label taped(const Canvas& canvas, DrawingWord word, Length length, std::string_view path) {
    Label label = canvas.label(word, Measure(length, Kind::distance), path);
    label.rounded = on_tape(length, canvas.system(), Toward::more);
    return label;
  }
  static Label paced(const Canvas& canvas, DrawingWord word, Length length, std::string_view path) {
    Label label = canvas.label(word, Measure(length, Kind::distance), path);
    label.rounded = by_paces(length, canvas.system());
    return label;
  }
  static void centered(Canvas& canvas, At at, double room, const Label& label) {
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
    centered(canvas, {top.x, top.y - 18.0}, 116.0,
             paced(canvas, DrawingWord::spoil_high, pit.spoil.height, "excavation.spoil.height"));
    centered(canvas, {top.x, top.y - 5.0}, 116.0,
             paced(canvas, DrawingWord::spoil_wide, pit.spoil.base, "excavation.spoil.base"));
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
    centered(canvas, {(inner + outer) / 2.0, std::min(top - 5.0, ground_ - row_over_pit - 4.0)}, 100.0,
             canvas.label(DrawingWord::ladder, Measure(plan_.excavation->ladder_length, Kind::distance),
                          "excavation.way_out.ladder_length"));
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
      canvas.leader({face + away(3.0), at}, end, canvas.label(DrawingWord::shield), ends());
    } else {
      canvas.leader(
          {face, at}, end,
          canvas.label(DrawingWord::slope, Measure(plan_.excavation->pit.slope, Kind::ratio), "excavation.slope"),
          ends());
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
              taped(canvas, DrawingWord::bottom, pit.pit.across, "excavation.bottom.across"));
    if (drawing_.sloped) {
      const double row = ground_ - 8.0;
      for (const double edge : {far_edge, near_edge}) canvas.line({edge, ground_}, {edge, row - 4.0}, "thin");
      dimension(canvas, far_edge, near_edge, row, {});
      // Beside the rails of the ladder.
      canvas.words({(far_edge + x(Length())) / 2.0, row - 3.5},
                   taped(canvas, DrawingWord::top, pit.top.across, "excavation.top.across"), Anchor::middle, "t clear");
    }
    const double toe = x(drawing_.spoil_toe.right);
    const double row = ground_ + 14.0;
    for (const double end : {toe, far_edge}) canvas.line({end, ground_}, {end, row + 4.0}, "thin");
    dimension(canvas, toe, far_edge, row, {});
    canvas.words({toe - away(16.0), row + 4.0},
                 taped(canvas, DrawingWord::set_back, pit.setback, "excavation.spoil.setback"), ends());
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
    canvas.words({words, cover_words() - 13.0}, canvas.label(DrawingWord::cover), begins());
    canvas.words({words, cover_words()}, {{}, Measure(pit.cover, Kind::distance), "excavation.cover", {}}, begins());
    canvas.words({words, depth_words() - 13.0}, canvas.label(DrawingWord::depth), begins());
    canvas.words({words, depth_words()},
                 Label{{},
                       Measure(pit.pit.depth, Kind::distance),
                       "excavation.depth",
                       {},
                       on_tape(pit.pit.depth, canvas.system(), Toward::more)},
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

}  // namespace

FigureRoom write_pit_figure(HtmlWriter& out, const Plan& plan, Audience audience, const std::string& prefix) {
  const auto said = [&](DrawingWord word, std::initializer_list<words::Figure> figures = {}) {
    return say(word, audience.language, figures);
  };
  const std::string_view heading = say(DrawingWord::pit, audience.language);
  const auto drawing = pit_drawing(plan);
  if (!drawing) return {};
  Figure figure(out, heading);
  const PitPlan& pit = *plan.excavation;
  const auto show = [&](Length length) { return format_measure(Measure(length, Kind::distance), audience); };
  const auto taped = [&](Length length) { return on_tape(length, audience, Toward::more); };
  std::string text = said(DrawingWord::pit_said, {{"depth", taped(pit.pit.depth)}, {"across", taped(pit.pit.across)}});
  if (drawing->sloped)
    text += said(DrawingWord::pit_sloped, {{"top", taped(pit.top.across)}, {"slope", plain(pit.pit.slope)}});
  else text += said(drawing->shielded ? DrawingWord::pit_shielded : DrawingWord::pit_upright);
  text += " " + said(DrawingWord::pit_main, {{"cover", show(pit.cover)},
                                             {"side", taped(pit.main_to_far_wall)},
                                             {"height", by_paces(pit.spoil.height, audience)},
                                             {"base", by_paces(pit.spoil.base, audience)},
                                             {"setback", taped(pit.setback)}});
  if (drawing->rails) {
    text += " " + said(DrawingWord::pit_ladder,
                       {{"length", show(pit.ladder_length)}, {"above", show(plan.rules->pit.ladder_extension.value)}});
  }
  const PitOnPaper paper(plan, *drawing);
  {
    Canvas canvas(out, audience, prefix + "pit", paper.height, {paper.scale}, heading, text);
    paper.draw(canvas);
  }
  std::string caption = said(drawing->mirrored ? DrawingWord::machine_left : DrawingWord::machine_right) + " ";
  if (pit.engineer_design) {
    caption += said(DrawingWord::engineer_designs);
  } else if (drawing->sloped) {
    caption += said(DrawingWord::slope_for, {{"soil", words::term(name_of(pit.soil.type), audience.language)}});
  } else {
    caption += said(drawing->shielded ? DrawingWord::dashes_shield : DrawingWord::upright_while);
  }
  if (drawing->rails) caption += " " + said(DrawingWord::ladder_drawn);
  return figure.caption(caption, paper.height);
}

}  // namespace mainbore::report
