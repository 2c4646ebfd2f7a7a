#include "io/orders/verdict_record.hpp"

#include <algorithm>
#include <array>

#include "io/text/csv_writer.hpp"
#include "io/text/json_writer.hpp"
#include "io/text/word_scan.hpp"
#include "mainbore/finding_words.hpp"

namespace mainbore::io {
namespace {

// --- JSON -------------------------------------------------------------------------------------------------------

void write_place(JsonWriter& out, const OrderRecord& order, const RecordOptions& options) {
  if (!options.file.empty()) out.text("file", options.file);
  if (!options.rows) return;
  out.whole("row", static_cast<std::int64_t>(order.row));
  out.whole("line", order.line);
}

void write_diagnostics(JsonWriter& out, std::string_view key, const std::vector<Diagnostic>& diagnostics,
                       const RecordOptions& options) {
  out.begin_array(key);
  for (const Diagnostic& told : diagnostics) {
    out.begin_object();
    out.text("code", told.code);
    if (!told.pointer.empty()) out.text("path", told.pointer);
    if (options.rows && told.line > 0) out.whole("line", told.line);
    if (told.column > 0) out.whole("column", told.column);
    out.text("message", told.message);
    if (!told.help.empty()) out.text("help", told.help);
    out.end_object();
  }
  out.end_array();
}

// Columns and members of ours, which no kept one may be taken for.
constexpr std::array<std::string_view, 15> own_names = {"file",      "row",    "line",  "id",      "verdict",
                                                        "waits_for", "method", "count", "tap",     "limit",
                                                        "reduce_to", "holds",  "stops", "reasons", "remarks"};

// Into an object, under the key `kept`.
void write_kept(JsonWriter& out, std::string& text, const OrderRecord& order) {
  const bool any = std::any_of(order.kept.begin(), order.kept.end(), [](const KeptColumn& kept) { return kept.given; });
  if (!any) return;
  out.begin_object("kept");
  for (const KeptColumn& kept : order.kept) {
    if (!kept.given) continue;
    if (!kept.is_json) {
      out.text_named(kept.name, kept.value);
      continue;
    }
    out.settle();
    text += out.nothing_yet() ? "\"" : ",\"";
    append_json_as_written(text, kept.name, true);
    text += "\":";
    append_json_as_written(text, kept.value, true);
    out.wrote_behind();
  }
  out.end_object();
}

void write_unreadable(JsonWriter& out, std::string& text, const OrderRecord& order, const RecordOptions& options) {
  out.begin_object();
  write_place(out, order, options);
  if (!order.id.empty()) out.text("id", order.id);
  out.text("verdict", "unreadable");
  write_diagnostics(out, "reasons", order.diagnostics, options);
  write_kept(out, text, order);
  out.end_object();
}

// --- CSV --------------------------------------------------------------------------------------------------------

void append_reasons(std::string& to, const std::vector<Diagnostic>& diagnostics) {
  bool first = true;
  for (const Diagnostic& told : diagnostics) {
    if (!first) to += "; ";
    first = false;
    if (!told.pointer.empty()) {
      text::append_visible(to, told.pointer);
      to += ": ";
    }
    text::append_visible(to, told.message);
  }
}

bool is_own(std::string_view name) { return std::find(own_names.begin(), own_names.end(), name) != own_names.end(); }

void write_kept_cell(CsvWriter& row, const KeptColumn& kept) {
  if (!kept.is_json) return row.text(kept.value);
  if (kept.value == "null") return row.empty();
  if (!kept.value.starts_with('"')) {  // a number as it stands is no formula
    const bool number = kept.value.find_first_not_of("0123456789.eE+-") == std::string_view::npos;
    if (!number) return row.text(kept.value);
    row.cell() += kept.value;
    return;
  }
  std::string text;
  append_unescaped(text, kept.value.substr(1, kept.value.size() - 2));
  row.text(text);
}

// --- GeoJSON ----------------------------------------------------------------------------------------------------

constexpr std::array<std::string_view, 12> own_properties = {"verdict",    "waits_for", "method",     "count",
                                                             "tap_in",     "limit_psi", "reduce_psi", "limit_kpa",
                                                             "reduce_kpa", "holds",     "stops",      "reasons"};

// Of a dozen properties of a feature none is, nearly always.
bool is_own_property(std::string_view name) {
  constexpr std::string_view first_letters = "vwmctlrhs";
  static_assert(std::all_of(own_properties.begin(), own_properties.end(), [&](std::string_view own) {
    return first_letters.find(own.front()) != std::string_view::npos;
  }));
  if (name.empty() || first_letters.find(name.front()) == std::string_view::npos) return false;
  return name == "remarks" || std::find(own_properties.begin(), own_properties.end(), name) != own_properties.end();
}

// What was decided first, without the comma that what follows needs.
void write_own_properties(JsonWriter& json, std::string& out, const OrderRecord& order, const Decision* decision,
                          const RecordOptions& options, bool placed) {
  std::string text;
  if (decision == nullptr) {
    json.text("verdict", "unreadable");
    if (!placed) write_place(json, order, options);
    append_reasons(text, order.diagnostics);
    json.text("reasons", text);
    return;
  }
  json.settle();
  out += decision->text;
  json.wrote_behind();
  if (order.remarks.empty()) return;
  append_reasons(text, order.remarks);
  json.text("remarks", text);
}

// Stretches of a feature's text. Where it has no byte that may be hidden, none of them is looked at again.
class AsWritten {
 public:
  explicit AsWritten(std::string_view whole) : plain_(!any_byte(whole, delete_or_above)) {}
  void append(std::string& out, std::string_view part) const {
    if (plain_) out.append(part);
    else append_json_as_written(out, part, false);
  }

