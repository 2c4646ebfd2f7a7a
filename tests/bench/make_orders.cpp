// make_orders [COUNT [KIND]]: that many invented orders as newline-delimited JSON. KIND: `tap` (unless said otherwise), `all`
// with all facts, `few`, `register`; or a collection of features, `features` of a register, `chance-features`; `map`, the map
// of those.
#include <cstdlib>
#include <iostream>
#include <string>
#include <string_view>

#include "bench/orders.hpp"

namespace {

std::string text_of(std::size_t count, std::string_view kind) {
  using namespace mainbore::bench;
  if (kind == "register") return register_orders(count);
  if (kind == "features") return features(count, Repeats::most);
  if (kind == "chance-features") return features(count, Repeats::few);
  return std::string(feature_map) + '\n';
}

}  // namespace

int main(int argc, char** argv) {
  using mainbore::bench::OrderFacts;
  const std::size_t count = argc > 1 ? std::strtoul(argv[1], nullptr, 10) : 1000;
  const std::string_view kind = argc > 2 ? argv[2] : "tap";
  if (kind != "tap" && kind != "all" && kind != "few") {
    std::cout << text_of(count, kind);
    return std::cout.flush() ? 0 : 74;
  }
  const OrderFacts facts = kind == "all" ? OrderFacts::all : kind == "few" ? OrderFacts::few : OrderFacts::tap;
  std::string text;
  for (std::size_t number = 1; number <= count; ++number) {
    mainbore::bench::append_order(text, number, facts);
    if (text.size() < (1u << 16) && number < count) continue;
    std::cout << text;
    text.clear();
  }
  return std::cout.flush() ? 0 : 74;
}
