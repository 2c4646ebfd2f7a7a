#include "mainbore/nominal_size.hpp"

#include "support/catch.hpp"

using mainbore::NominalSize;

TEST_CASE("a nominal size is written as the trade writes it") {
  CHECK(NominalSize::inches(0.625).label() == "5/8");
  CHECK(NominalSize::inches(0.75).label() == "3/4");
  CHECK(NominalSize::inches(1).label() == "1");
  CHECK(NominalSize::inches(1.25).label() == "1-1/4");
  CHECK(NominalSize::inches(2.5).label() == "2-1/2");
  CHECK(NominalSize::inches(12).label() == "12");
  CHECK(NominalSize::inches(0.0625).label() == "1/16");
  CHECK(NominalSize::inches(31.4).label() == "31.4");
}

TEST_CASE("sizes compare exactly however they were computed") {
  CHECK(NominalSize::inches(0.1 + 0.2 + 0.7) == NominalSize::inches(1.0));
  CHECK(NominalSize::inches(0.75) < NominalSize::inches(1.0));
}
