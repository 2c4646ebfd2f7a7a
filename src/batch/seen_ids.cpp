#include "batch/seen_ids.hpp"

#include <utility>

namespace mainbore::batch {
namespace {

// The same on every machine: FNV-1a, its bits mixed.
std::uint64_t hash_of(std::string_view text) {
  std::uint64_t hash = 0xCBF29CE484222325u;
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001B3u;
  hash = (hash ^ (hash >> 32)) * 0x9E3779B97F4A7C15u;
  hash ^= hash >> 29;
  return hash == 0 ? 1 : hash;
}

}  // namespace

bool SeenIds::add(std::string_view id) {
  if (table_.empty()) table_.resize(1024);
  const std::uint64_t hash = hash_of(id);
  std::size_t place = place_of(hash);
  if (table_[place] == hash) return true;
  if (size_ == most) return false;
  if (2 * (size_ + 1) > table_.size()) {
    grow();
    place = place_of(hash);
  }
  table_[place] = hash;
  ++size_;
  return false;
}

void SeenIds::grow() {
  std::vector<std::uint64_t> old(2 * table_.size());
  std::swap(old, table_);
  for (const std::uint64_t hash : old) {
    if (hash != 0) table_[place_of(hash)] = hash;
  }
}

std::size_t SeenIds::place_of(std::uint64_t hash) const {
  std::size_t place = hash & (table_.size() - 1);
  while (table_[place] != 0 && table_[place] != hash) place = (place + 1) & (table_.size() - 1);
  return place;
}

}  // namespace mainbore::batch
