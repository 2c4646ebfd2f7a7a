#include "batch/first_bytes.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace mainbore::batch {
namespace {

using namespace std::string_view_literals;

constexpr std::string_view space = " \t\r\n";

std::string_view without_mark_and_space(std::string_view bytes) {
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  bytes.remove_prefix(std::min(bytes.find_first_not_of(space), bytes.size()));
  return bytes;
}

// The first member of an object, as far as it has come.
struct FirstMember {
  std::string_view key;
  std::string_view value;  // of a text what stands between its quotes, else its first byte
  bool whole = false;
};
FirstMember first_member(std::string_view object) {
  FirstMember member;
  const auto skip = [&] { object.remove_prefix(std::min(object.find_first_not_of(space), object.size())); };
  const auto text = [&](std::string_view& to) {
    const std::size_t end = object.find('"', 1);
    if (end == std::string_view::npos) return false;
    to = object.substr(1, end - 1);
    object.remove_prefix(end + 1);
    return true;
  };
  object.remove_prefix(1);
  skip();
  if (object.empty()) return member;
  if (object.front() != '"') return member.whole = true, member;
  if (!text(member.key)) return member;
  skip();
  if (object.empty()) return member;
  object.remove_prefix(1);
  skip();
  if (object.empty()) return member;
  member.value = object.substr(0, 1);
  member.whole = object.front() != '"' || text(member.value);
  return member;
}

struct Magic {
  std::string_view bytes;
  ForeignFile file;
};
constexpr std::array<Magic, 6> magics = {{
    {"SQLite format 3\0"sv, {"a GeoPackage or another SQLite database", "GeoJSON"}},
    {"\0\0\x27\x0A"sv, {"a shapefile", "GeoJSON"}},
    {"PK\x03\x04"sv, {"a spreadsheet or another zip archive", "CSV"}},
    {"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"sv, {"a spreadsheet of the older kind", "CSV"}},
    {"\x1F\x8B"sv, {"a file packed with gzip", ""}},
    {"FGB\x03"sv, {"a FlatGeobuf file", "GeoJSON"}},
}};

}  // namespace

InputFormat format_of(std::string_view first_bytes) {
  first_bytes = without_mark_and_space(first_bytes);
  if (first_bytes.empty()) return InputFormat::csv;
  if (first_bytes.front() == '\x1E') return InputFormat::geojson;
  if (first_bytes.front() == '[') return InputFormat::json;
  if (first_bytes.front() != '{') return InputFormat::csv;
  const FirstMember member = first_member(first_bytes);
  const bool by_type = member.key == "type" && (member.value == "FeatureCollection" || member.value == "Feature");
  if (by_type || (member.key == "features" && member.value == "[")) return InputFormat::geojson;
  // Behind a brace that ends its line comes an order of several lines.
  const std::string_view behind = first_bytes.substr(1);
  return behind.starts_with('\n') || behind.starts_with('\r') ? InputFormat::json : InputFormat::ndjson;
}

bool tells_format(std::string_view first_bytes) {
  const std::string_view rest = without_mark_and_space(first_bytes);
  if (rest.empty()) return false;
  if (static_cast<unsigned char>(rest.front()) >= 0x80 && first_bytes.size() < 3) return false;  // perhaps a mark
  return rest.front() != '{' || first_member(rest).whole;
}

bool may_be_foreign(std::string_view first_bytes) {
  return std::any_of(magics.begin(), magics.end(), [&](const Magic& magic) {
    return magic.bytes.size() > first_bytes.size() && magic.bytes.starts_with(first_bytes);
  });
}

std::optional<ForeignFile> foreign_file(std::string_view first_bytes) {
  const auto* const magic = std::find_if(magics.begin(), magics.end(),
                                         [&](const Magic& known) { return first_bytes.starts_with(known.bytes); });
  if (magic == magics.end()) return std::nullopt;
  return magic->file;
}

}  // namespace mainbore::batch
