// make_orders [COUNT [all]]: that many invented orders as newline-delimited JSON; with `all`, orders with all facts.
#include <cstdlib>
#include <iostream>
#include <string_view>

#include "bench/orders.hpp"

int main(int argc, char** argv) {
  using mainbore::bench::OrderFacts;
  const long count = argc > 1 ? std::atol(argv[1]) : 1000;
  const OrderFacts facts = argc > 2 && std::string_view(argv[2]) == "all" ? OrderFacts::all : OrderFacts::tap;
  std::string text;
  for (long number = 1; number <= count; ++number) {
    mainbore::bench::append_order(text, static_cast<std::uint64_t>(number), facts);
    if (text.size() < (1u << 16) && number < count) continue;
    std::cout << text;
    text.clear();
  }
  return std::cout.flush() ? 0 : 74;
}
