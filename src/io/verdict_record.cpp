#include "io/verdict_record.hpp"

#include <algorithm>
#include <cstring>

#include "io/csv_writer.hpp"
#include "io/json_writer.hpp"

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

// Writes into room made for it, so that the string grows once.
class Pen {
 public:
  Pen(std::string& out, std::size_t room) : out_(out) {
    const std::size_t size = out.size();
    out.resize(size + room);
    at_ = out.data() + size;
  }
  ~Pen() { out_.resize(static_cast<std::size_t>(at_ - out_.data())); }
  Pen(const Pen&) = delete;
  Pen& operator=(const Pen&) = delete;

  Pen& operator<<(std::string_view text) {
    std::memcpy(at_, text.data(), text.size());
    at_ += text.size();
    return *this;
  }
  void number(double value, int decimals) {
    digits_.clear();
    append_number(digits_, value, decimals);
    *this << digits_;
  }
  // At most so much.
  void quantity(std::string_view key, Pressure value, UnitSystem system) {
    const Shown display = shown(Measure(value), system, Toward::less);
    *this << key;
    number(display.value, display.decimals);
    *this << R"(,"unit":")" << display.unit << R"("})";
  }
  // Behind the opening bracket of its list, or another code.
  void code(FindingCode code) {
    *this << (at_[-1] == '[' ? std::string_view("\"") : std::string_view(",\"")) << name_of(code) << "\"";
  }
  void codes(std::string_view list, const Plan& plan, Severity severity) {
    *this << list;
    for (const Finding& finding : plan.findings) {
      if (finding.severity == severity) code(finding.code);
    }
    *this << "]";
  }

 private:
  std::string& out_;
  char* at_ = nullptr;
  std::string digits_;
};

// By hand: every text is a name of ours, which needs no escape, and this is the inmost of a batch.
void write_decision(std::string& out, const Plan& plan, UnitSystem units) {
  constexpr std::size_t all_but_codes = 320;
  constexpr std::size_t longest_code = 40;
  static_assert(std::all_of(finding_codes.begin(), finding_codes.end(),
                            [](std::string_view code) { return code.size() + 3 <= longest_code; }));
  const ChosenMethod& method = plan.method;
  Pen pen(out, all_but_codes + longest_code * (plan.findings.size() + method.rejected.size()));
  pen << R"(,"method":")" << name_of(method.kind) << "\"";
  if (method.kind != Method::none) {
    if (method.count > 1) {
      pen << R"(,"count":)";
      pen.number(method.count, 0);
    }
    pen << R"(,"tap":{"value":)";
    pen.number(method.tap.number(), 4);
    pen << R"(,"unit":"in"})";
  }
  const PressureChain& pressure = plan.pressure;
  if (pressure.governed_by) pen.quantity(R"(,"limit":{"value":)", pressure.governed_by->limit, units);
  if (pressure.reduce_to) pen.quantity(R"(,"reduce_to":{"value":)", *pressure.reduce_to, units);
  pen.codes(R"(,"holds":[)", plan, Severity::hold);
  pen.codes(R"(,"stops":[)", plan, Severity::stop);
  if (!method.rejected.empty()) {
    pen << R"(,"rejected":[)";
    for (const RejectedMethod& rejected : method.rejected) pen.code(rejected.why.code);
    pen << "]";
  }
}

void write_unreadable(JsonWriter& out, const OrderRecord& order, const RecordOptions& options) {
  out.begin_object();
  write_place(out, order, options);
  if (!order.id.empty()) out.text("id", order.id);
  out.text("verdict", "unreadable");
  write_diagnostics(out, "reasons", order.diagnostics, options);
  out.end_object();
}

// --- CSV --------------------------------------------------------------------------------------------------------

// At most so much.
void append_pressure(CsvWriter& row, std::optional<Pressure> value, UnitSystem system) {
  if (!value) return row.empty();
  const Shown display = shown(Measure(*value), system, Toward::less);
  row.number(display.value, display.decimals);
}

void append_codes(std::string& to, const Plan& plan, Severity severity) {
  bool first = true;
  for (const Finding& finding : plan.findings) {
    if (finding.severity != severity) continue;
    if (!first) to += ' ';
    first = false;
    to += name_of(finding.code);
  }
}

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

}  // namespace

void append_verdict_json(std::string& out, const OrderRecord& order, const Plan* plan, const RecordOptions& options) {
  JsonWriter json(out, JsonStyle::compact);
  if (plan == nullptr) {
    write_unreadable(json, order, options);
    out += '\n';
    return;
  }
  json.begin_object();
  write_place(json, order, options);
  if (!plan->job.id.empty()) json.text("id", plan->job.id);
  json.text("verdict", name_of(plan->verdict));
  json.settle();
  write_decision(out, *plan, options.units);
  if (!order.remarks.empty()) write_diagnostics(json, "remarks", order.remarks, options);
  json.end_object();
  out += '\n';
}

void append_plan_record(std::string& out, const OrderRecord& order, const Plan* plan, PlanScope scope,
                        const RecordOptions& options) {
  if (plan == nullptr) return append_verdict_json(out, order, plan, options);
  // Its own members first, then those of the plan in place of the closing brace.
  JsonWriter json(out, JsonStyle::compact);
  json.begin_object();
  write_place(json, order, options);
  if (!order.remarks.empty()) write_diagnostics(json, "remarks", order.remarks, options);
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
  for (const std::string_view name : {"holds", "stops", "reasons", "remarks"}) row.text(name);
  row.line();
}

void append_verdict_row(std::string& out, const OrderRecord& order, const Plan* plan, const RecordOptions& options) {
  CsvWriter row(out);
  if (!options.file.empty()) row.text(options.file);
  if (options.rows) {
    row.number(static_cast<double>(order.row), 0);
    row.number(static_cast<double>(order.line), 0);
  }
  row.text(plan == nullptr ? order.id : plan->job.id);
  row.text(plan == nullptr ? std::string_view("unreadable") : name_of(plan->verdict));
  if (plan == nullptr) {
    for (int empty = 0; empty < 7; ++empty) row.empty();
    append_reasons(row.cell(), order.diagnostics);
    row.end();
  } else {
    const ChosenMethod& method = plan->method;
    row.text(name_of(method.kind));
    if (method.kind == Method::none) {
      row.empty();
      row.empty();
    } else {
      row.number(method.count, 0);
      row.number(method.tap.number(), 4);
    }
    const PressureChain& pressure = plan->pressure;
    append_pressure(row, pressure.governed_by ? std::optional(pressure.governed_by->limit) : std::nullopt,
                    options.units);
    append_pressure(row, pressure.reduce_to, options.units);
    append_codes(row.cell(), *plan, Severity::hold);
    append_codes(row.cell(), *plan, Severity::stop);
    row.empty();
  }
  append_reasons(row.cell(), order.remarks);
  row.end();
  row.line();
}

}  // namespace mainbore::io
