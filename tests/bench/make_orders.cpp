// make_orders COUNT: that many invented orders as newline-delimited JSON.
#include <cstdlib>
#include <iostream>

#include "bench/orders.hpp"

int main(int argc, char** argv) {
  const long count = argc > 1 ? std::atol(argv[1]) : 1000;
  std::string text;
  for (long number = 1; number <= count; ++number) {
    mainbore::bench::append_order(text, static_cast<std::uint64_t>(number));
    if (text.size() < (1u << 16) && number < count) continue;
    std::cout << text;
    text.clear();
  }
  return std::cout.flush() ? 0 : 74;
}
