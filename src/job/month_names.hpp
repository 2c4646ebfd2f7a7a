// What people call the months.
#pragma once

#include <array>
#include <string_view>

namespace mainbore {

inline constexpr std::array<std::string_view, 12> month_names = {"January",   "February", "March",    "April",
                                                                 "May",       "June",     "July",     "August",
                                                                 "September", "October",  "November", "December"};

}  // namespace mainbore
