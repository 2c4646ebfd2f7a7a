#include "mainbore/sheet.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/readings_file.hpp"
#include "mainbore/tap_record.hpp"
#include "mainbore/work.hpp"
#include "report/html_writer.hpp"
#include "support/catch.hpp"
#include "support/plain_numbers.hpp"
#include "unit/sheet/sheet_jobs.hpp"
#include "work/filled_words.hpp"

namespace mainbore {
namespace {

using test::plain_numbers;
using test::plan_of;
using test::sheet_jobs;
using test::sound_job;

std::string escaped(std::string_view text) {
  std::string out;
  report::append_escaped(out, text);
  return out;
}

bool holds_text(const std::string& page, std::string_view text) {
  return page.find(escaped(text)) != std::string::npos;
}

std::size_t times(const std::string& page, std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = page.find(text); at != std::string::npos; at = page.find(text, at + 1)) ++count;
  return count;
}

// A strict reader of the little markup there is: the names of elements left open or closed wrongly, and bare
// characters.
std::string fault_of(const std::string& page) {
  std::vector<std::string> open;
  // The script holds no < and no &, so that it is text like any other.
  std::size_t at = page.find("<html");
  while (at < page.size()) {
    const std::size_t next = page.find('<', at);
    const std::string_view text = std::string_view(page).substr(at, std::min(next, page.size()) - at);
    for (std::size_t i = text.find('&'); i != std::string_view::npos; i = text.find('&', i + 1)) {
      const std::string_view entity = text.substr(i, text.find(';', i) - i + 1);
      if (entity != "&amp;" && entity != "&lt;" && entity != "&gt;" && entity != "&quot;")
        return "bare & in " + std::string(text);
    }
    if (next == std::string::npos) break;
    const std::size_t close = page.find('>', next);
    if (close == std::string::npos) return "tag without an end";
    const std::string tag = page.substr(next + 1, close - next - 1);
    if (std::count(tag.begin(), tag.end(), '"') % 2 != 0) return "quote in " + tag;
    if (tag.front() == '/') {
      if (open.empty() || open.back() != tag.substr(1)) return "wrong end " + tag;
      open.pop_back();
    } else if (tag.back() != '/') {
      open.push_back(tag.substr(0, tag.find(' ')));
    }
    at = close + 1;
  }
  return open.empty() ? "" : "open " + open.back();
}

TEST_CASE("a sheet is well-formed, small, and stands on its own", "[sheet]") {
  for (const auto& [name, job] : sheet_jobs()) {
    for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
      const std::string page = plain_numbers(sheet_html(plan_of(job), system));
      INFO(name);
      CHECK(fault_of(page) == "");
      CHECK(page.size() < 200'000);
      CHECK(page.starts_with("<!DOCTYPE html>\n<html lang=\"en\">"));
      CHECK(times(page, "<script") == 1);
      CHECK(times(page, "<style") == 1);
      CHECK(times(page,
                  "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src 'sha256-") ==
            1);
      CHECK(page.find(" onclick") == std::string::npos);
      CHECK(page.find("://") == std::string::npos);
      CHECK(page.find("@import") == std::string::npos);
      CHECK(page.find("\"nan") == std::string::npos);
      CHECK(page.find(" nan") == std::string::npos);
    }
  }
}

TEST_CASE("the same plan gives the same bytes", "[sheet]") {
  for (const auto& [name, job] : sheet_jobs()) {
    INFO(name);
    CHECK(sheet_html(plan_of(job), UnitSystem::us) == sheet_html(plan_of(job), UnitSystem::us));
  }
}

TEST_CASE("a sheet says all that the crew must know", "[sheet]") {
  for (const auto& [name, job] : sheet_jobs()) {
    const Plan plan = plan_of(job);
    const std::string page = plain_numbers(sheet_html(plan, UnitSystem::us));
    INFO(name);
    const auto verdict = plan.verdict == Verdict::go     ? "<h1>GO"
                         : plan.verdict == Verdict::hold ? "<h1>HOLD"
                                                         : "<h1>NO-GO";
    CHECK(page.find(verdict) != std::string::npos);
    for (const Caution& caution : cautions(plan, UnitSystem::us)) CHECK(holds_text(page, caution.text));
    std::size_t holds = 0;
    for (const Finding& finding : plan.findings) {
      CHECK(holds_text(page, filled_words(text_of(finding.code).detail, finding, UnitSystem::us, plan.stop_numbers)));
      CHECK(holds_text(page, filled_words(text_of(finding.code).fix, finding, UnitSystem::us, plan.stop_numbers)));
      holds += finding.severity == Severity::hold ? 1 : 0;
    }
    CHECK(times(page, "class=\"boxes\"") == holds);
    for (const Step& step : procedure(plan, UnitSystem::us)) {
      CHECK(holds_text(page, step.action));
      CHECK(holds_text(page, step.hold_point));
    }
    for (const LoadItem& item : load_list(plan, UnitSystem::us)) {
      CHECK(holds_text(page, item.item));
      CHECK(holds_text(page, item.check));
    }
    for (const Step& step : contingencies(plan, UnitSystem::us)) {
      CHECK(holds_text(page, step.condition));
      CHECK(holds_text(page, step.action));
    }
    if (plan.verdict == Verdict::no_go) {
      CHECK(times(page, "<svg") == 0);
      continue;
    }
    for (const StopNumber& stop : plan.stop_numbers) {
      if (stop.at_least) CHECK(holds_text(page, format_measure(*stop.at_least, UnitSystem::us)));
      if (stop.at_most) CHECK(holds_text(page, format_measure(*stop.at_most, UnitSystem::us)));
    }
    CHECK(times(page, "<h2>Record") == 1);
  }
}

TEST_CASE("every drawing has a name, a description and a caption", "[sheet]") {
  for (const auto& [name, job] : sheet_jobs()) {
    const std::string page = plain_numbers(sheet_html(plan_of(job), UnitSystem::us));
    INFO(name);
    const std::size_t signs = times(page, "class=\"sign\"");  // beside the word they stand for
    const std::size_t drawings = times(page, "<svg") - signs;
    CHECK(times(page, "aria-hidden=\"true\"") == signs);
    CHECK(times(page, "role=\"img\"") == drawings);
    CHECK(times(page, "<desc id=") == drawings);
    CHECK(times(page, "<title id=") == drawings);
    CHECK(times(page, "<figcaption>") == times(page, "<figure>"));
    CHECK(times(page, "<figcaption></figcaption>") == 0);
  }
}

TEST_CASE("threads in the page are threads in the plan", "[sheet]") {
  for (const auto& [name, job] : sheet_jobs()) {
    const Plan plan = plan_of(job);
    if (plan.verdict == Verdict::no_go || plan.method.kind != Method::direct || !plan.engagement) continue;
    const std::string page = plain_numbers(sheet_html(plan, UnitSystem::us));
    INFO(name);
    const auto& fit = plan.engagement->at_least ? *plan.engagement->at_least : plan.engagement->at_nominal;
    const auto whole = static_cast<std::size_t>(fit.complete_threads + 1e-9);
    CHECK(times(page, "tooth whole left") == whole);
    CHECK(times(page, "tooth whole right") == whole);
  }
}

TEST_CASE("pit and pressure are drawn where the plan has them, each number with its path", "[sheet]") {
  for (const auto& [name, job] : sheet_jobs()) {
    const Plan plan = plan_of(job);
    const std::string page = plain_numbers(sheet_html(plan, UnitSystem::us));
    INFO(name);
    const bool cut = plan.verdict != Verdict::no_go;
    CHECK(times(page, "<h3>The pit</h3>") == (cut && plan.excavation ? 1 : 0));
    CHECK(times(page, "<h3>Pressure to the customer</h3>") == (cut && plan.service ? 1 : 0));
    if (!cut || !plan.excavation || !plan.service) continue;
    for (const std::string_view path :
         {"excavation.depth", "excavation.cover", "excavation.bottom.across", "excavation.top.across",
          "excavation.slope", "excavation.spoil.height", "excavation.spoil.base", "excavation.spoil.setback",
          "excavation.way_out.ladder_length", "service.supply", "service.residual_wanted", "service.residual_least",
          "service.line.length", "service.line.rise"}) {
      INFO(path);
      CHECK(times(page, "data-path=\"" + std::string(path) + "\"") == 1);
    }
    for (std::size_t i = 0; i < plan.service->losses.size(); ++i) {
      const Shown left = shown(plan.service->losses[i].left, UnitSystem::us);
      std::string value;
      append_number(value, left.value, left.decimals);
      CHECK(times(page, "data-path=\"service.losses[" + std::to_string(i) + "].left\" data-value=\"" + value + "\"") ==
            1);
    }
  }
}

TEST_CASE("the record block is the form of the record", "[sheet]") {
  for (const auto& [name, job] : sheet_jobs()) {
    const Plan plan = plan_of(job);
    const std::string page = plain_numbers(sheet_html(plan, UnitSystem::si));
    INFO(name);
    const std::size_t begin = std::min(page.find("<section class=\"record\""), page.size());
    const std::string block = page.substr(begin, page.find("</section>", begin) - begin);
    const auto form = record_form(plan);
    CHECK(times(block, "class=\"blank\"") == form.size());
    std::size_t at = 0;
    for (const RecordField& field : form) {
      std::string label =
          ">" + std::string(field.label) + " <i class=\"blank\" data-reads=\"" + std::string(field.key) + "\"></i>";
      if (const auto unit = unit_of(field, UnitSystem::si); !unit.empty()) label += " " + std::string(unit);
      INFO(label);
      at = block.find(label + "</span>", at);
      CHECK(at != std::string::npos);
    }
  }
}

TEST_CASE("the boxes take what the record takes, judged by the bounds as printed", "[sheet]") {
  for (const auto& [name, job] : sheet_jobs()) {
    const Plan plan = plan_of(job);
    INFO(name);
    for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
      const std::string page = plain_numbers(sheet_html(plan, system));
      const bool cut = !record_form(plan).empty();
      REQUIRE(times(page, "<ul class=\"reads\"") == (cut ? 1 : 0));
      for (const RecordField& field : record_form(plan)) CHECK(record_entry_named(field.key) != nullptr);
      for (const StopNumber& reading : plan.stop_numbers) {
        const BoundTexts bounds = printed_bounds(reading, system);
        // As printed, and never beyond what was worked out.
        for (const std::string& bound : {bounds.least, bounds.most}) {
          CHECK(bounds_in_words(reading, system).find(bound) != std::string::npos);
        }
        if (reading.at_least) {
          const auto printed = parse_measure(bounds.least, reading.kind());
          REQUIRE(printed);
          CHECK(printed.value.base() >= reading.at_least->base() - 1e-4);
          if (cut) CHECK(page.find("data-least=\"" + escaped(bounds.least) + "\"") != std::string::npos);
        }
        if (reading.at_most) {
          const auto printed = parse_measure(bounds.most, reading.kind());
          REQUIRE(printed);
          CHECK(printed.value.base() <= reading.at_most->base() + 1e-4);
          if (cut) CHECK(page.find("data-most=\"" + escaped(bounds.most) + "\"") != std::string::npos);
        }
      }
    }
  }
}