 private:
  bool plain_;
};

void write_properties(std::string& out, const OrderRecord& order, const Decision* decision,
                      const RecordOptions& options, bool placed, AsWritten as_written) {
  JsonWriter json(out, JsonStyle::compact);
  json.begin_object();
  write_own_properties(json, out, order, decision, options, placed);
  json.settle();
  const auto has = [&](std::string_view name) {
    return std::any_of(order.kept.begin(), order.kept.end(),
                       [&](const KeptColumn& kept) { return kept.given && kept.name == name; });
  };
  for (const KeptColumn& kept : order.kept) {
    if (!kept.given) continue;
    const bool own = is_own_property(kept.name);
    if (own && has("own_" + std::string(kept.name))) continue;
    out += own ? ",\"own_" : ",\"";
    as_written.append(out, kept.name);
    out += "\":";
    as_written.append(out, kept.value);
  }
  json.end_object();
}

}  // namespace

void append_verdict_feature(std::string& out, const OrderRecord& order, const Decision* decision,
                            const FeatureText* feature, const RecordOptions& options) {
  out += ",\n";
  if (feature == nullptr) {
    out += R"({"type":"Feature","geometry":null,"properties":)";
    write_properties(out, order, decision, options, false, AsWritten({}));
    out += '}';
    return;
  }
  const Span properties = feature->properties.end > 0 ? feature->properties : Span{1, 1};  // behind the brace
  const AsWritten as_written(feature->text);
  as_written.append(out, feature->text.substr(0, properties.begin));
  if (feature->properties.end == 0) out += "\"properties\":";
  write_properties(out, order, decision, options, true, as_written);
  if (feature->properties.end == 0) out += ',';
  as_written.append(out, feature->text.substr(properties.end));
}

void append_verdict_json(std::string& out, const OrderRecord& order, const Decision* decision,
                         const RecordOptions& options) {
  JsonWriter json(out, JsonStyle::compact);
  if (decision == nullptr) {
    write_unreadable(json, out, order, options);
    out += '\n';
    return;
  }
  json.begin_object();
  write_place(json, order, options);
  if (!order.id.empty()) json.text("id", order.id);
  json.settle();
  if (!json.nothing_yet()) out += ',';
  out += decision->text;
  json.wrote_behind();
  if (!order.remarks.empty()) write_diagnostics(json, "remarks", order.remarks, options);
  write_kept(json, out, order);
  json.end_object();
  out += '\n';
}

void append_plan_record(std::string& out, const OrderRecord& order, const Plan* plan, PlanScope scope,
                        const RecordOptions& options) {
  if (plan == nullptr) return append_verdict_json(out, order, nullptr, options);
  // Its own members first, then those of the plan in place of the closing brace.
  JsonWriter json(out, JsonStyle::compact);
  json.begin_object();
  write_place(json, order, options);
  if (!order.remarks.empty()) write_diagnostics(json, "remarks", order.remarks, options);
  write_kept(json, out, order);
  json.settle();
  const bool anything = out.back() != '{';
  const std::size_t brace = out.size();
  append_plan_json(out, *plan, options.units, JsonStyle::compact, scope);
  if (anything) out[brace] = ',';
  else out.erase(brace, 1);
  out += '\n';
}

void append_verdict_header(std::string& out, const RecordOptions& options) {
  const std::string psi(shown(Measure(Pressure()), options.units).unit);
  CsvWriter row(out);
  if (!options.file.empty()) row.text("file");
  if (options.rows) {
    row.text("row");
    row.text("line");
  }
  for (const std::string_view name : {"id", "verdict", "method", "count", "tap [in]"}) row.text(name);
  row.text("limit [" + psi + ']');
  row.text("reduce_to [" + psi + ']');
  for (const std::string_view name : {"holds", "stops", "reasons", "remarks", "waits_for"}) row.text(name);
  for (const std::string& name : options.kept) row.text(is_own(name) ? "own_" + name : name);
  row.line();
}

void append_verdict_row(std::string& out, const OrderRecord& order, const Decision* decision,
                        const RecordOptions& options) {
  CsvWriter row(out);
  if (!options.file.empty()) row.text(options.file);
  if (options.rows) {
    row.number(static_cast<double>(order.row), 0);
    row.number(static_cast<double>(order.line), 0);
  }
  row.text(order.id);
  if (decision == nullptr) {
    row.text("unreadable");
    for (int empty = 0; empty < 7; ++empty) row.empty();
    append_reasons(row.cell(), order.diagnostics);
    row.end();
  } else {
    row.cell() += decision->text;
  }
  append_reasons(row.cell(), order.remarks);
  row.end();
  row.text(decision != nullptr && decision->waits_for ? name_of(*decision->waits_for) : std::string_view());
  for (std::size_t i = 0; i < options.kept.size(); ++i) {
    if (i < order.kept.size() && order.kept[i].given) write_kept_cell(row, order.kept[i]);
    else row.empty();
  }
  row.line();
}

}  // namespace mainbore::io
