#include "batch/order_planner.hpp"

#include <exception>
#include <new>
#include <utility>

#include "mainbore/job_file.hpp"
#include "mainbore/plan.hpp"

namespace mainbore::batch {
namespace {

Diagnostic fault_of_file(const std::string& file_name, const OrderText& text) {
  Diagnostic told;
  told.code = "json.syntax";
  told.file = file_name;
  told.line = text.line;
  told.message = text.fault;
  return told;
}

Diagnostic fault_of_program(const std::string& file_name, const OrderRecord& order, const char* what) {
  Diagnostic told;
  told.code = "order.internal-error";
  told.file = file_name;
  told.line = order.line;
  told.message = std::string("internal error, the order is not planned: ") + what;
  told.help = "this is a fault of the program: report it with the order, and have an engineer plan the tap";
  return told;
}

// An order whose braces or quotes do not match, so that what follows may have gone with it.
Diagnostic broken_order(const std::string& file_name, const OrderText& text, bool rows) {
  Diagnostic told;
  told.code = "json.syntax";
  told.file = file_name;
  told.line = text.line;
  told.message = text.unread_to == 0
                     ? "braces or quotes do not match"
                     : "what stands between here and " +
                           (rows ? "line " + std::to_string(text.unread_to) : "the next order that is sure") +
                           " was not read, and may hold other orders";
  told.help = "mend the brace or quote, and plan the file again";
  return told;
}

// How much of each plan goes into the records.
PlanDepth depth_of(BatchFormat format, PlanScope scope) {
  if (format == BatchFormat::plans) return scope == PlanScope::whole ? PlanDepth::whole : PlanDepth::decisions;
  return format == BatchFormat::week ? PlanDepth::whole : PlanDepth::verdict;
}

io::RecordShape shape_of(BatchFormat format) {
  switch (format) {
    case BatchFormat::verdicts:
      return io::RecordShape::line;
    case BatchFormat::table:
      return io::RecordShape::row;
    case BatchFormat::features:
      return io::RecordShape::feature;
    default:
      return io::RecordShape::none;
  }
}

}  // namespace

OrderPlanner::OrderPlanner(const Planner& planner, const BatchOptions& options, const std::string& file_name,
                           InputFormat in, const io::OrderTable* table, std::span<const std::string> kept)
    : planner_(planner), options_(options), file_name_(file_name), reader_(planner.catalog()) {
  record_.units = options.units;
  record_.rows = options.rows;
  record_.kept = kept;
  if (options.name_files) record_.file = file_name_;
  remembers_ = options.remember && depth_of(options.format, options.scope) == PlanDepth::verdict;
  if (table != nullptr) {
    table_ = *table;
  } else if (in == InputFormat::geojson || options.map != nullptr) {
    rows_.emplace(planner.catalog(), options.map, file_name_, options.keep, in == InputFormat::geojson,
                  options.format == BatchFormat::features);
  } else if (options.keep != nullptr && options.keep->any()) {
    members_.emplace(*options.keep);
  }
}

const io::MemberRows::Met& OrderPlanner::met() const {
  static const io::MemberRows::Met nothing;
  return rows_ ? rows_->met() : members_ ? members_->met() : nothing;
}

void OrderPlanner::plan(Piece& piece) {
  for (const OrderText& text : piece.texts) plan_text(piece, text);
  for (std::size_t row = 0; row < piece.row_count; ++row) plan_row(piece, piece.rows[row]);
}

void OrderPlanner::plan_row(Piece& piece, const io::CsvRecord& row) {
  is_new_ = false;
  if (table_->begin(row, order_)) {
    if (is_asked()) {
      const auto facts = table_->facts(row);
      if (facts && recall(piece, *facts)) return;
    }
    table_->read_facts(row, order_);
    is_new_ = is_new_ && table_->repeats();
  }
  finish(piece, order_.job ? &*order_.job : nullptr);
}

void OrderPlanner::plan_text(Piece& piece, const OrderText& text) {
  is_new_ = false;
  order_.row = text.row;
  order_.line = text.line;
  order_.diagnostics.clear();
  order_.kept.clear();
  feature_ = nullptr;
  if (!text.fault.empty()) {
    order_.id.clear();
    order_.diagnostics.push_back(fault_of_file(file_name_, text));
    return finish(piece, nullptr);
  }
  const std::string_view json = std::string_view(piece.bytes).substr(text.begin, text.size);
  if (rows_) plan_members(piece, text, json);
  else plan_job_text(piece, text, json);
}

// Records without rows are the same in whatever piece of the file their order stands: lines count from its own first.
void OrderPlanner::plan_members(Piece& piece, const OrderText& text, std::string_view json) {
  const auto nodes = std::span(piece.nodes).subspan(text.first_node, text.node_count);
  const bool begun = rows_->begin(json, options_.rows ? text.first_line : 1, order_, nodes);
  const auto place = [&] {
    order_.row = text.row;
    order_.line = text.line;
  };
  if (text.broken) {
    if (begun) rows_->read_facts();
    place();
    order_.kept.clear();  // they may be another order's
    return finish_broken(piece, text);
  }
  place();
  feature_ = rows_->feature();
  if (begun) {
    if (is_asked()) {
      const auto facts = rows_->facts();
      if (facts && recall(piece, *facts)) return;
    }
    rows_->read_facts();
    is_new_ = is_new_ && rows_->repeats();
  }
  finish(piece, order_.job ? &*order_.job : nullptr);
}

void OrderPlanner::plan_job_text(Piece& piece, const OrderText& text, std::string_view json) {
  if (!text.broken) {
    reader_.open(members_ ? members_->without_kept(json, order_.kept) : json);
    if (is_asked()) {
      if (const auto facts = reader_.facts()) {
        order_.id.assign(facts->id);
        if (recall(piece, facts->written)) return;
      }
    }
    if (Job* const job = reader_.read()) return finish(piece, job);
    if (members_) json = members_->with_blanks(json);
  }
  // Whatever the fast reader does not take is for the full one to accept or to explain.
  is_new_ = false;
  JobFile read = read_job(json, file_name_, planner_.catalog(), {}, options_.rows ? text.first_line : 1);
  order_.id = std::move(read.id);
  order_.job = std::move(read.job);
  order_.diagnostics = std::move(read.diagnostics);
  if (text.broken) return finish_broken(piece, text);
  finish(piece, order_.job ? &*order_.job : nullptr);
}

// What was read of it, if anything, is not planned.
void OrderPlanner::finish_broken(Piece& piece, const OrderText& text) {
  if (order_.job || text.unread_to > 0) order_.diagnostics.push_back(broken_order(file_name_, text, options_.rows));
  order_.job.reset();
  finish(piece, nullptr);
}

// An order that says what one before it said: the same was decided of it.
bool OrderPlanner::recall(Piece& piece, std::string_view facts) {
  const io::Decision* const known = memory_.find(facts);
  is_new_ = known == nullptr;
  if (is_new_) return false;
  write(piece, known);
  piece.tally.add(known->verdict, known->waits_for);
  ++piece.tally.recalled;
  return true;
}

void OrderPlanner::finish(Piece& piece, Job* job) {
  if (job == nullptr) {
    ++piece.tally.unreadable;
    return write(piece, nullptr);
  }
  // One order's fault is one record that says so: the orders behind it are planned all the same.
  const std::size_t written = piece.out.size();
  const std::size_t ids = piece.ids.size();
  const std::size_t id_texts = piece.id_texts.size();
  order_.id = job->id;
  try {
    plan_order(piece, *job);
  } catch (const std::bad_alloc&) {
    throw;
  } catch (const std::exception& fault) {
    piece.out.resize(written);
    piece.ids.resize(ids);
    piece.id_texts.resize(id_texts);
    order_.diagnostics = {fault_of_program(file_name_, order_, fault.what())};
    ++piece.tally.unreadable;
    ++piece.tally.internal;
    write(piece, nullptr);
  }
}

void OrderPlanner::plan_order(Piece& piece, Job& job) {
  FromSettings from;
  if (options_.settings != nullptr && !options_.settings->file.empty()) {
    from = options_.from_settings;
    lay_settings_under(job, *options_.settings, from);
  }
  Plan plan = planner_.plan(std::move(job), depth_of(options_.format, options_.scope));
  plan.from_settings = std::move(from);
  io::decide(decision_, plan, shape_of(options_.format), options_.units);
  write(piece, &decision_, &plan);
  piece.tally.add(decision_.verdict, decision_.waits_for);
  if (is_new_ && order_.remarks.empty()) memory_.keep(decision_);
}

// `plan` is there where there is a decision and the records hold more than that.
void OrderPlanner::write(Piece& piece, const io::Decision* decision, const Plan* plan) {
  if (!order_.id.empty()) {
    piece.id_texts += order_.id;
    piece.ids.push_back({order_.id.size(), order_.row, order_.line});
  }
  switch (options_.format) {
    case BatchFormat::verdicts:
      return io::append_verdict_json(piece.out, order_, decision, record_);
    case BatchFormat::plans:
      return io::append_plan_record(piece.out, order_, plan, options_.scope, record_);
    case BatchFormat::table:
      return io::append_verdict_row(piece.out, order_, decision, record_);
    case BatchFormat::features:
      return io::append_verdict_feature(piece.out, order_, decision, feature_, record_);
    case BatchFormat::week:
      piece.week.push_back(report::week_order(
          order_, plan, {options_.units, record_.file, options_.sheets, options_.orders_before, options_.language}));
  }
}

}  // namespace mainbore::batch
