#include "mainbore/job_file.hpp"

#include <algorithm>
#include <bitset>
#include <vector>

#include "io/job/job_fields.hpp"
#include "io/job/job_part.hpp"
#include "io/text/json_reader.hpp"
#include "io/text/nearest.hpp"

namespace mainbore {
namespace {

using io::FieldPath;
using io::FieldType;
using io::FieldValue;
using io::JobField;
using io::JsonNode;
using io::JsonText;
using io::JsonType;
using io::Need;
using io::Problem;

std::size_t number_of(const JobField& field) { return static_cast<std::size_t>(&field - io::job_fields().data()); }

bool is_machine_figure(const JobField& field) {
  return field.path.starts_with("machine.") && field.path != "machine.profile" && field.path != "machine.feed" &&
         field.path != "machine.extensions";
}

// A bare 82 or 8 in a JSON value: what the field would have wanted.
std::string quoted_instead(const JobField& field, const JsonNode& node, const Catalog& catalog) {
  const std::string text(node.text);
  switch (field.type) {
    case FieldType::text:
    case FieldType::lines:
      if (node.type == JsonType::number) return "write \"" + text + "\" in quotes";
      break;
    case FieldType::clock:
      if (node.type == JsonType::number) return "write \"" + text + ":00\"";
      break;
    case FieldType::flag:
      if (node.type == JsonType::string) return "true or false, without quotes";
      break;
    case FieldType::whole:
      if (node.type == JsonType::string) return io::allowed_text(field, catalog) + ", without quotes";
      break;
    default:
      break;
  }
  return io::allowed_text(field, catalog);
}

constexpr io::JsonCodes job_codes{"job.unknown-key", "job.wrong-type"};

class JobReader : io::JsonReader {
 public:
  JobReader(const Catalog& catalog, std::span<const Setting> settings)
      : JsonReader(job_codes), catalog_(catalog), settings_(settings) {
    for (const Setting& setting : settings_) targets_.push_back(io::find_field(setting.path));
  }

  void read_file(std::string_view text, std::string_view name, std::int64_t first_line) {
    const bool is_json = read_document(text, {name, longest_job, "a job", deepest_job, first_line}, [&] {
      read_root();
      apply_settings();
      check_job();
    });
    file_unread_ = file_unread_ || !is_json;
  }

  void read_settings_alone() {
    apply_settings();
    check_job();
  }

  io::JobPart read_part(const JsonText& json, const io::SourceText& source, std::span<const std::uint32_t> members) && {
    enter(source, json);
    whole_job_ = false;
    for (const std::uint32_t member : members) read_member(0, member, io::job_fields(), 0, 0);
    check_job();
    io::JobPart part;
    for (const JobField& field : io::job_fields()) {
      if (seen(0).test(number_of(field))) part.given.push_back(&field);
    }
    part.diagnostics = found_in_order();
    part.job = std::move(draft_).finish();
    return part;
  }

  JobFile finish() && {
    JobFile result;
    result.diagnostics = found_in_order();
    result.id = draft_.job.id;
    if (result.diagnostics.empty() && !file_unread_) result.job = std::move(draft_).finish();
    return result;
  }

 private:
  using Seen = std::bitset<io::most_fields>;  // by row of the table

  void add_for(const Setting& setting, io::Span span_of_value, Problem problem) {
    const std::string text = setting.path + '=' + setting.value;
    const std::string where = setting.where.empty() ? "--set " + setting.path : setting.where;
    const std::size_t offset = setting.path.size() + 1;
    const bool about_value = span_of_value.end > 0;
    const io::Span span = about_value ? io::Span{offset + span_of_value.begin, offset + span_of_value.end}
                                      : io::Span{0, setting.path.size()};
    add(io::SourceText(text, where, 0).at(span, "", std::move(problem)));
  }

