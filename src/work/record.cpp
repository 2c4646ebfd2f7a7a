// What is written down of a finished tap: enough to find it again, to trust it, and to ask who was there.
#include <algorithm>
#include <array>
#include <iterator>

#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"

namespace mainbore {
namespace {

constexpr std::array fields = {
    RecordField{"date", "Date", {}, {}},
    RecordField{"start", "Start", {}, {}},
    RecordField{"end", "End", {}, {}},
    RecordField{"line_pressure", "Line pressure", Kind::pressure, {}},
    RecordField{"od", "Outside diameter", Kind::length, {}},
    RecordField{"wall", "Wall", Kind::length, {}},
    RecordField{"condition", "Condition", {}, {}},
    RecordField{"clock", "Clock", {}, {}},
    RecordField{"cover", "Cover", Kind::distance, {}},
    RecordField{"station", "Station", {}, {}},
    // Two ties find the place again when one of the points is gone.
    RecordField{"tie_1", "Tie 1", Kind::distance, "tie 1"},
    RecordField{"tie_1_from", "Tie 1 from", {}, "tie 1"},
    RecordField{"tie_2", "Tie 2", Kind::distance, "tie 2"},
    RecordField{"tie_2_from", "Tie 2 from", {}, "tie 2"},
    RecordField{"wrench_turns", "Turns by wrench", Kind::ratio, {}, true},
    RecordField{"threads_showing", "Threads showing", Kind::ratio, {}, true},
    RecordField{"coupon", "Coupon kept by", {}, {}},
    RecordField{"leak_check", "Leak check", {}, {}},
    RecordField{"tapped_by", "Tapped by, initials", {}, {}},
    RecordField{"seen_by", "Seen by", {}, {}},
    RecordField{"remarks", "Odd about the main", {}, "remarks"},
};

}  // namespace

std::span<const RecordField> record_fields() { return fields; }

std::vector<RecordField> record_form(const Plan& plan) {
  std::vector<RecordField> form;
  if (plan.verdict == Verdict::no_go || plan.method.kind == Method::none) return form;
  std::copy_if(fields.begin(), fields.end(), std::back_inserter(form),
               [&](const RecordField& field) { return !field.direct || plan.method.kind == Method::direct; });
  return form;
}

std::string_view unit_of(const RecordField& field, UnitSystem system) {
  return field.kind ? shown(Measure(0.0, *field.kind), system).unit : std::string_view();
}

}  // namespace mainbore
