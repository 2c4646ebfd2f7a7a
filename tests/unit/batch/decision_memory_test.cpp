// Orders that say the same are judged once: the records are those of orders judged one by one, and whatever a verdict may
// depend on tells two orders apart.
#include "batch/decision_memory.hpp"

#include <array>
#include <nlohmann/json.hpp>
#include <random>

#include "batch/batch.hpp"
#include "bench/orders.hpp"
#include "io/job/job_fields.hpp"
#include "io/orders/order_map.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/settings_file.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "unit/batch/streams.hpp"

using namespace mainbore;
using namespace mainbore::batch;
using namespace mainbore::test;
using nlohmann::json;

namespace {

struct Outcomes {
  std::string out;
  std::string ids;
  Tally tally;
};

Outcomes outcomes_of(std::string_view text, InputFormat in, const BatchOptions& options,
                     std::size_t piece_size = 1u << 16) {
  Outcomes made;
  made.tally = plan_orders(source_of(text, piece_size), in, "orders", planner_under(default_rules()), options,
                           [&](Piece& piece) {
                             made.out += piece.out;
                             made.ids += piece.id_texts;
                           })
                   .tally;
  return made;
}

// How many orders were judged with one before. Fails where that shows in anything.
std::uint64_t recalled(std::string_view text, InputFormat in, BatchOptions options = {},
                       std::size_t piece_size = 1u << 16) {
  const Outcomes with = outcomes_of(text, in, options, piece_size);
  options.remember = false;
  options.jobs = 1;
  const Outcomes without = outcomes_of(text, in, options);
  REQUIRE(with.out == without.out);
  REQUIRE(with.ids == without.ids);
  REQUIRE(without.tally.recalled == 0);
  const auto counts = [](const Tally& tally) {
    return std::array{tally.go, tally.hold, tally.office, tally.no_go, tally.unreadable, tally.internal};
  };
  REQUIRE(counts(with.tally) == counts(without.tally));
  return with.tally.recalled;
}

BatchOptions in_format(BatchFormat format) {
  BatchOptions options;
  options.format = format;
  return options;
}

// The same order under another name.
std::string renamed(const std::string& order, std::size_t number) {
  const std::size_t begin = order.find("AV-");
  const std::size_t end = order.find('"', begin);
  return order.substr(0, begin) + "AV-" + std::to_string(number) + order.substr(end);
}

// `count` orders, most of them like one before, as registers have it: a few say much the same as most.
std::string register_of(const std::vector<std::string>& kinds, std::size_t count, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  std::string text;
  for (std::size_t number = 0; number < count; ++number) {
    const double chance = static_cast<double>(random() % 1000) / 1000.0;
    text +=
        renamed(kinds[static_cast<std::size_t>(chance * chance * static_cast<double>(kinds.size()))], number) + '\n';
  }
  return text;
}

// --- a fact at a time ---

constexpr std::string_view own_machine = R"({"title":"truck","smallest_tap":"1/2 in","largest_tap":"2 in",)"
                                         R"("hand_limit":"100 psi","body_rating":"200 psi","bar_diameter":"1.25 in"})";

// Values that a fact may have in an order like any other: two, where there are two.
std::vector<std::string> sample_values(const io::JobField& field) {
  if (field.path == "main.wall") return {"0.35 in", "0.36 in"};
  if (field.path == "machine.smallest_tap") return {"1/2 in", "3/4 in"};
  if (field.path == "machine.largest_tap") return {"1-1/2 in", "2 in"};
  const auto within = [&](double part) {
    return Measure(field.least.base() + part * (field.greatest.base() - field.least.base()), field.kind);
  };
  switch (field.type) {
    case io::FieldType::quantity:
      return {format_measure(within(0.2), UnitSystem::us), format_measure(within(0.3), UnitSystem::us)};
    case io::FieldType::size:
      return {"3/4 in", "1 in"};
    case io::FieldType::material:
      return {"PVC", "ductile iron"};
    case io::FieldType::choice:
      return {std::string(field.choice->names[0]), std::string(field.choice->names[1])};
    case io::FieldType::machine:
      return {Catalog::builtin().machines()[0].id};
    case io::FieldType::flag:
      return {"true", "false"};
    case io::FieldType::whole:
      return {std::to_string(static_cast<int>(within(0.5).base())),
              std::to_string(static_cast<int>(within(1.0).base()))};
    case io::FieldType::clock:
      return {"1:30", "3:00"};
    default:
      return field.meaning == io::TextMeaning::day ? std::vector<std::string>{"2026-05-04", "2026-05-05"}
                                                   : std::vector<std::string>{"North 1", "North 2"};
  }
}

// What an order must say, and what else one with this fact has.
std::vector<std::pair<std::string, std::string>> facts_with(const io::JobField& field) {
  std::vector<std::pair<std::string, std::string>> facts = {
      {"main.material", "PVC"}, {"main.size", "8 in"}, {"main.pressure", "82 psi"}, {"service.size", "1 in"}};
  if (field.path.starts_with("nearby")) {
    facts.emplace_back("nearby[0].what", "joint");
    facts.emplace_back("nearby[0].along", "9 ft");
  }
  const bool own = field.path.starts_with("machine.") && field.path != "machine.profile" &&
                   field.path != "machine.feed" && field.path != "machine.extensions";
  if (own) {
    const json machine = json::parse(own_machine);
    for (const auto& [key, value] : machine.items()) {
      facts.emplace_back("machine." + key, value.get<std::string>());
    }
  }
  std::erase_if(facts, [&](const auto& fact) { return fact.first == field.path_at(0); });
  return facts;
}

// Orders alike but for one fact: two values of it and, where it need not be given, none, three times over.
class OneFact {
 public:
  explicit OneFact(const io::JobField& field) : field_(field) {
    for (int round = 0; round < 3; ++round) {
      for (const std::string& value : sample_values(field)) orders_.push_back({value, true});
      if (field.need == io::Need::optional && !field.path.starts_with("nearby")) orders_.push_back({});
    }
  }
  [[nodiscard]] std::size_t size() const { return orders_.size(); }
  [[nodiscard]] std::size_t kinds() const { return orders_.size() / 3; }

