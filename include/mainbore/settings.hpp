// Settings: what is the same for every job of one truck or office, said once: its own machine, the utility's rules, the
// units and the language of results, the crew.
//
// A job and the command line come first; settings stand only where they say nothing. A machine is taken whole or not at
// all: a job that says anything of its machine takes none of the settings'. The lengths of saddle, stop and adapter are those
// of the tap's size, each where the job does not give it; an adapter goes with the machine of the settings alone. A fact taken from settings is stated, not
// assumed. Whatever is taken is listed with the answer.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "mainbore/job.hpp"
#include "mainbore/language.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/nominal_size.hpp"

namespace mainbore {

using SettingValue = std::variant<std::string, Measure, NominalSize, int>;
struct SettingTaken {
  std::string path;  // "machine.chain_length", "service.stop_length", "crew", "units", "rules" (once a file)
  SettingValue value;
};

// One thing that is on the truck, by its name on the load list or its stock number on the approved list.
struct AboardItem {
  std::string item;                 // key of a load list: "corporation-stop"; empty: by its stock number alone
  std::string stock;                // as on the approved list; empty: it has none
  std::optional<NominalSize> size;  // of the tap
  std::optional<Length> od_from;    // outside diameters that a saddle, sleeve, seat or clamp takes
  std::optional<Length> od_to;
  std::optional<Length> length;  // of a chain
  int count = 1;
};
using Aboard = std::vector<AboardItem>;

// What an answer took from a settings file.
struct FromSettings {
  std::string file;  // as it was named; empty: there was none
  std::vector<SettingTaken> taken;
  std::vector<std::string> set_aside;    // "machine", "crew", "units": the job or the command line says otherwise
  std::shared_ptr<const Aboard> aboard;  // what is on the truck; null: nobody has said

  [[nodiscard]] bool any() const { return !file.empty(); }
};

// What stands on the truck for taps of one size, as measured with a tape.
struct FittingLengths {
  NominalSize tap;
  std::optional<Length> saddle_height;     // from the pipe to the outlet face of the saddle
  std::optional<Length> stop_length;       // corporation stop from end to end
  std::optional<Length> adapter_standoff;  // end of the adapter on the stop to the cutter's edge, bar drawn back
};

// The path under which the name of whoever reviewed a translation is listed.
inline constexpr std::string_view translation_reviewed_by = "translation_reviewed_by";

struct Settings {
  std::string file;  // as it was named; empty: there is none
  MachineFacts machine;
  std::vector<SettingTaken> machine_facts;  // the same, one by one
  std::vector<FittingLengths> fittings;     // each tap once
  std::string crew;
  std::optional<UnitSystem> units;
  std::optional<Language> language;
  std::string translation_reviewed_by;   // who has reviewed the translation for the utility; empty: nobody
  std::string approved;                  // file of approved fittings as written, seen from the same folder; empty: none
  std::shared_ptr<const Aboard> aboard;  // what is on the truck; null: nobody has said
  std::vector<std::string> rules;        // files as written, seen from the settings file's folder; laid in this order
};

// Lays machine, fittings and crew under the job, and adds to `from` what was taken and what was set aside.
void lay_settings_under(Job& job, const Settings& settings, FromSettings& from);

// The system asked for, else that of the settings, else us. `from` as above.
[[nodiscard]] UnitSystem units_in_force(const Settings& settings, std::optional<UnitSystem> asked, FromSettings& from);

// The language asked for, else that of the settings, else English. What is not `translated` is English.
[[nodiscard]] Language language_in_force(const Settings& settings, std::optional<Language> asked, bool translated,
                                         FromSettings& from);

}  // namespace mainbore
