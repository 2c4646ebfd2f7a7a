// How GeoJSON is cut into features: by what stands before the first of them.
#include <algorithm>
#include <cstring>
#include <memory>
#include <string>
#include <utility>

#include "batch/json_string.hpp"
#include "batch/order_source.hpp"

namespace mainbore::batch {
namespace {

// The first object of a text, byte by byte, up to the list of its features, or to what tells that it has none.
class Opening {
 public:
  enum class Is : std::uint8_t { unknown, collection, feature };

  Is feed(char c) {
    if (string_.inside()) return feed_string(c);
    switch (c) {
      case '"':
        string_.open();
        if (depth_ == 1 && key_comes_) key_.clear();
        return Is::unknown;
      case '{':
      case '[':
        if (depth_ == 1 && !key_comes_ && key_ == "features" && c == '[') return Is::collection;
        if (depth_ == 1 && !key_comes_ && (key_ == "properties" || key_ == "geometry")) return Is::feature;
        if (depth_++ == 0) key_comes_ = c == '{';
        return c == '[' && depth_ == 1 ? Is::feature : Is::unknown;
      case '}':
      case ']':
        return --depth_ <= 0 ? Is::feature : Is::unknown;
      case ':':
        if (depth_ == 1) key_comes_ = false;
        return Is::unknown;
      case ',':
        if (depth_ == 1) key_comes_ = true;
        return Is::unknown;
      default:
        return depth_ == 0 && !is_space(c) ? Is::feature : Is::unknown;
    }
  }

 private:
  Is feed_string(char c) {
    if (!string_.take(c)) return Is::unknown;
    if (c == '\n') return Is::feature;  // no JSON: the readers of features say why
    if (depth_ == 1 && key_comes_) key_ += c;
    return Is::unknown;
  }

  int depth_ = 0;
  JsonString string_;
  bool key_comes_ = false;
  std::string key_;
};

// What was read ahead, then the rest.
io::ByteSource behind(std::string ahead, io::ByteSource rest) {
  return [ahead = std::move(ahead), rest = std::move(rest), at = std::size_t{0}](char* to, std::size_t room) mutable {
    if (at == ahead.size()) return rest(to, room);
    const std::size_t size = std::min(room, ahead.size() - at);
    std::memcpy(to, ahead.data() + at, size);
    at += size;
    return size;
  };
}

constexpr std::size_t longest_head = std::size_t{1} << 20;

// The first bytes decide when they have come: whoever writes to a pipe may be waiting for the first answer.
class FeatureSource : public OrderSource {
 public:
  explicit FeatureSource(io::ByteSource bytes) : bytes_(io::without_mark(std::move(bytes))) {}

  bool take(Piece& piece) override {
    if (source_ == nullptr) open();
    return source_->take(piece);
  }

 private:
  void open() {
    std::string ahead;
    std::string block(std::size_t{1} << 14, '\0');
    Opening opening;
    while (ahead.size() < longest_head) {
      const std::size_t got = bytes_(block.data(), block.size());
      if (got == 0) break;
      const std::size_t begin = ahead.size();
      ahead.append(block, 0, got);
      if (const std::size_t first = ahead.find_first_not_of(" \t\r\n"); first < ahead.size()) {
        if (ahead[first] == record_separator) {
          source_ = sequence_source(behind(std::move(ahead), std::move(bytes_)));
          return;
        }
      }
      for (std::size_t at = begin; at < ahead.size(); ++at) {
        const Opening::Is is = opening.feed(ahead[at]);
        if (is == Opening::Is::unknown) continue;
        return is == Opening::Is::collection ? open_collection(ahead, at) : open_features(std::move(ahead), at);
      }
    }
    const std::size_t seen = ahead.size();
    open_features(std::move(ahead), seen);
  }

  void open_collection(const std::string& ahead, std::size_t list) {
    const std::string head = ahead.substr(0, list);
    source_ = json_feature_source(behind(ahead.substr(list), std::move(bytes_)), head);
  }
  // A feature that goes on for several lines stands by its brackets, others by their lines.
  void open_features(std::string ahead, std::size_t seen) {
    const std::size_t begin = std::min(ahead.find_first_not_of(" \t\r\n"), ahead.size());
    const bool lines = ahead.find('\n', begin) >= std::max(seen, begin);
    io::ByteSource all = behind(std::move(ahead), std::move(bytes_));
    source_ = lines ? line_source(std::move(all)) : json_feature_source(std::move(all), {});
  }

  io::ByteSource bytes_;
  std::unique_ptr<OrderSource> source_;
};

}  // namespace

std::unique_ptr<OrderSource> feature_source(io::ByteSource bytes) {
  return std::make_unique<FeatureSource>(std::move(bytes));
}

}  // namespace mainbore::batch
