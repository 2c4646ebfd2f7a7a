// Invented orders for measuring: as varied as a utility's own, and the same for the same number each time.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

namespace mainbore::bench {

// One order of about 600 bytes as a line of JSON, line end included, behind what `out` already holds.
void append_order(std::string& out, std::uint64_t number);

// The first `count` of them.
[[nodiscard]] std::string orders(std::size_t count);

}  // namespace mainbore::bench
