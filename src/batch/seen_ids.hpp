// Ids of orders that have come, to tell one that comes again; in bounded memory.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

namespace mainbore::batch {

// Keeps 64 bits of each id: of half a million, two different ones are taken for one in a chance of 1 in 100 million.
class SeenIds {
 public:
  static constexpr std::size_t most = 500'000;

  // Whether the id has come before. Of ids beyond the first `most` only those that came among these are told.
  bool add(std::string_view id);
  [[nodiscard]] bool is_full() const { return size_ == most; }

 private:
  void grow();
  [[nodiscard]] std::size_t place_of(std::uint64_t hash) const;

  std::vector<std::uint64_t> table_;  // 0: nothing there
  std::size_t size_ = 0;
};

}  // namespace mainbore::batch
