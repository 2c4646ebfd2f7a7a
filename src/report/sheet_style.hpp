// How a sheet looks, on a screen and on paper. It holds no < > & or ", so that it reads the same in HTML and in XML.
#pragma once

#include <string_view>

namespace mainbore::report {

extern const std::string_view sheet_style;

}  // namespace mainbore::report
