#include "io/approved/approved_fields.hpp"

#include <algorithm>
#include <vector>

namespace mainbore::io {
namespace {

constexpr Choice kinds{approved_kind_names, {}};

// Uses in the order of ApprovedKind: saddle, stop, sleeve, cutter, tap, seat, chain.
ApprovedField field(std::string_view key, FieldType type, std::string_view use, std::string_view help) {
  ApprovedField made;
  made.value.path = key;
  made.value.type = type;
  made.value.help = help;
  made.column = {key, use, help};
  return made;
}
ApprovedField quantity(std::string_view key, Kind kind, Measure least, Measure greatest, std::string_view use,
                       std::string_view help) {
  ApprovedField made = field(key, FieldType::quantity, use, help);
  made.value.kind = kind;
  made.value.least = least;
  made.value.greatest = greatest;
  return made;
}
ApprovedField length(std::string_view key, double least, double greatest, std::string_view use, std::string_view help) {
  return quantity(key, Kind::length, least * units::inch, greatest * units::inch, use, help);
}
ApprovedField choice(std::string_view key, const Choice& words, std::string_view use, std::string_view help) {
  ApprovedField made = field(key, FieldType::choice, use, help);
  made.value.choice = &words;
  return made;
}

std::array<ApprovedField, 13> made_table() {
  ApprovedField main =
      field("main", FieldType::material, "R-ROO--", "material of the main that it is for, one or several");
  main.several = true;
  ApprovedField size =
      field("size", FieldType::size, "RRRRR--", "of the tap: a saddle's or sleeve's outlet, a stop's inlet");
  size.value.least = Measure(0.5 * units::inch);
  size.value.greatest = Measure(48.0 * units::inch);
  ApprovedField straps = field("straps", FieldType::whole, "O------", "straps or bands of a saddle");
  straps.value.least = Measure(1.0, Kind::ratio);
  straps.value.greatest = Measure(8.0, Kind::ratio);
  return {
      choice("kind", kinds, "RRRRRRR", "what it is"),
      main,
      length("od_from", 0.5, 150, "R-R--R-", "smallest outside diameter that it takes"),
      length("od_to", 0.5, 150, "R-R--R-", "largest"),
      size,
      choice("thread", *find_field("service.thread")->field->choice, "OR--R--",
             "of a stop's inlet and its tap; of a saddle's outlet"),
      straps,
      quantity("torque", Kind::torque, Measure(1.0 * units::ft_lbf), Measure(1000.0 * units::ft_lbf), "O-O----",
               "that its nuts are drawn to"),
      quantity("rating", Kind::pressure, Measure(20.0 * units::psi), Measure(1000.0 * units::psi), "OOO----",
               "working pressure marked on it"),
      length("length", 0.25, 600, "OO----R",
             "stop from end to end; saddle from the pipe to its outlet face; chain hook to hook"),
      length("diameter", 0.25, 60, "---O---", "that a cutter cuts"),
      field("stock", FieldType::text, "OOOOOOO", "the utility's stock number, in its own words"),
      field("text", FieldType::text, "OOOOOOO", "what else it is called: \"bronze, double strap\""),
  };
}

}  // namespace

std::span<const ApprovedField> approved_fields() {
  static const auto table = made_table();
  return table;
}

const ApprovedField* approved_field(std::string_view key) {
  const auto fields = approved_fields();
  const auto found =
      std::find_if(fields.begin(), fields.end(), [&](const ApprovedField& one) { return one.column.key == key; });
  return found == fields.end() ? nullptr : &*found;
}

}  // namespace mainbore::io

namespace mainbore {

std::span<const ApprovedColumn> approved_columns() {
  static const auto columns = [] {
    std::vector<ApprovedColumn> all;
    for (const io::ApprovedField& field : io::approved_fields()) all.push_back(field.column);
    return all;
  }();
  return columns;
}

}  // namespace mainbore