  [[nodiscard]] Seen& seen(std::size_t index) {
    if (seen_.size() <= index) seen_.resize(index + 1);
    return seen_[index];
  }

  [[nodiscard]] bool overridden(const JobField& field, std::size_t index) const {
    return std::any_of(targets_.begin(), targets_.end(), [&](const std::optional<FieldPath>& target) {
      return target && target->field == &field && target->index == index;
    });
  }

  // --- the file ---

  void read_root() {
    if (node_at(0).type != JsonType::object) {
      const bool many = node_at(0).type == JsonType::array;
      wrong_type(
          0, "a job",
          many ? "a file of many jobs is for batch; one job is an object: { ... }" : "a job is an object: { ... }");
      file_unread_ = true;
      return;
    }
    read_object(0, io::job_fields(), 0, 0);
  }

  // `rows` are the fields of this object and of the objects inside it; their paths agree in the first `prefix`
  // characters.
  void read_object(std::uint32_t object, std::span<const JobField> rows, std::size_t prefix, std::size_t index) {
    members(object, [&](std::uint32_t child) { read_member(object, child, rows, prefix, index); });
  }

  void read_member(std::uint32_t object, std::uint32_t child, std::span<const JobField> rows, std::size_t prefix,
                   std::size_t index) {
    const std::string_view key = node_at(child).key;
    // "main.size" is a path and no key: only as members of "main" can two values of one fact be told from each other.
    const bool plain = !key.empty() && key.find_first_of(".[") == std::string_view::npos;
    for (std::size_t first = 0; first < rows.size() && plain; ++first) {
      if (const std::string_view older = rows[first].older; older.size() > prefix && older.substr(prefix) == key) {
        if ((seen(index) & ~by_older_).test(number_of(rows[first]))) given_by_both(rows[first], child);
        by_older_.set(number_of(rows[first]));
        return read_field(rows[first], index, child);
      }
      const std::string_view rest = rows[first].path.substr(prefix);
      if (!rest.starts_with(key)) continue;
      const std::string_view behind = rest.substr(key.size());
      if (behind.empty()) {
        if (by_older_.test(number_of(rows[first]))) given_by_both(rows[first], child);
        return read_field(rows[first], index, child);
      }
      const bool list = behind.starts_with("[].");
      if (!list && behind.front() != '.') continue;
      const std::size_t inner = prefix + key.size() + (list ? 3 : 1);
      std::size_t last = first;
      while (last < rows.size() && rows[last].path.substr(0, inner) == rows[first].path.substr(0, inner)) ++last;
      const std::span<const JobField> inside = rows.subspan(first, last - first);
      return list ? read_list(child, inside, inner) : read_section(child, inside, inner, index);
    }
    unknown_member(object, child, rows, prefix);
  }

  void read_section(std::uint32_t node, std::span<const JobField> rows, std::size_t prefix, std::size_t index) {
    if (node_at(node).type == JsonType::object) return read_object(node, rows, prefix, index);
    wrong_type(node, "an object", "such as { \"" + std::string(rows.front().path.substr(prefix)) + "\": ... }");
  }

  void read_list(std::uint32_t node, std::span<const JobField> rows, std::size_t prefix) {
    const std::string_view list = node_at(node).key;
    if (node_at(node).type != JsonType::array) {
      wrong_type(node, "a list",
                 "a list of objects: [ { \"" + std::string(rows.front().path.substr(prefix)) +
                     "\": ... } ]; [] says that somebody looked and there is nothing");
      return;
    }
    io::make_list(draft_.job, list);
    std::size_t index = 0;
    for (std::uint32_t item = node + 1; item < node_at(node).next; item = node_at(item).next, ++index) {
      if (index >= io::longest_list) {
        add(item, {"json.too-large", "more than " + std::to_string(io::longest_list) + " entries", ""});
        return;
      }
      elements_.push_back(item);
      read_section(item, rows, prefix, index);
    }
  }

