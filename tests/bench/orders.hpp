// Invented orders for measuring: as varied as a utility's own, and the same for the same number each time.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

namespace mainbore::bench {

// What an order tells: of the tap alone; or of the service line, the demand, the cleaning and the trench as well.
enum class OrderFacts : std::uint8_t { tap, all };

// One order of about 600 bytes, or 950 with all facts, as a line of JSON, line end included, behind what `out` already
// holds. With all facts it is the same order, and more.
void append_order(std::string& out, std::uint64_t number, OrderFacts facts = OrderFacts::tap);

// The first `count` of them.
[[nodiscard]] std::string orders(std::size_t count, OrderFacts facts = OrderFacts::tap);

}  // namespace mainbore::bench
