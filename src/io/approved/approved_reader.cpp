// The approved list, read from its text: JSON, or a table with the same columns.
#include <algorithm>
#include <array>
#include <cstring>
#include <utility>

#include "io/approved/approved_fields.hpp"
#include "io/text/csv.hpp"
#include "io/text/json_reader.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "mainbore/approved_file.hpp"
#include "mainbore/job_file.hpp"

namespace mainbore {
namespace {

using io::ApprovedField;
using io::ColumnUse;
using io::JsonText;
using io::JsonType;
using io::Problem;

constexpr std::array<std::string_view, 4> list_keys = {"format", "name", "edition", "items"};

std::vector<std::string_view> column_keys() {
  std::vector<std::string_view> keys;
  for (const ApprovedField& field : io::approved_fields()) keys.push_back(field.column.key);
  return keys;
}

Problem unknown_column(std::string_view key) {
  return {"approved.unknown-key", io::quoted(key) + " is not a column of an approved list",
          io::nearest_and_known(key, column_keys())};
}

// One item while its values come in: what was given, and where.
struct Draft {
  ApprovedItem item;
  std::optional<ApprovedKind> kind;
  std::vector<std::pair<const ApprovedField*, io::Span>> given;
};

void store(Draft& draft, std::string_view key, const io::FieldValue& value) {
  ApprovedItem& item = draft.item;
  const auto length = [&] { return std::get<Measure>(value).as<Length>(); };
  if (key == "kind") draft.kind = item.kind = static_cast<ApprovedKind>(std::get<int>(value));
  else if (key == "main") item.main.push_back(std::get<Material>(value));
  else if (key == "od_from") item.od_from = length();
  else if (key == "od_to") item.od_to = length();
  else if (key == "size") item.size = std::get<NominalSize>(value);
  else if (key == "thread") item.thread = static_cast<ThreadStandard>(std::get<int>(value));
  else if (key == "straps") item.straps = std::get<int>(value);
  else if (key == "torque") item.torque = std::get<Measure>(value).as<Torque>();
  else if (key == "rating") item.rating = std::get<Measure>(value).as<Pressure>();
  else if (key == "length") item.length = length();
  else if (key == "diameter") item.diameter = length();
  else if (key == "stock") item.stock = io::trimmed(std::get<std::string>(value));
  else if (key == "text") item.text = io::trimmed(std::get<std::string>(value));
}

constexpr std::array<std::pair<std::string_view, std::string_view>, 8> codes_of_a_job = {
    {{"job.duplicate-key", "approved.duplicate-key"},
     {"job.no-unit", "approved.unknown-value"},
     {"job.not-a-quantity", "approved.unknown-value"},
     {"job.out-of-range", "approved.unknown-value"},
     {"job.unknown-unit", "approved.unknown-value"},
     {"job.unknown-value", "approved.unknown-value"},
     {"job.wrong-type", "approved.wrong-type"},
     {"job.wrong-unit", "approved.unknown-value"}}};
constexpr io::JsonCodes approved_codes{"approved.unknown-key", "approved.wrong-type", codes_of_a_job};

class ApprovedReader : io::JsonReader {
 public:
  explicit ApprovedReader(const Catalog& catalog) : JsonReader(approved_codes), catalog_(catalog) {}

  ApprovedFile read(std::string_view text, std::string_view name) && {
    list_.file = name;
    if (begins_as_json(text)) {
      read_document(text, {name, longest_approved, "an approved list", deepest_job}, [&] { read_root(); });
    } else if (auto fault = io::SourceText(text, name, 1).unreadable(longest_approved, "an approved list")) {
      add(*std::move(fault));
    } else {
      read_table(text);
    }
    ApprovedFile result;
    result.diagnostics = found_in_order();
    if (result.diagnostics.empty()) result.list = std::move(list_);
    return result;
  }

 private:
  static bool begins_as_json(std::string_view text) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    return io::trimmed(text).starts_with('{');
  }

  using JsonReader::add;
  void add(const io::SourceText& source, io::Span span, std::string pointer, Problem problem) {
    if (enough()) return;
    for (const auto& [of_a_job, here] : codes_of_a_job) {
      if (problem.code == of_a_job) problem.code = here;
    }
    add(source.at(span, std::move(pointer), std::move(problem)));
  }

  // ---- JSON

  void read_root() {
    bool items = false;
    members(0, [&](std::uint32_t child) {
      const std::string_view key = node_at(child).key;
      items |= key == "items";
      if (key == "items") read_items(child);
      else if (key == "name") read_line(child, list_.name);
      else if (key == "edition") read_line(child, list_.edition);
      else if (key == "format") read_format(child);
      else unknown_key(child, "an approved list", list_keys);
    });
    if (items) return;
    add(0, {"approved.missing", "a list without items",
            R"(such as "items": [{"kind": "stop", "size": "1 in", "thread": "NPT"}])"});
  }

