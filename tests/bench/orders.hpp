// Invented orders for measuring: as varied as a utility's own, and the same for the same number each time.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

namespace mainbore::bench {

// What an order tells: the few facts that an asset register exports, the class of the pipe seldom among them; all of the
// tap; or of the service line, the demand, the cleaning and the trench as well.
enum class OrderFacts : std::uint8_t { few, tap, all };

// One order as a line of JSON, line end included, behind what `out` already holds: about 230 bytes of few facts, 600 of the
// tap, 950 of all. With all facts it is the same order as with those of the tap, and more.
void append_order(std::string& out, std::uint64_t number, OrderFacts facts = OrderFacts::tap);

// The first `count` of them.
[[nodiscard]] std::string orders(std::size_t count, OrderFacts facts = OrderFacts::tap);

}  // namespace mainbore::bench