TEST_CASE("what can be of a reading is what can be of its fact", "[sheet]") {
  const Catalog& catalog = Catalog::builtin();
  for (const RecordEntry& entry : record_entries()) {
    if (entry.type != RecordType::quantity) continue;
    INFO(entry.name);
    const UnitSystem us = UnitSystem::us;
    const auto reads = [&](double base) {
      const Shown as_shown = shown(Measure(base, entry.kind), us);
      std::string text;
      append_number(text, entry.kind == Kind::distance ? base / 12.0 : base, 6);
      const Setting setting{std::string(entry.name), text + ' ' + std::string(as_shown.unit), ""};
      return readings_from_settings({&setting, 1}, catalog).readings.has_value();
    };
    REQUIRE(entry.least < entry.greatest);
    CHECK(reads(entry.least));
    CHECK(reads(entry.greatest));
    CHECK_FALSE(reads(entry.least - 0.001));
    CHECK_FALSE(reads(entry.greatest + 0.001));
  }
}

TEST_CASE("the plan document has the same form, and a script's short one has not", "[sheet]") {
  for (const auto& [name, job] : sheet_jobs()) {
    const Plan plan = plan_of(job);
    INFO(name);
    std::string form;
    for (const RecordField& field : record_form(plan)) {
      form += form.empty() ? "" : ",";
      form += "{\"field\":\"" + std::string(field.key) + "\",\"label\":\"" + std::string(field.label) + "\"";
      if (const auto unit = unit_of(field, UnitSystem::us); !unit.empty())
        form += ",\"in_unit\":\"" + std::string(unit) + "\"";
      form += "}";
    }
    CHECK(times(plan_to_json(plan, UnitSystem::us, JsonStyle::compact), "\"record\":[" + form + "]") == 1);
    std::string decisions;
    append_plan_json(decisions, plan, UnitSystem::us, JsonStyle::compact, PlanScope::decisions);
    CHECK(times(decisions, "\"record\"") == 0);
  }
}

