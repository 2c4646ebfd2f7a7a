#include <algorithm>
#include <set>
#include <string>

#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "unit/work/sample_plans.hpp"

namespace mainbore {
namespace {

using test::sample_plan;

bool has(const std::vector<RecordField>& form, std::string_view key) {
  return std::any_of(form.begin(), form.end(), [&](const RecordField& field) { return field.key == key; });
}

}  // namespace

TEST_CASE("a record finds the tap again and says who vouches for it") {
  const auto form = record_form(sample_plan());
  for (const std::string_view key :
       {"date", "line_pressure", "od", "wall", "station", "clock", "cover", "tie_1", "tie_1_from", "tie_2",
        "tie_2_from", "coupon", "leak_check", "tapped_by", "seen_by"}) {
    INFO(key);
    CHECK(has(form, key));
  }
}

TEST_CASE("keys of the record are its own, and each field has a label") {
  std::set<std::string_view> keys;
  std::set<std::string_view> labels;
  std::set<std::string_view> rows;
  std::string_view row;
  for (const RecordField& field : record_fields()) {
    INFO(field.key);
    CHECK(keys.insert(field.key).second);
    CHECK(labels.insert(field.label).second);
    CHECK_FALSE(field.label.empty());
    CHECK(field.key.find_first_not_of("abcdefghijklmnopqrstuvwxyz_0123456789") == std::string_view::npos);
    // The fields of a row stand together.
    if (!field.row.empty() && field.row != row) CHECK(rows.insert(field.row).second);
    row = field.row;
  }
}

TEST_CASE("threads are recorded of a direct tap, and nothing where nothing is cut") {
  CHECK(record_form(sample_plan()).size() == record_fields().size());
  const auto saddle = record_form(sample_plan({.method = Method::saddle}));
  CHECK_FALSE(has(saddle, "threads_showing"));
  CHECK_FALSE(has(saddle, "wrench_turns"));
  CHECK(has(saddle, "coupon"));
  CHECK(record_form(sample_plan({.verdict = Verdict::no_go})).empty());
}

TEST_CASE("a number of the record has the unit of the system") {
  for (const RecordField& field : record_fields()) {
    INFO(field.key);
    if (!field.kind) CHECK(unit_of(field, UnitSystem::us).empty());
    if (field.key == "line_pressure") CHECK(unit_of(field, UnitSystem::si) == "kPa");
    if (field.key == "tie_1") CHECK(unit_of(field, UnitSystem::us) == "ft");
    if (field.key == "wall") CHECK(unit_of(field, UnitSystem::si) == "mm");
  }
}

}  // namespace mainbore