  void unknown_member(std::uint32_t object, std::uint32_t child, std::span<const JobField> rows, std::size_t prefix) {
    if (enough()) return;
    const std::string_view key = node_at(child).key;
    std::vector<std::string_view> known;  // in this object
    for (const JobField& row : rows) {
      std::string_view rest = row.path.substr(prefix);
      rest = rest.substr(0, rest.find_first_of(".["));
      if (known.empty() || known.back() != rest) known.push_back(rest);
    }
    const std::string where = object == 0 ? "a job" : io::quoted(node_at(object).key);
    std::string hint;
    if (whole_job_ && !io::nearest(key, known)) {
      for (const JobField& field : io::job_fields()) {  // right, but elsewhere
        if (field.path.substr(field.path.rfind('.') + 1) != key) continue;
        hint = "did you mean " + std::string(field.path) + "?";
        break;
      }
    }
    unknown_key(child, where == "\"\"" ? "this" : where, known, std::move(hint));
  }

  void given_by_both(const JobField& field, std::uint32_t node) {
    add(node, {"job.duplicate-key",
               std::string(field.path) + " is given twice, once by its older name " + std::string(field.older),
               "keep the right one"});
  }

  void read_field(const JobField& field, std::size_t index, std::uint32_t node) {
    seen(index).set(number_of(field));
    if (overridden(field, index)) return;
    const JsonNode& value = node_at(node);
    const bool with_unit = field.type == FieldType::quantity || field.type == FieldType::size;
    if (with_unit && value.type == JsonType::object) return read_quantity_object(field, index, node);

    const bool number_as_text = value.type == JsonType::number &&
                                (field.type == FieldType::whole || with_unit || field.meaning == io::TextMeaning::name);
    const bool flag = value.type == JsonType::boolean && field.type == FieldType::flag;
    const bool text = value.type == JsonType::string && field.type != FieldType::flag && field.type != FieldType::whole;
    if (flag) {
      field.store(draft_, index, value.truth);
    } else if (text || number_as_text) {
      take(field, index, io::read_value(field, value.text, catalog_), node);
    } else {
      const bool absent = value.type == JsonType::null;
      wrong_type(node, kind_of_value(field),
                 absent ? "leave the key out where the fact is not known" : quoted_instead(field, value, catalog_));
    }
  }

  static std::string_view kind_of_value(const JobField& field) {
    switch (field.type) {
      case FieldType::whole:
        return "a whole number";
      case FieldType::flag:
        return "true or false";
      case FieldType::quantity:
      case FieldType::size:
        return "a quantity";
      default:
        return "a text";
    }
  }

  // {"value": 82, "unit": "psi"}: read as "82 psi", so that there is one reading of quantities.
  void read_quantity_object(const JobField& field, std::size_t index, std::uint32_t node) {
    const JsonNode* value = nullptr;
    const JsonNode* unit = nullptr;
    for (std::uint32_t child = node + 1; child < node_at(node).next; child = node_at(child).next) {
      const JsonNode& member = node_at(child);
      if (member.key == "value" && member.type == JsonType::number) {
        value = &member;
      } else if (member.key == "unit" && member.type == JsonType::string) {
        unit = &member;
      } else if (member.key == "value" || member.key == "unit") {
        return add(child,
                   {"job.wrong-type", std::string(io::article_of(member.type)) + " as " + std::string(member.key),
                    "a quantity is {\"value\": 82, \"unit\": \"psi\"}, or the string \"82 psi\""});
      } else {
        return add(child, member.key_span,
                   {"job.unknown-key", io::quoted(member.key) + " is not part of a quantity",
                    "a quantity is {\"value\": 82, \"unit\": \"psi\"}, or the string \"82 psi\""});
      }
    }
    if (value == nullptr) {
      return add(node, {"job.not-a-quantity", "a quantity without \"value\"", io::allowed_text(field, catalog_)});
    }
    const std::string text =
        unit == nullptr ? std::string(value->text) : std::string(value->text) + ' ' + std::string(unit->text);
    take(field, index, io::read_value(field, text, catalog_), node);
  }

