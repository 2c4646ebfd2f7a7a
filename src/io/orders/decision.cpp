#include "io/orders/decision.hpp"

#include <algorithm>
#include <cstring>
#include <string_view>

#include "io/text/csv_writer.hpp"
#include "io/text/json_writer.hpp"

namespace mainbore::io {
namespace {

// --- JSON -------------------------------------------------------------------------------------------------------

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
void decide_line(std::string& out, const Plan& plan, std::optional<Clears> who, UnitSystem units) {
  constexpr std::size_t all_but_codes = 340;
  constexpr std::size_t longest_code = 40;
  static_assert(std::all_of(finding_codes.begin(), finding_codes.end(),
                            [](std::string_view code) { return code.size() + 3 <= longest_code; }));
  const ChosenMethod& method = plan.method;
  Pen pen(out, all_but_codes + longest_code * (plan.findings.size() + method.rejected.size()));
  pen << R"("verdict":")" << name_of(plan.verdict) << "\"";
  if (who) pen << R"(,"waits_for":")" << name_of(*who) << "\"";
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

void decide_row(std::string& out, const Plan& plan, UnitSystem units) {
  CsvWriter row(out);
  row.text(name_of(plan.verdict));
  const ChosenMethod& method = plan.method;
  row.text(name_of(method.kind));
  if (method.kind == Method::none) {
    row.empty();
    row.empty();
  } else {
    row.number(method.count, 0);
    row.number(method.tap.number(), 4);
  }
  const PressureChain& pressure = plan.pressure;
  append_pressure(row, pressure.governed_by ? std::optional(pressure.governed_by->limit) : std::nullopt, units);
  append_pressure(row, pressure.reduce_to, units);
  append_codes(row.cell(), plan, Severity::hold);
  append_codes(row.cell(), plan, Severity::stop);
  row.empty();
}

// --- GeoJSON ----------------------------------------------------------------------------------------------------

// Scalars alone: a table of a map has no lists in its cells.
void decide_feature(std::string& out, const Plan& plan, std::optional<Clears> who, UnitSystem units) {
  JsonWriter json(out, JsonStyle::compact);
  json.text("verdict", name_of(plan.verdict));
  if (who) json.text("waits_for", name_of(*who));
  const ChosenMethod& method = plan.method;
  json.text("method", name_of(method.kind));
  if (method.kind != Method::none) {
    if (method.count > 1) json.whole("count", method.count);
    json.number("tap_in", method.tap.number(), 4);
  }
  const bool si = units == UnitSystem::si;
  const auto pressure = [&](std::string_view key, Pressure value) {
    const Shown display = shown(Measure(value), units, Toward::less);
    json.number(key, display.value, display.decimals);
  };
  if (plan.pressure.governed_by) pressure(si ? "limit_kpa" : "limit_psi", plan.pressure.governed_by->limit);
  if (plan.pressure.reduce_to) pressure(si ? "reduce_kpa" : "reduce_psi", *plan.pressure.reduce_to);
  std::string codes;
  append_codes(codes, plan, Severity::hold);
  json.text("holds", codes);
  codes.clear();
  append_codes(codes, plan, Severity::stop);
  json.text("stops", codes);
}

}  // namespace

void decide(Decision& decision, const Plan& plan, RecordShape shape, UnitSystem units) {
  decision.verdict = plan.verdict;
  decision.waits_for = waits_for(plan);
  decision.text.clear();
  switch (shape) {
    case RecordShape::line:
      return decide_line(decision.text, plan, decision.waits_for, units);
    case RecordShape::row:
      return decide_row(decision.text, plan, units);
    case RecordShape::feature:
      return decide_feature(decision.text, plan, decision.waits_for, units);
    case RecordShape::none:
      return;
  }
}

Decision decision_of(const Plan& plan, RecordShape shape, UnitSystem units) {
  Decision decision;
  decide(decision, plan, shape, units);
  return decision;
}

}  // namespace mainbore::io
