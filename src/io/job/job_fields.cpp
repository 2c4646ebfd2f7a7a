#include "io/job/job_fields.hpp"

#include <array>
#include <charconv>
#include <memory>
#include <type_traits>
#include <utility>

namespace mainbore::io {
namespace {

// --- where a value is kept --------------------------------------------------------------------------------------
// A row names a member; the object of the job that has it follows from the member's class.

template <class>
struct MemberOf;
template <class Class, class Type>
struct MemberOf<Type Class::*> {
  using Section = Class;
};

template <class T>
struct Held {
  using Type = T;
};
template <class T>
struct Held<std::optional<T>> {
  using Type = T;
};

template <class Section>
Section& section(JobDraft& draft, [[maybe_unused]] std::size_t index) {
  if constexpr (std::is_same_v<Section, Job>) {
    return draft.job;
  } else if constexpr (std::is_same_v<Section, MainFacts>) {
    return draft.job.main;
  } else if constexpr (std::is_same_v<Section, ServiceFacts>) {
    return draft.job.service;
  } else if constexpr (std::is_same_v<Section, LineFacts>) {
    return draft.job.service.line;
  } else if constexpr (std::is_same_v<Section, DemandFacts>) {
    return draft.job.service.demand;
  } else if constexpr (std::is_same_v<Section, TrialFacts>) {
    return draft.job.service.trial;
  } else if constexpr (std::is_same_v<Section, ToolFacts>) {
    return draft.job.tool;
  } else if constexpr (std::is_same_v<Section, SanitaryFacts>) {
    return draft.job.sanitary;
  } else if constexpr (std::is_same_v<Section, ExcavationFacts>) {
    return draft.job.excavation;
  } else if constexpr (std::is_same_v<Section, MachineFacts>) {
    return draft.job.machine;
  } else if constexpr (std::is_same_v<Section, MachineProfile>) {
    if (!draft.machine) draft.machine.emplace();
    return *draft.machine;
  } else {
    static_assert(std::is_same_v<Section, Nearby>);
    if (!draft.job.nearby) draft.job.nearby.emplace();
    if (draft.job.nearby->size() <= index) draft.job.nearby->resize(index + 1);
    return (*draft.job.nearby)[index];
  }
}

// The same of a finished job, or nothing where it does not have the object.
template <class Section>
const Section* known_section(const Job& job, [[maybe_unused]] std::size_t index) {
  if constexpr (std::is_same_v<Section, Job>) {
    return &job;
  } else if constexpr (std::is_same_v<Section, MainFacts>) {
    return &job.main;
  } else if constexpr (std::is_same_v<Section, ServiceFacts>) {
    return &job.service;
  } else if constexpr (std::is_same_v<Section, LineFacts>) {
    return &job.service.line;
  } else if constexpr (std::is_same_v<Section, DemandFacts>) {
    return &job.service.demand;
  } else if constexpr (std::is_same_v<Section, TrialFacts>) {
    return &job.service.trial;
  } else if constexpr (std::is_same_v<Section, ToolFacts>) {
    return &job.tool;
  } else if constexpr (std::is_same_v<Section, SanitaryFacts>) {
    return &job.sanitary;
  } else if constexpr (std::is_same_v<Section, ExcavationFacts>) {
    return &job.excavation;
  } else if constexpr (std::is_same_v<Section, MachineFacts>) {
    return &job.machine;
  } else if constexpr (std::is_same_v<Section, MachineProfile>) {
    return job.machine.given.get();
  } else {
    static_assert(std::is_same_v<Section, Nearby>);
    return job.nearby && index < job.nearby->size() ? &(*job.nearby)[index] : nullptr;
  }
}

template <class T>
T from_value(const FieldValue& value) {
  if constexpr (std::is_same_v<T, Temperature>) {
    return Temperature::fahrenheit(std::get<Measure>(value).base());
  } else if constexpr (std::is_enum_v<T> && !std::is_same_v<T, Material>) {
    return static_cast<T>(std::get<int>(value));
  } else if constexpr (std::is_same_v<T, double>) {
    return std::get<Measure>(value).base();
  } else if constexpr (requires { T::from_base(0.0); }) {
    return T::from_base(std::get<Measure>(value).base());
  } else {
    return std::get<T>(value);
  }
}

template <class T>
FieldValue to_value(const T& held, Kind kind) {
  if constexpr (std::is_same_v<T, Temperature>) {
    return Measure(held);
  } else if constexpr (std::is_enum_v<T> && !std::is_same_v<T, Material>) {
    return static_cast<int>(held);
  } else if constexpr (std::is_same_v<T, double>) {
    return Measure(held, kind);
  } else if constexpr (requires { T::from_base(0.0); }) {
    return Measure(held.base(), kind);
  } else {
    return held;
  }
}

template <auto Member>
void store_member(JobDraft& draft, std::size_t index, const FieldValue& value) {
  using Section = typename MemberOf<decltype(Member)>::Section;
  auto& target = section<Section>(draft, index).*Member;
  using Type = typename Held<std::remove_cvref_t<decltype(target)>>::Type;
  if constexpr (std::is_same_v<Type, std::string>) {
    target = std::get<std::string>(value);  // into memory that the target may have already
  } else {
    target = from_value<Type>(value);
  }
}

template <auto Member>
FieldValue load_member(const Job& job, std::size_t index, Kind kind) {
  using Section = typename MemberOf<decltype(Member)>::Section;
  const Section* const known = known_section<Section>(job, index);
  if (known == nullptr) return {};
  const auto& held = known->*Member;
  using Type = std::remove_cvref_t<decltype(held)>;
  if constexpr (std::is_same_v<Type, std::string>) {
    return held.empty() ? FieldValue() : FieldValue(held);
  } else if constexpr (std::is_same_v<Type, typename Held<Type>::Type>) {
    return to_value(held, kind);
  } else {
    return held ? to_value(*held, kind) : FieldValue();
  }
}

// --- rows -------------------------------------------------------------------------------------------------------

template <auto Member>
constexpr JobField row(std::string_view path, FieldType type, std::string_view help) {
  JobField field;
  field.path = path;
  field.type = type;
  field.help = help;
  field.store = &store_member<Member>;
  field.load = &load_member<Member>;
  return field;
}

template <auto Member, class Q>
constexpr JobField quantity(std::string_view path, Kind kind, Q least, Q greatest, std::string_view help) {
  JobField field = row<Member>(path, FieldType::quantity, help);
  field.kind = kind;
  if constexpr (std::is_same_v<Q, Temperature>) {
    field.least = Measure(least);
    field.greatest = Measure(greatest);
  } else {
    field.least = Measure(least.base(), kind);
    field.greatest = Measure(greatest.base(), kind);
  }
  return field;
}
template <auto Member>
constexpr JobField length(std::string_view path, double least_inches, double greatest_inches, std::string_view help) {
  return quantity<Member>(path, Kind::length, least_inches * units::inch, greatest_inches * units::inch, help);
}
template <auto Member>
constexpr JobField pressure(std::string_view path, double least_psi, double greatest_psi, std::string_view help) {
  return quantity<Member>(path, Kind::pressure, least_psi * units::psi, greatest_psi * units::psi, help);
}
template <auto Member>
constexpr JobField distance(std::string_view path, double least_feet, double greatest_feet, std::string_view help) {
  return quantity<Member>(path, Kind::distance, least_feet * units::foot, greatest_feet * units::foot, help);
}
template <auto Member>
constexpr JobField flow(std::string_view path, double least_gpm, double greatest_gpm, std::string_view help) {
  return quantity<Member>(path, Kind::flow, least_gpm * units::gpm, greatest_gpm * units::gpm, help);
}
// A number without a dimension, or a percentage.
template <auto Member>
constexpr JobField number(std::string_view path, Kind kind, double least, double greatest, std::string_view help) {
  JobField field = row<Member>(path, FieldType::quantity, help);
  field.kind = kind;
  field.least = Measure(least, kind);
  field.greatest = Measure(greatest, kind);
  return field;
}
template <auto Member>
constexpr JobField flag(std::string_view path, std::string_view help) {
  return row<Member>(path, FieldType::flag, help);
}
template <auto Member>
constexpr JobField size(std::string_view path, std::string_view help) {
  JobField field = row<Member>(path, FieldType::size, help);
  field.kind = Kind::length;
  field.least = Measure(0.25 * units::inch);
  field.greatest = Measure(150.0 * units::inch);
  return field;
}
template <auto Member>
constexpr JobField whole(std::string_view path, int least, int greatest, std::string_view help) {
  JobField field = row<Member>(path, FieldType::whole, help);
  field.least = Measure(least, Kind::ratio);
  field.greatest = Measure(greatest, Kind::ratio);
  return field;
}
template <auto Member>
constexpr JobField choice(std::string_view path, const Choice& words, std::string_view help) {
  JobField field = row<Member>(path, FieldType::choice, help);
  field.choice = &words;
  return field;
}
constexpr JobField required(JobField field, Need need = Need::always) {
  field.need = need;
  return field;
}

constexpr JobField once(std::string_view older, JobField field) {
  field.older = older;
  return field;
}
constexpr JobField meaning(TextMeaning what, JobField field) {
  field.meaning = what;
  return field;
}

constexpr JobField names_order(JobField field) {
  field.names_order = true;
  return field;
}

// --- words ------------------------------------------------------------------------------------------------------

constexpr std::array other_carries = {
    OtherWord{"potable water", static_cast<int>(Carries::water)},
    OtherWord{"drinking water", static_cast<int>(Carries::water)},
    OtherWord{"reclaimed", static_cast<int>(Carries::reclaimed_water)},
    OtherWord{"raw", static_cast<int>(Carries::raw_water)},
};
constexpr std::array other_nearby = {
    OtherWord{"gas", static_cast<int>(NearbyThing::gas_line)},
    OtherWord{"electric", static_cast<int>(NearbyThing::electric_line)},
    OtherWord{"clamp", static_cast<int>(NearbyThing::repair_clamp)},
    OtherWord{"spigot", static_cast<int>(NearbyThing::plain_end)},
    OtherWord{"spigot end", static_cast<int>(NearbyThing::plain_end)},
};
constexpr std::array other_threads = {
    OtherWord{"AWWA", static_cast<int>(ThreadStandard::awwa_taper)},
    OtherWord{"CC", static_cast<int>(ThreadStandard::awwa_taper)},
    OtherWord{"ISO 7", static_cast<int>(ThreadStandard::iso7)},
};
constexpr std::array feed_names = {name_of(Feed::hand), name_of(Feed::powered)};

constexpr std::array other_tubing = {
    OtherWord{"copper K", static_cast<int>(Tubing::copper_k)},
    OtherWord{"copper L", static_cast<int>(Tubing::copper_l)},
    OtherWord{"PE SDR 9", static_cast<int>(Tubing::polyethylene)},
    OtherWord{"PE", static_cast<int>(Tubing::polyethylene)},
    OtherWord{"K copper", static_cast<int>(Tubing::copper_k)},
    OtherWord{"L copper", static_cast<int>(Tubing::copper_l)},
    OtherWord{"type K copper", static_cast<int>(Tubing::copper_k)},
    OtherWord{"type L copper", static_cast<int>(Tubing::copper_l)},
    OtherWord{"type K", static_cast<int>(Tubing::copper_k)},
    OtherWord{"type L", static_cast<int>(Tubing::copper_l)},
    OtherWord{"HDPE", static_cast<int>(Tubing::polyethylene)},
    OtherWord{"polyethylene", static_cast<int>(Tubing::polyethylene)},
    OtherWord{"PEX", static_cast<int>(Tubing::pex)},
    OtherWord{"galvanized", static_cast<int>(Tubing::galvanized_steel)},
    OtherWord{"galvanised", static_cast<int>(Tubing::galvanized_steel)},
    OtherWord{"galv", static_cast<int>(Tubing::galvanized_steel)},
    OtherWord{"galvanised steel", static_cast<int>(Tubing::galvanized_steel)},
    OtherWord{"steel", static_cast<int>(Tubing::black_steel)},
    OtherWord{"PVC Sch 40", static_cast<int>(Tubing::pvc_40)},
    OtherWord{"PVC Sch 80", static_cast<int>(Tubing::pvc_80)},
    OtherWord{"CPVC", static_cast<int>(Tubing::cpvc)},
    OtherWord{"DI", static_cast<int>(Tubing::ductile_iron)},
    OtherWord{"C900", static_cast<int>(Tubing::pvc_pressure)},
    OtherWord{"PVC C900", static_cast<int>(Tubing::pvc_pressure)},
    OtherWord{"PVC C900 DR 18", static_cast<int>(Tubing::pvc_pressure)},
};
// What a foreman writes of a service, where bore or rating hangs on more than that.
constexpr std::string_view which_copper =
    "say which: \"copper type K\" or \"copper type L\". Its letter and color are printed on the tube: K green, L blue. "
    "Type K has the smaller bore: if nobody knows, it is the safe one for the customer's pressure";
constexpr std::string_view which_plastic =
    "say which: \"polyethylene SDR 9\" or \"PEX SDR 9\", as printed on the tubing";
constexpr std::array asked_tubing = {
    AskedWord{"copper", which_copper},
    AskedWord{"cu", which_copper},
    AskedWord{"copper tube", which_copper},
    AskedWord{"copper tubing", which_copper},
    AskedWord{"copper pipe", which_copper},
    AskedWord{"soft copper", which_copper},
    AskedWord{"copper type M", "type M is too thin to bury: \"copper type K\" or \"copper type L\""},
    AskedWord{"copper M", "type M is too thin to bury: \"copper type K\" or \"copper type L\""},
    AskedWord{"poly",
              "say which: \"polyethylene SDR 9\" (black or blue PE) or \"PEX SDR 9\", as printed on the tubing"},
    AskedWord{"plastic", which_plastic},
    AskedWord{"plastic tubing", which_plastic},
    AskedWord{"CTS", which_plastic},
    AskedWord{"lead", "lead is not laid; a lead line in the ground goes under service.existing"},
    AskedWord{"PVC",
              "say which: \"PVC Schedule 40\", \"PVC Schedule 80\" or \"PVC DR 18\" (C900), as printed on the pipe"},
};
constexpr std::array other_soils = {
    OtherWord{"type A", static_cast<int>(SoilClaim::type_a)},
    OtherWord{"type B", static_cast<int>(SoilClaim::type_b)},
    OtherWord{"type C", static_cast<int>(SoilClaim::type_c)},
    OtherWord{"rock", static_cast<int>(SoilClaim::stable_rock)},
};
constexpr std::array other_existing = {
    OtherWord{"galvanised", static_cast<int>(ExistingService::galvanized)},
    OtherWord{"galvanized steel", static_cast<int>(ExistingService::galvanized)},
};

constexpr Choice tubing_words{tubing_names, other_tubing, asked_tubing};
constexpr Choice friction_words{friction_method_names, {}};
constexpr Choice code_words{plumbing_code_names, {}};
constexpr Choice supply_words{fixture_supply_names, {}};
constexpr Choice sprinkler_words{dwelling_sprinkler_names, {}};
constexpr Choice existing_words{existing_service_names, other_existing};
constexpr Choice soil_words{soil_claim_names, other_soils};
constexpr Choice earth_words{earth_names, {}};
constexpr Choice layer_words{layer_names, {}};
constexpr Choice pit_water_words{pit_water_names, {}};
constexpr Choice protection_words{protection_names, {}};
constexpr Choice cave_in_words{cave_in_names, {}};
constexpr Choice condition_words{condition_names, {}};
constexpr Choice carries_words{carries_names, other_carries};
constexpr Choice nearby_words{nearby_names, other_nearby};
constexpr Choice thread_words{thread_standard_names, other_threads};
constexpr Choice method_words{std::span(method_names).first(3), {}};  // nobody asks for "none"
constexpr Choice feed_words{feed_names, {}};

// --- the table --------------------------------------------------------------------------------------------------
// Ranges keep out what cannot be; what is odd but possible is for the planner to judge.

constexpr std::array table = {
    names_order(
        meaning(TextMeaning::name, row<&Job::id>("id", FieldType::text, "work order; a number is one as well"))),
    names_order(row<&Job::place>("place", FieldType::text, "where the tap is wanted, in your words")),
    meaning(TextMeaning::day, row<&Job::date>("date", FieldType::text, "planned day, such as 2026-05-04")),
    quantity<&Job::air_temperature>("air_temperature", Kind::temperature, Temperature::fahrenheit(-60),
                                    Temperature::fahrenheit(150), "temperature of the air when tapping"),
    names_order(row<&Job::crew>("crew", FieldType::text, "who does it")),
    names_order(row<&Job::note>("note", FieldType::lines, "anything else worth carrying along")),

    required(row<&MainFacts::material>("main.material", FieldType::material, "what the main is made of")),
    required(size<&MainFacts::size>("main.size", "nominal size of the main")),
    required(
        pressure<&MainFacts::pressure>("main.pressure", 1, 1000, "greatest static pressure expected while tapping")),
    pressure<&MainFacts::pressure_low>("main.pressure_low", 1, 1000,
                                       "lowest static pressure of the main, for the water at the customer"),
    meaning(TextMeaning::mark,
            row<&MainFacts::class_name>("main.class", FieldType::text,
                                        "class as written on the pipe or the record: PC 350, DR 18, Class 150")),
    meaning(TextMeaning::mark,
            row<&MainFacts::standard>("main.standard", FieldType::text, "standard the pipe was made to, such as C900")),
    whole<&MainFacts::installed>("main.installed", 1800, 2100, "year the main was laid"),
    length<&MainFacts::od>("main.od", 0.3, 160, "measured outside diameter"),
    length<&MainFacts::circumference>("main.circumference", 1, 500, "circumference measured with a tape"),
    length<&MainFacts::wall>("main.wall", 0.01, 24, "wall gauged at the tap"),
    choice<&MainFacts::condition>("main.condition", condition_words, "the bared pipe, as seen"),
    row<&MainFacts::encased>("main.encased", FieldType::flag, "wrapped in polyethylene film"),
    row<&MainFacts::curved>("main.curved", FieldType::flag, "this length is bent along its run"),
    quantity<&MainFacts::temperature>("main.temperature", Kind::temperature, Temperature::fahrenheit(-40),
                                      Temperature::fahrenheit(150), "temperature of the pipe wall"),
    pressure<&MainFacts::surge>("main.surge", 0, 500,
                                "recurring surge over the static pressure, of every day's pumps and valves"),
    pressure<&MainFacts::occasional_surge>(
        "main.occasional_surge", 0, 500,
        "surge seldom seen over the static pressure, of a power failure or a fire flow"),
    pressure<&MainFacts::rating>("main.rating", 1, 1000,
                                 "working pressure that the utility rates this main for, in plastic at 73 degF"),
    choice<&MainFacts::carries>("main.carries", carries_words, "what flows in it"),
    quantity<&MainFacts::cover>("main.cover", Kind::distance, 0.0 * units::foot, 100.0 * units::foot,
                                "ground to crown of the main; 0 counts as not measured"),
    row<&MainFacts::cover_measured>("main.cover_measured", FieldType::flag,
                                    "true where main.cover was measured: a cover of 0 is then one"),
    once("main.pressurised",
         flag<&MainFacts::pressurized>(
             "main.pressurized", "false for a main drained for the tap; main.pressure is then what it will carry")),

    required(choice<&Nearby::what>("nearby[].what", nearby_words, "what is on or beside the main")),
    required(quantity<&Nearby::along>("nearby[].along", Kind::distance, -1000.0 * units::foot, 1000.0 * units::foot,
                                      "how far along the main from the asked place, + one way and - the other")),
    row<&Nearby::clock>("nearby[].clock", FieldType::clock, "where round the pipe"),
    size<&Nearby::size>("nearby[].size", "its nominal size"),

    required(size<&ServiceFacts::size>("service.size", "nominal size of the service")),
    choice<&ServiceFacts::thread>("service.thread", thread_words, "inlet thread of the corporation stop"),
    choice<&ServiceFacts::method>("service.method", method_words, "method asked for"),
    row<&ServiceFacts::clock>("service.clock", FieldType::clock, "place asked for round the pipe"),
    pressure<&ServiceFacts::stop_rating>("service.stop_rating", 1, 1000,
                                         "working pressure marked on the corporation stop"),
    pressure<&ServiceFacts::saddle_rating>("service.saddle_rating", 1, 1000,
                                           "working pressure marked on the saddle or sleeve"),
    length<&ServiceFacts::stop_length>("service.stop_length", 1, 36, "corporation stop from end to end"),
    length<&ServiceFacts::saddle_height>("service.saddle_height", 0.25, 36,
                                         "from the pipe to the outlet face of the saddle"),
    choice<&ServiceFacts::existing>("service.existing", existing_words,
                                    "what the service found in the ground is made of, if there is one"),
    size<&ServiceFacts::meter>("service.meter", "nominal size of the meter, its chamber's where two are named"),
    whole<&ServiceFacts::dwellings>("service.dwellings", 0, 100000, "dwellings that the service supplies"),
    whole<&ServiceFacts::premises>("service.premises", 1, 1000, "lots or buildings that it supplies"),
    choice<&LineFacts::material>("service.line.material", tubing_words, "tubing of the service line"),
    size<&LineFacts::size>("service.line.size", "its nominal size, where it is not the service's"),
    distance<&LineFacts::length>("service.line.length", 1, 10000, "length from the main to the customer"),
    distance<&LineFacts::rise>("service.line.rise", -1000, 1000,
                               "how far the customer lies above the main; negative for below"),
    choice<&LineFacts::friction>("service.line.friction", friction_words, "how friction is worked out"),
    number<&LineFacts::c>("service.line.c", Kind::ratio, 40, 160,
                          "Hazen-Williams coefficient in place of the tabulated one"),
    whole<&LineFacts::elbows>("service.line.elbows", 0, 100, "elbows in the line"),
    whole<&LineFacts::couplings>("service.line.couplings", 0, 200, "couplings in the line"),
    pressure<&LineFacts::rating>("service.line.rating", 1, 1000,
                                 "working pressure printed on plastic tubing, at 73 degF"),
    distance<&LineFacts::cover>("service.line.cover", 0, 100, "least cover over the line"),
    distance<&LineFacts::gas>("service.line.gas", 0, 1000,
                              "from the line to the nearest gas line, level, edge to edge; where there is none, any "
                              "distance beyond the rule's"),
    distance<&LineFacts::electric>("service.line.electric", 0, 1000, "the same to the nearest electric line"),
    distance<&LineFacts::sewer>("service.line.sewer", 0, 1000, "the same to the nearest sewer or drain"),
    flow<&DemandFacts::flow>("service.demand.flow", 1, 5000, "peak flow, where it is known as such"),
    number<&DemandFacts::fixture_units>("service.demand.fixture_units", Kind::ratio, 0.1, 10000,
                                        "water-supply fixture units of the code named"),
    row<&DemandFacts::fixtures>("service.demand.fixtures", FieldType::text,
                                "fixtures by the names of the code named: 2 bathroom group, kitchen sink"),
    choice<&DemandFacts::code>("service.demand.code", code_words,
                               "plumbing code whose fixture units and demand curve are meant"),
    choice<&DemandFacts::supply>("service.demand.supply", supply_words, "what feeds most of the water closets"),
    flow<&DemandFacts::continuous>("service.demand.continuous", 0, 5000,
                                   "flow that runs on and is added in full: hose bibbs, lawns, cooling"),
    choice<&DemandFacts::sprinklers>("service.demand.sprinklers", sprinkler_words,
                                     "dwelling sprinklers fed by the service, at work at one time"),
    flow<&DemandFacts::sprinkler_flow>("service.demand.sprinkler_flow", 1, 500,
                                       "flow that each of these is listed for"),
    flag<&DemandFacts::shared>("service.demand.shared", "the pipe serves more than one dwelling"),
    pressure<&DemandFacts::residual>("service.demand.residual", 0, 300, "pressure wanted behind the meter"),
    length<&TrialFacts::depth>("service.trial.depth", 0.1, 60,
                               "found by trial taps: from the touch of the tool to where tapping stops"),
    number<&TrialFacts::hand_turns>("service.trial.hand_turns", Kind::ratio, 0, 100,
                                    "turns by which the stop of the trial went in by hand"),
    number<&TrialFacts::wrench_turns>("service.trial.wrench_turns", Kind::ratio, 0, 20, "and then by wrench"),
    number<&TrialFacts::threads_showing>("service.trial.threads_showing", Kind::ratio, 0, 20,
                                         "threads of that stop left outside"),
    row<&TrialFacts::date>("service.trial.date", FieldType::text, "day of the trial"),
    row<&TrialFacts::tool>("service.trial.tool", FieldType::text, "mark on the tool it was made with"),

    row<&MachineFacts::profile>("machine.profile", FieldType::machine, "a machine of the catalog"),
    choice<&MachineFacts::feed>("machine.feed", feed_words, "the feed to be used"),
    whole<&MachineFacts::extensions>("machine.extensions", 0, 20, "chain extensions on the truck"),
    required(row<&MachineProfile::title>("machine.title", FieldType::text, "what the crew calls the machine"),
             Need::machine_figures),
    required(size<&MachineProfile::smallest_tap>("machine.smallest_tap", "smallest tap it makes"),
             Need::machine_figures),
    required(size<&MachineProfile::largest_tap>("machine.largest_tap", "largest tap it makes"), Need::machine_figures),
    required(pressure<&MachineProfile::hand_limit>("machine.hand_limit", 1, 1000,
                                                   "line pressure up to which it may be fed by hand"),
             Need::machine_figures),
    pressure<&MachineProfile::powered_limit>("machine.powered_limit", 1, 1000, "the same with its powered feed"),
    required(
        pressure<&MachineProfile::body_rating>("machine.body_rating", 1, 5000, "pressure its body and gaskets hold"),
        Need::machine_figures),
    required(length<&MachineProfile::bar_diameter>("machine.bar_diameter", 0.5, 4, "diameter of the boring bar"),
             Need::machine_figures),
    length<&MachineProfile::bar_travel>("machine.bar_travel", 0.5, 120, "travel of the boring bar"),
    length<&MachineProfile::standoff>("machine.standoff", 0.5, 60, "crown of the pipe to the drawn-back tool's point"),
    length<&MachineProfile::valve_height>("machine.valve_height", 0.5, 60,
                                          "crown of the pipe to where the machine's valve swings clear"),
    length<&MachineProfile::feed_pitch>("machine.feed_pitch", 0.01, 1, "way of the bar in one turn of the feed"),
    length<&MachineProfile::adapter_standoff>(
        "machine.adapter_standoff", 0.25, 60,
        "bar drawn back: end of the adapter that goes on a saddle's stop to the cutter's edge"),
    length<&MachineProfile::saddle_od_from>("machine.saddle_od_from", 0.3, 160,
                                            "least outside diameter its machine saddles seat on"),
    length<&MachineProfile::saddle_od_to>("machine.saddle_od_to", 0.3, 160, "greatest outside diameter they seat on"),
    length<&MachineProfile::chain_length>("machine.chain_length", 6, 600, "base chain, hook to hook"),
    length<&MachineProfile::chain_extension>("machine.chain_extension", 1, 600, "length of each chain extension"),
    length<&MachineProfile::anchor_offset>("machine.anchor_offset", 0.5, 24,
                                           "chain anchor sideways from the bar's axis"),
    length<&MachineProfile::anchor_height>("machine.anchor_height", -24, 36, "chain anchor above the pipe's crown"),
    length<&MachineProfile::chain_thickness>("machine.chain_thickness", 0.1, 3, "thickness of the chain"),
    length<&MachineProfile::gasket_diameter>("machine.gasket_diameter", 0.75, 24, "sealing circle on the pipe"),
    length<&MachineProfile::stud_diameter>("machine.stud_diameter", 0.25, 2, "studs that take up the chain"),
    whole<&MachineProfile::studs>("machine.studs", 1, 16, "how many studs"),

    length<&ToolFacts::length>("tool.length", 0.5, 120, "shoulder of the bar to the point of the cutting tool"),
    length<&ToolFacts::lead>("tool.lead", 0.05, 36, "point of that tool to the first thread of its tap"),
    length<&ToolFacts::insertion_length>("tool.insertion_length", 0.5, 120,
                                         "shoulder of the bar to the end of the stop on the insertion tool"),

    number<&SanitaryFacts::stock>("sanitary.stock", Kind::percent, 1, 80,
                                  "available chlorine of the stock at hand, by its label"),
    quantity<&SanitaryFacts::solution>("sanitary.solution", Kind::volume, 0.1 * units::gallon, 1000.0 * units::gallon,
                                       "how much disinfecting solution to mix"),

    choice<&ExcavationFacts::soil>("excavation.soil", soil_words,
                                   "soil type that a competent person claims after looking and trying"),
    quantity<&ExcavationFacts::strength>("excavation.strength", Kind::strength, 0.0 * units::tsf, 20.0 * units::tsf,
                                         "unconfined strength of the soil, by penetrometer or vane"),
    choice<&ExcavationFacts::earth>("excavation.earth", earth_words, "what is dug, for the room the spoil takes"),
    flag<&ExcavationFacts::granular>("excavation.granular", "sand or gravel without cohesion"),
    flag<&ExcavationFacts::fissured>("excavation.fissured", "cracked ground; taken as true until it is denied"),
    flag<&ExcavationFacts::vibration>("excavation.vibration", "traffic or machines shake the ground"),
    flag<&ExcavationFacts::disturbed>("excavation.disturbed",
                                      "dug before; taken as true, since the main once was laid here: false only for a "
                                      "main that came there without a trench"),
    choice<&ExcavationFacts::layers>("excavation.layers", layer_words, "layers that dip toward the pit"),
    choice<&ExcavationFacts::water>("excavation.water", pit_water_words, "water in the pit"),
    flag<&ExcavationFacts::distress>("excavation.distress", "cracks along the edge, slumping, bulging"),
    quantity<&ExcavationFacts::open_for>("excavation.open_for", Kind::time_span, 1.0 * units::hour,
                                         10000.0 * units::hour, "how long the pit stays open"),
    choice<&ExcavationFacts::protection>("excavation.protection", protection_words, "protective system chosen"),
    choice<&ExcavationFacts::finding>("excavation.finding", cave_in_words,
                                      "what a competent person who looked for signs of a cave-in found"),
    flag<&ExcavationFacts::hazard>("excavation.hazard", "bad air is to be expected in the pit"),
    flag<&ExcavationFacts::crossing>("excavation.crossing", "people cross the pit on a walkway"),
    distance<&ExcavationFacts::spoil_distance>("excavation.spoil_distance", 0, 1000,
                                               "from the edge of the pit to the foot of the spoil"),
    flag<&ExcavationFacts::located>("excavation.located", "the locate ticket is valid and every mark has been read"),
    length<&ExcavationFacts::tolerance>("excavation.tolerance", 0, 120,
                                        "tolerance zone of the state to each side of a marked line"),
    distance<&ExcavationFacts::sewer>("excavation.sewer", 0, 1000, "from the water line to the nearest sewer, level"),
    length<&ExcavationFacts::sewer_below>("excavation.sewer_below", -1000, 1000,
                                          "how far that sewer lies below the water line"),
    quantity<&ExcavationFacts::speed>("excavation.speed", Kind::speed, 0.0 * units::mph, 100.0 * units::mph,
                                      "posted speed of the road"),
    distance<&ExcavationFacts::lane>("excavation.lane", 1, 60, "width of the road that is closed"),
};

static_assert(table.size() <= most_fields);

}  // namespace

std::span<const JobField> job_fields() { return table; }

JobDraft::JobDraft() = default;

void JobDraft::add_machine() {
  if (!machine) return;
  machine->id = "given";
  machine->maker_figures = true;
  machine->basis = stated_in_job;
  job.machine.given = std::make_shared<const MachineProfile>(*std::move(machine));
}

std::string JobField::path_at(std::size_t index) const {
  const std::size_t brackets = path.find("[]");
  if (brackets == std::string_view::npos) return std::string(path);
  return std::string(path.substr(0, brackets + 1)) + std::to_string(index) + std::string(path.substr(brackets + 1));
}

std::optional<FieldPath> find_field(std::string_view path) {
  std::string general(path);
  std::size_t index = 0;
  if (const std::size_t open = path.find('['); open != std::string_view::npos) {
    const char* const first = path.data() + open + 1;
    const auto [end, error] = std::from_chars(first, path.data() + path.size(), index);
    if (error != std::errc() || index >= longest_list) return std::nullopt;
    general.erase(open + 1, static_cast<std::size_t>(end - first));
  }
  for (const JobField& field : table) {
    if (field.path == general || (field.older == general && !general.empty())) return FieldPath{&field, index};
  }
  return std::nullopt;
}

bool is_list(std::string_view path) {
  return std::any_of(table.begin(), table.end(), [&](const JobField& field) {
    return field.path.starts_with(path) && field.path.substr(path.size()).starts_with("[]");
  });
}

std::optional<std::size_t> list_length(const Job& job, std::string_view list) {
  if (list != "nearby" || !job.nearby) return std::nullopt;
  return job.nearby->size();
}

void make_list(Job& job, std::string_view list) {
  if (list != "nearby" || job.nearby) return;
  constexpr std::size_t usual = 4;
  job.nearby.emplace().reserve(usual);
}

}  // namespace mainbore::io