  [[nodiscard]] std::string lines() const {
    std::string text;
    for (const auto& [value, given] : orders_) {
      json order;
      for (const auto& [path, other] : facts_with(field_)) set(order, path, other, false);
      const bool word = field_.type == io::FieldType::flag || field_.type == io::FieldType::whole;
      if (given) set(order, field_.path_at(0), value, word);
      text += order.dump() + '\n';
    }
    return text;
  }
  [[nodiscard]] std::string features() const {
    std::string text;
    for (const auto& [value, given] : orders_) {
      json properties;
      for (const auto& [path, other] : facts_with(field_)) properties[path] = other;
      if (given) properties[field_.path_at(0)] = value;
      text += json{{"type", "Feature"}, {"geometry", nullptr}, {"properties", properties}}.dump() + '\n';
    }
    return text;
  }
  [[nodiscard]] std::string table() const {
    std::string header;
    std::string before;
    for (const auto& [path, other] : facts_with(field_)) {
      header += path + ',';
      before += other + ',';
    }
    std::string text = header + field_.path_at(0) + '\n';
    for (const auto& [value, given] : orders_) text += before + '"' + value + "\"\n";
    return text;
  }

 private:
  static void set(json& order, const std::string& path, const std::string& value, bool word) {
    std::string pointer = "/";
    for (const char c : path) {
      if (c == '.' || c == '[') pointer += '/';
      else if (c != ']') pointer += c;
    }
    order[json::json_pointer(pointer)] = word ? json::parse(value) : json(value);
  }

  struct Order {
    std::string value;
    bool given = false;
  };
  const io::JobField& field_;
  std::vector<Order> orders_;
};

}  // namespace

TEST_CASE("records are the same whether orders are judged once or each for itself") {
  for (const bench::OrderFacts facts : {bench::OrderFacts::few, bench::OrderFacts::tap, bench::OrderFacts::all}) {
    const std::string chance = bench::orders(34000, facts);
    for (const BatchFormat format : {BatchFormat::verdicts, BatchFormat::table}) {
      (void)recalled(chance, InputFormat::ndjson, in_format(format));
      const std::string repeating = register_of(lines_of(bench::orders(400, facts)), 6000, 4);
      CHECK(recalled(repeating, InputFormat::ndjson, in_format(format)) >= 6000 - 400);
      CHECK(recalled('[' + good_order + ',' + good_order + ']', InputFormat::json, in_format(format)) == 1);
    }
  }
  // In either order of chance and register, so that the memory is given up and taken up again.
  const std::string chance = bench::orders(40000);
  const std::string repeating = register_of(lines_of(bench::orders(100)), 40000, 5);
  const std::uint64_t found = recalled(chance + repeating + chance + repeating, InputFormat::ndjson);
  CHECK(found > 30000);
  CHECK(found < 80000);
}

