// The fast reader and the full one must agree on everything the fast one accepts.
#include "io/fast/fast_job.hpp"

#include <random>

#include "bench/orders.hpp"
#include "mainbore/job_file.hpp"
#include "support/catch.hpp"
#include "unit/batch/streams.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

enum class Outcome { both, full_alone, neither };

class Both {
 public:
  // Fails the test where the fast reader accepts what the full one refuses, or reads another job.
  Outcome read(const std::string& text) {
    std::string padded = text;
    padded.resize(text.size() + io::FastJobReader::room_behind, '}');
    const Job* const accepted = fast_.read(std::string_view(padded).substr(0, text.size()));
    const JobFile full = read_job(text, "order", Catalog::builtin());
    if (accepted != nullptr) {
      INFO(text);
      REQUIRE(full.job);
      REQUIRE(json(*accepted) == json(*full.job));
    }
    return accepted != nullptr ? Outcome::both : full.job ? Outcome::full_alone : Outcome::neither;
  }

 private:
  static std::string json(const Job& job) { return job_to_json(job, UnitSystem::us, JsonStyle::compact); }

  io::FastJobReader fast_{Catalog::builtin()};
};

}  // namespace

TEST_CASE("orders as they come are read fast, and as the full reader reads them") {
  Both both;
  for (const bench::OrderFacts facts : {bench::OrderFacts::few, bench::OrderFacts::tap, bench::OrderFacts::all}) {
    for (const std::string& line : lines_of(bench::orders(2000, facts))) CHECK(both.read(line) == Outcome::both);
  }
  // Nothing of one job is left in the next.
  CHECK(both.read(good_order) == Outcome::both);
}

TEST_CASE("spellings of one job are read alike") {
  Both both;
  const std::string main = R"("main":{"material":"PVC","size":"6 in","pressure":"60 psi")";
  const std::string service = R"("service":{"size":"1 in"})";
  for (const std::string& order : {
           "{" + service + "," + main + "}}",
           "  {\t" + main + "} ,\r" + service + "}  \r",
           "{" + main + R"(,"installed":1990,"encased":true,"curved":false},"nearby":[],)" + service + "}",
           "{" + main + R"(,"wall":"0.3 in"},"note":"dog in the yard\nring \"first\"",)" + service + "}",
           "{" + main + R"(},"id":"\u00c5","place":"  Weir  ",)" + service + "}",
           "{" + main + R"(},"nearby":[{"what":"tap","along":"3 ft"},{"along":"-2 m","what":"gas"}],)" + service + "}",
       }) {
    INFO(order);
    CHECK(both.read(order) == Outcome::both);
  }
}

TEST_CASE("a number needs no quotes") {
  Both both;
  const auto order = [](std::string_view units) {
    return R"({"main":{"material":"PVC","size":"6 in","pressure":"60 psi"},"service":{"size":"1 in",)"
           R"("demand":{"fixture_units":)" +
           std::string(units) + "}}}";
  };
  for (const std::string_view units :
       {"22", "22.5", "2.2e1", "22 ", "22\t\r", "\"22\"", "\"\\u0032\\u0032\"", "\"2\\u0032\""}) {
    INFO(units);
    CHECK(both.read(order(units)) == Outcome::both);
  }
  for (const std::string_view units :
       {"022",  "22.", ".5", "+22",  "22x",   "22 3", "1e999", "-22",     "0",          "1e9",     "true", "null",
        "[22]", "{}",  "",   "\"\"", "\" \"", "\"22", "22\"",  "\"22\"3", "\"2\"\"2\"", "\"2\\\"", "NaN"}) {
    INFO(units);
    CHECK(both.read(order(units)) == Outcome::neither);
  }
}

TEST_CASE("a spelling means the same to every order, however it is escaped") {
  Both both;
  const auto order = [](std::string_view size, std::string_view id) {
    return R"({"id":")" + std::string(id) + R"(","main":{"material":"PVC","size":")" + std::string(size) +
           R"(","pressure":"60 psi"},"service":{"size":"1 in"}})";
  };
  for (int round = 0; round < 2; ++round) {
    for (const std::string_view size : {"6 in", "\\u0036 in", "6\\u0020in", "DN 150", "6\\tin"}) {
      for (const std::string_view id : {"A", "\\u0041", "A\\\\", "\\\"", "a\\/b", "C:\\\\n"}) {
        INFO(size << " " << id);
        CHECK(both.read(order(size, id)) == Outcome::both);
      }
    }
    for (const std::string_view size : {"\\", "6 in\\", "6\\ in", "\\\"6 in", "\\u003", "six\\nin"}) {
      INFO(size);
      CHECK(both.read(order(size, "A")) == Outcome::neither);
    }
  }
}

