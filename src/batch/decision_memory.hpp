// What was decided of orders, by what they say: an order that says the same as one before it is not judged again.
//
// Exports of registers name a few thousand kinds of main, and say the same of most taps as of one before. Memory is bounded:
// where an order might stand, four stand, and a new one takes the place of the one asked for longest ago. Where orders
// repeat too seldom to pay for it, the memory is not asked for a while.
//
//     if (memory.is_asked()) {
//       if (const auto* known = memory.find(facts)) ...
//       else ... memory.keep(decision);
//     }
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "io/orders/decision.hpp"

namespace mainbore::batch {

class DecisionMemory {
 public:
  static constexpr std::size_t most = 8192;           // orders
  static constexpr std::size_t longest_facts = 2048;  // bytes; what says more is not remembered

  // `hash_bits`: those of a hash that count. Of none, all facts meet in one place: for tests.
  explicit DecisionMemory(std::uint64_t hash_bits = ~std::uint64_t{0}) : hash_bits_(hash_bits) {}

  // Whether the next order is to be looked for.
  [[nodiscard]] bool is_asked();
  // What was decided of the order that said the same, byte for byte; good until the next is kept.
  [[nodiscard]] const io::Decision* find(std::string_view facts);
  // Of the facts that were last looked for and not found; they must still stand.
  void keep(const io::Decision& decision);

 private:
  static constexpr std::size_t ways = 4;
  static constexpr int bits = 11;
  static_assert((ways << bits) == most);

  // Of orders looked for, one in so many must be found: to look for one in vain and keep it costs a sixth of judging it.
  static constexpr std::uint32_t worth = 6;
  static constexpr std::uint32_t trial = 512;  // orders after which that is looked at
  // Orders not looked for where it does not hold: at first few, twice as many each time that it does not hold again.
  static constexpr std::uint32_t shortest_pause = 2000;
  static constexpr std::uint32_t longest_pause = 16000;

  struct Known {
    std::string facts;
    io::Decision decision;
  };
  struct Way {
    std::uint64_t hash = 0;
    std::uint32_t known = nobody;
  };
  using Set = std::array<Way, ways>;  // last asked for first
  static constexpr std::uint32_t nobody = ~std::uint32_t{0};

  std::vector<Set> sets_;  // made with the first order that is kept
  std::vector<Known> known_;
  std::string_view facts_;  // last looked for
  std::uint64_t hash_bits_;
  std::uint64_t hash_ = 0;
  std::uint32_t looked_for_ = 0;
  std::uint32_t found_ = 0;
  std::uint32_t paused_ = 0;
  std::uint32_t next_pause_ = shortest_pause;
};

}  // namespace mainbore::batch