TEST_CASE("records are the same with any number of threads and in any pieces") {
  const std::string text = register_of(lines_of(bench::orders(300, bench::OrderFacts::few)), 5000, 6);
  for (const int jobs : {1, 2, 3, 8}) {
    for (const std::size_t piece : {std::size_t{1}, std::size_t{777}, std::size_t{1} << 15}) {
      BatchOptions options;
      options.jobs = jobs;
      CHECK(recalled(text, InputFormat::ndjson, options, piece) > 2000);
    }
  }
}

TEST_CASE("every fact that may decide tells two orders apart, and names alone do not") {
  for (const io::JobField& field : io::job_fields()) {
    const OneFact orders(field);
    INFO(field.path);
    for (const auto& [text, in] :
         {std::pair{orders.lines(), InputFormat::ndjson}, std::pair{orders.features(), InputFormat::geojson},
          std::pair{orders.table(), InputFormat::csv}}) {
      INFO(text);
      const Outcomes made = outcomes_of(text, in, {});
      REQUIRE(made.tally.all() == orders.size());
      REQUIRE(made.tally.unreadable == 0);
      // In JSON a name that is given is told from one that is not.
      const std::size_t different = !field.names_order ? orders.kinds() : in == InputFormat::ndjson ? 2 : 1;
      CHECK(recalled(text, in) == orders.size() - different);
    }
  }
}

TEST_CASE("names decide nothing, whatever else the order says") {
  std::vector<Job> jobs;
  for (const bench::OrderFacts facts : {bench::OrderFacts::few, bench::OrderFacts::tap, bench::OrderFacts::all}) {
    for (const std::string& line : lines_of(bench::orders(700, facts))) {
      jobs.push_back(*read_job(line, "order", Catalog::builtin()).job);
    }
  }
  std::size_t names = 0;
  for (const io::JobField& field : io::job_fields()) {
    if (!field.names_order) continue;
    ++names;
    for (const Job& job : jobs) {
      Job other = job;
      io::JobDraft draft;
      draft.job = job;
      field.store(draft, 0, io::FieldValue(std::string("gas main, 24 in, 300 psi; do not tap")));
      other = std::move(draft.job);
      const Plan one = plan_under(job, default_rules(), PlanDepth::verdict);
      const Plan two = plan_under(std::move(other), default_rules(), PlanDepth::verdict);
      for (const io::RecordShape shape : {io::RecordShape::line, io::RecordShape::row, io::RecordShape::feature}) {
        REQUIRE(io::decision_of(one, shape).text == io::decision_of(two, shape).text);
      }
    }
  }
  CHECK(names == 4);
}

