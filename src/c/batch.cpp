#include "batch/batch.hpp"

#include <cstring>
#include <string>
#include <string_view>

#include "c/errors.hpp"
#include "c/planner.hpp"

namespace mainbore::c {
namespace {

// Thrown through the batch, and caught at the border.
struct Stopped {};

std::optional<batch::InputFormat> format_of(int in, std::string_view orders) {
  switch (in) {
    case MAINBORE_ANY:
      return batch::format_of(orders.substr(0, 4096));
    case MAINBORE_NDJSON:
      return batch::InputFormat::ndjson;
    case MAINBORE_JSON:
      return batch::InputFormat::json;
    case MAINBORE_CSV:
      return batch::InputFormat::csv;
    case MAINBORE_GEOJSON:
      return batch::InputFormat::geojson;
    default:
      return std::nullopt;
  }
}

io::ByteSource bytes_of(std::string_view text) {
  return [text](char* to, std::size_t room) mutable {
    const std::size_t size = std::min(room, text.size());
    std::memcpy(to, text.data(), size);
    text.remove_prefix(size);
    return size;
  };
}

mainbore_tally counted(const batch::Tally& tally) {
  const auto number = [](std::uint64_t count) { return static_cast<unsigned long>(count); };
  return {number(tally.go),    number(tally.hold),       number(tally.office),
          number(tally.no_go), number(tally.unreadable), number(tally.internal)};
}

int status_of(const batch::Tally& tally) {
  if (tally.internal > 0) return MAINBORE_INTERNAL;
  if (tally.unreadable > 0) return MAINBORE_UNREADABLE;
  if (tally.no_go > 0) return MAINBORE_NO_GO;
  return tally.hold > 0 ? MAINBORE_HOLD : MAINBORE_GO;
}

batch::BatchOptions options_of(const mainbore_planner& planner, const mainbore_batch_options& given,
                               const Asked& asked) {
  batch::BatchOptions options;
  Asked without_language = asked;
  without_language.language.reset();
  InForce taken = in_force(planner, without_language);
  std::erase(taken.from.set_aside, "language");  // records have none
  options.from_settings = std::move(taken.from);
  options.units = taken.units;
  options.settings = &planner.settings;
  options.format = asked.kind == MAINBORE_VERDICT ? batch::BatchFormat::verdicts : batch::BatchFormat::plans;
  options.scope = asked.kind == MAINBORE_PLAN ? PlanScope::whole : PlanScope::decisions;
  options.rows = asked.rows;
  options.jobs = given.jobs;
  options.rows_before = given.rows_before;
  options.lines_before = static_cast<std::int64_t>(given.lines_before);
  return options;
}

}  // namespace
}  // namespace mainbore::c

int mainbore_batch(const mainbore_planner* planner, const char* orders, size_t size,
                   const mainbore_batch_options* options, mainbore_receiver receiver, void* context,
                   mainbore_tally* tally, char** result) {
  using namespace mainbore::c;
  namespace batch = mainbore::batch;
  if (result != nullptr) *result = nullptr;
  if (tally != nullptr) *tally = {};
  if (planner == nullptr || receiver == nullptr || result == nullptr || (orders == nullptr && size > 0)) {
    return refused(result, "planner, orders, receiver and result must not be null");
  }
  const mainbore_batch_options given = options == nullptr ? mainbore_batch_options{} : *options;
  const std::string_view text(size == 0 ? "" : orders, size);
  const auto asked = asked_by(given.what);
  const auto in = format_of(given.in, text);
  if (!asked || asked->kind > MAINBORE_DECISIONS || !in || given.jobs < 0) {
    return refused(result, "an option is not one of those that mainbore.h lists");
  }
  return guarded(result, [&] {
    const batch::BatchOptions how = options_of(*planner, given, *asked);
    batch::Tally so_far;
    batch::BatchResult done;
    try {
      done = batch::plan_orders(bytes_of(text), *in, "orders", planner->planner, how, [&](batch::Piece& piece) {
        so_far += piece.tally;
        if (receiver(context, piece.out.data(), piece.out.size()) != 0) throw Stopped();
      });
    } catch (const Stopped&) {
      if (tally != nullptr) *tally = counted(so_far);
      return MAINBORE_STOPPED;
    }
    if (tally != nullptr) *tally = counted(so_far);
    if (done.faults.empty()) return status_of(so_far);
    *result = handed_out(faults_to_json(done.faults));
    return MAINBORE_UNREADABLE;
  });
}

int mainbore_batch_text(const mainbore_planner* planner, const char* orders, size_t size,
                        const mainbore_batch_options* options, mainbore_tally* tally, char** records, char** result) {
  using namespace mainbore::c;
  if (result != nullptr) *result = nullptr;
  if (records == nullptr) return refused(result, "records must not be null");
  *records = nullptr;
  const mainbore_receiver append = [](void* context, const char* piece, size_t piece_size) {
    static_cast<std::string*>(context)->append(piece, piece_size);
    return 0;
  };
  std::string all;
  mainbore_tally counted = {};
  const int status = mainbore_batch(planner, orders, size, options, append, &all, &counted, result);
  if (tally != nullptr) *tally = counted;
  const bool broken_off = status == MAINBORE_INTERNAL && counted.internal == 0;
  if (status == MAINBORE_USAGE || broken_off || *result != nullptr) return status;
  *records = handed_out(all);
  return *records == nullptr ? MAINBORE_INTERNAL : status;
}
