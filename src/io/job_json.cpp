#include "io/job_json.hpp"

#include "io/job_fields.hpp"

namespace mainbore::io {
namespace {

// Unrounded, so that the job reads back as it was: six places of the unit shown.
void write_quantity(JsonWriter& out, std::string_view key, Measure value, UnitSystem system) {
  constexpr int places = 6;
  const std::string_view unit = shown(value, system).unit;
  const double base_of_unit = parse_measure(1.0, unit, value.kind()).value.base();
  double number = value.base() / base_of_unit;
  if (value.kind() == Kind::temperature) {
    const Temperature temperature = Temperature::fahrenheit(value.base());
    number = system == UnitSystem::us ? temperature.fahrenheit() : temperature.celsius();
  }
  out.quantity(key, number, places, unit);
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
      return out.size(key, std::get<NominalSize>(value));
    case FieldType::material:
      return out.text(key, name_of(std::get<Material>(value)));
    case FieldType::choice:
      return out.text(key, field.choice->names[static_cast<std::size_t>(std::get<int>(value))]);
    case FieldType::flag:
      return out.flag(key, std::get<bool>(value));
    case FieldType::whole:
      return out.whole(key, std::get<int>(value));
    case FieldType::clock:
      return out.text(key, std::get<ClockPosition>(value).label());
  }
}

FieldValue known_value(const JobField& field, const Job& job, std::size_t index) {
  return field.load(job, index, field.kind);
}

// The members of one object: rows whose paths agree in the first `prefix` characters.
void write_members(JsonWriter& out, std::span<const JobField> rows, std::size_t prefix, const Job& job,
                   std::size_t index, UnitSystem system) {
  while (!rows.empty()) {
    const JobField& field = rows.front();
    const std::string_view rest = field.path.substr(prefix);
    const std::size_t end = rest.find_first_of(".[");
    const std::string_view key = rest.substr(0, end);
    if (end == std::string_view::npos) {
      const FieldValue value = known_value(field, job, index);
      if (value.index() != 0) write_value(out, key, field, value, system);
      rows = rows.subspan(1);
      continue;
    }
    const bool list = rest[end] == '[';
    const std::size_t inner = prefix + end + (list ? 3 : 1);
    std::size_t count = 0;
    while (count < rows.size() && rows[count].path.substr(0, inner) == field.path.substr(0, inner)) ++count;
    const std::span<const JobField> inside = rows.first(count);
    if (list) {
      if (const auto length = list_length(job, key)) {
        out.begin_array(key);
        for (std::size_t element = 0; element < *length; ++element) {
          out.begin_object();
          write_members(out, inside, inner, job, element, system);
          out.end_object();
        }
        out.end_array();
      }
    } else {
      const JsonWriter::Mark before = out.mark();
      out.begin_object(key);
      write_members(out, inside, inner, job, index, system);
      if (out.nothing_yet()) out.back_to(before);
      else out.end_object();
    }
    rows = rows.subspan(count);
  }
}

}  // namespace

void write_job(JsonWriter& out, std::string_view key, const Job& job, UnitSystem system) {
  out.begin_object(key);
  write_members(out, job_fields(), 0, job, 0, system);
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

}  // namespace mainbore
