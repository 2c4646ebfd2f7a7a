// The answers of the smaller tools as JSON.
#include "io/job/job_json.hpp"
#include "io/text/json_writer.hpp"
#include "mainbore/tool_file.hpp"

namespace mainbore {
namespace {

using io::JsonWriter;
using io::ratio_places;

// A document of its own: {"format": 1, ...}, the last line ended when pretty.
template <class Write>
std::string document(JsonStyle style, Write write) {
  std::string text;
  JsonWriter out(text, style);
  out.begin_object();
  out.whole("format", tool_format);
  write(out);
  out.end_object();
  if (style == JsonStyle::pretty) text += '\n';
  return text;
}

// Writes what is known, in the units asked for.
class Putter {
 public:
  Putter(JsonWriter& out, UnitSystem system) : out_(out), system_(system) {}
  void operator()(std::string_view key, Measure value) const { out_.quantity(key, value, system_); }
  void operator()(std::string_view key, Length value) const { out_.quantity(key, Measure(value), system_); }
  void operator()(std::string_view key, NominalSize value) const { out_.size(key, value); }
  void operator()(std::string_view key, int value) const { out_.whole(key, value); }
  void operator()(std::string_view key, double value) const { out_.number(key, value, ratio_places); }
  void operator()(std::string_view key, FindingCode value) const { out_.text(key, name_of(value)); }
  void operator()(std::string_view key, const FactValue& value) const {
    if (const auto* measure = std::get_if<Measure>(&value)) (*this)(key, *measure);
    if (const auto* size = std::get_if<NominalSize>(&value)) (*this)(key, *size);
  }
  template <class T>
  void operator()(std::string_view key, const std::optional<T>& value) const {
    if (value) (*this)(key, *value);
  }

