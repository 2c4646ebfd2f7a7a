// The ledger: records of taps as JSON lines, only ever appended to.
//
// A line is a record (readings_file.hpp) with `revision` behind `format`: 1 for the first record of a tap, and one more for
// each correction. A tap is told by its work order and its number. The last revision counts; the earlier ones stay. A last
// line without its line end was never acknowledged to anybody, and does not count.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/diagnostic.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/tap_record.hpp"

namespace mainbore {

inline constexpr std::size_t longest_ledger = std::size_t{1} << 30;
inline constexpr std::string_view ledger_line_begin = R"({"format":1,"revision":)";

struct LedgerEntry {
  std::int64_t line = 0;
  std::string id;
  int tap_number = 1;
  int revision = 1;
  std::string place;
  std::string crew;
  std::string material;
  std::string main_size;  // "8 in"
  std::string service_size;
  std::string verdict;
  bool complete = false;
  bool is_void = false;
  Readings readings;
  std::string_view text;  // the line as it stands, without its end
};

struct Ledger {
  std::vector<LedgerEntry> entries;     // in the order of the lines
  std::size_t whole = 0;                // bytes up to the end of the last whole line
  bool torn = false;                    // something stands behind it: a record that was never finished
  bool torn_is_whole = false;           // but for its line end
  std::vector<Diagnostic> diagnostics;  // lines that are no records

  // The last revision of each tap, in the order in which the taps came; of one order alone where it is named.
  [[nodiscard]] std::vector<const LedgerEntry*> latest(std::string_view order = {}) const;
  // Of the tap, 0 where it has no record yet.
  [[nodiscard]] int revisions(std::string_view id, int tap_number) const;
};

// Never throws for anything in the text, which must outlive the ledger.
[[nodiscard]] Ledger read_ledger(std::string_view text, std::string_view file_name, const Catalog& catalog);
// What a writer must know of a ledger before it adds to it, in the memory of one line: that each line is a record, and how many
// there are of the tap it writes of. What the readings in a line say is read by read_ledger alone.
class LedgerScan {
 public:
  LedgerScan(std::string id, int tap_number, std::string file_name, const Catalog& catalog);
  ~LedgerScan();

  void add(std::string_view bytes);  // the next of the ledger
  void end();                        // there are no more

  int revisions = 0;      // of the tap, in whole lines
  std::size_t size = 0;   // bytes, all of them
  std::size_t whole = 0;  // and up to the end of the last whole line
  bool torn = false;      // as of a Ledger
  bool torn_is_whole = false;
  bool torn_is_of_tap = false;          // and of the tap
  std::vector<Diagnostic> diagnostics;  // the first lines that are no records

 private:
  void line(std::string_view text);
  bool is_record(std::string_view text, bool& of_tap);
  void wrong(std::string_view text, const std::string& what);

  struct Parser;
  std::unique_ptr<Parser> parser_;
  std::string id_;
  int tap_number_;
  std::string file_name_;
  const Catalog& catalog_;
  std::string rest_;  // of a line in the making
  std::int64_t lines_ = 0;
};

// The line to append, its end included. The record must have a work order.
[[nodiscard]] std::string ledger_line(const TapRecord& record, int revision, UnitSystem units);

// The records as an array of JSON, each as its line has it.
[[nodiscard]] std::string ledger_to_json(const std::vector<const LedgerEntry*>& entries);
// As a table (RFC 4180), quantities in the units that the header names.
[[nodiscard]] std::string ledger_to_csv(const std::vector<const LedgerEntry*>& entries, UnitSystem units);
// As a FeatureCollection (RFC 7946): points in WGS 84, longitude first; a tap without coordinates has no geometry.
[[nodiscard]] std::string ledger_to_geojson(const std::vector<const LedgerEntry*>& entries, UnitSystem units);

// What the records teach of a tool.
struct ToolUse {
  std::string tool;         // its mark
  int holes = 0;            // in all the records
  int since_sharpened = 0;  // holes since it was last sharpened or replaced; all of them where it never was
  std::string last_state;   // "sharpened" or "replaced"; empty: never
  std::string last_date;    // of the last hole
};
// Where tapping stopped with a pair of tool and stop, of the direct taps: what service.trial.* of the next job can say.
struct PairDepth {
  std::string tool;
  std::string stop;
  std::string date;
  Measure depth;
  std::optional<Measure> hand_turns;
  std::optional<Measure> wrench_turns;
  std::optional<Measure> threads_showing;
};
struct ToolHistory {
  std::vector<ToolUse> tools;     // by mark
  std::vector<PairDepth> depths;  // by tool and stop, the oldest first
};
[[nodiscard]] ToolHistory tool_history(const std::vector<const LedgerEntry*>& entries);
[[nodiscard]] std::string tool_history_text(const ToolHistory& history, UnitSystem units, int width = 80);
[[nodiscard]] std::string tool_history_to_json(const ToolHistory& history, UnitSystem units, JsonStyle style);

}  // namespace mainbore
