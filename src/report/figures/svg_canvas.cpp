#include "report/figures/svg_canvas.hpp"

#include <array>
#include <cmath>

#include "report/text_page.hpp"

namespace mainbore::report {
namespace {

constexpr double head_length = 6.0;
constexpr double head_half = 2.2;
constexpr double too_short = 15.0;

std::string_view anchor_name(Anchor anchor) {
  return anchor == Anchor::start ? "start" : anchor == Anchor::middle ? "middle" : "end";
}

std::string point(At at) { return coordinate(at.x) + " " + coordinate(at.y); }

}  // namespace

double width_of(std::string_view text) { return 0.53 * text_size * static_cast<double>(columns(text)); }

std::string coordinate(double value) {
  std::string text;
  append_number(text, value, 2);
  return text;
}

Canvas::Canvas(HtmlWriter& out, Audience audience, std::string_view id, double height, Scale scale,
               std::string_view title, std::string_view description)
    : out_(out), audience_(audience), scale_(scale.units) {
  const std::string name(id);
  std::string exact;
  append_number(exact, scale.units, 6);
  const std::string attribute = "data-units-per-" + std::string(scale.per);
  out_.start("svg", {{"viewBox", "0 0 " + coordinate(canvas_width) + " " + coordinate(height)},
                     {"role", "img"},
                     {"aria-labelledby", name + "-title " + name + "-desc"},
                     {attribute, exact}});
  out_.element("title", title, {{"id", name + "-title"}});
  out_.element("desc", description, {{"id", name + "-desc"}});
}

Canvas::~Canvas() { out_.end().line(); }

void Canvas::line(At from, At to, std::string_view style) {
  out_.empty("line", {{"class", std::string(style)},
                      {"x1", coordinate(from.x)},
                      {"y1", coordinate(from.y)},
                      {"x2", coordinate(to.x)},
                      {"y2", coordinate(to.y)}});
}

void Canvas::circle(At center, double radius, std::string_view style) {
  out_.empty("circle", {{"class", std::string(style)},
                        {"cx", coordinate(center.x)},
                        {"cy", coordinate(center.y)},
                        {"r", coordinate(radius)}});
}

void Canvas::box(At corner, double width, double height, std::string_view style) {
  out_.empty("rect", {{"class", std::string(style)},
                      {"x", coordinate(corner.x)},
                      {"y", coordinate(corner.y)},
                      {"width", coordinate(width)},
                      {"height", coordinate(height)}});
}

void Canvas::path(std::string_view d, std::string_view style) {
  out_.empty("path", {{"class", std::string(style)}, {"d", std::string(d)}});
}

void Canvas::begin_turned(double degrees, At center) {
  out_.start("g", {{"transform", "rotate(" + coordinate(degrees) + " " + point(center) + ")"}});
}
void Canvas::end_turned() { out_.end(); }

std::string Canvas::number_text(const Label& label) const {
  if (!label.number) return {};
  if (!label.rounded.empty()) return label.rounded;
  const Measure number = *label.number;
  // As a rule and a tape are read: no drawing has a decimal of an inch or a foot.
  if (audience_.units == UnitSystem::us && number.kind() == Kind::length)
    return format_measure(Measure(number.base(), Kind::tape), audience_);
  if (audience_.units == UnitSystem::us && number.kind() == Kind::distance)
    return on_tape(std::round(number.base()) * units::inch, audience_, Toward::less);
  if (number.kind() == Kind::pressure) return on_gauge(number.as<Pressure>(), audience_);
  return format_measure(number, audience_);
}

std::string Canvas::shown_text(const Label& label) const { return label.before + number_text(label) + label.after; }

Label Canvas::label(words::DrawingWord word, std::optional<Measure> number, std::string_view path,
                    std::initializer_list<words::Figure> figures) const {
  constexpr std::string_view place = "{n}";
  const std::string_view sentence = say(word, audience_.language);
  const std::size_t at = sentence.find(place);
  const auto filled = [&](std::string_view part) { return words::filled(part, figures, audience_.language); };
  if (at == std::string_view::npos) return {filled(sentence), {}, {}, {}};
  return {filled(sentence.substr(0, at)), number, path, filled(sentence.substr(at + place.size()))};
}

void Canvas::words(At at, const Label& label, Anchor anchor, std::string_view style) {
  out_.start("text", {{"class", std::string(style)},
                      {"x", coordinate(at.x)},
                      {"y", coordinate(at.y)},
                      {"text-anchor", std::string(anchor_name(anchor))}});
  out_.text(label.before);
  if (label.number) {
    const std::string text = number_text(label);
    if (label.path.empty()) {
      out_.text(text);
    } else {
      const Shown value = shown(*label.number, audience_);
      std::string number;
      append_number(number, value.value, value.decimals);
      out_.element(
          "tspan", text,
          {{"data-path", std::string(label.path)}, {"data-value", number}, {"data-unit", std::string(value.unit)}});
    }
  }
  out_.text(label.after).end();
}

void Canvas::leader(At spot, At end, const Label& label, Anchor anchor) {
  line(spot, end, "thin");
  circle(spot, 1.6, "dot");
  const double gap = anchor == Anchor::end ? -3.0 : anchor == Anchor::start ? 3.0 : 0.0;
  words({end.x + gap, end.y + 0.33 * text_size}, label, anchor);
}

void Canvas::head(At tip, double dx, double dy) {
  const At back{tip.x - dx * head_length, tip.y - dy * head_length};
  path("M" + point(tip) + "L" + point({back.x - dy * head_half, back.y + dx * head_half}) + "L" +
           point({back.x + dy * head_half, back.y - dx * head_half}) + "Z",
       "head");
}

void Canvas::across(double from, double to, double y, const Label& label) {
  const bool inside = to - from >= too_short;
  line({inside ? from : from - 12.0, y}, {inside ? to : to + 12.0, y}, "thin");
  head({from, y}, inside ? -1.0 : 1.0, 0.0);
  head({to, y}, inside ? 1.0 : -1.0, 0.0);
  // Centered over the line, kept on the paper.
  const double half = width_of(shown_text(label)) / 2.0;
  double middle = (from + to) / 2.0;
  middle = std::fmin(std::fmax(middle, half), canvas_width - half);
  words({middle, y - 3.5}, label, Anchor::middle, "t clear");
}

void Canvas::upright(double x, double from, double to, const Label& label, Anchor anchor) {
  const bool inside = to - from >= too_short;
  line({x, inside ? from : from - 12.0}, {x, inside ? to : to + 12.0}, "thin");
  head({x, from}, 0.0, inside ? -1.0 : 1.0);
  head({x, to}, 0.0, inside ? 1.0 : -1.0);
  const double gap = anchor == Anchor::end ? -5.0 : 5.0;
  words({x + gap, (from + to) / 2.0 + 0.33 * text_size}, label, anchor);
}

void Canvas::scale_bar(At at, double longest) {
  struct Round {
    Length length;
    std::string_view words;
  };
  constexpr std::array<Round, 9> customary = {{{0.1 * units::inch, "0.1 in"},
                                               {0.25 * units::inch, "1/4 in"},
                                               {0.5 * units::inch, "1/2 in"},
                                               {1.0 * units::inch, "1 in"},
                                               {3.0 * units::inch, "3 in"},
                                               {6.0 * units::inch, "6 in"},
                                               {12.0 * units::inch, "1 ft"},
                                               {36.0 * units::inch, "3 ft"},
                                               {120.0 * units::inch, "10 ft"}}};
  constexpr std::array<Round, 9> metric = {{{2.0 * units::mm, "2 mm"},
                                            {5.0 * units::mm, "5 mm"},
                                            {10.0 * units::mm, "10 mm"},
                                            {25.0 * units::mm, "25 mm"},
                                            {50.0 * units::mm, "50 mm"},
                                            {100.0 * units::mm, "100 mm"},
                                            {300.0 * units::mm, "300 mm"},
                                            {1000.0 * units::mm, "1 m"},
                                            {3000.0 * units::mm, "3 m"}}};
  const auto& lengths = audience_.units == UnitSystem::si ? metric : customary;
  const Round* chosen = &lengths.front();
  for (const Round& round : lengths) {
    if (round.length / units::inch * scale_ <= longest) chosen = &round;
  }
  const double length = chosen->length / units::inch * scale_;
  line(at, {at.x + length, at.y}, "bar");
  line({at.x, at.y - 4.0}, {at.x, at.y + 4.0}, "edge");
  line({at.x + length, at.y - 4.0}, {at.x + length, at.y + 4.0}, "edge");
  Label bar = label(words::DrawingWord::to_scale);
  bar.before = std::string(chosen->words);
  words({at.x + length + 5.0, at.y + 4.0}, bar);
}

}  // namespace mainbore::report
