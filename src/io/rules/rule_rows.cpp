#include "io/rules/rule_rows.hpp"

#include <algorithm>
#include <chrono>
#include <utility>

#include "catalog/class_meaning.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "job/month_names.hpp"

namespace mainbore::io {
namespace {

constexpr JobField main_size{.path = "main size",
                             .type = FieldType::size,
                             .help = "nominal size of a main",
                             .least = Measure(0.5, Kind::length),
                             .greatest = Measure(150.0, Kind::length)};
constexpr JobField tap_size{.path = "largest",
                            .type = FieldType::size,
                            .help = "nominal size of a tap",
                            .least = Measure(0.25, Kind::length),
                            .greatest = Measure(60.0, Kind::length)};
constexpr JobField wall{.path = "wall_from",
                        .type = FieldType::quantity,
                        .help = "nominal wall",
                        .kind = Kind::length,
                        .least = Measure(0.01, Kind::length),
                        .greatest = Measure(20.0, Kind::length)};
constexpr JobField bore{.path = "bore",
                        .type = FieldType::quantity,
                        .help = "inside diameter of the main",
                        .kind = Kind::length,
                        .least = Measure(0.3, Kind::length),
                        .greatest = Measure(160.0, Kind::length)};
constexpr JobField laid{.path = "laid",
                        .type = FieldType::whole,
                        .help = "year in which the main was laid",
                        .kind = Kind::ratio,
                        .least = Measure(1800.0, Kind::ratio),
                        .greatest = Measure(2100.0, Kind::ratio)};
constexpr JobField material{.path = "material",
                            .type = FieldType::material,
                            .help = "what the main is made of",
                            .least = Measure(),
                            .greatest = Measure()};
constexpr JobField line_size{.path = "line",
                             .type = FieldType::size,
                             .help = "nominal size of a service line or meter",
                             .least = Measure(0.25, Kind::length),
                             .greatest = Measure(24.0, Kind::length)};

constexpr std::array<std::string_view, 15> mains_keys = {
    "material",   "class",     "series",  "main_from",  "main_to",    "main_above", "main_below", "wall_from",
    "wall_below", "bore_from", "bore_to", "bore_above", "bore_below", "laid_from",  "laid_to"};

// As many as a job may say.
const JobField& dwellings() {
  static const JobField& field = *find_field("service.dwellings")->field;
  return field;
}

// "11-01"
std::optional<YearDay> year_day(std::string_view text) {
  const auto digits = [&](std::size_t at) {
    return is_digit(text[at]) && is_digit(text[at + 1]) ? 10 * (text[at] - '0') + (text[at + 1] - '0') : 0;
  };
  if (text.size() != 5 || text[2] != '-') return std::nullopt;
  const YearDay day{digits(0), digits(3)};
  const std::chrono::month_day date(std::chrono::month(static_cast<unsigned>(day.month)),
                                    std::chrono::day(static_cast<unsigned>(day.day)));
  return date.ok() ? std::optional(day) : std::nullopt;
}

std::string in_words(YearDay day) {
  return std::to_string(day.day) + ' ' + std::string(month_names[static_cast<std::size_t>(day.month - 1)]);
}

}  // namespace

template <class Row, class Read>
void RuleRowReader::read_rows(std::uint32_t node, std::vector<Row>& rows, const std::string& part, Read read) {
  const std::string form = "{ \"material\": ..., " + part + " }";
  if (node_at(node).type != JsonType::array) {
    return wrong_type(node, "a list",
                      "a list of rows: [ " + form +
                          " ]; the first row that fits decides, and an empty list has "
                          "nothing to say");
  }
  rows.clear();
  members(node, [&](std::uint32_t row) {
    if (is_object(row, "a row is an object: " + form)) rows.push_back(read(row));
  });
}

void RuleRowReader::read_limits(std::uint32_t node, PlacedRows& rows) {
  PlacedRows read;
  read_rows(node, read.rows, "\"largest\": ...", [&](std::uint32_t row) {
    read.nodes.push_back(row);
    return read_limit(row, RowOf::permissions);
  });
  rows = std::move(read);
}

void RuleRowReader::read_limits(std::uint32_t node, TapLimits& limits, RowOf list) {
  std::vector<TapLimit> rows(limits.begin(), limits.end());
  read_rows(node, rows, list == RowOf::caps ? "\"largest\": ..." : "\"why\": ...",
            [&](std::uint32_t row) { return read_limit(row, list); });
  limits = TapLimits(std::move(rows));
}

void RuleRowReader::read_seasons(std::uint32_t node, std::vector<ClosedSeason>& seasons) {
  read_rows(node, seasons, "\"from\": \"11-01\", \"to\": \"04-01\"",
            [&](std::uint32_t row) { return read_season(row); });
}

void RuleRowReader::read_specifications(std::uint32_t node, std::vector<FittingSpecification>& specifications) {
  read_rows(node, specifications, "\"text\": ...", [&](std::uint32_t row) { return read_specification(row); });
}

void RuleRowReader::read_by_dwellings(std::uint32_t node, std::vector<SizesByDwellings>& sizes) {
  read_rows(node, sizes, "\"dwellings_from\": 1, \"tap\": \"1 in\"",
            [&](std::uint32_t row) { return read_sizes(row); });
}

TapLimit RuleRowReader::read_limit(std::uint32_t node, RowOf list) {
  const bool with_largest = list != RowOf::not_tapped;
  TapLimit row;
  std::vector<std::uint32_t> classes;
  BasisKeys basis;
  bool has_largest = false;
  bool none = !with_largest;
  for_members(node, [&](std::uint32_t child, std::string_view key) {
    if (read_mains_key(child, key, row, classes)) return;
    if (key == "largest" && with_largest) {
      has_largest = true;
      none = node_at(child).type == JsonType::string && plain_name(node_at(child).text) == "none";
      if (!none) row.largest = read_size(child, tap_size).value_or(NominalSize());
    } else if (key == "why") {
      row.why = plain_text(child);
    } else if (key == "consent") {
      row.consent = plain_text(child);
    } else if (!read_basis_key(child, key, basis)) {
      std::vector<std::string_view> parts;
      if (with_largest) parts.push_back("largest");
      parts.push_back("why");
      parts.push_back("consent");
      unknown_part(child, key, parts);
    }
  });
  if (text::is_blank(row.consent)) row.consent.clear();
  if (with_largest && !has_largest) {
    add(node, {"rules.missing", "a row without its largest tap", "\"largest\": \"1 in\", or \"none\""});
  } else if (none && row.why.empty()) {
    add(node, {"rules.missing", "a row that allows no tap and does not say what is done instead", "\"why\": \"...\""});
  }
  finish_mains(node, row, classes);
  row.basis = basis_of(node, basis);
  return row;
}

ClosedSeason RuleRowReader::read_season(std::uint32_t node) {
  ClosedSeason row;
  BasisKeys basis;
  std::vector<std::uint32_t> classes;
  std::optional<YearDay> from;
  std::optional<YearDay> to;
  const auto day = [&](std::uint32_t child) {
    const auto read = year_day(text_of(child));
    if (!read && node_at(child).type == JsonType::string) {
      add(child, {"rules.unknown-value", quoted(node_at(child).text) + " is no day of the year",
                  "month and day, such as \"11-01\" for the first of November"});
    }
    return read;
  };
  bool has_from = false;
  bool has_to = false;
  for_members(node, [&](std::uint32_t child, std::string_view key) {
    if (read_mains_key(child, key, row, classes)) return;
    if (key == "from") {
      has_from = true;
      from = day(child);
    } else if (key == "to") {
      has_to = true;
      to = day(child);
    } else if (key == "why") {
      row.why = plain_text(child);
    } else if (!read_basis_key(child, key, basis)) {
      unknown_part(child, key, {"from", "to", "why"});
    }
  });
  if (!has_from || !has_to) {
    add(node,
        {"rules.missing", "a closed season without its first or last day", "\"from\": \"11-01\", \"to\": \"04-01\""});
  }
  if (from && to) {
    row.from = *from;
    row.to = *to;
    row.from_text = in_words(*from);
    row.to_text = in_words(*to);
  }
  finish_mains(node, row, classes);
  row.basis = basis_of(node, basis);
  return row;
}

FittingSpecification RuleRowReader::read_specification(std::uint32_t node) {
  FittingSpecification row;
  BasisKeys basis;
  std::vector<std::uint32_t> classes;
  for_members(node, [&](std::uint32_t child, std::string_view key) {
    if (read_mains_key(child, key, row, classes)) return;
    if (key == "tap_from") {
      row.tap_from = read_size(child, tap_size);
    } else if (key == "tap_to") {
      row.tap_to = read_size(child, tap_size);
    } else if (key == "tap_above") {
      row.tap_above = read_size(child, tap_size);
    } else if (key == "text") {
      row.text = plain_text(child);
    } else if (!read_basis_key(child, key, basis)) {
      unknown_part(child, key, {"tap_from", "tap_to", "tap_above", "text"});
    }
  });
  if (row.text.empty()) {
    add(node, {"rules.missing", "a specification without a word", "\"text\": \"bronze, double strap\""});
  }
  finish_mains(node, row, classes);
  check_ends(node, "tap", row.tap_from, row.tap_to, row.tap_above, {});
  row.basis = basis_of(node, basis);
  return row;
}

SizesByDwellings RuleRowReader::read_sizes(std::uint32_t node) {
  SizesByDwellings row;
  BasisKeys basis;
  std::optional<int> from;
  for_members(node, [&](std::uint32_t child, std::string_view key) {
    if (key == "dwellings_from") {
      from = read_whole(child, dwellings(), "a number of dwellings, such as 4");
    } else if (key == "dwellings_to") {
      row.to = read_whole(child, dwellings(), "a number of dwellings, such as 4");
    } else if (key == "tap") {
      row.tap = read_size(child, tap_size);
    } else if (key == "line") {
      row.line = read_size(child, line_size);
    } else if (key == "meter") {
      row.meter = read_size(child, line_size);
    } else if (!read_basis_key(child, key, basis)) {
      std::vector<std::string_view> known = {"dwellings_from", "dwellings_to", "tap", "line", "meter"};
      const auto rest = basis_keys();
      known.insert(known.end(), rest.begin(), rest.end());
      not_known(child, key, "part of a row", known);
    }
  });
  const auto given = [&](std::string_view key) {
    bool found = false;
    for_members(node, [&](std::uint32_t, std::string_view member) { found = found || member == key; });
    return found;
  };
  if (!given("dwellings_from")) {
    add(node, {"rules.missing", "a row that does not say from how many dwellings on", "\"dwellings_from\": 1"});
  }
  if (!given("tap") && !given("line") && !given("meter")) {
    add(node, {"rules.missing", "a row without a size", "\"tap\", \"line\" or \"meter\": \"1 in\""});
  }
  row.from = from.value_or(0);
  if (from && row.to && *row.to < *from) {
    add(node,
        {"rules.contradiction", "dwellings_to lies below dwellings_from", "numbers go from the smaller to the larger"});
  }
  row.basis = basis_of(node, basis);
  return row;
}

// ---- for which mains

bool RuleRowReader::read_mains_key(std::uint32_t child, std::string_view key, MainFilter& row,
                                   std::vector<std::uint32_t>& classes) {
  constexpr std::array<std::pair<std::string_view, std::optional<NominalSize> MainFilter::*>, 4> sizes = {{
      {"main_from", &MainFilter::main_from},
      {"main_to", &MainFilter::main_to},
      {"main_above", &MainFilter::main_above},
      {"main_below", &MainFilter::main_below},
  }};
  constexpr std::array<std::pair<std::string_view, std::optional<Length> MainFilter::*>, 6> lengths = {{
      {"wall_from", &MainFilter::wall_from},
      {"wall_below", &MainFilter::wall_below},
      {"bore_from", &MainFilter::bore_from},
      {"bore_to", &MainFilter::bore_to},
      {"bore_above", &MainFilter::bore_above},
      {"bore_below", &MainFilter::bore_below},
  }};
  const auto of = [&](const auto& keys) {
    const auto* const found = std::find_if(keys.begin(), keys.end(), [&](const auto& one) { return one.first == key; });
    return found == keys.end() ? nullptr : found;
  };
  if (const auto* const size = of(sizes)) {
    row.*size->second = read_size(child, main_size);
  } else if (const auto* const length = of(lengths)) {
    row.*length->second = read_length(child, key.starts_with("wall") ? wall : bore);
  } else if (key == "material") {
    each_text(child, [&](std::uint32_t item) {
      if (const auto read = read_text_value(item, material)) row.materials.push_back(std::get<Material>(*read));
    });
  } else if (key == "class") {
    each_text(child, [&](std::uint32_t item) { classes.push_back(item); });
  } else if (key == "series") {
    each_text(child, [&](std::uint32_t item) { row.series.push_back(read_series(item)); });
  } else if (key == "laid_from") {
    row.laid_from = read_whole(child, laid, "a year, such as 1965");
  } else if (key == "laid_to") {
    row.laid_to = read_whole(child, laid, "a year, such as 1965");
  } else {
    return false;
  }
  return true;
}

void RuleRowReader::finish_mains(std::uint32_t node, MainFilter& row, const std::vector<std::uint32_t>& classes) {
  check_ends(node, "main", row.main_from, row.main_to, row.main_above, row.main_below);
  check_ends(node, "bore", row.bore_from, row.bore_to, row.bore_above, row.bore_below);
  check_ends(node, "wall", row.wall_from, {}, {}, row.wall_below);
  check_ends(node, "laid", row.laid_from, row.laid_to, {}, {});
  for (const std::uint32_t item : classes) read_class(item, row);
  std::sort(row.pipes.begin(), row.pipes.end());
  row.pipes.erase(std::unique(row.pipes.begin(), row.pipes.end()), row.pipes.end());
}

template <class T>
void RuleRowReader::check_ends(std::uint32_t node, std::string_view what, const std::optional<T>& from,
                               const std::type_identity_t<std::optional<T>>& to,
                               const std::type_identity_t<std::optional<T>>& above,
                               const std::type_identity_t<std::optional<T>>& below) {
  const auto clash = [&](std::string_view upper, std::string_view lower) {
    add(node,
        {"rules.contradiction",
         std::string(what) + std::string(upper) + " leaves nothing over " + std::string(what) + std::string(lower),
         what == "laid" ? "years go from the earlier to the later" : "sizes go from the smaller to the larger"});
  };
  if (from && to && *to < *from) clash("_to", "_from");
  if (above && to && *to <= *above) clash("_to", "_above");
  if (from && below && *below <= *from) clash("_below", "_from");
  if (above && below && *below <= *above) clash("_below", "_above");
}

void RuleRowReader::unknown_part(std::uint32_t child, std::string_view key, std::vector<std::string_view> known) {
  known.insert(known.begin(), mains_keys.begin(), mains_keys.end());
  const auto basis = basis_keys();
  known.insert(known.end(), basis.begin(), basis.end());
  not_known(child, key, "part of a row", known);
}

void RuleRowReader::read_class(std::uint32_t node, MainFilter& row) {
  const std::string_view text = text_of(node);
  const std::size_t before = row.pipes.size();
  for (std::size_t m = 0; m < material_count; ++m) {
    const auto of = static_cast<Material>(m);
    if (!row.materials.empty() && !row.materials.contains(of)) continue;
    const ClassWords words = catalog().read_class(text, of);
    if (words.words.empty()) continue;
    for (const Pipe& pipe : catalog().pipes()) {
      if (pipe.series->material == of && means_pipe(words, pipe)) row.pipes.push_back(&pipe);
    }
  }
  row.classes.emplace_back(text);
  if (row.pipes.size() > before) return;
  add(node, {"rules.unknown-value", quoted(text) + " is the class of no pipe that the row can be for",
             "such as \"PC 350\" or \"DR 18\""});
}

std::string RuleRowReader::read_series(std::uint32_t node) {
  std::string id(text_of(node));
  std::vector<std::string_view> known;
  for (const Pipe& pipe : catalog().pipes()) {
    if (std::find(known.begin(), known.end(), pipe.series->id) == known.end()) known.push_back(pipe.series->id);
  }
  if (std::find(known.begin(), known.end(), id) == known.end()) {
    Problem problem{"rules.unknown-value", quoted(id) + " is not a known series of pipe", ""};
    problem.help = nearest_and_known(id, known, "one of: ");
    add(node, std::move(problem));
  }
  return id;
}

}  // namespace mainbore::io
