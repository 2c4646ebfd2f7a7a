// The first part of each help page: what the command does, examples of it, its exit status. Examples are run by a test.
// The manual page has the same words.
#pragma once

namespace mainbore::cli {

inline constexpr const char* program_help =
    "Plans service taps on pressurized water mains: go, hold or no-go, with the numbers.\n"
    "\n"
    "  mainbore plan job.json\n"
    "  mainbore plan --set main.material=\"ductile iron\" --set main.size=\"8 in\" \\\n"
    "                --set main.pressure=\"82 psi\" --set service.size=\"1 in\"\n"
    "  mainbore batch week.csv\n"
    "  mainbore explain pressure.over-feed-limit\n";

inline constexpr const char* manual_description =
    "Before anyone drills, mainbore reads the job (the main, the service, the line pressure, the place, the trench) "
    "and\n"
    "decides whether this main can take this tap: directly or through a saddle, with how many complete threads in the\n"
    "wall, within every pressure limit in the chain, at which place on the pipe. It prints the verdict, the numbers a "
    "crew\n"
    "can hold a gauge against, what clears each hold, and what to do instead when the answer is no. What is left out "
    "is\n"
    "assumed on the safe side, and the plan says so. It never asks the network and never guesses a unit.\n"
    "\n"
    "It plans; it does not decide. The utility, the local code, the makers' instructions and the competent person on "
    "site\n"
    "do. Water mains only.\n";

// What the program heeds of its surroundings.
struct EnvironmentVariable {
  const char* name;
  const char* meaning;
};
inline constexpr EnvironmentVariable environment_variables[] = {
    {"NO_COLOR", "Where it is set and not empty, nothing is colored on a terminal."},
    {"XDG_CONFIG_HOME", "The folder of your own settings file, mainbore/settings.json; not set: $HOME/.config."},
};

inline constexpr const char* plan_help =
    "Plans one job.\n"
    "\n"
    "  mainbore plan job.json\n"
    "  mainbore plan job.json --set main.pressure=\"565 kPa\" --units si\n"
    "  mainbore plan - --format json --rules district.json < job.json\n"
    "  mainbore plan job.json --format html -o sheet.html\n"
    "  mainbore plan job.json --format calc\n"
    "  mainbore plan job.json --settings truck.json\n"
    "  mainbore plan job.json --language es\n"
    "\n"
    "Exit status: 0 go, 1 no-go, 3 hold, 2 a job that cannot be read, 64 wrong usage,\n"
    "66 cannot open the input, 74 cannot write.\n";

inline constexpr const char* batch_help =
    "Plans many orders: a record for each, or the report of a week.\n"
    "\n"
    "  mainbore batch week.csv\n"
    "  mainbore batch export.csv --map map.json --columns\n"
    "  mainbore batch week.csv --sheets sheets\n"
    "  mainbore batch mains.geojson --map map.json --format geojson -o planned.geojson\n"
    "  dispatch | mainbore batch - --format ndjson --jobs 4 --fail-on no-go | gate\n"
    "\n"
    "Exit status: the worst of the orders: 2 cannot be read, 1 no-go, 3 hold, 0 go (see --fail-on); 70 where the\n"
    "program failed on one, 64 wrong usage, 66 cannot open the input, 74 cannot write.\n";

inline constexpr const char* explain_help =
    "Says what a code of a finding or an error means.\n"
    "\n"
    "  mainbore explain direct.few-threads\n"
    "  mainbore explain --list\n";

inline constexpr const char* identify_help =
    "Lists the mains that fit what was measured on a bare pipe.\n"
    "\n"
    "  mainbore identify --circumference \"21-3/4 in\"\n"
    "  mainbore identify --circumference \"21-3/4 in\" --wall \"0.31 in\" --magnet yes --installed 1962\n"
    "  mainbore identify --od \"175 mm\" --units si --format json\n"
    "\n"
    "It is a list of what the pipe may be, never of what it is or carries.\n"
    "Exit status: 0 something fits, 1 nothing does, 64 wrong usage.\n";

inline constexpr const char* trial_help =
    "Works out the depth to tap to from trial taps in scrap of the same pipe.\n"
    "\n"
    "  mainbore trial --threads 12 --trial \"depth=1.5 in, hand=4, wrench=2, showing=3\" \\\n"
    "                  --trial \"depth=1.58 in, hand=5, wrench=2, showing=2\"\n"
    "\n"
    "Depths count from one mark throughout. Exit status: 0 settled, 3 another trial is needed, 64 wrong usage.\n";

inline constexpr const char* table_help =
    "The largest taps by main, size and class, under the rules in force.\n"
    "\n"
    "  mainbore table\n"
    "  mainbore table --material PVC --rules district.json\n"
    "  mainbore table --machine job.json --format html -o table.html\n";

inline constexpr const char* rules_help =
    "Checks a utility's own rules, shows what is in force, or what differs.\n"
    "\n"
    "  mainbore rules check district.json\n"
    "  mainbore rules show --rules district.json\n"
    "  mainbore rules show pressure place.clearances --rules district.json\n"
    "  mainbore rules diff default district.json\n"
    "\n"
    "Several files to check are laid one over the other, in order. Exit status: 0 readable, 2 not, 64 wrong usage,\n"
    "66 cannot open the input, 74 cannot write.\n";

inline constexpr const char* schema_help =
    "Writes the JSON Schema (draft-07) of what the program reads and writes: job, rules, plan,\n"
    "map (of an export's columns), machine (in a job or in settings), settings,\n"
    "verdict (a record of batch), record (of a tap).\n"
    "\n"
    "  mainbore schema job\n"
    "  mainbore schema rules -o rules.schema.json\n"
    "  mainbore schema settings\n";

inline constexpr const char* record_help =
    "Judges the readings of a finished tap, and writes its record; keeps a ledger of them.\n"
    "\n"
    "  mainbore record job.json readings.json\n"
    "  mainbore record job.json readings.json --append ledger.ndjson\n"
    "  mainbore record job.json readings.json --set leak_check=\"tight at 70 psi, 15 min\"\n"
    "  mainbore record --export ledger.ndjson --format geojson -o taps.geojson\n"
    "  mainbore record job.json readings.json --language es\n"
    "  mainbore record --tools ledger.ndjson\n"
    "\n"
    "The job is planned again with what was read; where the answer gets worse the sheet is void.\n"
    "Exit status: 0 a complete record, 3 the sheet is void or something is missing, 1 no-go, 2 readings, job or\n"
    "ledger that cannot be read, 64 wrong usage, 66 cannot open the input, 74 cannot write, 130 stopped.\n";

inline constexpr const char* new_help =
    "Asks for the facts of a job on a terminal, and writes the job file.\n"
    "\n"
    "  mainbore new job.json\n"
    "  mainbore new job.json --replace\n"
    "  mainbore new job.json --replace --language es\n"
    "\n"
    "Enter takes what is in brackets; \"don't know\" is an answer everywhere; \"?\" explains,\n"
    "\"back\" goes to the question before, \"stop\" quits and writes nothing. The job written is the same in\n"
    "either language.\n"
    "Exit status: 0 written, 64 wrong usage or no terminal, 74 cannot write, 130 stopped.\n";

}  // namespace mainbore::cli
