// Invented orders for measuring: as varied as a utility's own, and the same for the same number each time.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace mainbore::bench {

// What an order tells: the few facts that an asset register exports, the class of the pipe seldom among them; all of the
// tap; or of the service line, the demand, the cleaning and the trench as well.
enum class OrderFacts : std::uint8_t { few, tap, all };

// One order as a line of JSON, line end included, behind what `out` already holds: about 230 bytes of few facts, 600 of the
// tap, 950 of all. With all facts it is the same order as with those of the tap, and more.
void append_order(std::string& out, std::uint64_t number, OrderFacts facts = OrderFacts::tap);

// The first `count` of them.
[[nodiscard]] std::string orders(std::size_t count, OrderFacts facts = OrderFacts::tap);

// Orders of few facts as a register has them, where most say of main and tap what one before said: each on a main of a
// register of 16,000, whose zones have a pressure each, few materials and sizes, and years in which streets were built. As
// many repeat an earlier one as in open exports under the maps of tests/maps, cell by cell: 86 % of 16,062 mains of
// Kitchener, 84 % of 13,561 trunk mains of Los Angeles. (Of 5,238 leak orders there 1 % do, because each has its day.)
[[nodiscard]] std::string register_orders(std::size_t count);

// Features of GeoJSON, as a map of a utility has them, under `feature_map`: a pipe with its line and a dozen properties, of
// which the map names six. Either what chance makes, where nearly no two say the same, or a register as above.
enum class Repeats : std::uint8_t { few, most };
[[nodiscard]] std::string features(std::size_t count, Repeats repeats);
extern const std::string_view feature_map;

}  // namespace mainbore::bench