TEST_CASE("what looks like an order known is told from it") {
  const std::string rest = good_order.substr(good_order.find("\"main\""));
  const std::string nearly = rest.substr(0, rest.size() - 1);
  const std::vector<std::string> variants = {
      good_order,
      R"({"id":"AV-2",)" + rest,
      R"({"id":"",)" + rest,
      R"({"id":"  AV-3 ",)" + rest,
      R"({"id":30,)" + rest,
      R"({"id":3016,)" + rest,
      R"({"id":-30,)" + rest,
      R"({"id":030,)" + rest,
      R"({"id":30.5,)" + rest,
      R"({"id":1e3,)" + rest,
      R"({"id":30x,)" + rest,
      R"({"id":12345678901234567890123,)" + rest,
      R"({"id":null,)" + rest,
      R"({"id":["A"],)" + rest,
      R"({"id":{"note":"A"},)" + rest,
      R"({"id":"A" "B",)" + rest,
      R"({"id":"A","id":"A",)" + rest,
      R"({"id":"A","place":"B",)" + rest,
      R"({"place":"B","id":"A",)" + rest,
      R"({"place":"Calle de la Pe\u00f1a","id":"A",)" + rest,
      "{\"place\":\"Calle de la Pe\xC3\xB1"
      "a\",\"id\":\"A\"," +
          rest,
      "{\"place\":\"Calle de la Pe\xF1"
      "a\",\"id\":\"A\"," +
          rest,
      "{\"place\":\"Weir\xC2\x85\",\"id\":\"A\"," + rest,
      R"({"i\u0064":"A",)" + rest,
      "{\"id\":\"\x01\"," + rest,
      "{\"id\":\x01," + rest,
      R"({"id":"A\"B",)" + rest,
      R"({"id":"A\\",)" + rest,
      R"({"id":"A\ud800",)" + rest,
      R"({"id":"A\u0000",)" + rest,
      R"({"id":")" + std::string(250, 'x') + "\"," + rest,
      R"({"id":")" + std::string(301, 'x') + "\"," + rest,
      R"({"id":"A","note":"x",)" + rest,
      R"({"id":"A","note":")" + std::string(20000, 'x') + "\"," + rest,
      R"({"id":"A","note":"two\nlines",)" + rest,
      R"({"id":"A","crew":"N",)" + rest,
      R"({"id":"A","crew":"N","note":"x",)" + rest,
      R"({"id":"A",)" + nearly + R"(,"note":"x"})",
      R"({"id":"A",)" + nearly + R"(,"note":"x"}x)",
      R"({"id":"A",)" + nearly + R"(,"note":"x"}})",
      R"({"id":"A",)" + nearly + R"(,"note":"x",})",
      R"({"id":"A",)" + nearly + R"(,"note":"x")",
      R"({"id":"A",)" + nearly + R"(,"nearby":[]})",
      R"({"id":"A",)" + nearly + R"(,"nearby":[{"what":"gas line","along":"1 ft","note":"x"}]})",
      R"({"id":"A",)" + nearly + R"(,"nearby":[{"what":"gas line","along":"1 ft"}]})",
      R"({"id":"A",)" + nearly + R"(,"notes":"x"})",
      R"({"id":"A",)" + nearly + R"(,"date":"2026-05-04"})",
      R"({"id":"A",)" + nearly + R"(,"date":"2026-02-30"})",
      R"( {"id":"A",)" + rest + " ",
      R"({ "id" : "A" ,)" + rest,
      R"({)" + rest,
      R"({"id":"A"},)" + rest,
      R"(["id":"A",)" + rest,
      "\xEF\xBB\xBF" + good_order,
      "",
      "null",
      "\"id\"",
      "{}",
  };
  for (std::size_t i = 0; i < variants.size(); ++i) {
    const std::string pairs = variants[i] + '\n' + good_order + '\n' + variants[i] + '\n' + variants[i] + '\n';
    INFO(pairs);
    (void)recalled(pairs, InputFormat::ndjson);
  }
  std::string all;
  for (int round = 0; round < 3; ++round) {
    for (const std::string& variant : variants) all += variant + '\n';
  }
  for (const BatchFormat format : {BatchFormat::verdicts, BatchFormat::table}) {
    CHECK(recalled(all, InputFormat::ndjson, in_format(format)) > 2 * 20);
    (void)recalled(all, InputFormat::json, in_format(format));
  }
}

TEST_CASE("records are the same of what chance makes of orders") {
  std::mt19937_64 random(20261129);
  const auto below = [&](std::size_t count) { return static_cast<std::size_t>(random() % count); };
  std::vector<std::string> orders = lines_of(bench::orders(20, bench::OrderFacts::few));
  for (const std::string& order : lines_of(bench::orders(20, bench::OrderFacts::all))) orders.push_back(order);
  constexpr std::string_view marks = "{}[]:,\"\\ 0123456789-.eEtfnu/in\t\x7F\xC3\x01";
  std::string text;
  for (int round = 0; round < 30000; ++round) {
    std::string order = orders[below(orders.size())];
    // Most changes are of its beginning, where its names are.
    const std::size_t end = below(4) == 0 ? order.size() : 60;
    switch (below(5)) {
      case 0:
        order[below(end)] = marks[below(marks.size())];
        break;
      case 1:
        order.insert(below(end), 1, marks[below(marks.size())]);
        break;
      case 2:
        order.erase(below(end), 1 + below(3));
        break;
      default:
        order = renamed(order, below(100));
    }
    text += order + '\n';
  }
  CHECK(recalled(text, InputFormat::ndjson) > 10000);
}

