#include "io/settings/aboard_fields.hpp"

#include <array>

#include "mainbore/work.hpp"

namespace mainbore::io {
namespace {

constexpr Choice items{load_item_keys, {}};

JobField field(std::string_view path, FieldType type, std::string_view help) {
  JobField made;
  made.path = path;
  made.type = type;
  made.help = help;
  return made;
}
JobField length(std::string_view path, double greatest, std::string_view help) {
  JobField made = field(path, FieldType::quantity, help);
  made.kind = Kind::length;
  made.least = 0.25 * units::inch;
  made.greatest = greatest * units::inch;
  return made;
}

std::array<JobField, 7> made_table() {
  JobField item = field("item", FieldType::choice, "what it is, by its name on the load list");
  item.choice = &items;
  JobField size = field("size", FieldType::size, "of the tap; left out where the thing has none");
  size.least = Measure(0.5 * units::inch);
  size.greatest = Measure(48.0 * units::inch);
  JobField count = field("count", FieldType::whole, "how many; left out: one");
  count.least = Measure(0.0, Kind::ratio);
  count.greatest = Measure(10000.0, Kind::ratio);
  return {item,
          field("stock", FieldType::text, "its stock number on the approved list"),
          size,
          length("od_from", 150, "smallest outside diameter that it takes"),
          length("od_to", 150, "largest"),
          length("length", 600, "of a chain or an extension, hook to hook"),
          count};
}

}  // namespace

std::span<const JobField> aboard_fields() {
  static const auto table = made_table();
  return table;
}

}  // namespace mainbore::io
