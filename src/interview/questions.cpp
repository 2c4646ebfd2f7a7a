#include "interview/questions.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace mainbore::interview {
namespace {

constexpr std::string_view none = "none";
constexpr std::string_view planner = "the plan chooses";
constexpr std::string_view no = "no";
constexpr std::string_view by_the_claim = "Not known, the claim of the soil type answers for it.";

// --- which questions do not apply ---------------------------------------------------------------------------------

bool is_iron_or_steel(const Job& job) {
  const auto& material = job.main.material;
  return material == Material::ductile_iron || material == Material::cast_iron || material == Material::steel;
}
bool is_plastic_main(const Job& job) { return job.main.material && is_plastic(*job.main.material); }
// Of ductile iron and plastic the class says what it is rated for; of other pipe often nobody but the utility.
bool rated_by_utility(const Job& job) {
  return job.main.material && !is_plastic(*job.main.material) && job.main.material != Material::ductile_iron;
}
bool takes_a_saddle(const Job& job) { return job.service.method != Method::direct; }
bool is_tap(const Job& job) {
  if (!job.nearby || job.nearby->empty()) return false;
  const NearbyThing what = job.nearby->back().what;
  return what == NearbyThing::tap || what == NearbyThing::saddle;
}
bool has_chain(const Job& job) { return job.machine.given && job.machine.given->chain_length; }
bool has_powered_feed(const Job& job) { return job.machine.given && job.machine.given->powered_limit; }
bool flow_is_open(const Job& job) { return !job.service.demand.flow; }
bool units_are_open(const Job& job) { return flow_is_open(job) && !job.service.demand.fixture_units; }
bool counts_fixtures(const Job& job) {
  return job.service.demand.fixture_units || !job.service.demand.fixtures.empty();
}
bool has_sprinklers(const Job& job) {
  return job.service.demand.sprinklers && *job.service.demand.sprinklers != DwellingSprinklers::none;
}
bool claims_firm_soil(const Job& job) {
  return job.excavation.soil == SoilClaim::type_a || job.excavation.soil == SoilClaim::type_b;
}
bool names_a_sewer(const Job& job) { return job.excavation.sewer.has_value(); }

std::string classes_listed(const Job& job, const Catalog& catalog) {
  if (!job.main.material || !job.main.size) return {};
  std::vector<std::string_view> names;
  for (const Pipe& pipe : catalog.pipes(*job.main.material, *job.main.size)) {
    const bool named = std::find(names.begin(), names.end(), pipe.class_name) != names.end();
    if (!pipe.class_name.empty() && !named) names.push_back(pipe.class_name);
  }
  if (names.empty()) return {};
  std::string text = "the tables have for this main: ";
  for (std::size_t i = 0; i < names.size(); ++i) (text += i == 0 ? "" : ", ") += names[i];
  return text;
}

// --- the table ----------------------------------------------------------------------------------------------------

constexpr std::array order = {
    Question{.path = "id", .ask = "Work order number?", .more = "It names the job in every report.", .blank = none},
    Question{.path = "place",
             .ask = "Where is the tap wanted?",
             .more = "An address, a side of the street, so many feet from a valve: whatever leads a crew there.",
             .blank = none},
    Question{.path = "date", .ask = "For which day is it planned?", .more = "", .blank = none},
    Question{.path = "crew", .ask = "Which crew does it?", .more = "", .blank = none},
};

constexpr std::array the_main = {
    Question{.path = "main.material",
             .ask = "What is the main made of?",
             .more = "By the record, or by looking: bare the pipe, hold a magnet to it, measure round it, and ask "
                     "mainbore identify which pipes fit."},
    Question{.path = "main.size",
             .ask = "What is the nominal size of the main?",
             .more = "The size on the record or cast on the pipe, not a measured diameter. From a tape round the bare "
                     "pipe, mainbore identify tells the sizes that fit."},
    Question{.path = "main.class",
             .ask = "Which class or dimension ratio is marked on it, or on the record?",
             .more = "It tells how thick the wall is. Not known, the weakest pipe that fits is planned with.",
             .hint = classes_listed},
    Question{.path = "main.installed",
             .ask = "In which year was it laid?",
             .more = "It rules out pipe that was not made yet, or no longer."},
    Question{.path = "main.pressure",
             .ask = "What is the greatest pressure in the main while you tap?",
             .more = "Read a gauge at the nearest hydrant or tap; at night pressure is highest. A gauge reading is "
                     "worth more than the record."},
    Question{.path = "main.surge",
             .ask = "By how much does the pressure rise above that, when pumps start or valves close?",
             .more = "From a pressure logger. Not known, an allowance is made by the rules."},
    Question{.path = "main.rating",
             .ask = "For which working pressure does the utility rate this main?",
             .more = "From its record or its test. It stands where no class on the pipe tells: steel, galvanized pipe, "
                     "old iron.",
             .applies = rated_by_utility},
    Question{.path = "main.carries",
             .ask = "What was this pipe proved to carry, by two means that do not depend on each other?",
             .more = "Record and signal, or sound from a known hydrant. Not proved yet, the plan holds until it is. "
                     "Don't know means that nobody can tell what the pipe carries: no tap then.",
             .blank = "not proved yet"},
    Question{.path = "main.cover",
             .ask = "How deep does the top of the main lie below the ground?",
             .more = "The pit is planned by it."},
};

constexpr std::array bare_pipe = {
    Question{.path = "",
             .ask = "Is the pipe dug up, so that it can be looked at and measured?",
             .more = "If not, the plan says what to look at and what to measure.",
             .blank = no},
    Question{.path = "main.condition",
             .ask = "How does the bared pipe look?",
             .more = "Pitted: rust pits, graphite that a knife cuts. Poor: cracks, leaks, deep pits. Not looked at, "
                     "the plan holds."},
    Question{.path = "main.circumference",
             .ask = "What does a tape read round the cleaned pipe?",
             .more = "It shows whether this is the pipe on the record."},
    Question{.path = "main.wall",
             .ask = "How thick is the wall where the tap goes, by gauge?",
             .more = "Ultrasonic gauge on bare metal or plastic, several readings, the least of them."},
    Question{.path = "main.temperature",
             .ask = "How warm is the pipe wall?",
             .more = "Plastic holds less pressure when warm and cracks when cold.",
             .applies = is_plastic_main},
    Question{.path = "main.curved",
             .ask = "Is this length of pipe bent along its run?",
             .more = "Bent plastic is under stress and may split at a tap.",
             .applies = is_plastic_main},
    Question{.path = "main.encased",
             .ask = "Is the pipe wrapped in polyethylene film?",
             .more = "The film is cut and made good again at the tap.",
             .applies = is_iron_or_steel},
};

constexpr std::array the_service = {
    Question{.path = "service.size",
             .ask = "What is the nominal size of the service?",
             .more = "As ordered: the size of the corporation stop."},
    Question{.path = "service.method",
             .ask = "How is the tap to be made?",
             .more = "Direct: threads cut into the wall. Saddle, sleeve: a fitting round the pipe has the outlet.",
             .blank = planner},
    Question{.path = "service.thread",
             .ask = "Which inlet thread has the corporation stop?",
             .more = "AWWA taper is also called CC thread; NPT is iron pipe thread."},
    Question{.path = "service.clock",
             .ask = "Where round the pipe must the tap stand?",
             .more = "As on a clock seen along the main: 12:00 is the top, 3:00 and 9:00 the sides.",
             .blank = planner},
    Question{.path = "service.stop_rating",
             .ask = "Which working pressure is marked on the corporation stop?",
             .more = "On its body, or on the paper that came with it."},
    Question{.path = "service.saddle_rating",
             .ask = "Which working pressure is marked on the saddle or sleeve?",
             .more = "On its body, or on the paper that came with it.",
             .applies = takes_a_saddle},
    Question{.path = "service.saddle_height",
             .ask = "How high does the saddle stand, from the pipe to its outlet face?",
             .more = "With a tape, in the yard. The bar must reach through it; not known, the plan holds for it.",
             .applies = takes_a_saddle},
    Question{.path = "service.stop_length",
             .ask = "How long is the corporation stop, from end to end?",
             .more = "With a tape. The bar must reach through it on a saddle tap.",
             .applies = takes_a_saddle},
    Question{.path = "service.existing",
             .ask = "Is there an old service in the ground, and of what?",
             .more = "Lead and galvanized pipe have duties of their own."},
};

constexpr std::array beside = {
    Question{.path = "",
             .ask = "Has somebody looked along the main, 10 ft both ways, for joints, valves, other taps and other "
                    "lines?",
             .more = "A tap too near a joint or another tap weakens the pipe. Nobody has looked: the plan holds until "
                     "somebody does.",
             .blank = no},
    Question{.path = "nearby[].what",
             .ask = "What lies there?",
             .more = "One thing at a time. \"nothing\" says that somebody looked and there is no more."},
    Question{.path = "nearby[].along",
             .ask = "How far along the main from where the tap is wanted?",
             .more = "One way along the main is +, the other is -; keep to the same way for all of them."},
    Question{.path = "nearby[].clock",
             .ask = "Where round the pipe does it stand?",
             .more = "As on a clock seen along the main: 12:00 is the top, 3:00 and 9:00 the sides.",
             .applies = is_tap},
    Question{.path = "nearby[].size", .ask = "Of which nominal size?", .more = "", .applies = is_tap},
};

constexpr std::array the_machine = {
    Question{.path = "",
             .ask = "Have you the maker's figures of the tapping machine at hand?",
             .more = "Its plate or its book. Without them the plan works with conservative figures, and "
                     "holds until the figures are given.",
             .blank = no},
    Question{.path = "machine.title", .ask = "What does the crew call the machine?", .more = ""},
    Question{.path = "machine.smallest_tap", .ask = "What is the smallest tap it makes?", .more = ""},
    Question{.path = "machine.largest_tap", .ask = "And the largest?", .more = ""},
    Question{.path = "machine.hand_limit",
             .ask = "Up to which line pressure may it be fed by hand?",
             .more = "Over it, the water pushes the bar back harder than a hand may hold."},
    Question{.path = "machine.powered_limit", .ask = "And with its powered feed?", .more = "", .blank = "it has none"},
    Question{.path = "machine.feed",
             .ask = "Which feed is to be used?",
             .more = "",
             .blank = planner,
             .applies = has_powered_feed},
    Question{.path = "machine.body_rating", .ask = "Which pressure do its body and gaskets hold?", .more = ""},
    Question{.path = "machine.bar_diameter", .ask = "How thick is the boring bar?", .more = ""},
    Question{.path = "machine.bar_travel", .ask = "How far does the bar travel?", .more = ""},
    Question{.path = "machine.standoff",
             .ask = "How far is it from the top of the pipe to the tool's point, with the bar drawn back?",
             .more = ""},
    Question{.path = "machine.adapter_standoff",
             .ask =
                 "On a saddle tap: how far is it from the end of the adapter to the cutter's edge, with the bar drawn "
                 "back?",
             .more = "The adapter screws on the corporation stop. With a tape, in the yard.",
             .applies = takes_a_saddle},
    Question{.path = "machine.saddle_od_from",
             .ask = "What is the least outside diameter that its machine saddles seat on?",
             .more = ""},
    Question{.path = "machine.saddle_od_to", .ask = "And the greatest?", .more = ""},
    Question{.path = "machine.chain_length", .ask = "How long is the base chain, hook to hook?", .more = ""},
    Question{.path = "machine.chain_extension",
             .ask = "How long is each chain extension?",
             .more = "",
             .applies = has_chain},
    Question{.path = "machine.extensions",
             .ask = "How many chain extensions are on the truck?",
             .more = "",
             .applies = has_chain},
    Question{.path = "machine.chain_thickness", .ask = "How thick is the chain?", .more = "", .applies = has_chain},
    Question{.path = "machine.anchor_offset",
             .ask = "How far sideways from the bar does the chain hook on?",
             .more = "",
             .applies = has_chain},
    Question{.path = "machine.anchor_height",
             .ask = "And how far above the top of the pipe?",
             .more = "",
             .applies = has_chain},
    Question{.path = "machine.gasket_diameter", .ask = "How wide is the gasket's ring on the pipe?", .more = ""},
    Question{.path = "machine.stud_diameter", .ask = "How thick are the studs that take up the chain?", .more = ""},
    Question{.path = "machine.studs", .ask = "How many such studs are there?", .more = ""},
};

constexpr std::array the_water = {
    Question{.path = "",
             .ask = "Is the plan to work out whether the customer gets enough water?",
             .more = "It takes the service line's length and what the customer draws.",
             .blank = no},
    Question{.path = "service.line.material", .ask = "What is the service line made of?", .more = ""},
    Question{.path = "service.line.length", .ask = "How long is it, from the main to the customer?", .more = ""},
    Question{.path = "service.line.rise",
             .ask = "How much higher than the main does the customer lie?",
             .more = "With a minus for lower: -6 ft."},
    Question{.path = "service.line.elbows", .ask = "How many elbows has the line?", .more = ""},
    Question{.path = "service.line.couplings", .ask = "How many couplings?", .more = ""},
    Question{.path = "service.meter", .ask = "Which size is the meter?", .more = ""},
    Question{.path = "main.pressure_low",
             .ask = "What is the lowest pressure in the main?",
             .more = "On a summer evening. The customer must have water then too."},
    Question{.path = "service.demand.flow",
             .ask = "How much water does the customer draw at most?",
             .more = "Where it is known as a flow. Else the fixtures are counted."},
    Question{.path = "service.demand.fixture_units",
             .ask = "How many water-supply fixture units has the customer?",
             .more = "From the plumbing permit.",
             .applies = flow_is_open},
    Question{.path = "service.demand.fixtures",
             .ask = "Which fixtures has the customer?",
             .more = "By the names of the plumbing code, with commas between them: 2 bathroom group, kitchen sink, "
                     "dishwasher.",
             .applies = units_are_open},
    Question{.path = "service.demand.code",
             .ask = "By which plumbing code?",
             .more = "Not known, the one that asks for most.",
             .applies = counts_fixtures},
    Question{.path = "service.demand.supply",
             .ask = "What feeds most of the water closets?",
             .more = "",
             .applies = counts_fixtures},
    Question{.path = "service.demand.continuous",
             .ask = "How much water runs on besides, for lawns or cooling?",
             .more = ""},
    Question{.path = "service.demand.sprinklers",
             .ask = "Does the service feed dwelling sprinklers, and how many at one time?",
             .more = ""},
    Question{.path = "service.demand.sprinkler_flow",
             .ask = "For which flow is each sprinkler listed?",
             .more = "",
             .applies = has_sprinklers},
    Question{.path = "service.demand.shared", .ask = "Does the pipe serve more than one dwelling?", .more = ""},
    Question{.path = "service.demand.residual",
             .ask = "Which pressure is wanted behind the meter?",
             .more = "Not known, the rules have one."},
};

constexpr std::array the_pit = {
    Question{.path = "",
             .ask = "Is the plan to cover the pit: soil, slopes, spoil, traffic?",
             .more = "A competent person on site decides; the plan works out what their answers call for.",
             .blank = no},
    Question{
        .path = "excavation.located", .ask = "Is the locate ticket valid, and has every mark been read?", .more = ""},
    Question{.path = "excavation.tolerance",
             .ask = "How far to each side of a mark is the tolerance zone of your state?",
             .more = ""},
    Question{.path = "excavation.soil",
             .ask = "Which soil type does the competent person claim?",
             .more = "After looking and trying by hand; the claim answers for cracks, layers and water too. "
                     "Not known, the worst soil is planned for."},
    Question{.path = "excavation.strength",
             .ask = "How strong is the soil, by penetrometer or vane?",
             .more = "",
             .applies = claims_firm_soil},
    Question{.path = "excavation.earth", .ask = "What is dug?", .more = "For the room the spoil takes."},
    Question{.path = "excavation.granular",
             .ask = "Is it sand or gravel that does not hold together?",
             .more = by_the_claim},
    Question{.path = "excavation.fissured", .ask = "Is the ground cracked?", .more = by_the_claim},
    Question{.path = "excavation.vibration",
             .ask = "Do traffic or machines shake the ground?",
             .more = "Not known, it is taken as shaken."},
    Question{.path = "excavation.layers", .ask = "Are there layers that dip toward the pit?", .more = by_the_claim},
    Question{.path = "excavation.water", .ask = "Is there water in the pit?", .more = by_the_claim},
    Question{.path = "excavation.distress", .ask = "Are there cracks along the edge, slumping or bulging?", .more = ""},
    Question{.path = "excavation.finding",
             .ask = "Looking for signs of a cave-in, what did the competent person find?",
             .more = ""},
    Question{.path = "excavation.open_for", .ask = "How long does the pit stay open?", .more = ""},
    Question{.path = "excavation.protection", .ask = "How are the people in the pit protected?", .more = ""},
    Question{.path = "excavation.hazard", .ask = "Is bad air to be expected in the pit?", .more = ""},
    Question{.path = "excavation.crossing", .ask = "Do people cross the pit on a walkway?", .more = ""},
    Question{.path = "excavation.spoil_distance",
             .ask = "How far from the edge of the pit does the spoil begin?",
             .more = ""},
    Question{.path = "excavation.sewer", .ask = "How far from the water line is the nearest sewer, level?", .more = ""},
    Question{.path = "excavation.sewer_below",
             .ask = "And how far below the water line does it lie?",
             .more = "With a minus where it lies above.",
             .applies = names_a_sewer},
    Question{.path = "excavation.speed", .ask = "What is the posted speed of the road?", .more = ""},
    Question{.path = "excavation.lane", .ask = "How wide is the part of the road that is closed?", .more = ""},
};

constexpr std::array cleaning = {
    Question{.path = "",
             .ask = "Do you want to say which chlorine is on the truck?",
             .more = "For how much of it goes into how much water. Without it the plan takes the weakest that is sold.",
             .blank = no},
    Question{.path = "sanitary.stock", .ask = "How much available chlorine has the stock, by its label?", .more = ""},
    Question{.path = "sanitary.solution", .ask = "How much disinfecting solution is to be mixed?", .more = ""},
};

constexpr std::array rest = {
    Question{.path = "note", .ask = "Anything else that the crew should know?", .more = "", .blank = none},
};

constexpr std::array table = {
    Section{"THE ORDER", order, {}, {}},
    Section{"THE MAIN", the_main, {}, {}},
    Section{"THE BARE PIPE", bare_pipe, {}, {}},
    Section{"THE SERVICE", the_service, {}, {}},
    Section{"BESIDE THE TAP", beside, "nearby",
            "Then the file says nothing of what lies near, and the plan holds until all of it is measured."},
    Section{"THE MACHINE",
            the_machine,
            {},
            "Then the machine's figures are left out altogether: the plan works with conservative figures, "
            "and holds until they are given."},
    Section{"WATER FOR THE CUSTOMER", the_water, {}, {}},
    Section{"THE PIT", the_pit, {}, {}},
    Section{"CLEANING", cleaning, {}, {}},
    Section{"ANYTHING ELSE", rest, {}, {}},
};

}  // namespace

const io::JobField* Question::field() const {
  const auto fields = io::job_fields();
  const auto found = std::find_if(fields.begin(), fields.end(), [this](const auto& row) { return row.path == path; });
  return found == fields.end() ? nullptr : &*found;
}

std::span<const Section> sections() { return table; }

}  // namespace mainbore::interview
