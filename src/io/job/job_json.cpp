#include "io/job/job_json.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <map>
#include <vector>

#include "io/job/field_tree.hpp"
#include "io/text/text_scan.hpp"
#include "mainbore/job_file.hpp"

namespace mainbore::io {
namespace {

// The unit that a kind is shown in, and how much of the base unit it is.
struct UnitShown {
  std::string_view name;
  double base = 1.0;
};
using UnitsShown = std::array<UnitShown, kind_count>;
UnitsShown units_shown(UnitSystem system) {
  UnitsShown units;
  for (int i = 0; i < kind_count; ++i) {
    const auto kind = static_cast<Kind>(i);
    const std::string_view name = shown(Measure(0.0, kind), system).unit;
    units[static_cast<std::size_t>(i)] = {name, parse_measure(1.0, name, kind).value.base()};
  }
  return units;
}

// Unrounded, so that the job reads back as it was: six places of the unit shown.
void write_quantity(JsonWriter& out, std::string_view key, Measure value, UnitSystem system) {
  constexpr int places = 6;
  static const std::array<UnitsShown, 2> units = {units_shown(UnitSystem::us), units_shown(UnitSystem::si)};
  const UnitShown& unit = units[static_cast<std::size_t>(system)][static_cast<std::size_t>(value.kind())];
  double number = value.base() / unit.base;
  if (value.kind() == Kind::temperature) {
    const Temperature temperature = Temperature::fahrenheit(value.base());
    number = system == UnitSystem::us ? temperature.fahrenheit() : temperature.celsius();
  }
  out.quantity(key, number, places, unit.name);
}

// By the name it was given: a metric name may be that of another pipe.
void write_size(JsonWriter& out, std::string_view key, NominalSize size) {
  if (size.dn() > 0) return out.text(key, "DN " + std::to_string(size.dn()));
  out.size(key, size);
}

void write_value(JsonWriter& out, std::string_view key, const JobField& field, const FieldValue& value,
                 UnitSystem system) {
  switch (field.type) {
    case FieldType::text:
    case FieldType::lines:
    case FieldType::machine:
      return out.text(key, std::get<std::string>(value));
    case FieldType::quantity:
      return write_quantity(out, key, std::get<Measure>(value), system);
    case FieldType::size:
      return write_size(out, key, std::get<NominalSize>(value));
    case FieldType::material:
      return out.word(key, name_of(std::get<Material>(value)));
    case FieldType::choice:
      return out.word(key, field.choice->names[static_cast<std::size_t>(std::get<int>(value))]);
    case FieldType::flag:
      return out.flag(key, std::get<bool>(value));
    case FieldType::whole:
      return out.whole(key, std::get<int>(value));
    case FieldType::clock:
      return out.word(key, std::get<ClockPosition>(value).label());
  }
}

// A member's value, or nothing where it is not known, and how long a list is, come from `facts`.
template <class Facts>
void write_members(JsonWriter& out, const std::vector<FieldMember>& members, const Facts& facts, std::size_t index) {
  for (const FieldMember& member : members) {
    if (member.fact != nullptr) {
      facts.write(out, member, index);
    } else if (member.list) {
      const std::optional<std::size_t> length = facts.length(member.key);
      if (!length) continue;
      out.begin_array(member.key);
      for (std::size_t element = 0; element < *length; ++element) {
        out.begin_object();
        write_members(out, member.members, facts, element);
        out.end_object();
      }
      out.end_array();
    } else {
      const JsonWriter::Mark before = out.mark();
      out.begin_object(member.key);
      write_members(out, member.members, facts, index);
      if (out.nothing_yet()) out.back_to(before);
      else out.end_object();
    }
  }
}

template <class Facts>
void write_object(JsonWriter& out, std::string_view key, const Facts& facts) {
  out.begin_object(key);
  write_members(out, job_members(), facts, 0);
  out.end_object();
}

// The facts of a job, quantities in the units of one system.
class KnownFacts {
 public:
  KnownFacts(const Job& job, UnitSystem system) : job_(job), system_(system) {}

