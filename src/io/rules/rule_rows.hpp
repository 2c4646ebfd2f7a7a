// Reads the lists of a rules file, whose rows say for which mains they are: largest taps, mains not tapped, closed seasons,
// what fittings must be; and sizes by the number of dwellings.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "io/rules/rule_values.hpp"
#include "mainbore/rules.hpp"

namespace mainbore::io {

// Rows of one list, and where each stands in the file being read.
struct PlacedRows {
  std::vector<TapLimit> rows;
  std::vector<std::uint32_t> nodes;
};

class RuleRowReader : protected RuleValueReader {
 protected:
  // Of which list a row with mains and a largest tap is.
  enum class RowOf : std::uint8_t { permissions, caps, not_tapped };

  explicit RuleRowReader(const Catalog& catalog) : RuleValueReader(catalog) {}

  // Each replaces the list by what stands at the node; a list of another shape stays as it is.
  void read_limits(std::uint32_t node, PlacedRows& rows);
  void read_limits(std::uint32_t node, TapLimits& limits, RowOf list);
  void read_seasons(std::uint32_t node, std::vector<ClosedSeason>& seasons);
  void read_specifications(std::uint32_t node, std::vector<FittingSpecification>& specifications);
  void read_by_dwellings(std::uint32_t node, std::vector<SizesByDwellings>& sizes);

 private:
  template <class Row, class Read>
  void read_rows(std::uint32_t node, std::vector<Row>& rows, const std::string& part, Read read);
  // A row of a list of largest taps, or of mains not tapped, which have none.
  TapLimit read_limit(std::uint32_t node, RowOf list);
  ClosedSeason read_season(std::uint32_t node);
  FittingSpecification read_specification(std::uint32_t node);
  SizesByDwellings read_sizes(std::uint32_t node);

  // The part of a row that says for which mains it is. False for another key. Classes are read when the materials are known.
  bool read_mains_key(std::uint32_t child, std::string_view key, MainFilter& row, std::vector<std::uint32_t>& classes);
  void finish_mains(std::uint32_t node, MainFilter& row, const std::vector<std::uint32_t>& classes);
  // From and to are inclusive, above and below are not.
  template <class T>
  void check_ends(std::uint32_t node, std::string_view what, const std::optional<T>& from,
                  const std::type_identity_t<std::optional<T>>& to, const std::type_identity_t<std::optional<T>>& above,
                  const std::type_identity_t<std::optional<T>>& below);
  void unknown_part(std::uint32_t child, std::string_view key, std::vector<std::string_view> known);
  // A class is read as that of an order is, of each material that the row is for. One that means no pipe would never count.
  void read_class(std::uint32_t node, MainFilter& row);
  std::string read_series(std::uint32_t node);
};

}  // namespace mainbore::io
