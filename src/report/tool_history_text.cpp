#include <string>
#include <vector>

#include "mainbore/ledger.hpp"
#include "mainbore/measure.hpp"
#include "report/text_page.hpp"

namespace mainbore {
namespace {

bool same_pair(const PairDepth& a, const PairDepth& b) { return a.tool == b.tool && a.stop == b.stop; }

// The trial of the next job, as its command line takes it: lines that a shell takes for one.
void write_for_next_job(report::TextPage& page, const PairDepth& pair, UnitSystem units) {
  std::vector<std::string> facts = {"--set service.trial.depth=\"" + format_measure(pair.depth, units) + '"'};
  const auto put = [&](std::string_view name, const std::string& value) {
    facts.push_back("--set service.trial." + std::string(name) + '=' + value);
  };
  if (!pair.date.empty()) put("date", pair.date);
  if (pair.hand_turns) put("hand_turns", format_measure(*pair.hand_turns, units));
  if (pair.wrench_turns) put("wrench_turns", format_measure(*pair.wrench_turns, units));
  if (pair.threads_showing) put("threads_showing", format_measure(*pair.threads_showing, units));
  for (std::size_t i = 0; i < facts.size(); i += 2) {
    const bool two = i + 1 < facts.size();
    page.paragraph(facts[i] + (two ? ' ' + facts[i + 1] : std::string()) + (i + 2 < facts.size() ? " \\" : ""), 4,
                   "    ");
  }
}

}  // namespace

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
  page.heading("DEPTHS", "tapped to since, by tool and stop, and how the next job says it");
  const auto number = [&](const std::optional<Measure>& value) {
    return value ? format_measure(*value, units) : std::string("not read");
  };
  for (std::size_t i = 0; i < history.depths.size(); ++i) {
    const PairDepth& pair = history.depths[i];
    if (i == 0 || !same_pair(pair, history.depths[i - 1])) {
      page.paragraph(pair.tool + " with " + (pair.stop.empty() ? std::string("a stop not named") : pair.stop) + ':', 2,
                     "  ");
    }
    page.paragraph("depth " + format_measure(pair.depth, units) + "; by hand " + number(pair.hand_turns) +
                       ", by wrench " + number(pair.wrench_turns) + ", showing " + number(pair.threads_showing),
                   6, "    " + (pair.date.empty() ? std::string() : pair.date + ": "));
    if (i + 1 == history.depths.size() || !same_pair(pair, history.depths[i + 1]))
      write_for_next_job(page, pair, units);
  }
  return std::move(page).take();
}

}  // namespace mainbore