  void write(JsonWriter& out, const FieldMember& member, std::size_t index) const {
    const FieldValue value = member.fact->load(job_, index, member.fact->kind);
    if (value.index() != 0) write_value(out, member.key, *member.fact, value, system_);
  }
  [[nodiscard]] std::optional<std::size_t> length(std::string_view list) const { return list_length(job_, list); }

 private:
  const Job& job_;
  UnitSystem system_;
};

// Facts as somebody wrote them: "4 ft 6 in" stays that.
class WrittenFacts {
 public:
  WrittenFacts(std::span<const Setting> settings, const Catalog& catalog) : catalog_(catalog) {
    for (const Setting& setting : settings) {
      const std::string& path = setting.path;
      const std::string list = path.substr(0, path.find('['));
      const std::optional<FieldPath> target = find_field(path);
      if (target) written_[target->field->path_at(target->index)] = &setting.value;
      if (!is_list(list)) continue;
      std::size_t& length = lengths_[list];
      length = target ? std::max(length, target->index + 1) : 0;  // the list itself is only ever set to none
    }
  }

  void write(JsonWriter& out, const FieldMember& member, std::size_t index) const {
    const auto found = written_.find(member.fact->path_at(index));
    if (found == written_.end()) return;
    const std::string_view text = *found->second;
    const auto read = read_value(*member.fact, text, catalog_);
    const FieldValue* const value = std::get_if<FieldValue>(&read);
    const bool quantity = member.fact->type == FieldType::quantity || member.fact->type == FieldType::size;
    if (quantity || value == nullptr) return out.text(member.key, trimmed(text));
    write_value(out, member.key, *member.fact, *value, UnitSystem::us);
  }
  [[nodiscard]] std::optional<std::size_t> length(std::string_view list) const {
    const auto found = lengths_.find(list);
    return found == lengths_.end() ? std::nullopt : std::optional(found->second);
  }

 private:
  const Catalog& catalog_;
  std::map<std::string, const std::string*, std::less<>> written_;  // by path
  std::map<std::string, std::size_t, std::less<>> lengths_;         // of the lists that are known
};

}  // namespace

void write_job(JsonWriter& out, std::string_view key, const Job& job, UnitSystem system) {
  write_object(out, key, KnownFacts(job, system));
}

void write_settings(JsonWriter& out, const FromSettings& from, UnitSystem system) {
  if (!from.any()) return;
  out.begin_object("settings");
  out.text("file", from.file);
  out.begin_array("taken");
  for (const SettingTaken& fact : from.taken) {
    out.begin_object();
    out.text("path", fact.path);
    if (const auto* text = std::get_if<std::string>(&fact.value)) out.text("value", *text);
    if (const auto* measure = std::get_if<Measure>(&fact.value)) write_quantity(out, "value", *measure, system);
    if (const auto* size = std::get_if<NominalSize>(&fact.value)) out.size("value", *size);
    if (const auto* whole = std::get_if<int>(&fact.value)) out.whole("value", *whole);
    out.end_object();
  }
  out.end_array();
  out.begin_array("set_aside");
  for (const std::string& member : from.set_aside) out.text({}, member);
  out.end_array();
  out.end_object();
}

}  // namespace mainbore::io

namespace mainbore {

std::string job_to_json(const Job& job, UnitSystem system, JsonStyle style) {
  std::string text;
  io::JsonWriter out(text, style);
  io::write_job(out, {}, job, system);
  if (style == JsonStyle::pretty) text += '\n';
  return text;
}

std::string settings_to_json(std::span<const Setting> settings, const Catalog& catalog) {
  std::string text;
  io::JsonWriter out(text, JsonStyle::pretty);
  io::write_object(out, {}, io::WrittenFacts(settings, catalog));
  text += '\n';
  return text;
}

}  // namespace mainbore
