#include <utility>

#include "mainbore/catalog.hpp"
#include "support/catch.hpp"

using mainbore::class_key;

TEST_CASE("a class is known however it is spelt") {
  for (const char* const spelling : {"DR 18", "dr18", "DR-18", "C900 DR 18", "C900DR18", "C-900 DR18", "AWWA C900-DR18",
                                     "PVC DR18", "SDR 18", "sdr_18"}) {
    INFO(spelling);
    CHECK(class_key(spelling) == "dr18");
  }
  for (const char* const spelling : {"PC 350", "pc350", "Pressure Class 350", "C151 PC 350", "DIP PC350", "DIPC350",
                                     "ANSI/AWWA C151/A21.51 PC 350"}) {
    INFO(spelling);
    CHECK(class_key(spelling) == "pc350");
  }
  for (const char* const spelling :
       {"Class 52", "CL 52", "cl.52", "Special Thickness Class 52", "Thickness Class 52", "TC 52", "DI class 52"}) {
    INFO(spelling);
    CHECK(class_key(spelling) == "cl52");
  }
  CHECK(class_key("Class B") == "clb");
  CHECK(class_key("Schedule 40") == "sch40");
  CHECK(class_key("DR 32.5") == class_key("dr32.5"));
}

TEST_CASE("a class keeps what tells it from another") {
  CHECK(class_key("350") == "350");  // a bare number may be a pressure class or an old class: no word is added
  CHECK(class_key("C151 350") == "350");
  CHECK(class_key("D2241 200") != class_key("200"));  // one of several pipes that a bare 200 may mean
  CHECK(class_key("C900 200") != class_key("D2241 200"));
  CHECK(class_key("PC 150") != class_key("Class 150"));
  CHECK(class_key("DIPS DR 11") == "dipsdr11");  // a diameter family, not ductile iron
  CHECK(class_key("IPS SDR 21") != class_key("SDR 21"));
  CHECK(class_key("DR 11 PE4710") == "dr11pe4710");
}

TEST_CASE("a standard alone names no class") {
  CHECK(class_key("").empty());
  CHECK(class_key("C900").empty());
  CHECK(class_key("AWWA C151/A21.51").empty());
  CHECK(class_key(" -/ ").empty());
}
