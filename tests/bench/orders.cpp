#include "bench/orders.hpp"

#include <array>
#include <string_view>

namespace mainbore::bench {
namespace {

// splitmix64: a sequence of its own for each order.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15u + 1) {}
  std::size_t below(std::size_t count) {
    state_ += 0x9E3779B97F4A7C15u;
    std::uint64_t mixed = state_;
    mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9u;
    mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBu;
    return static_cast<std::size_t>((mixed ^ (mixed >> 31)) % count);
  }
  template <std::size_t N>
  std::string_view one_of(const std::array<std::string_view, N>& words) {
    return words[below(N)];
  }

 private:
  std::uint64_t state_;
};

struct Kind {
  std::string_view material;
  std::string_view class_name;
  std::string_view thread;
};
constexpr std::array kinds = {
    Kind{"ductile iron", "PC 350", "AWWA taper"}, Kind{"ductile iron", "Class 52", "NPT"},
    Kind{"PVC", "C900 DR 18", "AWWA taper"},      Kind{"PVC", "C900 DR 14", "AWWA taper"},
    Kind{"cast iron", "Class B", "AWWA taper"},   Kind{"asbestos cement", "Class 150", "AWWA taper"},
};
constexpr std::array<std::string_view, 5> sizes = {"6 in", "8 in", "10 in", "12 in", "200 mm"};
constexpr std::array<std::string_view, 4> services = {"3/4 in", "1 in", "1-1/2 in", "2 in"};
constexpr std::array<std::string_view, 6> streets = {"Millrace Lane", "Weir Road",    "Tannery Lane",
                                                     "Chapel Hill",   "Orchard Road", "Ropewalk"};
constexpr std::array<std::string_view, 3> crews = {"North", "South", "Valley"};
constexpr std::string_view own_machine =
    R"(,"title":"Second truck's machine","smallest_tap":"1/2 in","largest_tap":"2 in","hand_limit":"100 psi",)"
    R"("body_rating":"200 psi","bar_diameter":"1.25 in","bar_travel":"9 in","standoff":"4.5 in","adapter_standoff":"1.5 in",)"
    R"("chain_length":"48 in","chain_extension":"24 in")";
constexpr std::array<std::string_view, 3> conditions = {"sound", "sound", "pitted"};
constexpr std::array<std::string_view, 4> tubings = {"copper type K", "copper type K", "copper type L", "PEX SDR 9"};
// As orders have it: a house by its fixtures, or what somebody counted or measured.
constexpr std::array<std::string_view, 4> demands = {
    R"("fixtures":"2 wc 1.6 gpf gravity tank, 2 lavatory, kitchen sink domestic","code":"UPC")",
    R"("fixtures":"bathroom group, 2 lavatory, kitchen sink","code":"IPC","continuous":"5 gpm")",
    R"("fixture_units":22,"code":"IPC")", R"("flow":"18 gpm")"};
constexpr std::array<std::string_view, 3> soils = {"A", "B", "C"};
constexpr std::array<std::string_view, 3> earths = {"sand", "earth", "clay"};
constexpr std::array<std::string_view, 2> protections = {"slope", "shield"};

// As registers name their pipes.
constexpr std::array<std::string_view, 8> register_names = {"DI",  "DIP", "ductile iron", "PVC",
                                                            "PVC", "CI",  "cast iron",    "AC"};

// Four facts that there must be; of the others some have one, some two, a few a class.
void append_sparse_order(std::string& out, std::uint64_t number) {
  Dice dice(number);
  const auto add = [&](auto... parts) { (out.append(parts), ...); };
  const auto whole = [](std::size_t value) { return std::to_string(value); };
  add(R"({"id":"AV-)", std::to_string(100000 + number), R"(","place":")", whole(1 + dice.below(400)), " ",
      dice.one_of(streets), R"(, Ashby Vale, north side of the road","date":"2026-05-0)", whole(4 + dice.below(5)),
      R"(","main":{"material":")", dice.one_of(register_names), R"(","size":")", dice.one_of(sizes),
      R"(","pressure":")", whole(45 + dice.below(70)), " psi\"");
  if (dice.below(2) == 0) add(R"(,"installed":)", whole(1930 + dice.below(90)));
  if (dice.below(3) == 0) add(R"(,"condition":")", dice.one_of(conditions), "\"");
  if (dice.below(3) == 0) add(R"(,"cover":"4 ft )", whole(dice.below(12)), " in\"");
  add(R"(},"service":{"size":")", dice.one_of(services), "\"");
  if (dice.below(4) == 0) add(R"(,"thread":"AWWA taper")");
  add("}}\n");
}

