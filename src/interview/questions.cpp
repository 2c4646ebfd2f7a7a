#include "interview/questions.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include "io/text/nearest.hpp"

namespace mainbore::interview {
namespace {

using enum words::QuestionWord;
constexpr auto none = words::AskWord::blank_none;
constexpr auto planner = words::AskWord::blank_plan_chooses;
constexpr auto no = words::AskWord::blank_no;

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

// Plastic of one size is made in several diameters; a metric name may be that of another pipe.
bool may_be_of_another_standard(const Job& job) {
  return is_plastic_main(job) || (job.main.size && job.main.size->dn() != 0);
}
bool cover_is_nothing(const Job& job) { return job.main.cover == Length(); }
bool has_no_tape_around(const Job& job) { return !job.main.circumference; }
bool may_be_direct(const Job& job) { return !job.service.method || job.service.method == Method::direct; }
bool has_trial(const Job& job) { return may_be_direct(job) && job.service.trial.depth; }
bool lays_plastic_line(const Job& job) {
  switch (job.service.line.material.value_or(Tubing::copper_k)) {
    case Tubing::polyethylene:
    case Tubing::pex:
    case Tubing::pvc_40:
    case Tubing::pvc_80:
    case Tubing::cpvc:
    case Tubing::pvc_pressure:
      return true;
    default:
      return false;
  }
}

// --- which rules of a utility's own ask for a fact ----------------------------------------------------------------

bool limits_cold_air(const Rules& rules) { return rules.main.coldest_air.value.has_value(); }
bool has_sizes_by_dwellings(const Rules& rules) { return !rules.water.by_dwellings.empty(); }
bool limits_premises(const Rules& rules) { return rules.water.most_premises.value.has_value(); }
bool covers_line(const Rules& rules) { return rules.line.least_cover.value.has_value(); }
bool keeps_from_gas(const Rules& rules) { return rules.line.from_gas.value.has_value(); }
bool keeps_from_electric(const Rules& rules) { return rules.line.from_electric.value.has_value(); }
bool keeps_from_sewer(const Rules& rules) { return rules.line.from_sewer.value.has_value(); }

// Of the tables, for this main.
std::string classes_listed(const Job& job, const Catalog& catalog) {
  if (!job.main.material || !job.main.size) return {};
  std::vector<std::string_view> names;
  for (const Pipe& pipe : catalog.pipes(*job.main.material, *job.main.size)) {
    const bool named = std::find(names.begin(), names.end(), pipe.class_name) != names.end();
    if (!pipe.class_name.empty() && !named) names.push_back(pipe.class_name);
  }
  return io::listed(names);
}

// --- the table ----------------------------------------------------------------------------------------------------

constexpr std::array order = {
    Question{.path = "id", .words = work_order, .blank = none},
    Question{.path = "place", .words = place, .blank = none},
    Question{.path = "date", .words = date, .blank = none},
    Question{.path = "air_temperature", .words = air_temperature, .asked_by = limits_cold_air},
    Question{.path = "crew", .words = crew, .blank = none},
};

constexpr std::array the_main = {
    Question{.path = "main.material", .words = main_material},
    Question{.path = "main.size", .words = main_size},
    Question{.path = "main.class", .words = main_class, .classes = classes_listed},
    Question{.path = "main.standard", .words = main_standard, .applies = may_be_of_another_standard},
    Question{.path = "main.installed", .words = main_installed},
    Question{.path = "main.pressure", .words = main_pressure},
    Question{.path = "main.surge", .words = main_surge},
    Question{.path = "main.occasional_surge", .words = main_occasional_surge, .applies = is_plastic_main},
    Question{.path = "main.rating", .words = main_rating, .applies = rated_by_utility},
    Question{.path = "main.carries", .words = main_carries, .blank = words::AskWord::blank_not_proved},
    Question{.path = "main.cover", .words = main_cover},
    Question{.path = "main.cover_measured", .words = main_cover_measured, .applies = cover_is_nothing},
};

constexpr std::array bare_pipe = {
    Question{.path = "", .words = gate_bare_pipe, .blank = no},
    Question{.path = "main.condition", .words = main_condition},
    Question{.path = "main.circumference", .words = main_circumference},
    Question{.path = "main.od", .words = main_od, .applies = has_no_tape_around},
    Question{.path = "main.wall", .words = main_wall},
    Question{.path = "main.temperature", .words = main_temperature, .applies = is_plastic_main},
    Question{.path = "main.curved", .words = main_curved, .applies = is_plastic_main},
    Question{.path = "main.encased", .words = main_encased, .applies = is_iron_or_steel},
};

constexpr std::array the_service = {
    Question{.path = "service.size", .words = service_size},
    Question{.path = "service.method", .words = service_method, .blank = planner},
    Question{.path = "service.thread", .words = service_thread},
    Question{.path = "service.clock", .words = service_clock, .blank = planner},
    Question{.path = "service.stop_rating", .words = service_stop_rating},
    Question{.path = "service.saddle_rating", .words = service_saddle_rating, .applies = takes_a_saddle},
    Question{.path = "service.saddle_height", .words = service_saddle_height, .applies = takes_a_saddle},
    Question{.path = "service.stop_length", .words = service_stop_length, .applies = takes_a_saddle},
    Question{.path = "service.existing", .words = service_existing},
    Question{.path = "service.dwellings", .words = service_dwellings, .asked_by = has_sizes_by_dwellings},
    Question{.path = "service.premises", .words = service_premises, .asked_by = limits_premises},
    Question{.path = "service.line.size", .words = service_line_size, .blank = words::AskWord::blank_size_of_tap},
    Question{.path = "service.line.cover", .words = service_line_cover, .asked_by = covers_line},
    Question{.path = "service.line.gas", .words = service_line_gas, .asked_by = keeps_from_gas},
    Question{.path = "service.line.electric", .words = service_line_electric, .asked_by = keeps_from_electric},
    Question{.path = "service.line.sewer", .words = service_line_sewer, .asked_by = keeps_from_sewer},
};

constexpr std::array beside = {
    Question{.path = "", .words = gate_beside, .blank = no},
    Question{.path = "nearby[].what", .words = nearby_what},
    Question{.path = "nearby[].along", .words = nearby_along},
    Question{.path = "nearby[].clock", .words = nearby_clock, .applies = is_tap},
    Question{.path = "nearby[].size", .words = nearby_size, .applies = is_tap},
};

constexpr std::array the_machine = {
    Question{.path = "", .words = gate_machine, .blank = no},
    Question{.path = "machine.title", .words = machine_title},
    Question{.path = "machine.smallest_tap", .words = machine_smallest_tap},
    Question{.path = "machine.largest_tap", .words = machine_largest_tap},
    Question{.path = "machine.hand_limit", .words = machine_hand_limit},
    Question{
        .path = "machine.powered_limit", .words = machine_powered_limit, .blank = words::AskWord::blank_it_has_none},
    Question{.path = "machine.feed", .words = machine_feed, .blank = planner, .applies = has_powered_feed},
    Question{.path = "machine.body_rating", .words = machine_body_rating},
    Question{.path = "machine.bar_diameter", .words = machine_bar_diameter},
    Question{.path = "machine.bar_travel", .words = machine_bar_travel},
    Question{.path = "machine.standoff", .words = machine_standoff},
    Question{.path = "machine.valve_height", .words = machine_valve_height},
    Question{.path = "machine.feed_pitch", .words = machine_feed_pitch},
    Question{.path = "machine.adapter_standoff", .words = machine_adapter_standoff, .applies = takes_a_saddle},
    Question{.path = "machine.saddle_od_from", .words = machine_saddle_od_from},
    Question{.path = "machine.saddle_od_to", .words = machine_saddle_od_to},
    Question{.path = "machine.chain_length", .words = machine_chain_length},
    Question{.path = "machine.chain_extension", .words = machine_chain_extension, .applies = has_chain},
    Question{.path = "machine.extensions", .words = machine_extensions, .applies = has_chain},
    Question{.path = "machine.chain_thickness", .words = machine_chain_thickness, .applies = has_chain},
    Question{.path = "machine.anchor_offset", .words = machine_anchor_offset, .applies = has_chain},
    Question{.path = "machine.anchor_height", .words = machine_anchor_height, .applies = has_chain},
    Question{.path = "machine.gasket_diameter", .words = machine_gasket_diameter},
    Question{.path = "machine.stud_diameter", .words = machine_stud_diameter},
    Question{.path = "machine.studs", .words = machine_studs},
};

constexpr std::array the_tool = {
    Question{.path = "", .words = gate_tool, .blank = no},
    Question{.path = "tool.length", .words = tool_length},
    Question{.path = "tool.lead", .words = tool_lead},
    Question{.path = "tool.insertion_length", .words = tool_insertion_length, .applies = may_be_direct},
};

constexpr std::array the_trial = {
    Question{.path = "", .words = gate_trial, .blank = no, .applies = may_be_direct},
    Question{.path = "service.trial.depth", .words = service_trial_depth, .applies = may_be_direct},
    Question{.path = "service.trial.hand_turns", .words = service_trial_hand_turns, .applies = has_trial},
    Question{.path = "service.trial.wrench_turns", .words = service_trial_wrench_turns, .applies = has_trial},
    Question{.path = "service.trial.threads_showing", .words = service_trial_threads_showing, .applies = has_trial},
    Question{.path = "service.trial.date", .words = service_trial_date, .applies = has_trial},
    Question{.path = "service.trial.tool", .words = service_trial_tool, .applies = has_trial},
};

constexpr std::array the_water = {
    Question{.path = "", .words = gate_water, .blank = no},
    Question{.path = "service.line.material", .words = service_line_material},
    Question{.path = "service.line.rating", .words = service_line_rating, .applies = lays_plastic_line},
    Question{.path = "service.line.length", .words = service_line_length},
    Question{.path = "service.line.rise", .words = service_line_rise},
    Question{.path = "service.line.elbows", .words = service_line_elbows},
    Question{.path = "service.line.couplings", .words = service_line_couplings},
    Question{.path = "service.meter", .words = service_meter},
    Question{.path = "main.pressure_low", .words = main_pressure_low},
    Question{.path = "service.demand.flow", .words = service_demand_flow},
    Question{.path = "service.demand.fixture_units", .words = service_demand_fixture_units, .applies = flow_is_open},
    Question{.path = "service.demand.fixtures", .words = service_demand_fixtures, .applies = units_are_open},
    Question{.path = "service.demand.code", .words = service_demand_code, .applies = counts_fixtures},
    Question{.path = "service.demand.supply", .words = service_demand_supply, .applies = counts_fixtures},
    Question{.path = "service.demand.continuous", .words = service_demand_continuous},
    Question{.path = "service.demand.sprinklers", .words = service_demand_sprinklers},
    Question{
        .path = "service.demand.sprinkler_flow", .words = service_demand_sprinkler_flow, .applies = has_sprinklers},
    Question{.path = "service.demand.shared", .words = service_demand_shared},
    Question{.path = "service.demand.residual", .words = service_demand_residual},
};

constexpr std::array the_pit = {
    Question{.path = "", .words = gate_pit, .blank = no},
    Question{.path = "excavation.located", .words = excavation_located},
    Question{.path = "excavation.tolerance", .words = excavation_tolerance},
    Question{.path = "excavation.soil", .words = excavation_soil},
    Question{.path = "excavation.strength", .words = excavation_strength, .applies = claims_firm_soil},
    Question{.path = "excavation.earth", .words = excavation_earth},
    Question{.path = "excavation.granular", .words = excavation_granular},
    Question{.path = "excavation.fissured", .words = excavation_fissured},
    Question{.path = "excavation.vibration", .words = excavation_vibration},
    Question{.path = "excavation.disturbed", .words = excavation_disturbed, .applies = claims_firm_soil},
    Question{.path = "excavation.layers", .words = excavation_layers},
    Question{.path = "excavation.water", .words = excavation_water},
    Question{.path = "excavation.distress", .words = excavation_distress},
    Question{.path = "excavation.finding", .words = excavation_finding},
    Question{.path = "excavation.open_for", .words = excavation_open_for},
    Question{.path = "excavation.protection", .words = excavation_protection},
    Question{.path = "excavation.hazard", .words = excavation_hazard},
    Question{.path = "excavation.crossing", .words = excavation_crossing},
    Question{.path = "excavation.spoil_distance", .words = excavation_spoil_distance},
    Question{.path = "excavation.sewer", .words = excavation_sewer},
    Question{.path = "excavation.sewer_below", .words = excavation_sewer_below, .applies = names_a_sewer},
    Question{.path = "excavation.speed", .words = excavation_speed},
    Question{.path = "excavation.lane", .words = excavation_lane},
};

constexpr std::array cleaning = {
    Question{.path = "", .words = gate_cleaning, .blank = no},
    Question{.path = "sanitary.stock", .words = sanitary_stock},
    Question{.path = "sanitary.solution", .words = sanitary_solution},
};

constexpr std::array rest = {
    Question{.path = "note", .words = note, .blank = none},
};

constexpr std::array table = {
    Section{words::AskWord::heading_order, order, {}, {}},
    Section{words::AskWord::heading_main, the_main, {}, {}},
    Section{words::AskWord::heading_bare_pipe, bare_pipe, {}, {}},
    Section{words::AskWord::heading_service, the_service, {}, {}},
    Section{words::AskWord::heading_beside, beside, "nearby", words::AskWord::nearby_left_out},
    Section{words::AskWord::heading_machine, the_machine, {}, words::AskWord::machine_left_out},
    Section{words::AskWord::heading_tool, the_tool, {}, {}},
    Section{words::AskWord::heading_trial, the_trial, {}, {}},
    Section{words::AskWord::heading_water, the_water, {}, {}},
    Section{words::AskWord::heading_pit, the_pit, {}, {}},
    Section{words::AskWord::heading_cleaning, cleaning, {}, {}},
    Section{words::AskWord::heading_rest, rest, {}, {}},
};

}  // namespace

const io::JobField* Question::field() const {
  const auto fields = io::job_fields();
  const auto found = std::find_if(fields.begin(), fields.end(), [this](const auto& row) { return row.path == path; });
  return found == fields.end() ? nullptr : &*found;
}

std::span<const Section> sections() { return table; }

}  // namespace mainbore::interview
