// A drawing on paper: lines, dimensions and words of an inline SVG, 96 units to the printed inch.
//
// Words and line weights carry the meaning: heavy lines are cut edges, light ones dimensions, dashes what is drawn for
// its place only. Every number that is the plan's carries the path of the plan document it comes from.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/language.hpp"
#include "mainbore/measure.hpp"
#include "report/html_writer.hpp"
#include "words/drawings.hpp"

namespace mainbore::report {

struct At {
  double x = 0.0;
  double y = 0.0;  // downward
};

// Words with at most one number of the plan's in them.
struct Label {
  std::string before;
  std::optional<Measure> number;
  std::string_view path;  // of the number in the plan document
  std::string after;
  std::string rounded = {};  // what is written for the number, where fewer places will do
};

enum class Anchor : std::uint8_t { start, middle, end };

inline constexpr double canvas_width = 364.0;
inline constexpr double text_size = 12.0;

// Room that words need in the widest face they may be set in.
[[nodiscard]] double width_of(std::string_view text);
// A number of the drawing's, with two decimals.
[[nodiscard]] std::string coordinate(double value);

// Units of the drawing to the inch of the real thing, or to another unit.
struct Scale {
  double units = 1.0;
  std::string_view per = "inch";
};

class Canvas {
 public:
  // Opens the svg element; `id` is unique in the page.
  Canvas(HtmlWriter& out, Audience audience, std::string_view id, double height, Scale scale, std::string_view title,
         std::string_view description);
  ~Canvas();
  Canvas(const Canvas&) = delete;
  Canvas& operator=(const Canvas&) = delete;
  [[nodiscard]] UnitSystem system() const { return audience_; }
  // Words of the reader's language; the number stands where the sentence has {n}.
  [[nodiscard]] Label label(words::DrawingWord word, std::optional<Measure> number = {}, std::string_view path = {},
                            std::initializer_list<words::Figure> figures = {}) const;

  // Style by class: "cut", "edge", "thin", "dash", "axis", "fill", "blank", "hatch", "tooth" ...
  void line(At from, At to, std::string_view style);
  void circle(At center, double radius, std::string_view style);
  void box(At corner, double width, double height, std::string_view style);
  void path(std::string_view d, std::string_view style);
  void begin_turned(double degrees, At center);
  void end_turned();

  void words(At at, const Label& label, Anchor anchor = Anchor::start, std::string_view style = "t");
  // Words with a light line from them to the point they speak of.
  void leader(At point, At end, const Label& label, Anchor anchor);
  // Dimension lines with heads; where the span is too short for them they point inward from outside.
  void across(double from, double to, double y, const Label& label);
  void upright(double x, double from, double to, const Label& label, Anchor anchor);
  // A bar as long as a round length of the real thing, the longest of at most `longest` units. By a scale of lengths.
  void scale_bar(At at, double longest = 72.0);

 private:
  void head(At tip, double dx, double dy);
  [[nodiscard]] std::string number_text(const Label& label) const;
  [[nodiscard]] std::string shown_text(const Label& label) const;

  HtmlWriter& out_;
  Audience audience_;
  double scale_;  // units to the inch
};

}  // namespace mainbore::report
