#include "batch/decision_memory.hpp"

#include <algorithm>
#include <functional>

namespace mainbore::batch {

bool DecisionMemory::is_asked() {
  if (paused_ > 0) {
    --paused_;
    return false;
  }
  if (looked_for_ < trial) return true;
  const bool pays = found_ * worth >= looked_for_;
  looked_for_ = found_ = 0;
  if (pays) {
    next_pause_ = shortest_pause;
    return true;
  }
  paused_ = next_pause_ - 1;
  next_pause_ = std::min(2 * next_pause_, longest_pause);
  return false;
}

const io::Decision* DecisionMemory::find(std::string_view facts) {
  ++looked_for_;
  facts_ = facts;
  if (facts.size() > longest_facts) return nullptr;
  // Whoever writes orders that meet in one place slows down their own run: what is found is compared as a whole.
  hash_ = std::hash<std::string_view>{}(facts)&hash_bits_;
  if (sets_.empty()) return nullptr;
  Set& set = sets_[hash_ & (sets_.size() - 1)];
  for (std::size_t way = 0; way < ways; ++way) {
    if (set[way].hash != hash_ || set[way].known == nobody || known_[set[way].known].facts != facts) continue;
    const Way found = set[way];
    std::copy_backward(set.begin(), set.begin() + way, set.begin() + way + 1);
    set.front() = found;
    ++found_;
    return &known_[found.known].decision;
  }
  return nullptr;
}

void DecisionMemory::keep(const io::Decision& decision) {
  if (facts_.size() > longest_facts) return;
  if (sets_.empty()) {
    sets_.resize(std::size_t{1} << bits);
    known_.reserve(most);
  }
  Set& set = sets_[hash_ & (sets_.size() - 1)];
  std::uint32_t place = set.back().known;
  if (place == nobody) {
    place = static_cast<std::uint32_t>(known_.size());
    known_.emplace_back();
  }
  std::copy_backward(set.begin(), set.end() - 1, set.end());
  set.front() = {hash_, place};
  known_[place].facts.assign(facts_);
  known_[place].decision = decision;
}

}  // namespace mainbore::batch