TEST_CASE("members under a map, and those that are carried on") {
  const auto map_of = [](const std::string& text) {
    io::OrderMapFile read = io::read_order_map(text, "map.json", Catalog::builtin());
    REQUIRE(read.map);
    return *std::move(read.map);
  };
  const io::OrderMap all_by_default =
      map_of(R"({"format":1,"columns":{"WO":"id","ROAD":"place","MAT":{"to":"main.material","optional":true},)"
             R"("DIA":{"to":"main.size","unit":"mm","optional":true},"CREW":{"to":"crew","optional":true}},)"
             R"("materials":{"PVC200":{"main.material":"PVC","main.class":"SDR 21"}},"missing":["TBA"],)"
             R"("defaults":{"main.material":"CI","main.size":"6 in","main.pressure":"80 psi","service.size":"1 in"}})");
  BatchOptions options;
  options.map = &all_by_default;
  // A row that says nothing is no order, though one of the same facts that has a name is.
  const std::string table =
      "WO,ROAD,MAT,DIA,CREW\n1,Weir Road,,,\n,,,,\n2,Weir Road,TBA,,\n,,TBA,,\n3,Weir Road,,,\n,,,,\n4,,CI,150,\n"
      "5,,CI,150,N\n6,,PVC200,150,N\n7,,PVC200,150,S\n8,,PVC201,150,S\n9,,PVC201,150,S\n10,,CI,150 lb,S\n"
      "11,,CI,150 lb,S\n12,\"two\nlines\",CI,150,N\n13,\x01,CI,150,N\n14,\xFF,CI,150,N\n15,,CI,150\n16,,CI,150,N,\n"
      "17,,CI,150,N,x\n18,,\"CI\",150,N\n,,CI,150,N\n=19,,CI,150,N\n\x01,,CI,150,N\n" +
      std::string(301, 'x') + ",,CI,150,N\n20," + std::string(301, 'y') + ",CI,150,N\n";
  for (const BatchFormat format : {BatchFormat::verdicts, BatchFormat::table}) {
    options.format = format;
    CHECK(recalled(table, InputFormat::csv, options) >= 8);
    for (const int jobs : {2, 5}) {
      options.jobs = jobs;
      (void)recalled(table + table.substr(table.find('\n') + 1), InputFormat::csv, options);
    }
    options.jobs = 1;
  }
  options.format = BatchFormat::verdicts;
  const std::string mapped =
      R"({"WO":1,"ROAD":"x"}
{"WO":2}
{"ROAD":"x","WO":"3"}
{"WO":4,"MAT":"CI","DIA":150}
{"WO":5,"MAT":"CI","DIA":"150"}
{"WO":6,"DIA":"150","MAT":"\u0043I"}
{"WO":7,"DIA":{"value":150,"unit":"mm"},"MAT":"CI"}
{"WO":8,"DIA":150,"MAT":"CI","DIA":150}
{"WO":9,"DIA":150,"MAT":"CI","nearby":[]}
{"WO":10,"DIA":150,"MAT":"CI","main.cover":"4 ft"}
{"WO":11,"DIA":150,"MAT":"CI","MAIN":{"cover":"4 ft"}}
{"WO":12,"DIA":150,"MAT":null}
{"WO":13,"DIA":150,"MAT":"C\u0000I"}
{"WO":14,"DIA":150,"MAT":["CI"]}
{"WO":15,"DIA":150,"MAT":"CI","other":1}
{"WO":16,"DIA":150,"MAT":"CI","ROAD":"a\u0007b"}
{"WO":17,"DIA":150,"MAT":"CI"
{"DIA":150,"MAT":"CI"}
{}
[]
)";
  io::KeepColumns keep;
  keep.all = true;
  for (const bool kept : {false, true}) {
    if (kept) options.keep = &keep;
    (void)recalled(mapped + mapped, InputFormat::ndjson, options);
    CHECK(recalled(mapped + mapped, InputFormat::ndjson, options) >= 8);
    std::string features;
    for (const std::string& line : lines_of(mapped + mapped)) {
      features += R"({"type":"Feature","id":)" + std::to_string(features.size()) + R"(,"geometry":null,"properties":)" +
                  line + "}\n";
      features += R"({"type":"Feature","geometry":{"type":"Point","coordinates":[1,2]},"properties":)" + line + "}\n";
    }
    for (const BatchFormat format : {BatchFormat::verdicts, BatchFormat::table, BatchFormat::features}) {
      options.format = format;
      CHECK(recalled(features, InputFormat::geojson, options) >= 16);
    }
    options.format = BatchFormat::verdicts;
  }
  // Members of jobs that are carried on, of any length.
  BatchOptions carrying;
  carrying.keep = &keep;
  std::string jobs;
  for (int i = 0; i < 20; ++i) {
    const std::string zone = R"("ZONE":")" + std::string(static_cast<std::size_t>(i), 'z') + '"';
    jobs += R"({"id":"A)" + std::to_string(i) + "\"," + zone + "," + good_order.substr(good_order.find("\"main\"")) +
            "\n{" +
            good_order.substr(good_order.find("\"main\""), good_order.size() - 1 - good_order.find("\"main\"")) + "," +
            zone + "}\n";
  }
  for (const BatchFormat format : {BatchFormat::verdicts, BatchFormat::table}) {
    carrying.format = format;
    CHECK(recalled(jobs, InputFormat::ndjson, carrying) == 38);
  }
}

