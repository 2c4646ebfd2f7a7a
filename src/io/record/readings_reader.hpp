// Values of a record from JSON and from text: what readings files and ledgers have in common.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <variant>

#include "io/job/job_fields.hpp"
#include "io/text/json_text.hpp"
#include "io/text/source_text.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/tap_record.hpp"

namespace mainbore::io {

// monostate where the text says that nothing is known.
[[nodiscard]] std::variant<RecordValue, Problem> read_record_value(const RecordEntry& entry, std::string_view text,
                                                                   const Catalog& catalog);
// Of a text, a plain number, or {"value", "unit"}.
[[nodiscard]] std::variant<RecordValue, Problem> read_record_value(const RecordEntry& entry, const JsonText& json,
                                                                   std::uint32_t node, const Catalog& catalog);
// The field of a job that reads the entry's value: the fact's own, or one of the same kind. Not for a time, a day or a choice of
// the record's own words.
[[nodiscard]] JobField field_of(const RecordEntry& entry);
// The member of that key; nothing where the node is no object or has none.
[[nodiscard]] std::optional<std::uint32_t> member_of(const JsonText& json, std::uint32_t node, std::string_view key);

}  // namespace mainbore::io
