// What makes the boxes of a sheet take readings (sheet_script.js, compiled in). It holds no < and no &, so that it reads the
// same in HTML and in XML.
#pragma once

#include <string>
#include <string_view>

#include "mainbore/sheet.hpp"

namespace mainbore::report {

[[nodiscard]] std::string_view sheet_script();

// The content policy of a page with the sheet's style, its script where it takes readings, and nothing else: no network, no
// other script. Style attributes are allowed, because they set how far apart lines stand.
[[nodiscard]] const std::string& sheet_policy(PageScript script);

}  // namespace mainbore::report
