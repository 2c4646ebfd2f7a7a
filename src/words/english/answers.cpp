#include "words/asking.hpp"
#include "words/tables.hpp"

namespace mainbore::words::english {
namespace {

constexpr std::string_view yes[] = {"yes", "y", "true"};
constexpr std::string_view no[] = {"no", "n", "false"};
constexpr std::string_view not_known[] = {"don'tknow", "dontknow",   "don’tknow", "donotknow", "idon'tknow",
                                          "idontknow", "idon’tknow", "unknown",   "notknown",  "noidea",
                                          "notsure",   "dunno",      "idk",       "dk",        "cannottell"};
constexpr std::string_view help[] = {"?", "help"};
constexpr std::string_view back[] = {"back"};
constexpr std::string_view stop[] = {"stop", "quit", "exit", "cancel"};
constexpr std::string_view nothing[] = {"nothing", "nothingmore", "none", "nomore", "no"};
constexpr std::string_view no_text[] = {"none", "n/a", "no"};

constexpr AnswerWords words{.yes = yes,
                            .no = no,
                            .not_known = not_known,
                            .help = help,
                            .back = back,
                            .stop = stop,
                            .nothing = nothing,
                            .no_text = no_text,
                            .units = {}};

}  // namespace

const AnswerWords& answers() { return words; }

}  // namespace mainbore::words::english
