// The approved list as it is read, from JSON and from a table.
#include <fstream>
#include <iterator>
#include <string>

#include "mainbore/approved_file.hpp"
#include "support/catch.hpp"

using namespace mainbore;

namespace {

ApprovedFile list_of(std::string_view text) { return read_approved(text, "approved", Catalog::builtin()); }

std::string list_faults(std::string_view text) {
  std::string all;
  for (const Diagnostic& fault : list_of(text).diagnostics) {
    all += std::to_string(fault.line) + ' ' + std::string(fault.code) + ' ' + fault.pointer + ' ' + fault.message +
           " / " + fault.help + '\n';
  }
  return all;
}

}  // namespace

TEST_CASE("an approved list is read from a table and from JSON alike") {
  const ApprovedFile table = list_of(
      "kind,main,od_from,od_to,size,thread,straps,torque,rating,length,stock\r\n"
      "saddle,ductile iron|cast iron,8.54 in,9.40 in,1 in,,2,50 ft-lbf,200 psi,2 in,41-117\r\n"
      "\r\n"
      "stop,,,,1 in,AWWA taper,,,150 psi,3.5 in,12-004\r\n");
  const ApprovedFile json = list_of(R"({"format": 1, "name": "Ashby Vale", "edition": "2026-03", "items": [
    {"kind": "saddle", "main": ["ductile iron", "cast iron"], "od_from": "8.54 in", "od_to": "9.40 in", "size": "1 in",
     "straps": 2, "torque": "50 ft-lbf", "rating": "200 psi", "length": "2 in", "stock": "41-117"},
    {"kind": "stop", "size": "1 in", "thread": "AWWA taper", "rating": "150 psi", "length": "3.5 in", "stock": "12-004"}]})");
  REQUIRE(table.list);
  REQUIRE(json.list);
  for (const ApprovedList* list : {&*table.list, &*json.list}) {
    REQUIRE(list->items.size() == 2);
    const ApprovedItem& saddle = list->items[0];
    CHECK(saddle.kind == ApprovedKind::saddle);
    CHECK(saddle.main == std::vector<Material>{Material::ductile_iron, Material::cast_iron});
    CHECK(*saddle.od_from == 8.54 * units::inch);
    CHECK(saddle.straps == 2);
    CHECK(*saddle.torque / units::ft_lbf > 49.999);
    CHECK(saddle.label == "stock 41-117");
    CHECK(list->items[1].thread == ThreadStandard::awwa_taper);
    CHECK(*list->items[1].length == 3.5 * units::inch);
  }
  CHECK(json.list->edition == "2026-03");
}

TEST_CASE("every fault of an approved list is told at once, with line, what is allowed and the nearest word") {
  const std::string told = list_faults(
      "kind,main,od_from,od_to,size,thread,rating\n"
      "sadle,ductile iron,8 in,9 in,1 in,,\n"
      "saddle,ductile irn,9 in,8 in,1 in,,150\n"
      "stop,,,,1 in,,100 psi\n"
      "stop,PVC,,,1 in,NPT,5000 psi\n");
  CHECK(told.find("2 approved.unknown-value  \"sadle\" is not a word known here / did you mean \"saddle\"?") !=
        std::string::npos);
  CHECK(
      told.find("3 approved.unknown-value  \"ductile irn\" is not a known material / did you mean \"ductile iron\"?") !=
      std::string::npos);
  CHECK(told.find("3 approved.unknown-value  \"150\" has no unit") != std::string::npos);
  CHECK(told.find("3 approved.unknown-value  od_from is greater than od_to") != std::string::npos);
  CHECK(told.find("4 approved.missing  a stop without thread") != std::string::npos);
  CHECK(told.find("5 approved.unknown-value  a stop has no main") != std::string::npos);
  CHECK(told.find("5 approved.unknown-value  \"5000 psi\"") != std::string::npos);
  CHECK(list_faults("kind,sise\nstop,1 in\n")
            .find("1 approved.unknown-key  \"sise\" is not a column of an approved list / did you mean \"size\"?") ==
        0);
  CHECK(list_faults("").find("approved.missing") != std::string::npos);
  CHECK(list_faults(R"({"items": [{"kind": "stop", "size": "1 in", "tread": "NPT"}], "titel": "x"})")
            .find("/items/0/tread \"tread\" is not part of an approved item") != std::string::npos);
  CHECK(list_faults(R"({"items": {}})").find("approved.wrong-type /items ") != std::string::npos);
  CHECK(list_faults("{}").find("approved.missing") != std::string::npos);
  CHECK_FALSE(list_of("kind\nstop\n").list);
}
