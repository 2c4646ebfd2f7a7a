#include "mainbore/ledger.hpp"
#include "mainbore/measure.hpp"
#include "report/text_page.hpp"

namespace mainbore {

std::string tool_history_text(const ToolHistory& history, UnitSystem units, int width) {
  report::TextPage page(width, false);
  page.title("TOOLS - by the records of the ledger");
  for (const ToolUse& use : history.tools) {
    std::string text = std::to_string(use.since_sharpened) + (use.since_sharpened == 1 ? " hole" : " holes");
    text += use.last_state.empty() ? " on record, never sharpened or replaced" : " since it was " + use.last_state;
    if (use.holes != use.since_sharpened) text += "; " + std::to_string(use.holes) + " in all";
    if (!use.last_date.empty()) text += "; last on " + use.last_date;
    page.field(use.tool, text, 24);
  }
  if (history.tools.empty()) page.paragraph("No record names a tool.", 2, "  ");
  if (history.depths.empty()) return std::move(page).take();
  page.heading("DEPTHS", "by tool and stop: what service.trial of the next job can say");
  const auto number = [&](const std::optional<Measure>& value) {
    return value ? format_measure(*value, units) : std::string("not read");
  };
  for (const PairDepth& pair : history.depths) {
    page.paragraph(
        "depth " + format_measure(pair.depth, units) + "; by hand " + number(pair.hand_turns) + ", by wrench " +
            number(pair.wrench_turns) + ", showing " + number(pair.threads_showing) +
            (pair.date.empty() ? std::string() : "; " + pair.date),
        4, "  " + pair.tool + " with " + (pair.stop.empty() ? std::string("a stop not named") : pair.stop) + ": ");
  }
  return std::move(page).take();
}

}  // namespace mainbore