// --- registers ----------------------------------------------------------------------------------------------------

// What of a sparse order a register would hold.
struct MainOnRegister {
  std::size_t zone = 0;
  std::string_view material;
  std::string_view size;
  std::size_t psi = 0;
  std::size_t year = 0;
  std::string_view service;
};

constexpr std::size_t mains_of_a_register = 16000;
constexpr std::size_t zones = 9;
constexpr std::size_t kinds_of_main = 1000;  // of zone, material, size and year

// Of two draws the lower: a few are drawn often.
std::size_t skewed(Dice& dice, std::size_t count) {
  const std::size_t first = dice.below(count);
  const std::size_t second = dice.below(count);
  return first < second ? first : second;
}

// The kinds are those of the register; which of them, and the service that is asked for, is chance.
MainOnRegister main_on_register(std::uint64_t number) {
  constexpr std::array<std::string_view, 4> materials_by_age = {"CI", "AC", "DI", "PVC"};
  constexpr std::array<std::size_t, 4> first_years = {1912, 1948, 1966, 1981};
  constexpr std::array<std::string_view, 6> usual_sizes = {"6 in", "8 in", "6 in", "12 in", "4 in", "16 in"};
  constexpr std::array<std::string_view, 8> usual_services = {"3/4 in", "3/4 in", "3/4 in", "3/4 in",
                                                              "3/4 in", "1 in",   "1 in",   "2 in"};
  Dice dice(number);
  Dice kind(1000 * (number / mains_of_a_register + 1) + skewed(dice, kinds_of_main) * 1000003);
  MainOnRegister main;
  main.zone = kind.below(zones);
  const std::size_t age = skewed(kind, 4);
  main.material = materials_by_age[3 - age];
  main.year = first_years[3 - age] + kind.below(32);
  main.size = usual_sizes[skewed(kind, usual_sizes.size())];
  main.psi = 52 + 7 * main.zone;
  main.service = dice.one_of(usual_services);
  return main;
}

MainOnRegister chance_main(std::uint64_t number) {
  Dice dice(number);
  return {dice.below(zones),   dice.one_of(register_names), dice.one_of(sizes),
          45 + dice.below(70), 1930 + dice.below(90),       dice.one_of(services)};
}

}  // namespace

std::string register_orders(std::size_t count) {
  std::string text;
  for (std::uint64_t number = 1; number <= count; ++number) {
    const MainOnRegister main = main_on_register(number);
    Dice dice(number + count);
    const auto add = [&](auto... parts) { (text.append(parts), ...); };
    add(R"({"id":"AV-)", std::to_string(100000 + number), R"(","place":")", std::to_string(1 + dice.below(400)), " ",
        dice.one_of(streets), R"(, Ashby Vale, zone )", std::to_string(main.zone), R"(","main":{"material":")",
        main.material, R"(","size":")", main.size, R"(","pressure":")", std::to_string(main.psi),
        R"( psi","installed":)", std::to_string(main.year), R"(},"service":{"size":")", main.service, "\"}}\n");
  }
  return text;
}

const std::string_view feature_map =
    R"({"format":1,"name":"Ashby Vale, mains","columns":{"MAIN_ID":"id","ROAD":"place","MATERIAL":"main.material",)"
    R"("DIAMETER":"main.size","PRESSURE":{"to":"main.pressure","unit":"psi"},"INSTALLED":"main.installed",)"
    R"("SERVICE":"service.size"}})";

