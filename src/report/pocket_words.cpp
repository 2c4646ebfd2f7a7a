#include "report/pocket_words.hpp"

#include "mainbore/finding_words.hpp"
#include "report/round_up.hpp"
#include "report/settings_words.hpp"

namespace mainbore::report {

std::string class_words(const Pipe& first, const Pipe& last) {
  return first.class_name == last.class_name ? first.class_name : first.class_name + " to " + last.class_name;
}

std::string tap_words(const PocketTap& tap) {
  std::string text;
  if (tap.held) {
    text = tap.held->label() + " in after a hold";
    if (tap.hold) text += " (" + std::string(text_of(*tap.hold).title) + ')';
    if (tap.go) text += ", else " + tap.go->label() + " in";
  } else if (tap.go) {
    text = tap.go->label() + " in";
  } else {
    text = "none";
    if (tap.refused) text += " (" + std::string(text_of(tap.refused->code).title) + ')';
  }
  if (tap.recalled) text += " [check this value]";
  return text;
}

bool same_answer(const PocketCell& a, const PocketCell& b) {
  return tap_words(a.direct) == tap_words(b.direct) && tap_words(a.saddle) == tap_words(b.saddle);
}

namespace {

// Gives each hold and refusal a letter, in the order in which they come.
class Marks {
 public:
  std::string of(FindingCode code, bool refuses) {
    for (std::size_t i = 0; i < known_.size(); ++i) {
      if (known_[i] == std::pair(code, refuses)) return letter(i);
    }
    known_.emplace_back(code, refuses);
    return letter(known_.size() - 1);
  }
  void explain(std::vector<std::pair<std::string, std::string>>& out) const {
    for (std::size_t i = 0; i < known_.size(); ++i) {
      const auto& [code, refuses] = known_[i];
      out.emplace_back(letter(i), (refuses ? "None: " : "Hold: ") + std::string(text_of(code).title) + " (" +
                                      std::string(name_of(code)) + ").");
    }
  }

 private:
  static std::string letter(std::size_t i) {
    return i < 26 ? std::string(1, static_cast<char>('a' + i)) : 'z' + std::to_string(i - 24);
  }
  std::vector<std::pair<FindingCode, bool>> known_;
};

// "1 a (5/8) ?": the largest, the letter of its hold, the largest without one, a recalled rule.
std::string tap_cell(const PocketTap& tap, Marks& marks) {
  std::string text;
  if (tap.held) {
    text = tap.held->label();
    if (tap.hold) text += ' ' + marks.of(*tap.hold, false);
    if (tap.go) text += " (" + tap.go->label() + ')';
  } else if (tap.go) {
    text = tap.go->label();
  } else {
    text = "-";
    if (tap.refused) text += ' ' + marks.of(tap.refused->code, true);
  }
  return tap.recalled ? text + " ?" : text;
}

std::string number(double value, int decimals) {
  std::string text;
  append_number(text, value, decimals);
  return text;
}

std::string length_cell(const std::optional<Length>& value, UnitSystem system) {
  if (!value) return "";
  const Shown display = shown(Measure(*value), system);
  return number(display.value, display.decimals);
}

// What a gauge must read: hundredths of an inch, tenths of a millimeter, rounded up.
std::string wall_cell(const std::optional<Length>& value, UnitSystem system) {
  if (!value) return "";
  const Length step = system == UnitSystem::si ? 0.1 * units::mm : 0.01 * units::inch;
  return length_cell(round_up(*value / step) * step, system);
}

// Rounded up: a chain a hair too short is too short.
std::string chain_cell(const std::optional<Length>& value, UnitSystem system) {
  if (!value) return "";
  const bool us = system == UnitSystem::us;
  const double steps = us ? 10.0 * (*value / units::inch) : *value / units::mm;
  return number(round_up(steps) / (us ? 10.0 : 1.0), 1);
}

std::string threads_cell(const PocketCell& cell) {
  if (!cell.threads_nominal) return "";
  std::string text = cell.threads_recalled ? "~" : "";
  text += number(*cell.threads_nominal, 1);
  if (cell.threads_least) text += "/" + number(*cell.threads_least, 1);
  return text;
}

PocketRow row_of(const PocketLine& line, UnitSystem system, Marks& marks) {
  const PocketCell& cell = *line.governing;
  PocketRow row{cell.pipe->size.label(),      class_words(*line.first->pipe, *line.last->pipe),
                tap_cell(cell.direct, marks), tap_cell(cell.saddle, marks),
                threads_cell(cell),           wall_cell(cell.wall_needed, system),
                length_cell(cell.od, system), chain_cell(cell.chain_needed, system)};
  if (cell.chain_extensions > 0) row[7] += " +" + std::to_string(cell.chain_extensions);
  return row;
}

}  // namespace

PocketSheet pocket_sheet(const PocketTable& table, UnitSystem system) {
  const std::string unit = system == UnitSystem::us ? ", in" : ", mm";
  PocketSheet sheet;
  sheet.title = "Pocket table: the largest tap each main may take";
  sheet.conditions.push_back(
      "Rules: " + table.rules->name + ". Inlet thread: " + std::string(name_of(table.thread)) + ". Worked out at " +
      format_measure(Measure(table.options.line), system) +
      " on sound, straight, cool pipe proved to carry water, nothing near" +
      (table.options.machine ? "; machine: " + table.options.machine->title : "; no machine's limits") + ".");
  if (table.from_settings.any())
    sheet.conditions.push_back("From settings: " + settings_line(table.from_settings) + '.');
  sheet.conditions.emplace_back(
      "It is no permission. Each job is planned with its own pressure, place, condition and machine.");
  sheet.headings = {"main", "class", "direct", "saddle", "threads*", "wall*" + unit, "OD" + unit, "chain" + unit};
  Marks marks;
  const PipeSeries* series = nullptr;
  bool recalled = false;
  bool counted = false;
  bool judged = false;
  for (const PocketLine& line : pocket_lines(table)) {
    const PipeSeries& one = *line.first->pipe->series;
    if (series != &one) {
      series = &one;
      sheet.blocks.push_back({std::string(name_of(one.material)) + ": " + one.title, {}});
    }
    sheet.blocks.back().rows.push_back(row_of(line, system, marks));
    recalled |= line.governing->direct.recalled || line.governing->saddle.recalled;
    counted |= line.governing->threads_nominal && line.governing->threads_recalled;
    judged |= line.governing->threads_nominal && line.governing->threads_judged;
  }
  sheet.marks.emplace_back("()", "In brackets: the largest tap without a hold.");
  marks.explain(sheet.marks);
  sheet.marks.emplace_back("*",
                           "Complete threads of the largest direct tap in the tabulated wall / in the least wall a "
                           "sound pipe may have, and the wall that gives the threads asked for; of the weakest "
                           "class on the line.");
  if (counted) {
    sheet.marks.emplace_back("~", judged ? "From recalled thread dimensions: check this value."
                                         : "From recalled thread dimensions: for information, judged by the maximum.");
  }
  if (recalled) sheet.marks.emplace_back("?", "Check this value: the rule was recalled, not read.");
  if (table.options.machine && table.options.machine->chain_length) {
    sheet.marks.emplace_back("+", "Chain for a direct tap, rounded up; +1: one extension beyond the base chain.");
  }
  return sheet;
}

}  // namespace mainbore::report
