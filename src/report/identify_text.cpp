#include "mainbore/finding_words.hpp"
#include "mainbore/tool_report.hpp"
#include "report/pocket_words.hpp"
#include "report/settings_words.hpp"
#include "report/text_page.hpp"

namespace mainbore {
namespace {

std::string misgiving_text(Misgiving misgiving, const PipeSeries& series) {
  switch (misgiving) {
    case Misgiving::wall_reads_thin:
      return "the wall reads thinner than it was made";
    case Misgiving::wall_reads_thick:
      return "the wall reads thicker than it was made";
    case Misgiving::not_laid_then: {
      std::string text = "laid";
      if (series.laid_from) text += " from " + std::to_string(*series.laid_from);
      if (series.laid_to) text += " to " + std::to_string(*series.laid_to);
      return text;
    }
    case Misgiving::sounds_otherwise:
      return "it should sound otherwise";
    case Misgiving::joint_unusual:
      return "the joint is unusual on it";
  }
  return {};
}

bool on_one_line(const PossibleClass& a, const PossibleClass& b) {
  return a.against == b.against && report::same_answer(a.allows, b.allows);
}

void write_fit(report::TextPage& page, const PossiblePipe& fit, std::size_t number) {
  page.paragraph(std::string(name_of(fit.series->material)) + ", " + fit.size.label() + " in: " + fit.series->title, 4,
                 std::to_string(number) + ".");
  for (std::size_t i = 0; i < fit.classes.size();) {
    std::size_t last = i;
    while (last + 1 < fit.classes.size() && on_one_line(fit.classes[i], fit.classes[last + 1])) ++last;
    const PossibleClass& one = fit.classes[i];
    std::string text =
        "direct tap " + report::tap_words(one.allows.direct) + ", saddle tap " + report::tap_words(one.allows.saddle);
    for (std::size_t k = 0; k < one.against.size(); ++k) {
      text += (k == 0 ? "; against it: " : ", ") + misgiving_text(one.against[k], *fit.series);
    }
    const std::string classes = report::class_words(*one.pipe, *fit.classes[last].pipe);
    page.field("  " + (classes.empty() ? "no class" : classes), text, 30);
    i = last + 1;
  }
}

std::string numbers_of(const std::vector<std::size_t>& fits) {
  std::string text;
  for (const std::size_t fit : fits) text += (text.empty() ? "" : ", ") + std::to_string(fit + 1);
  return text;
}

std::string answer_text(const NextAnswer& answer, UnitSystem system) {
  if (!answer.answer.empty()) return std::string(answer.answer);
  if (answer.low && answer.high) return format_between(*answer.low, *answer.high, system);
  std::string text;
  if (answer.from) text += "from " + std::to_string(*answer.from);
  if (answer.to) text += (text.empty() ? "to " : " to ") + std::to_string(*answer.to);
  return text.empty() ? "any year" : text;
}

std::string_view step_text(NextReading what) {
  switch (what) {
    case NextReading::magnet:
      return "hold a magnet to it";
    case NextReading::wall:
      return "gauge the wall";
    case NextReading::sound:
      return "strike it lightly";
    case NextReading::joint:
      return "uncover a joint";
    case NextReading::year:
      return "look up the year laid";
  }
  return {};
}

void write_next(report::TextPage& page, const Identification& found, UnitSystem system) {
  page.heading("What would tell them apart");
  page.paragraph("Look for letters cast or stenciled on the pipe: maker's class marks settle more than any of these.",
                 2);
  for (const NextStep& step : found.next) {
    std::string text;
    for (const NextAnswer& answer : step.answers) {
      text += (text.empty() ? "" : "; ") + answer_text(answer, system) + ": " + numbers_of(answer.fits);
    }
    page.field(step_text(step.what), text, 30);
  }
}

}  // namespace

std::string identify_text(const Identification& found, UnitSystem system, int width) {
  const auto length = [&](Length value) { return format_measure(Measure(value), system); };
  report::TextPage page(width, false);
  page.title("What the pipe may be");
  for (const std::string_view warning : identify_warnings(found)) page.paragraph(warning, 2, "- ");
  page.heading("Measured");
  if (found.readings.circumference) {
    page.field("circumference", format_measure(Measure(*found.readings.circumference, Kind::tape), system));
  }
  page.field("outside diameter", found.readings_disagree ? length(found.od) + " by caliper, and the tape says otherwise"
                                                         : length(found.od) + ", so from " + length(found.od_low) +
                                                               " to " + length(found.od_high));
  if (found.readings.wall) page.field("wall", length(*found.readings.wall));

  if (found.fits.empty()) {
    page.heading("Nothing in the tables fits", "do not tap on a guess");
    for (const NearMiss& miss : found.nearest) {
      page.paragraph("The next " + std::string(miss.gap < Length() ? "larger" : "smaller") + " is " +
                         std::string(name_of(miss.pipe->series->material)) + ", " + miss.pipe->size.label() + " in, " +
                         miss.pipe->class_name + ": " + length(abs(miss.gap)) + " off.",
                     2);
    }
  } else {
    page.heading("What fits", "taps as the rules allow them, were it this, sound, and proved to carry water");
    for (std::size_t i = 0; i < found.fits.size(); ++i) write_fit(page, found.fits[i], i + 1);
  }
  for (const PipeSeries* series : found.not_judged) {
    page.paragraph(series->title + ": no diameters are tabulated, so it is neither in nor out.", 2);
  }
  if (found.fits.size() > 1) write_next(page, found, system);
  const auto settings = report::settings_words(found.from_settings, system);
  if (!settings.empty()) page.heading("From settings");
  for (const auto& [label, text] : settings) page.field(label, text, 30);
  return std::move(page).take();
}

}  // namespace mainbore
