// Texts as streams, and what a batch makes of them.
#pragma once

#include <algorithm>
#include <cstring>
#include <string>
#include <string_view>
#include <vector>

#include "batch/batch.hpp"
#include "mainbore/rules_file.hpp"
#include "support/plan_under.hpp"

namespace mainbore::test {

// The text must outlive the source. It comes in pieces of at most `piece` bytes.
inline io::ByteSource source_of(std::string_view text, std::size_t piece = 1u << 16) {
  return [text, piece](char* to, std::size_t room) mutable {
    const std::size_t size = std::min({text.size(), room, piece});
    if (size > 0) std::memcpy(to, text.data(), size);
    text.remove_prefix(size);
    return size;
  };
}

inline const Rules& default_rules() {
  static const RulesFile read = load_rules(Catalog::builtin());
  return *read.rules;
}

inline std::string records_of(std::string_view text, batch::InputFormat in, const batch::BatchOptions& options = {}) {
  std::string out;
  (void)batch::plan_orders(source_of(text), in, "orders", planner_under(default_rules()), options,
                           [&](batch::Piece& piece) { out += piece.out; });
  return out;
}

inline std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

inline const std::string good_order =
    R"({"id":"AV-1","main":{"material":"ductile iron","size":"8 in","pressure":"82 psi"},"service":{"size":"1 in"}})";

}  // namespace mainbore::test