TEST_CASE("nobody's words get into the markup", "[sheet]") {
  Job job = sound_job();
  job.id = "<b>&\"'";
  job.place = "</dd></dl><script>alert(1)</script>";
  job.crew = "\x01\xFF crew";
  job.note = "a & b";
  auto machine = std::make_shared<MachineProfile>(*test::truck_machine());
  machine->title = "<i>machine</i>";
  job.machine.given = machine;
  const std::string page = plain_numbers(sheet_html(plan_of(job), UnitSystem::us));
  CHECK(fault_of(page) == "");
  CHECK(times(page, "<script") == 1);
  CHECK(page.find("<script>alert") == std::string::npos);
  CHECK(page.find("data-order=\"" + escaped(job.id) + "\"") != std::string::npos);
  CHECK(page.find("<i>machine") == std::string::npos);
  CHECK(holds_text(page, job.id));
  CHECK(holds_text(page, job.place));
}

TEST_CASE("sheets of one page keep their ids apart", "[sheet]") {
  std::string page;
  append_page_head(page, "Week & more", PageScript::readings);
  int number = 0;
  for (const auto& [name, job] : sheet_jobs()) append_sheet_body(page, plan_of(job), UnitSystem::us, ++number);
  append_page_tail(page, PageScript::readings);
  CHECK(fault_of(page) == "");
  CHECK(page.find("<title>Week &amp; more</title>") != std::string::npos);
  CHECK(times(page, "<article") == static_cast<std::size_t>(number));
  std::set<std::string> ids;
  for (std::size_t at = page.find(" id=\""); at != std::string::npos; at = page.find(" id=\"", at + 1)) {
    CHECK(ids.insert(page.substr(at + 5, page.find('"', at + 5) - at - 5)).second);
  }
  CHECK(ids.size() > 20);
}