TEST_CASE("what the fast reader leaves to the full one") {
  Both both;
  const std::string rest = R"("pressure":"60 psi"},"service":{"size":"1 in"}})";
  CHECK(both.read(R"({"main":{"material":"PVC","size":{"value":6,"unit":"in"},)" + rest) == Outcome::full_alone);
  CHECK(both.read(R"({"main":{"mater\u0069al":"PVC","size":"6 in",)" + rest) == Outcome::full_alone);
  CHECK(both.read(R"({"note":"\ud83d\ude00","main":{"material":"PVC","size":"6 in",)" + rest) == Outcome::full_alone);
  CHECK(both.read("\xEF\xBB\xBF" + good_order) == Outcome::full_alone);
}

TEST_CASE("faults are refused by both") {
  Both both;
  std::vector<std::string> faults = {
      "",
      "   ",
      "null",
      "[]",
      "{}",
      "{",
      good_order + "x",
      good_order + "{}",
      good_order + ",",
      R"({"id":"AV-1","id":"AV-2",)" + good_order.substr(1),
      good_order.substr(0, good_order.size() - 1) + R"(,"main":{}})",
      good_order.substr(0, good_order.size() - 1) + R"(,"crew":null})",
      good_order.substr(0, good_order.size() - 1) + R"(,"crew":"a" "b"})",
      good_order.substr(0, good_order.size() - 1) + R"(,"nearby":[{"what":"tap"}]})",
      good_order.substr(0, good_order.size() - 1) + R"(,"nearby":{}})",
      good_order.substr(0, good_order.size() - 1) + R"(,"machine":{"title":"mine"}})",
      good_order.substr(0, good_order.size() - 1) + R"(,"note":"\ud800"})",
      good_order.substr(0, good_order.size() - 1) + R"(,"note":"\udc00"})",
      good_order.substr(0, good_order.size() - 1) + R"(,"note":"\u0000"})",
      good_order.substr(0, good_order.size() - 1) + ",\"note\":\"a\xFF\"}",
      good_order.substr(0, good_order.size() - 1) + std::string(",\"note\":\"a\0\"}", 13),
      good_order.substr(0, good_order.size() - 1) + ",\"crew\":\"a\tb\"}",
      good_order.substr(0, good_order.size() - 1) + ",}",
      good_order.substr(0, good_order.size() - 1) + R"(,"crew":"North",})",
      good_order.substr(0, good_order.size() - 1) + R"(,"crew":"\x7F"})",
      good_order.substr(0, good_order.size() - 1) + ",\"crew\":\"\xC2\x85\"}",
  };
  for (const std::string_view year : {"1e999", "1990.5", "1990.0", "1e3", "99", "-0", "01990", "true", "\"1990\""}) {
    faults.push_back(R"({"main":{"material":"PVC","size":"6 in","pressure":"60 psi","installed":)" + std::string(year) +
                     R"(},"service":{"size":"1 in"}})");
  }
  for (const std::string& fault : faults) {
    INFO(fault);
    CHECK(both.read(fault) == Outcome::neither);
  }
}

TEST_CASE("both readers agree on what chance makes of orders") {
  std::mt19937_64 random(20260504);
  const auto below = [&](std::size_t count) { return static_cast<std::size_t>(random() % count); };
  std::vector<std::string> orders = lines_of(bench::orders(200));
  const std::vector<std::string> telling = lines_of(bench::orders(200, bench::OrderFacts::all));
  orders.insert(orders.end(), telling.begin(), telling.end());
  constexpr std::string_view marks = "{}[]:,\"\\ 0123456789-.eEtfnu/in\n\t\x7F\xC3";
  Both both;
  std::size_t accepted = 0;
  constexpr std::size_t rounds = 20000;
  for (std::size_t round = 0; round < rounds; ++round) {
    std::string text = orders[below(orders.size())];
    for (std::size_t changes = 1 + below(3); changes > 0; --changes) {
      const std::size_t at = below(text.size());
      switch (below(5)) {
        case 0:
          text[at] = marks[below(marks.size())];
          break;
        case 1:
          text.insert(at, 1, marks[below(marks.size())]);
          break;
        case 2:
          text.erase(at, 1 + below(3));
          break;
        case 3: {  // a piece of it once more
          const std::string piece = text.substr(at, 1 + below(40));
          text.insert(below(text.size()), piece);
          break;
        }
        default:
          if (below(20) == 0) text.resize(1 + at);
          else text[at] = static_cast<char>(below(256));
      }
    }
    accepted += both.read(text) == Outcome::both ? 1u : 0u;
  }
  CHECK(accepted > rounds / 50);  // some changes do no harm: the comparison was made
  CHECK(accepted < rounds);
}
