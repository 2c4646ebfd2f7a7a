// What a plan means for a crew, for a reader that has some of it at hand already or wants less of it than its words.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "mainbore/work.hpp"

namespace mainbore::work {

// The load list of a plan whose procedure() and contingencies() are made.
[[nodiscard]] std::vector<LoadItem> load_list_of(const Plan& plan, Audience audience, std::span<const Step> procedure,
                                                 std::span<const Step> contingencies);

// The codes of cautions(), without making a word.
[[nodiscard]] std::vector<std::string_view> caution_codes(const Plan& plan);

}  // namespace mainbore::work
