// A utility's approved fittings: what may go on a main and what it is put there with, each with its stock number.
//
// A plan made with such a list chooses from it, and the card, the steps and the load list name the items. A saddle or sleeve
// must be for the material of the main, cover every outside diameter that the main may have, and have the outlet of the tap; a
// stop must be of its size and inlet thread; both must be rated for line and surge. Where no item fits, the office must say
// what is used: a hold, which names the nearest item and what it lacks. Cutter, tap, machine saddle and chain are looked for
// where the list has any: one that is missing is a caution.
//
// The list is the office's word on a fitting, and supplies two facts of it where the job does not state them: the rating of
// stop and saddle, and their lengths, by which the bar must reach. The mark is read on the fitting all the same. Nothing else
// of a verdict gets better with a list, and none with an item less.
//
//     const ApprovedFile read = read_approved(text, "approved.csv", Catalog::builtin());    // approved_file.hpp
//     const Planner planner(builtin_catalog(), rules, std::make_shared<const ApprovedList>(*read.list));
//     const Plan plan = planner.plan(job);
//     if (const ApprovedItem* saddle = plan.method.fitting(ApprovedKind::saddle)) saddle->stock;  // "41-117"
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/material.hpp"
#include "mainbore/nominal_size.hpp"
#include "mainbore/units.hpp"

namespace mainbore {

enum class ApprovedKind : std::uint8_t { saddle, stop, sleeve, cutter, tap, seat, chain };
inline constexpr std::size_t approved_kind_count = 7;
inline constexpr std::array<std::string_view, approved_kind_count> approved_kind_names = {
    "saddle", "stop", "sleeve", "cutter", "tap", "seat", "chain"};
// The same as they stand in a sentence.
inline constexpr std::array<std::string_view, approved_kind_count> approved_kind_words = {
    "saddle", "corporation stop", "sleeve", "cutter", "combined drill and tap", "machine saddle", "machine chain"};
[[nodiscard]] constexpr std::string_view words_of(ApprovedKind kind) {
  return approved_kind_words[static_cast<std::size_t>(kind)];
}
[[nodiscard]] constexpr std::string_view name_of(ApprovedKind kind) {
  return approved_kind_names[static_cast<std::size_t>(kind)];
}

struct ApprovedItem {
  ApprovedKind kind = ApprovedKind::saddle;
  std::string stock;              // the utility's stock number; empty: it has none
  std::string text;               // further words: "bronze, double strap"
  std::string label;              // for a message: "stock 41-117", else "line 12" of the file
  std::vector<Material> main;     // it is for; of a tool, empty: for any
  std::optional<Length> od_from;  // outside diameters that a saddle, sleeve or seat takes, both ends within
  std::optional<Length> od_to;
  NominalSize size;                      // of the tap: a saddle's or sleeve's outlet, a stop, a cutter's or tap's stop
  std::optional<ThreadStandard> thread;  // of the stop's inlet, and of the outlet or tap that it goes with
  std::optional<int> straps;             // of a saddle
  std::optional<Torque> torque;          // of its nuts
  std::optional<Pressure> rating;        // working pressure marked on it
  std::optional<Length> length;    // stop from end to end; saddle from the pipe to its outlet face; chain hook to hook
  std::optional<Length> diameter;  // of a cutter
};

struct ApprovedList {
  std::string file;     // as it was named
  std::string name;     // "Ashby Vale approved fittings"
  std::string edition;  // "2026-03"
  std::vector<ApprovedItem> items;
};

}  // namespace mainbore
