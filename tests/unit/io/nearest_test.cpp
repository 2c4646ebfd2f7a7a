#include "io/text/nearest.hpp"

#include <array>
#include <random>
#include <string>

#include "support/catch.hpp"

using namespace mainbore::io;

TEST_CASE("edits between two words are counted, swaps as one") {
  CHECK(edit_distance("", "") == 0);
  CHECK(edit_distance("", "abc") == 3);
  CHECK(edit_distance("main", "main") == 0);
  CHECK(edit_distance("mian", "main") == 1);
  CHECK(edit_distance("kitten", "sitting") == 3);
  CHECK(edit_distance("size", "sizes") == 1);
}

TEST_CASE("a distance beyond the most that is asked for is told as beyond it, any other exactly") {
  std::mt19937 random(7);
  const auto word = [&] {
    std::string text;
    for (std::size_t size = random() % 9; size > 0; --size) text += static_cast<char>('a' + random() % 3);
    return text;
  };
  for (int i = 0; i < 20000; ++i) {
    const std::string a = word();
    const std::string b = word();
    const std::size_t whole = edit_distance(a, b);
    const std::size_t most = random() % 6;
    const std::size_t bounded = edit_distance(a, b, most);
    INFO(a << ' ' << b << ' ' << most);
    REQUIRE((whole <= most ? bounded == whole : bounded > most));
  }
}

TEST_CASE("names are the same as their plain forms are") {
  constexpr std::array<std::string_view, 8> names = {"main.size", "Main Size", "MAIN_SIZE-", "main.sizes",
                                                     "mainsiz",   "",          " .-_\t",     "main size [in]"};
  for (const std::string_view a : names) {
    for (const std::string_view b : names) CHECK(same_name(a, b) == (plain_name(a) == plain_name(b)));
  }
}

TEST_CASE("the nearest name is offered only when it is near") {
  constexpr std::array<std::string_view, 4> names = {"ductile iron", "cast iron", "PVC", "PVCO"};
  CHECK(nearest("ductileiron", names) == "ductile iron");
  CHECK(nearest("Ductle Iron", names) == "ductile iron");
  CHECK(nearest("pvcc", names) == "PVC");
  CHECK_FALSE(nearest("concrete", names));
  CHECK_FALSE(nearest("", names));
  CHECK_FALSE(nearest("x", names));
  CHECK_FALSE(nearest(std::string(5000, 'a'), names));
}
