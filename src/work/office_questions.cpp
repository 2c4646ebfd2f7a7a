// What the office asks, and whom, to clear a hold before a crew is sent.
#include "mainbore/finding_words.hpp"
#include "work/filled_words.hpp"

namespace mainbore {
namespace {

constexpr std::string_view author = "Whoever wrote the order";
constexpr std::string_view designer = "The service's designer";
constexpr std::string_view engineer = "The engineer";
constexpr std::string_view locators = "The locate center";
constexpr std::string_view operations = "System operations";
constexpr std::string_view records = "The utility's records";
constexpr std::string_view utility = "The utility";
constexpr std::string_view yard = "The yard";

struct Asked {
  std::string_view whom = engineer;
  std::string_view question =
      {};  // placeholders as in finding_words.cpp; empty: what to do is told in place of a question
};

Asked asked_of_machine(FindingCode code) {
  using enum FindingCode;
  switch (code) {
    case machine_unspecified:
      return {yard, "Which machine goes, and what pressures do its papers allow for it and for its feed?"};
    case machine_wrong_size:
      return {yard, "Is there a machine that takes a {0} tap?"};
    case machine_no_powered_feed:
      return {yard, "Is there a machine with a powered feed?"};
    case machine_figures_missing:
      return {yard, "What are the machine's missing figures, by its papers or measured in the yard?"};
    case machine_no_saddle:
      return {yard, "Is there a machine saddle for {value} pipe?"};
    case machine_gasket_small:
      return {yard, "Is there a seal of at least {limit} for this machine?"};
    case machine_figures_wrong:
      return {yard, "What is the right figure for {0}? {value} is out of range."};
    case machine_stud_overloaded:
      return {yard, "Is there a machine with thicker studs? If not, ask system operations to lower the main."};
    case machine_chain_short:
      return {yard, "Is there chain of {limit}, extensions and all?"};
    case machine_travel_short:
      return {yard, "Is there a machine with {limit} of bar travel?"};
    case machine_reach_unknown:
      return {yard, "Does the bar reach through, measured with this stop and adapter?"};
    case machine_valve_not_clear:
      return {yard, "Is there a machine or adapter whose valve shuts behind the {0}?"};
    case machine_tool_strikes_far_wall:
      return {yard, "Is there a shorter tool, {limit} clear of the far wall?"};
    case machine_chain_ovals_pipe:
      return {yard, "Is there a wide strap in place of bare chain?"};
    case makeup_trial_off:
      return {yard, "What depth and what counts do new trial taps give?"};
    default:
      return {};
  }
}

Asked asked_of_pressure(FindingCode code) {
  using enum FindingCode;
  switch (code) {
    case pressure_over_feed_limit:
    case pressure_over_machine_rating:
    case pressure_over_wet_tap_limit:
      return {operations, "Can the main be lowered to [{line-pressure}|{limit}] or less, and held there for the tap?"};
    case pressure_over_pipe_rating:
      return {utility, "What is this main rated for? It runs at {value}, and its class is rated {limit}."};
    case pressure_rating_unknown:
      return {utility, "What pressure is this main rated for?"};
    case pressure_surge_over_rating:
      return {operations, "What surge does this main see? {limit} is allowed."};
    case pressure_over_stop_rating:
      return {yard, "Is there a stop marked for at least {value+}?"};
    case pressure_over_saddle_rating:
      return {yard, "Is there a saddle marked for at least {value+}?"};
    case pressure_over_line_rating:
      return {yard, "Is there service tubing marked for at least {value+}?"};
    case pressure_surge_over_fitting:
      return {yard, "Is there a {1} marked for {2+}? If not, ask system operations what surge the main sees."};
    case pressure_low_over_line:
      return {author, "Which pressure is right? The lowest is above the highest."};
    default:
      return asked_of_machine(code);
  }
}

Asked asked_of_service(FindingCode code) {
  using enum FindingCode;
  switch (code) {
    case service_size_not_made:
      return {author, "Which size is meant? No {0} stop is made."};
    case service_not_tabulated:
      return {author, "Which size is meant, or what does its maker's curve say? {1} of {0} is in no table."};
    case service_existing_lead:
    case service_existing_galvanized:
      return {utility, "What happens to the old service, and may it be moved?"};
    case service_not_checked:
      return {designer, "What is missing to work out the water for the customer?"};
    case service_code_unnamed:
      return {designer, "Which plumbing code are the fixture units counted by?"};
    case service_fixture_unknown:
      return {designer, "Which fixture is meant? Number {1} is not in the code."};
    case service_curve_unread:
      return {designer, "What is the peak flow? No demand curve covers it."};
    case service_starved:
      return {designer, "Is {value} enough, or which larger service? {limit} is wanted."};
    case service_too_high:
      return {designer, "Is the customer {0} above the main, and which other main or pump serves it?"};
    case service_too_fast:
      return {designer, "Which larger service? The water runs at {value}."};
    case service_tap_too_fast:
      return {designer, "Which larger tap[, such as {2}|]? The water runs at {value} through {1}."};
    case service_line_against_tap:
      return {utility, "Which service pipe goes with a {0} tap?"};
    case service_meter_over:
    case service_meter_share:
    case service_meter_continuous:
      return {designer, "Which larger meter? The demand is {value}."};
    case service_cover:
      return {utility, "Is {value} of cover over the service accepted here? The rule is {limit}."};
    case service_cover_unknown:
      return {designer, "How deep does the service lie? The rule is {limit}."};
    case service_line_near:
      return {utility, "May the service lie {value} from the {0}? The rule is {limit}."};
    case service_line_near_unknown:
      return {designer, "How far does the service stay from the nearest {0}? The rule is {limit}."};
    case service_dwellings_size:
      return {utility, "Is a {0} under {1} accepted for {3} dwellings?"};
    case service_dwellings_unknown:
      return {author, "How many dwellings does the service supply?"};
    case service_dwellings_unlisted:
      return {engineer, "Which tap, line and meter for {0} dwellings?"};
    case service_premises:
      return {utility, "May one tap serve {value} premises? The rule is {limit}."};
    case service_premises_unknown:
      return {author, "How many premises does the service supply?"};
    case service_line_small:
    case service_tap_small:
      return {utility, "Is a size under the utility's least, {1}, accepted here?"};
    case direct_thread_unknown:
      return {yard, "What thread is on the stop's inlet?"};
    default:
      return asked_of_pressure(code);
  }
}

Asked asked_of(FindingCode code) {
  using enum FindingCode;
  switch (code) {
    case main_not_in_catalogue:
      return {records, "What pipe is it: standard, class, outside diameter, wall and rating?"};
    case main_not_yet_laid:
      return {records, "When was this main laid?"};
    case order_fact_unread:
      return {author, "What is meant by {0}[, {1}|][, {2}|][, {3}|]?"};
    case method_not_as_asked:
      return {author, "Is {1} accepted in place of {0}?"};
    case saddle_by_engineer:
      return {engineer, "May this main take a saddle, and which?"};
    case direct_recalled_thread:
      return {engineer,
              "May this tap be made? By recalled dimensions the wall holds {value-}; the rule asks for {limit}."};
    case sleeve_to_be_chosen:
      return {engineer, "Which sleeve and tapping valve, for which outside diameter measured?"};
    case rules_consent:
      return {engineer, "Does {3} consent to this[ {0}|] tap, in writing?"};
    case rules_consent_unnamed:
      return {engineer, "Who takes this looser rule on, in writing: {0}?"};
    case approved_none_fits:
      return {engineer, "Which {0} is approved for this main? The list has none that fits."};
    case place_no_room:
      return {author, "Which other length may be tapped? There is no clear place within {0}."};
    case place_clock:
      return {author, "May the tap go to {0} round the pipe?"};
    case place_cover:
      return {utility, "Is {value} of cover accepted here? The rule is {limit}."};
    case season_closed:
      return {utility, "Is there written permission to tap in the closed season, {0} to {1}?"};
    case season_date_unknown:
      return {author, "What day is the tap? There are none from {0} to {1}."};
    case pit_not_located:
      return {locators, "Is the locate ticket valid, and is every mark down?"};
    case pit_engineer:
      return {engineer, "Which protective system, by whose design? The pit is deeper than {limit}."};
    case pit_sewer_near:
      return {utility, "May the tap stand {value} from the sewer? The rule is {limit}."};
    case clean_stock_too_weak:
      return {yard, "Is there fresh chlorine stock of at least {limit}?"};
    default:
      return asked_of_service(code);
  }
}

}  // namespace

std::string_view whom_to_ask(FindingCode code) { return asked_of(code).whom; }

std::string question_of(const Finding& finding, UnitSystem system, StopNumbers readings) {
  const std::string_view question = asked_of(finding.code).question;
  return question.empty() ? fix_of(finding, system, readings) : filled_words(question, finding, system, readings);
}

}  // namespace mainbore
