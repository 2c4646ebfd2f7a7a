// A record of a tap as JSON.
#include "io/text/json_writer.hpp"
#include "mainbore/readings_file.hpp"
#include "mainbore/work.hpp"

namespace mainbore {
namespace {

class RecordWriter {
 public:
  RecordWriter(std::string& out, const TapRecord& record, UnitSystem units, JsonStyle style)
      : out_(out, style), record_(record), units_(units) {}

  void write() {
    out_.begin_object();
    out_.whole("format", 1);
    head();
    verdicts();
    out_.flag("complete", record_.is_complete());
    out_.flag("void", record_.is_void());
    out_.text("leak_check", leak_check_names[static_cast<std::size_t>(record_.leak_check())]);
    out_.begin_array("because");
    for (const VoidReason& why : record_.because) {
      out_.begin_object();
      out_.text("code", why.code);
      out_.text("text", why.text);
      out_.end_object();
    }
    out_.end_array();
    missing();
    stop_numbers();
    holds();
    deviations();
    as_built();
    out_.end_object();
  }

 private:
  void put(std::string_view key, std::string_view text) {
    if (!text.empty()) out_.text(key, text);
  }

  void head() {
    const Job& job = record_.planned.job;
    put("id", job.id.empty() ? record_.readings.text(RecordKey::order) : std::string_view(job.id));
    out_.whole("tap_number", record_.readings.tap_number());
    put("place", job.place);
    put("crew", job.crew);
    out_.begin_object("main");
    out_.text("material", name_of(record_.planned.main.material));
    out_.size("size", record_.planned.main.size);
    put("class", job.main.class_name);
    out_.end_object();
    out_.begin_object("service");
    if (job.service.size) out_.size("size", *job.service.size);
    out_.end_object();
    if (record_.planned.rules != nullptr) put("rules", record_.planned.rules->name);
  }

  void plan(std::string_view key, const Plan& plan) {
    out_.begin_object(key);
    out_.text("verdict", name_of(plan.verdict));
    out_.text("method", name_of(plan.method.kind));
    if (plan.method.kind != Method::none) {
      out_.whole("count", plan.method.count);
      out_.size("tap", plan.method.tap);
      if (plan.method.thread) out_.text("thread", name_of(*plan.method.thread));
      out_.text("clock", plan.location.clock.label());
    }
    out_.end_object();
  }

  void verdicts() {
    out_.text("verdict", name_of(record_.verdict()));
    plan("planned", record_.planned);
    plan("found", record_.found);
  }

  void missing() {
    out_.begin_array("missing");
    for (const Missing& one : record_.missing) {
      out_.begin_object();
      out_.text("name", one.name);
      out_.text("label", one.label);
      out_.end_object();
    }
    out_.end_array();
  }

  void stop_numbers() {
    out_.begin_array("readings");
    for (const JudgedReading& one : record_.judged) {
      out_.begin_object();
      out_.text("id", name_of(one.stop_number.id));
      out_.text("what", words_of(one.stop_number.id));
      if (one.stop_number.at_least) out_.bound("at_least", *one.stop_number.at_least, units_, Toward::more);
      if (one.stop_number.at_most) out_.bound("at_most", *one.stop_number.at_most, units_, Toward::less);
      if (one.value) out_.quantity("value", *one.value, units_);
      out_.text("judged", judged_names[static_cast<std::size_t>(one.judged)]);
      out_.end_object();
    }
    out_.end_array();
  }

  void holds() {
    out_.begin_array("settled");
    for (const FindingCode code : record_.settled) out_.text({}, name_of(code));
    out_.end_array();
    out_.begin_array("holds");
    for (const HoldLeft& hold : record_.holds) {
      out_.begin_object();
      out_.text("code", name_of(hold.code));
      out_.text("clears", name_of(clears_by(hold.code)));
      out_.flag("cleared", hold.is_cleared());
      if (hold.by_reading) out_.text("reading", name_of(*hold.by_reading));
      put("found", hold.found);
      put("by", hold.by);
      out_.end_object();
    }
    out_.end_array();
  }

  void deviations() {
    out_.begin_array("deviations");
    for (const Deviation& one : record_.deviations) {
      out_.begin_object();
      out_.text("what", one.what);
      put("planned", one.planned);
      put("done", one.done);
      put("reason", one.reason);
      out_.end_object();
    }
    out_.end_array();
  }

  void as_built() {
    out_.begin_object("record");
    for (const RecordEntry& entry : record_entries()) {
      if (entry.key == RecordKey::order || entry.key == RecordKey::tap_number) continue;
      const RecordValue& value = record_.readings.at(entry.key);
      const auto* const measure = std::get_if<Measure>(&value);
      constexpr int places = 7;  // a centimeter on the ground
      if (measure == nullptr) put(entry.name, written(value, units_));
      else if (entry.kind == Kind::ratio) out_.number(entry.name, measure->base(), places);
      else out_.quantity(entry.name, *measure, units_);
    }
    out_.end_object();
  }

  io::JsonWriter out_;
  const TapRecord& record_;
  UnitSystem units_;
};

}  // namespace

std::string record_to_json(const TapRecord& record, UnitSystem units, JsonStyle style) {
  std::string out;
  RecordWriter(out, record, units, style).write();
  if (style == JsonStyle::pretty) out += '\n';
  return out;
}

}  // namespace mainbore
