#include "mainbore/bounded_list.hpp"

#include <stdexcept>
#include <vector>

#include "support/catch.hpp"

using namespace mainbore;

TEST_CASE("a bounded list holds what it was given, and no more than it can") {
  BoundedList<int, 3> list{4, 5};
  CHECK(list.size() == 2);
  list.push_back(6);
  CHECK(std::vector<int>(list.begin(), list.end()) == std::vector<int>{4, 5, 6});
  CHECK(list.back() == 6);
  CHECK(list[0] == 4);
  CHECK_THROWS_AS(list.push_back(7), std::length_error);
  CHECK(list.size() == 3);
  const BoundedList<int, 3> copy = list;
  list[1] = 9;
  CHECK(copy[1] == 5);
  CHECK(BoundedList<int, 3>().empty());
}