std::string features(std::size_t count, Repeats repeats) {
  std::string text = "{\n\"type\":\"FeatureCollection\",\n\"name\":\"Ashby Vale\",\n\"features\":[\n";
  for (std::uint64_t number = 1; number <= count; ++number) {
    const MainOnRegister main = repeats == Repeats::most ? main_on_register(number) : chance_main(number);
    Dice dice(number + count);
    const auto add = [&](auto... parts) { (text.append(parts), ...); };
    const auto whole = [](std::size_t value) { return std::to_string(value); };
    const std::size_t east = 236000 + dice.below(9000);
    const std::size_t north = 901000 + dice.below(9000);
    add(number > 1 ? ",\n" : "", R"({"type":"Feature","properties":{"MAIN_ID":)", whole(100000 + number),
        R"(,"STATUS":"ACTIVE","ZONE":"AV )", whole(main.zone), R"(","ROAD":")", dice.one_of(streets),
        R"(","MATERIAL":")", main.material, R"(","DIAMETER":")", main.size, R"(","PRESSURE":)", whole(main.psi),
        R"(,"INSTALLED":)", whole(main.year), R"(,"SERVICE":")", main.service,
        R"(","OWNER":null,"LINED":"NO","LENGTH":)", whole(dice.below(300)), ".", whole(100 + dice.below(900)),
        R"(},"geometry":{"type":"LineString","coordinates":[[)", whole(east), ".25,", whole(north), ".5],[",
        whole(east + dice.below(90)), ".75,", whole(north + dice.below(90)), ".125]]}}");
  }
  return text + "\n]\n}\n";
}

void append_order(std::string& out, std::uint64_t number, OrderFacts facts) {
  if (facts == OrderFacts::few) return append_sparse_order(out, number);
  Dice dice(number);
  const Kind& kind = kinds[dice.below(kinds.size())];
  // Of four orders one says what its machine is.
  const bool machine_given = dice.below(4) == 0;
  const auto add = [&](auto... parts) { (out.append(parts), ...); };
  const auto whole = [](std::size_t value) { return std::to_string(value); };
  add(R"({"id":"AV-)", std::to_string(100000 + number), R"(","place":")", whole(1 + dice.below(400)), " ",
      dice.one_of(streets), R"(, Ashby Vale, north side of the road","date":"2026-05-0)", whole(4 + dice.below(5)),
      R"(","crew":")", dice.one_of(crews), R"(","main":{"material":")", kind.material, R"(","size":")",
      dice.one_of(sizes), R"(","class":")", kind.class_name, R"(","pressure":")", whole(45 + dice.below(70)),
      R"( psi","installed":)", whole(1930 + dice.below(90)), R"(,"condition":")", dice.one_of(conditions),
      R"(","encased":false,"curved":false,"temperature":")", whole(40 + dice.below(35)),
      R"( degF","surge":"20 psi","carries":"water","cover":"4 ft )", whole(dice.below(12)),
      R"( in"},"nearby":[{"what":"bell","along":")", whole(3 + dice.below(9)), R"( ft"},{"what":"tap","along":"-)",
      whole(1 + dice.below(12)), R"( ft","clock":"3:00","size":"3/4 in"}],"service":{"size":")", dice.one_of(services),
      R"(","thread":")", kind.thread, "\"");
  if (facts == OrderFacts::all) {
    add(R"(,"line":{"material":")", dice.one_of(tubings), R"(","length":")", whole(20 + dice.below(100)),
        R"( ft","rise":")", whole(dice.below(15)), R"( ft","elbows":)", whole(dice.below(4)), R"(},"demand":{)",
        dice.one_of(demands), "}");
  }
  add(R"(},"machine":{"feed":"hand","extensions":1)", machine_given ? own_machine : std::string_view(), "}");
  if (facts == OrderFacts::all) {
    add(R"(,"sanitary":{"stock":"8.25 %"},"excavation":{"soil":")", dice.one_of(soils), R"(","earth":")",
        dice.one_of(earths), R"(","protection":")", dice.one_of(protections),
        R"(","water":"none","located":true,"finding":"no sign","hazard":false,"open_for":"8 h","sewer":")",
        whole(6 + dice.below(20)), R"( ft","speed":"30 mph","lane":"11 ft"})");
  }
  add("}\n");
}

std::string orders(std::size_t count, OrderFacts facts) {
  std::string text;
  for (std::size_t number = 1; number <= count; ++number) append_order(text, number, facts);
  return text;
}

}  // namespace mainbore::bench
