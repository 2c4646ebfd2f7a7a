#include "interview/readings_asked.hpp"

#include <istream>
#include <ostream>

#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "mainbore/readings_file.hpp"
#include "mainbore/report.hpp"
#include "mainbore/tap_record.hpp"
#include "mainbore/work.hpp"

namespace mainbore::interview {
namespace {

class Asking {
 public:
  Asking(std::istream& in, std::ostream& out, const Catalog& catalog) : in_(in), out_(out), catalog_(catalog) {}

  // False: stopped.
  bool ask(const std::string& path, const std::string& question, const std::string& more) {
    for (;;) {
      out_ << question << " > " << std::flush;
      std::string line;
      if (!std::getline(in_, line)) return false;
      const std::string answer(io::trimmed(line));
      const std::string plain = io::plain_name(answer);
      if (answer.empty()) return true;
      if (plain == "stop" || plain == "quit") return false;
      if (plain == "?" || plain == "help") {
        out_ << "  " << more << '\n';
        continue;
      }
      const Setting setting{path, answer, path};
      const ReadingsFile read = readings_from_settings(std::span(&setting, 1), catalog_);
      if (read.readings) {
        answers.push_back(setting);
        return true;
      }
      for (const Diagnostic& told : read.diagnostics) out_ << "  " << told.message << "; " << told.help << '\n';
    }
  }

  std::vector<Setting> answers;

 private:
  std::istream& in_;
  std::ostream& out_;
  const Catalog& catalog_;
};

std::string question_of(const RecordEntry& entry, const Plan& plan, UnitSystem units) {
  std::string text(entry.label);
  if (const Reading* stop_number = entry.reading ? plan.reading(*entry.reading) : nullptr) {
    text += " (" + bounds_in_words(*stop_number, units) + ')';
  }
  return text;
}

}  // namespace

std::optional<std::vector<Setting>> ask_readings(std::istream& in, std::ostream& out, const Plan& plan,
                                                 UnitSystem units, const Catalog& catalog) {
  out << "Enter leaves a reading unread, \"?\" says more, \"stop\" leaves and records nothing.\n";
  Asking asking(in, out, catalog);
  for (const RecordEntry& entry : record_entries()) {
    if (entry.key == RecordKey::order || (entry.needed == Needed::direct_tap && plan.method.kind != Method::direct))
      continue;
    const std::string more = std::string(entry.help) + "; " + allowed_for(entry, catalog);
    if (!asking.ask(std::string(entry.name), question_of(entry, plan, units), more)) return std::nullopt;
  }
  for (const Finding& finding : plan.findings) {
    if (finding.severity != Severity::hold) continue;
    const std::string path = "holds." + std::string(name_of(finding.code));
    const std::string more = fix_of(finding, units, plan.readings);
    const std::size_t before = asking.answers.size();
    if (!asking.ask(path + ".found", "Hold, " + std::string(text_of(finding.code).title) + ": found", more))
      return std::nullopt;
    if (asking.answers.size() == before) continue;
    if (!asking.ask(path + ".by", "  cleared by", more)) return std::nullopt;
  }
  return std::move(asking.answers);
}

}  // namespace mainbore::interview