  void take(const JobField& field, std::size_t index, std::variant<FieldValue, Problem> read, std::uint32_t node) {
    if (auto* problem = std::get_if<Problem>(&read)) return add(node, std::move(*problem));
    field.store(draft_, index, std::get<FieldValue>(read));
  }

  // --- settings ---

  void apply_settings() {
    for (std::size_t i = 0; i < settings_.size(); ++i) {
      const Setting& setting = settings_[i];
      if (setting.path == "nearby" && (setting.value == "none" || setting.value == "[]")) {
        draft_.job.nearby.emplace();
        elements_.clear();
        continue;
      }
      if (io::first_not_utf8(setting.value)) {
        add_for(setting, {0, std::max<std::size_t>(1, setting.value.size())},
                {"json.encoding", "not UTF-8", "write the value in UTF-8"});
        continue;
      }
      if (!targets_[i]) {
        add_for(setting, {}, unknown_path(setting.path));
        continue;
      }
      const auto& [field, index] = *targets_[i];
      seen(index).set(number_of(*field));
      auto read = io::read_value(*field, setting.value, catalog_);
      if (auto* problem = std::get_if<Problem>(&read)) {
        add_for(setting, {0, std::max<std::size_t>(1, setting.value.size())}, std::move(*problem));
      } else {
        field->store(draft_, index, std::get<FieldValue>(read));
      }
    }
  }

  static Problem unknown_path(std::string_view path) {
    std::vector<std::string_view> paths;
    for (const JobField& field : io::job_fields()) paths.push_back(field.path);
    Problem problem{"job.unknown-key", io::quoted(path) + " is not part of a job", ""};
    if (const auto near = io::nearest(path, paths)) problem.help = "did you mean " + std::string(*near) + "?";
    if (problem.help.empty()) {
      for (const std::string_view known : paths) {
        if (known.substr(known.rfind('.') + 1) == path.substr(path.rfind('.') + 1)) {
          problem.help = "did you mean " + std::string(known) + "?";
          break;
        }
      }
    }
    return problem;
  }

  // --- the whole ---

  void check_job() {
    if (file_unread_) return;
    const std::size_t listed = std::max(elements_.size(), draft_.job.nearby ? draft_.job.nearby->size() : 0);
    for (const JobField& field : io::job_fields()) {
      if (field.need == Need::optional || (field.need == Need::always && !whole_job_)) continue;
      if (field.need == Need::machine_figures && !machine_given()) continue;
      const std::size_t count = field.in_list() ? listed : 1;
      for (std::size_t index = 0; index < count; ++index) {
        if (!seen(index).test(number_of(field)) && !broken_element(field, index)) missing(field, index);
      }
    }
    check_machine();
  }

  // An element of a list that is no object has been reported as such.
  [[nodiscard]] bool broken_element(const JobField& field, std::size_t index) const {
    return field.in_list() && index < elements_.size() && node_at(elements_[index]).type != JsonType::object;
  }

  [[nodiscard]] bool machine_given() {
    const auto fields = io::job_fields();
    return std::any_of(fields.begin(), fields.end(), [&](const JobField& field) {
      return is_machine_figure(field) && seen(0).test(number_of(field));
    });
  }

  void missing(const JobField& field, std::size_t index) {
    if (enough()) return;
    const std::string path = field.path_at(index);
    Problem problem{"job.missing", path + " is missing",
                    std::string(field.help) + "; " + io::allowed_text(field, catalog_)};
    if (field.need == Need::machine_figures) problem.help += "\na machine given by its own figures needs this one";
    place_of_missing(path, std::move(problem));
  }