 private:
  JsonWriter& out_;
  UnitSystem system_;
};

void write_codes(JsonWriter& out, std::string_view key, const std::vector<FindingCode>& codes) {
  out.begin_array(key);
  for (const FindingCode code : codes) out.text({}, name_of(code));
  out.end_array();
}

void write_outcome(JsonWriter& out, std::string_view key, const Outcome& outcome, const Putter& put) {
  out.begin_object(key);
  out.text("verdict", name_of(outcome.verdict));
  out.text("method", name_of(outcome.method));
  put("count", outcome.count);
  put("tap", outcome.tap);
  write_codes(out, "hindrances", outcome.hindrances);
  out.end_object();
}

void write_bounds(JsonWriter& out, std::string_view key, const std::vector<Bound>& bounds, const Putter& put) {
  out.begin_array(key);
  for (const Bound& bound : bounds) {
    out.begin_object();
    put("holds_to", bound.holds_to);
    put("changes_at", bound.changes_at);
    out.text("effect", name_of(bound.effect));
    write_outcome(out, "then", bound.then, put);
    write_codes(out, "arrives", bound.arrives);
    write_codes(out, "leaves", bound.leaves);
    out.end_object();
  }
  out.end_array();
}

void write_tap(JsonWriter& out, std::string_view key, const PocketTap& tap, const Putter& put) {
  out.begin_object(key);
  put("go", tap.go);
  put("held", tap.held);
  put("hold", tap.hold);
  if (tap.refused) put("refused", tap.refused->code);
  out.flag("recalled", tap.recalled);
  out.end_object();
}

// What a pipe of one class may take, behind the names of material, series, size and class.
void write_cell(JsonWriter& out, const PocketCell& cell, const Putter& put) {
  write_tap(out, "direct", cell.direct, put);
  write_tap(out, "saddle", cell.saddle, put);
  if (cell.threads_nominal) {
    put("threads_nominal", cell.threads_nominal);
    put("threads_least", cell.threads_least);
    put("wall_needed", cell.wall_needed);
    out.flag("threads_judged", cell.threads_judged);
    out.flag("threads_recalled", cell.threads_recalled);
  }
  put("od", cell.od);
  if (cell.chain_needed) {
    put("chain_needed", cell.chain_needed);
    put("chain_extensions", cell.chain_extensions);
  }
}

void write_pipe(JsonWriter& out, const Pipe& pipe) {
  out.text("material", name_of(pipe.series->material));
  out.text("series", pipe.series->id);
  out.size("size", pipe.size);
  if (!pipe.class_name.empty()) out.text("class", pipe.class_name);
}

void write_fit(JsonWriter& out, const PossiblePipe& fit, const Putter& put) {
  out.begin_object();
  out.text("material", name_of(fit.series->material));
  out.text("series", fit.series->id);
  out.text("title", fit.series->title);
  out.size("size", fit.size);
  out.begin_array("classes");
  for (const PossibleClass& one : fit.classes) {
    out.begin_object();
    if (!one.pipe->class_name.empty()) out.text("class", one.pipe->class_name);
    put("od", one.pipe->od);
    put("wall", one.pipe->wall);
    out.begin_array("against");
    for (const Misgiving misgiving : one.against) out.text({}, name_of(misgiving));
    out.end_array();
    out.begin_object("would_allow");
    write_cell(out, one.allows, put);
    out.end_object();
    out.end_object();
  }
  out.end_array();
  out.end_object();
}

void write_step(JsonWriter& out, const NextStep& step, const Putter& put) {
  out.begin_object();
  out.text("reading", name_of(step.what));
  out.begin_array("answers");
  for (const NextAnswer& answer : step.answers) {
    out.begin_object();
    if (!answer.answer.empty()) out.text("answer", answer.answer);
    put("low", answer.low);
    put("high", answer.high);
    put("from", answer.from);
    put("to", answer.to);
    out.begin_array("fits");  // places in "fits", from 0
    for (const std::size_t fit : answer.fits) out.whole({}, static_cast<long>(fit));
    out.end_array();
    out.end_object();
  }
  out.end_array();
  out.end_object();
}

}  // namespace

std::string what_if_to_json(std::span<const WhatIf> facts, UnitSystem system, JsonStyle style,
                            const FromSettings& from_settings) {
  return document(style, [&](JsonWriter& out) {
    io::write_settings(out, from_settings, system);
    const Putter put(out, system);
    out.begin_array("what_if");
    for (const WhatIf& fact : facts) {
      out.begin_object();
      out.text("path", fact.path);
      out.text("name", fact.name);
      out.flag("given", fact.given);
      put("value", fact.value);
      write_outcome(out, "at", fact.at, put);
      put("least", fact.least);
      put("greatest", fact.greatest);
      write_bounds(out, "down", fact.down, put);
      write_bounds(out, "up", fact.up, put);
      out.end_object();
    }
    out.end_array();
  });
}

std::string identification_to_json(const Identification& found, UnitSystem system, JsonStyle style) {
  return document(style, [&](JsonWriter& out) {
    const Putter put(out, system);
    out.begin_array("warnings");
    for (const std::string_view warning : identify_warnings(found)) out.text({}, warning);
    out.end_array();
    out.flag("water_proved", found.water_proved);
    put("od", found.od);
    out.flag("readings_disagree", found.readings_disagree);
    if (!found.readings_disagree) {
      put("od_low", found.od_low);
      put("od_high", found.od_high);
    }
    out.begin_array("fits");
    for (const PossiblePipe& fit : found.fits) write_fit(out, fit, put);
    out.end_array();
    out.begin_array("nearest");
    for (const NearMiss& miss : found.nearest) {
      out.begin_object();
      write_pipe(out, *miss.pipe);
      put("gap", miss.gap);
      out.end_object();
    }
    out.end_array();
    out.begin_array("not_judged");
    for (const PipeSeries* series : found.not_judged) out.text({}, series->id);
    out.end_array();
    out.begin_array("next");
    for (const NextStep& step : found.next) write_step(out, step, put);
    out.end_array();
    io::write_settings(out, found.from_settings, system);
  });
}

std::string trial_taps_to_json(const TrialSheet& sheet, UnitSystem system, JsonStyle style) {
  const mechanics::TrialResult& result = sheet.result;
  const auto turns = [](double value) { return Measure(value, Kind::turns); };
  const auto threads = [](double value) { return Measure(value, Kind::threads); };
  return document(style, [&](JsonWriter& out) {
    const Putter put(out, system);
    out.flag("settled", result.settled());
    put("mark", result.mark);
    put("from_last", turns(result.turns_from_last));
    put("spread", result.spread);
    put("spread_turns", turns(result.spread_turns));
    if (result.hand_turns) put("hand_turns", turns(*result.hand_turns));
    put("threads_per_inch", sheet.threads_per_inch / units::per_inch);
    put("wrench_turns", turns(sheet.wanted.wrench_turns));
    put("threads_showing", threads(sheet.wanted.threads_showing));
    out.begin_array("doubts");
    for (const mechanics::TrialDoubt doubt : result.doubts) out.text({}, name_of(doubt));
    out.end_array();
    put("further_trials", result.further_trials);
    out.begin_array("trials");
    for (std::size_t i = 0; i < sheet.trials.size(); ++i) {
      const mechanics::TrialTap& trial = sheet.trials[i];
      bool stray = false;
      for (const std::size_t place : result.stray) stray |= place == i;
      out.begin_object();
      put("depth", trial.depth);
      if (trial.hand_turns) put("hand_turns", turns(*trial.hand_turns));
      put("wrench_turns", turns(trial.wrench_turns));
      put("threads_showing", threads(trial.threads_showing));
      put("mark", result.marks[i]);
      out.flag("agrees", !stray);
      out.end_object();
    }
    out.end_array();
    io::write_settings(out, sheet.from_settings, system);
  });
}

std::string pocket_table_to_json(const PocketTable& table, UnitSystem system, JsonStyle style) {
  return document(style, [&](JsonWriter& out) {
    const Putter put(out, system);
    io::write_settings(out, table.from_settings, system);
    out.text("rules", table.rules->name);
    out.text("data", table.catalog->hash());
    out.text("thread", name_of(table.thread));
    put("line", Measure(table.options.line));
    if (table.options.machine) out.text("machine", table.options.machine->title);
    out.begin_array("cells");
    for (const PocketCell& cell : table.cells) {
      out.begin_object();
      write_pipe(out, *cell.pipe);
      write_cell(out, cell, put);
      out.end_object();
    }
    out.end_array();
  });
}

}  // namespace mainbore
