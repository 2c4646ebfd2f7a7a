#include "io/text/nearest.hpp"

#include <array>

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