TEST_CASE("a sheet is the card, the order of work and what comes after, each phase to jump to", "[sheet]") {
  for (const auto& [name, job] : sheet_jobs()) {
    const Plan plan = plan_of(job);
    const std::string page = plain_numbers(sheet_html(plan, UnitSystem::us));
    INFO(name);
    const bool cut = plan.verdict != Verdict::no_go;
    // Where the order of work has no room on a page of its own, what comes after runs on behind it.
    const std::size_t pages = times(page, "<section class=\"page");
    CHECK((cut ? pages == 2 || pages == 3 : pages == 1));
    std::set<std::string_view> phases;
    std::size_t strips = 0;
    const auto steps = procedure(plan, UnitSystem::us);
    for (const Step& step : steps) {
      phases.insert(step.phase);
      strips += step.moves_valves ? 1 : 0;
    }
    CHECK(times(page, "<a href=\"#") == (cut ? phases.size() + 2 : 0));
    for (std::size_t i = 1; i <= phases.size(); ++i) {
      CHECK(times(page, "\"#s1-phase" + std::to_string(i) + "\"") == 1);
      CHECK(times(page, "id=\"s1-phase" + std::to_string(i) + "\"") == 1);
    }
    // Each of valve, bypass, bleed and chamber, with the legend's four where there are any.
    CHECK(times(page, "class=\"now\"") == strips);
    CHECK(times(page, "class=\"sign\"") == (strips == 0 ? 0 : 4 * strips + 4));
  }
}

}  // namespace
}  // namespace mainbore
