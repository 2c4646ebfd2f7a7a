// SHA-256 (FIPS 180-4), to tell texts apart.
#pragma once

#include <string>
#include <string_view>

namespace mainbore::text {

// The digest in 64 hexadecimal digits.
[[nodiscard]] std::string sha256(std::string_view bytes);

}  // namespace mainbore::text
