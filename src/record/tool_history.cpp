// What the records say of tools, and of the depth to tap to with them.
#include <algorithm>
#include <map>
#include <tuple>

#include "mainbore/ledger.hpp"

namespace mainbore {

ToolHistory tool_history(const std::vector<const LedgerEntry*>& entries) {
  std::vector<const LedgerEntry*> in_time = entries;
  std::stable_sort(in_time.begin(), in_time.end(), [](const LedgerEntry* a, const LedgerEntry* b) {
    // "7:30" is before "10:15".
    const auto when = [](const LedgerEntry* entry) {
      const std::string_view start = entry->readings.text(RecordKey::start);
      return std::tuple(entry->readings.text(RecordKey::date), start.size(), start);
    };
    return when(a) < when(b);
  });
  ToolHistory history;
  std::map<std::string, ToolUse, std::less<>> tools;
  for (const LedgerEntry* entry : in_time) {
    const Readings& read = entry->readings;
    const std::string tool(read.text(RecordKey::tool));
    if (tool.empty()) continue;
    ToolUse& use = tools[tool];
    use.tool = tool;
    const std::string_view state = read.text(RecordKey::tool_state);
    if (state == "sharpened" || state == "replaced") {
      use.since_sharpened = 0;
      use.last_state = state;
      // Another edge: what it was tapped to before says nothing of it.
      std::erase_if(history.depths, [&](const PairDepth& pair) { return pair.tool == tool; });
    }
    ++use.holes;
    ++use.since_sharpened;
    if (read.has(RecordKey::date)) use.last_date = read.text(RecordKey::date);
    const auto depth = read.measure(RecordKey::tap_depth);
    if (!depth || read.text(RecordKey::method) != "direct") continue;
    history.depths.push_back({tool, std::string(read.text(RecordKey::stop)), std::string(read.text(RecordKey::date)),
                              *depth, read.measure(RecordKey::hand_turns), read.measure(RecordKey::wrench_turns),
                              read.measure(RecordKey::threads_showing)});
  }
  for (auto& [name, use] : tools) history.tools.push_back(std::move(use));
  std::stable_sort(history.depths.begin(), history.depths.end(), [](const PairDepth& a, const PairDepth& b) {
    return std::tie(a.tool, a.stop) < std::tie(b.tool, b.stop);
  });
  return history;
}

}  // namespace mainbore