  void read_format(std::uint32_t node) {
    if (node_at(node).type == JsonType::number && node_at(node).text == "1") return;
    add(node, {"approved.unknown-value", "the format of an approved list is 1", ""});
  }

  void read_line(std::uint32_t node, std::string& to) {
    if (!expect(node, JsonType::string, "\"Ashby Vale approved fittings\"")) return;
    auto line = io::read_value(io::approved_field("text")->value, node_at(node).text, catalog_);
    if (auto* problem = std::get_if<Problem>(&line)) add(node, std::move(*problem));
    else to = io::trimmed(node_at(node).text);
  }

  void read_items(std::uint32_t node) {
    constexpr std::string_view such_as = R"({"kind": "stop", "size": "1 in", "thread": "NPT", "stock": "12-004"})";
    if (!expect(node, JsonType::array, '[' + std::string(such_as) + ']')) return;
    for (std::uint32_t child = node + 1; child < node_at(node).next; child = node_at(child).next) {
      if (too_many()) return add(child, many());
      if (expect(child, JsonType::object, such_as)) read_item(child);
    }
  }

  void read_item(std::uint32_t node) {
    Draft draft;
    const std::size_t before = faults();
    members(node, [&](std::uint32_t child) {
      const ApprovedField* const field = io::approved_field(node_at(child).key);
      if (field == nullptr) return unknown_key(child, "an approved item", column_keys());
      draft.given.emplace_back(field, node_at(child).span);
      const bool list = field->several && node_at(child).type == JsonType::array;
      if (!list) return read_json_value(child, *field, draft);
      members(child, [&](std::uint32_t one) { read_json_value(one, *field, draft); });
    });
    const std::size_t begin = node_at(node).span.begin;
    finish(std::move(draft), source(), {begin, begin + 1}, json().pointer(node), before);
  }

  void read_json_value(std::uint32_t node, const ApprovedField& field, Draft& draft) {
    const io::JsonNode& given = node_at(node);
    const bool plain =
        given.type == JsonType::string || (given.type == JsonType::number && field.value.type == io::FieldType::whole);
    const auto text = plain ? std::optional(std::string(given.text)) : io::quantity_text(json(), node);
    if (!text) return static_cast<void>(expect(node, JsonType::string, io::allowed_text(field.value, catalog_)));
    read_value(source(), given.span, json().pointer(node), *text, field, draft);
  }

  // ---- table

  void read_table(std::string_view text) {
    io::CsvReader reader([text, at = std::size_t()](char* to, std::size_t room) mutable {
      const std::size_t size = std::min(room, text.size() - at);
      std::memcpy(to, text.data() + at, size);
      at += size;
      return size;
    });
    io::CsvRecord record;
    if (!reader.read(record)) {
      return add(io::SourceText(text, list_.file, 1), {0, 0}, "",
                 {"approved.missing", "an empty file", "a header: " + io::listed(column_keys())});
    }
    if (!whole(record) || !read_header(record)) return;
    reader.begin_rows();
    while (reader.read(record) && !enough()) {
      if (whole(record)) read_row(record);
    }
  }

  bool whole(const io::CsvRecord& record) {
    if (!record.fault) return true;
    const io::SourceText source(record.text, list_.file, record.line);
    add(source, record.fault->span, "", record.fault->problem);
    return false;
  }

  bool read_header(const io::CsvRecord& record) {
    const io::SourceText source(record.text, list_.file, record.line);
    const std::size_t before = faults();
    for (std::size_t i = 0; i < record.cells.size(); ++i) {
      const std::string key = io::plain_name(record.cell(i));
      const auto fields = io::approved_fields();
      const auto found = std::find_if(fields.begin(), fields.end(), [&](const ApprovedField& field) {
        return io::plain_name(field.column.key) == key;
      });
      const ApprovedField* const field = found == fields.end() ? nullptr : &*found;
      if (field == nullptr) add(source, record.span_of(i), "", unknown_column(record.cell(i)));
      else if (std::find(columns_.begin(), columns_.end(), field) != columns_.end()) {
        add(source, record.span_of(i), "",
            {"approved.duplicate-key", io::quoted(field->column.key) + " is a column twice", "give each column once"});
      }
      columns_.push_back(field);
    }
    const bool has_kind = std::find(columns_.begin(), columns_.end(), io::approved_field("kind")) != columns_.end();
    if (!has_kind)
      add(source, {0, record.text.size()}, "",
          {"approved.missing", "a table without the column \"kind\"", "a header: " + io::listed(column_keys())});
    return faults() == before;
  }

