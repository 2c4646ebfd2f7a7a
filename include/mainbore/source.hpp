// Where a number came from, and how it was had.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace mainbore {

// A publication, or the honest absence of one.
struct Source {
  std::string id;     // "awwa-c151-17"
  std::string title;  // publication and edition
  std::string brief;  // its name in short, for a list
  std::string where;  // section or table
  std::string note;
};

// How a number was had. The weakest of those it rests on is what a plan may claim.
// Tables never hold the last three, which are for what a job itself, a settings file or an approved list states: a mark
// read off a fitting, a maker's figure.
enum class How : std::uint8_t {
  published,
  derived,
  common_practice,
  memory,
  stated,
  stated_in_settings,
  stated_in_approved_list
};
inline constexpr std::array<std::string_view, 7> how_names = {"published",
                                                              "derived",
                                                              "common practice",
                                                              "memory",
                                                              "stated in the job",
                                                              "stated in the settings",
                                                              "stated in the approved list"};
[[nodiscard]] constexpr std::string_view name_of(How how) { return how_names[static_cast<std::size_t>(how)]; }

// What one number rests on. `utility` is set where a utility's own rule replaced the default; the rest is then the
// utility's own.
struct Basis {
  const Source* source = nullptr;
  How how = How::common_practice;
  bool utility = false;
  const std::string* reference = nullptr;  // document and section
  const std::string* reason = nullptr;     // why it is so, where the file says
  const std::string* file = nullptr;       // the rules file that set it
  bool rule = false;                       // a rule, which a utility can set; else a table's figure or the job's
};

inline constexpr Basis stated_in_job{.how = How::stated};
inline constexpr Basis stated_in_settings{.how = How::stated_in_settings};
inline constexpr Basis stated_in_approved_list{.how = How::stated_in_approved_list};

}  // namespace mainbore