  // At the key of the innermost object that there is, with the pointer to where the fact should be.
  void place_of_missing(std::string_view path, Problem problem) {
    std::string pointer;
    for (const char c : path) {
      if (c == '.' || c == '[') pointer += '/';
      else if (c != ']') pointer += c;
    }
    pointer.insert(pointer.begin(), '/');
    if (!open()) {
      Diagnostic diagnostic;
      diagnostic.code = problem.code;
      diagnostic.file = settings_.empty() || settings_.front().where.empty() ? "--set" : settings_.front().where;
      diagnostic.pointer = std::move(pointer);
      diagnostic.message = std::move(problem.message);
      diagnostic.help = std::move(problem.help);
      return add(std::move(diagnostic));
    }
    std::uint32_t at = 0;
    std::size_t behind = 0;  // what of the pointer leads to `at`
    for (bool deeper = true; deeper;) {
      deeper = false;
      const std::size_t end = pointer.find('/', behind + 1);
      if (end == std::string::npos) break;
      const std::string token = pointer.substr(behind + 1, end - behind - 1);
      std::size_t position = 0;
      const bool list = node_at(at).type == JsonType::array;
      for (std::uint32_t child = at + 1; child < node_at(at).next; child = node_at(child).next, ++position) {
        if (token != (list ? std::to_string(position) : io::pointer_token(node_at(child).key))) continue;
        at = child;
        behind = end;
        deeper = true;
        break;
      }
    }
    const io::Span key = node_at(at).key_span;
    const std::size_t begin = node_at(at).span.begin;
    add(source().at(key.end > key.begin ? key : io::Span{begin, begin + 1}, std::move(pointer), std::move(problem)));
  }

  void check_machine() {
    const auto contradiction = [&](std::string_view path, std::string message, std::string help) {
      place_of_missing(std::string(path), {"job.contradiction", std::move(message), std::move(help)});
    };
    if (!draft_.machine) return;
    const MachineProfile& machine = *draft_.machine;
    if (!draft_.job.machine.profile.empty()) {
      contradiction("machine.profile", "both a machine of the catalog and a machine's own figures",
                    "give machine.profile, or the figures");
    }
    const auto given = [&](std::string_view path) { return seen(0).test(number_of(*io::find_field(path)->field)); };
    if (given("machine.smallest_tap") && given("machine.largest_tap") && machine.smallest_tap > machine.largest_tap) {
      contradiction("machine.smallest_tap", "the smallest tap is above the largest", "");
    }
    if (machine.saddle_od_from && machine.saddle_od_to && *machine.saddle_od_from > *machine.saddle_od_to) {
      contradiction("machine.saddle_od_from", "the least outside diameter is above the greatest", "");
    }
  }

  const Catalog& catalog_;
  std::span<const Setting> settings_;
  std::vector<std::optional<FieldPath>> targets_;  // of each setting
  io::JobDraft draft_;
  Seen by_older_;                        // facts given by the name they had before
  std::vector<Seen> seen_;               // rows that the job names, by place in the list; 0 for those in none
  std::vector<std::uint32_t> elements_;  // nodes of the list's elements
  bool file_unread_ = false;
  bool whole_job_ = true;  // false: some facts that stand in another file
};

}  // namespace

io::JobPart io::read_job_part(const JsonText& json, const SourceText& source, std::span<const std::uint32_t> members,
                              const Catalog& catalog) {
  return JobReader(catalog, {}).read_part(json, source, members);
}

JobFile read_job(std::string_view text, std::string_view file_name, const Catalog& catalog,
                 std::span<const Setting> settings, std::int64_t first_line) {
  JobReader reader(catalog, settings);
  reader.read_file(text, file_name, first_line);
  return std::move(reader).finish();
}

JobFile job_from_settings(std::span<const Setting> settings, const Catalog& catalog) {
  JobReader reader(catalog, settings);
  reader.read_settings_alone();
  return std::move(reader).finish();
}

}  // namespace mainbore