  void read_row(const io::CsvRecord& record) {
    const io::SourceText source(record.text, list_.file, record.line);
    const std::size_t before = faults();
    Draft draft;
    bool any = false;
    for (std::size_t i = 0; i < record.cells.size(); ++i) {
      const std::string_view cell = io::trimmed(record.cell(i));
      if (cell.empty()) continue;
      any = true;
      if (i >= columns_.size()) {
        add(source, record.span_of(i), "",
            {"approved.unknown-value", "a cell without a column",
             "the header has " + std::to_string(columns_.size()) + " columns"});
        continue;
      }
      const ApprovedField& field = *columns_[i];
      draft.given.emplace_back(&field, record.span_of(i));
      read_cell(source, record.span_of(i), cell, field, draft);
    }
    if (!any) return;
    if (too_many()) return add(source, {0, record.text.size()}, "", many());
    finish(std::move(draft), source, {0, record.text.size()}, "", before);
  }

  void read_cell(const io::SourceText& source, io::Span span, std::string_view cell, const ApprovedField& field,
                 Draft& draft) {
    if (!field.several) return read_value(source, span, "", cell, field, draft);
    for (std::size_t at = 0; at <= cell.size();) {
      const std::size_t end = std::min(cell.find('|', at), cell.size());
      read_value(source, span, "", io::trimmed(cell.substr(at, end - at)), field, draft);
      at = end + 1;
    }
  }

  // ---- both

  [[nodiscard]] bool too_many() const { return list_.items.size() == most_approved_items; }
  static Problem many() {
    return {"approved.unknown-value", "more than " + std::to_string(most_approved_items) + " items", ""};
  }

  void read_value(const io::SourceText& source, io::Span span, std::string pointer, std::string_view text,
                  const ApprovedField& field, Draft& draft) {
    auto read = io::read_value(field.value, text, catalog_);
    if (auto* problem = std::get_if<Problem>(&read)) return add(source, span, std::move(pointer), std::move(*problem));
    store(draft, field.column.key, std::get<io::FieldValue>(read));
  }

  void finish(Draft draft, const io::SourceText& source, io::Span span, const std::string& pointer,
              std::size_t before) {
    const auto gives = [&](std::string_view key) {
      return std::any_of(draft.given.begin(), draft.given.end(),
                         [&](const auto& one) { return one.first->column.key == key; });
    };
    if (!draft.kind) {
      if (!gives("kind"))
        add(source, span, pointer,
            {"approved.missing", "an item without its kind", "one of: " + io::listed(approved_kind_names)});
      return;
    }
    const std::string kind(name_of(*draft.kind));
    std::string missing;
    for (const ApprovedField& field : io::approved_fields()) {
      const std::string_view key = field.column.key;
      if (field.use(*draft.kind) == ColumnUse::required && !gives(key))
        missing += (missing.empty() ? "" : ", ") + std::string(key);
    }
    if (!missing.empty())
      add(source, span, pointer,
          {"approved.missing", "a " + kind + " without " + missing,
           "a " + kind + " must have it: what is not said cannot be chosen by"});
    for (const auto& [field, at] : draft.given) {
      if (field->use(*draft.kind) != ColumnUse::none) continue;
      add(source, at, pointer,
          {"approved.unknown-value", "a " + kind + " has no " + std::string(field->column.key), "leave it out"});
    }
    ApprovedItem& item = draft.item;
    if (item.od_from && item.od_to && *item.od_from > *item.od_to) {
      add(source, span, pointer,
          {"approved.unknown-value", "od_from is greater than od_to", "give the smallest diameter first"});
    }
    if (faults() != before) return;
    item.label =
        item.stock.empty() ? kind + " of line " + std::to_string(source.line_of(span.begin)) : "stock " + item.stock;
    list_.items.push_back(std::move(item));
  }

  const Catalog& catalog_;
  std::vector<const ApprovedField*> columns_;
  ApprovedList list_;
};

}  // namespace

ApprovedFile read_approved(std::string_view text, std::string_view file_name, const Catalog& catalog) {
  return ApprovedReader(catalog).read(text, file_name);
}

std::span<const DiagnosticText> approved_diagnostic_texts() {
  static constexpr std::array texts = {
      DiagnosticText{"approved.duplicate-key", "a key or column given twice",
                     "Of two equal keys neither counts: keep the right one."},
      DiagnosticText{
          "approved.missing", "an item without what its kind must have",
          "An item is chosen by its properties, so those of its kind must all be given: a saddle without the "
          "materials it is for could be put on the wrong pipe."},
      DiagnosticText{"approved.unknown-key", "a key or column that no approved list has",
                     "A misspelt column would silently do nothing, so it is an error, with the nearest known one."},
      DiagnosticText{
          "approved.unknown-value", "a value that is not one of those known, out of range, or not of this kind",
          "Kinds, materials and threads are words of a list; quantities carry their unit; a property that the "
          "kind of item does not have is refused."},
      DiagnosticText{"approved.wrong-type", "a value of the wrong kind",
                     "An approved list is an object with a list of items, each an object of texts."},
  };
  return texts;
}

}  // namespace mainbore