TEST_CASE("what is laid under orders, and decimal commas") {
  const auto settings = read_settings(R"({"format":1,"crew":"North","machine":)" + std::string(own_machine) +
                                          R"(,"fittings":[{"tap":"1 in","saddle_height":"2 in"}]})",
                                      "settings.json", Catalog::builtin());
  REQUIRE(settings.settings);
  BatchOptions options;
  options.settings = &*settings.settings;
  std::string text;
  for (const bench::OrderFacts facts : {bench::OrderFacts::few, bench::OrderFacts::tap}) {
    text += register_of(lines_of(bench::orders(200, facts)), 3000, 9);
  }
  CHECK(recalled(text, InputFormat::ndjson, options) >= 6000 - 400);
  options.units = UnitSystem::si;
  options.rows = false;
  CHECK(recalled(text, InputFormat::ndjson, options) >= 6000 - 400);
  const std::string commas =
      "id;main.material;main.size;main.pressure [bar];service.size\nA;PVC;6 in;5,5;1 in\nB;PVC;6 in;5,5;1 in\n"
      "C;PVC;6 in;5,50;1 in\nE;PVC;6 in;5,5;1 in\n";
  CHECK(recalled(commas, InputFormat::csv) == 2);
  // The same cells in other columns, and cells that together are the same text.
  const std::string shifted =
      "id,main.material,main.size,main.pressure,service.size,main.surge,main.occasional_surge,main.class,main."
      "standard\n"
      "A,PVC,6 in,60 psi,1 in,40 psi,,DR 18,C900\nB,PVC,6 in,60 psi,1 in,,40 psi,DR 18,C900\n"
      "C,PVC,6 in,60 psi,1 in,40 psi,,DR 18C900,\nD,PVC,6 in,60 psi,1 in,40 psi,,,DR 18C900\n"
      "E,PVC,6 in,60 psi,1 in,40 psi,,DR 18,C900\n";
  CHECK(recalled(shifted, InputFormat::csv) == 1);
}

TEST_CASE("memory is bounded, forgets the oldest, and is left alone where nothing repeats") {
  DecisionMemory memory;
  io::Decision decision;
  const auto facts = [](std::size_t number) { return "facts " + std::to_string(number); };
  const auto asked = [&](std::size_t number) {
    const std::string text = facts(number);
    const io::Decision* const known = memory.find(text);
    if (known != nullptr) return known->text == std::to_string(number);
    decision.text = std::to_string(number);
    memory.keep(decision);
    return false;
  };
  constexpr std::size_t many = 20 * DecisionMemory::most;
  for (std::size_t number = 0; number < many; ++number) {
    REQUIRE_FALSE(asked(number));
    REQUIRE(asked(number));
    REQUIRE(asked(number / 64 * 64));  // one asked for now and then is not forgotten
  }
  std::size_t forgotten = 0;
  for (std::size_t number = 0; number < many; ++number) {
    const std::string text = facts(number);
    if (memory.find(text) == nullptr) ++forgotten;
  }
  CHECK(forgotten == many - DecisionMemory::most);
  CHECK(memory.find(std::string(DecisionMemory::longest_facts + 1, 'x')) == nullptr);
  memory.keep(decision);
  CHECK(memory.find(std::string(DecisionMemory::longest_facts + 1, 'x')) == nullptr);

  DecisionMemory meeting(0);
  for (std::size_t number = 0; number < 100; ++number) {
    const std::string text = facts(number);
    REQUIRE(meeting.find(text) == nullptr);
    decision.text = text;
    meeting.keep(decision);
    REQUIRE(meeting.find(text) != nullptr);
    REQUIRE(meeting.find(text)->text == text);
  }

  DecisionMemory seldom;
  std::size_t looked_for = 0;
  for (std::size_t number = 0; number < 200000; ++number) {
    if (!seldom.is_asked()) continue;
    ++looked_for;
    const std::string text = facts(number);
    if (seldom.find(text) == nullptr) seldom.keep(decision);
  }
  CHECK(looked_for < 20000);
  CHECK(looked_for > 2000);
}
