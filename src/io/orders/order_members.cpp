#include "io/orders/order_members.hpp"

#include <algorithm>
#include <array>
#include <tuple>
#include <utility>

#include "io/fast/fast_job.hpp"
#include "io/text/nearest.hpp"
#include "mainbore/job_file.hpp"

namespace mainbore::io {
namespace {

constexpr std::size_t most_names = 4096;  // remembered
constexpr std::size_t longest_name = 200;

void note(std::vector<bool>& flags, std::size_t place) {
  if (flags.size() <= place) flags.resize(place + 1);
  flags[place] = true;
}

bool is_set(const std::vector<bool>& flags, std::size_t place) { return place < flags.size() && flags[place]; }

}  // namespace

MemberRows::MemberRows(const Catalog& catalog, const OrderMap* map, const std::string& file_name,
                       const KeepColumns* keep, bool features, bool given_back)
    : catalog_(catalog),
      map_(map),
      file_name_(file_name),
      keep_(keep != nullptr && keep->any() ? keep : nullptr),
      features_(features),
      given_back_(given_back),
      table_(catalog, map, file_name) {
  record_.from_table = false;
}

bool MemberRows::skim(std::span<const SkimNode> nodes) {
  if (nodes.empty()) return skim_.read(text_, features_ ? "geometry" : "");
  skim_.take(text_, nodes);
  return true;
}

void MemberRows::read(std::string_view text, std::int64_t first_line, OrderRecord& order,
                      std::span<const SkimNode> nodes) {
  if (begin(text, first_line, order, nodes)) read_facts();
}

bool MemberRows::begin(std::string_view text, std::int64_t first_line, OrderRecord& order,
                       std::span<const SkimNode> nodes) {
  text_ = text;
  first_line_ = first_line;
  order_ = &order;
  is_row_ = false;
  feature_ = {};
  faults_.clear();
  order.id.clear();
  order.job.reset();
  order.diagnostics.clear();
  order.remarks.clear();
  order.kept.clear();
  std::uint32_t members = 0;
  if (!skim(nodes) || (!features_ && skim_.node(0).type != JsonType::object)) {
    // One wording of what is wrong with a text.
    JobFile read = read_job(text, file_name_, catalog_, {}, first_line);
    order.id = std::move(read.id);
    order.diagnostics = std::move(read.diagnostics);
    if (order.diagnostics.empty()) fault(0, {"json.syntax", "the text is no order", ""});
    if (order.diagnostics.empty()) order.diagnostics = std::move(faults_);
    return false;
  }
  if (features_ && !open_feature(members)) {
    order.diagnostics = std::move(faults_);
    return false;
  }
  met_.any_order = true;
  record_.text.assign(text);
  record_.unquoted.clear();
  record_.line = first_line;
  record_.not_text = false;
  record_.cells.assign(table_.columns().size(), {});
  given_.assign(record_.cells.size(), false);
  nothing_nearby_ = false;
  met_next_ = 0;
  note_kept(members);
  name_.clear();
  if (skim_.node(members).type == JsonType::object) read_members(members, 0);
  if (const std::size_t second = table_.second_of_a_fact(given_); second != OrderTable::none) {
    faults_.push_back(
        SourceText(text_, file_name_, first_line_)
            .at(record_.span_of(second), "",
                {"job.contradiction", text::quoted(table_.columns()[second].header) + " says a fact again", ""}));
  }
  const bool whole = table_.begin(record_, order);
  order.kept.swap(kept_);
  is_row_ = true;
  if (order.id.empty() && features_) {
    if (const std::uint32_t id = skim_.member(0, "id"); id != 0) order.id = text_of(id);
  }
  if (!whole) tell_faults();
  return whole;
}

// Of an order with a fault of its own nothing is said: not every one of the same facts has it.
std::optional<std::string_view> MemberRows::facts() {
  return faults_.empty() && !nothing_nearby_ ? table_.facts(record_) : std::nullopt;
}

void MemberRows::read_facts() {
  table_.read_facts(record_, *order_);
  if (nothing_nearby_ && order_->job && !order_->job->nearby) order_->job->nearby.emplace();
  tell_faults();
}

void MemberRows::tell_faults() {
  if (faults_.empty()) return;
  OrderRecord& order = *order_;
  order.job.reset();
  order.diagnostics.insert(order.diagnostics.end(), std::make_move_iterator(faults_.begin()),
                           std::make_move_iterator(faults_.end()));
  std::stable_sort(order.diagnostics.begin(), order.diagnostics.end(), [](const Diagnostic& a, const Diagnostic& b) {
    return std::tuple(a.line == 0, a.line, a.column) < std::tuple(b.line == 0, b.line, b.column);
  });
  if (order.diagnostics.size() > most_diagnostics) order.diagnostics.resize(most_diagnostics);
}

bool MemberRows::open_feature(std::uint32_t& members) {
  const auto is_feature = [&] {
    if (skim_.node(0).type != JsonType::object) return false;
    const std::uint32_t type = skim_.member(0, "type");
    return type != 0 && written(skim_.node(type).span) == "\"Feature\"";
  };
  if (!is_feature()) {
    fault(0, {"order.not-a-feature", "not a feature of GeoJSON",
              R"(a feature is {"type": "Feature", "geometry": ..., "properties": {...}})"});
    return false;
  }
  constexpr std::array<std::string_view, 4> keys = {"type", "properties", "geometry", "id"};
  std::array<int, keys.size()> found{};
  skim_.each(0, [&](std::uint32_t child) {
    const auto* const key = std::find(keys.begin(), keys.end(), written(skim_.node(child).key));
    if (key != keys.end()) ++found[static_cast<std::size_t>(key - keys.begin())];
  });
  for (std::size_t key = 0; key < keys.size(); ++key) {
    if (found[key] < 2) continue;
    fault(0, {"job.duplicate-key", text::quoted(keys[key]) + " is given twice", "keep the right one"});
    return false;
  }
  const Span all = skim_.node(0).span;
  feature_.text = written(all);
  const std::uint32_t properties = skim_.member(0, "properties");
  if (properties != 0) {
    const Span span = skim_.node(properties).span;
    feature_.properties = {span.begin - all.begin, span.end - all.begin};
  }
  if (properties == 0 || skim_.node(properties).type != JsonType::object) {
    fault(properties,
          {"order.not-a-feature", "a feature without properties", "the facts of the order stand in \"properties\""});
    return false;
  }
  members = properties;
  return true;
}

// Names of --keep in their order, else every member.
void MemberRows::note_kept(std::uint32_t members) {
  kept_.clear();
  if (keep_ == nullptr && !given_back_) return;
  const bool all = keep_ == nullptr || keep_->all;
  if (!all) {
    for (const std::string& name : keep_->names) kept_.push_back({name, {}, true, false});
  }
  if (skim_.node(members).type != JsonType::object) return;
  skim_.each(members, [&](std::uint32_t child) {
    const SkimNode& node = skim_.node(child);
    const KeptColumn kept = {written(node.key), written(node.span), true, true};
    if (all) kept_.push_back(kept);
    if (keep_ == nullptr || keep_->names.empty()) return;
    const std::size_t place = keep_->place_of(kept.name);
    if (place == keep_->names.size()) return;
    note(met_.kept, place);
    if (!all) kept_[place] = kept;
  });
}

// --- members ----------------------------------------------------------------------------------------------------

// `name_` holds the names of the objects around, up to `prefix`.
void MemberRows::read_members(std::uint32_t object, std::size_t prefix) {
  skim_.each(object, [&](std::uint32_t child) {
    const SkimNode& node = skim_.node(child);
    name_.resize(prefix);
    if (node.key_escaped) append_unescaped(name_, written(node.key));
    else name_.append(written(node.key));
    read_value(child);
  });
}

void MemberRows::read_value(std::uint32_t node) {
  const SkimNode& value = skim_.node(node);
  const std::size_t prefix = name_.size();
  if (value.type == JsonType::object) {
    if (read_quantity(node)) return;
    if (prefix > longest_name || value.next == node + 1) return;
    name_ += '.';
    return read_members(node, prefix + 1);
  }
  const bool of_objects =
      value.type == JsonType::array && value.next > node + 1 && skim_.node(node + 1).type == JsonType::object;
  if (!of_objects) return set_cell(node);
  std::size_t place = 0;
  skim_.each(node, [&](std::uint32_t element) {
    name_.resize(prefix);
    name_ += '[' + std::to_string(place++) + ']';
    if (place <= longest_list) read_value(element);
  });
  name_.resize(prefix);
  if (place > longest_list && is_list(name_)) {
    fault(node, {"json.too-large", "more than " + std::to_string(longest_list) + " entries", ""});
  }
}

// {"value": 82, "unit": "psi"} is a cell that says "82 psi".
bool MemberRows::read_quantity(std::uint32_t object) {
  const std::uint32_t first = object + 1;
  if (skim_.node(object).next == first) return false;
  const std::uint32_t second = skim_.node(first).next;
  if (skim_.node(object).next == second || skim_.node(second).next != skim_.node(object).next) return false;
  const std::uint32_t value = skim_.member(object, "value");
  const std::uint32_t unit = skim_.member(object, "unit");
  if (value == 0 || unit == 0 || skim_.node(value).type != JsonType::number ||
      skim_.node(unit).type != JsonType::string) {
    return false;
  }
  const Named& named = name_met(name_);
  const std::size_t column = named.column;
  if (column == OrderTable::none) {
    unknown_member(object, named);
    return true;
  }
  if (given_[column]) {
    fault(object, {"job.duplicate-key", text::quoted(name_) + " is given twice", ""});
    return true;
  }
  given_[column] = true;
  note(met_.columns, column);
  CsvRecord::Cell& cell = record_.cells[column];
  const Span span = skim_.node(object).span;
  cell.begin = static_cast<std::uint32_t>(span.begin);
  cell.end = static_cast<std::uint32_t>(span.end);
  cell.doubled = true;
  cell.plain = static_cast<std::uint32_t>(record_.unquoted.size());
  record_.unquoted += std::string(written(skim_.node(value).span)) + ' ' + text_of(unit);
  cell.plain_size = static_cast<std::uint32_t>(record_.unquoted.size() - cell.plain);
  return true;
}

std::string MemberRows::text_of(std::uint32_t node) const {
  const SkimNode& value = skim_.node(node);
  std::string_view text = written(value.span);
  if (value.type == JsonType::null) return {};
  if (value.type != JsonType::string) return std::string(text);
  std::string plain;
  append_unescaped(plain, text.substr(1, text.size() - 2));
  return plain;
}

const MemberRows::Named& MemberRows::name_met(std::string_view name) {
  const std::size_t place = met_next_++;
  if (place < usual_.size() && usual_[place]->first == name) return usual_[place]->second;
  const auto known = names_.find(name);
  if (known != names_.end()) {
    if (place < usual_.size()) usual_[place] = &*known;
    else if (place < most_names) usual_.push_back(&*known);
    return known->second;
  }
  Named named = understood(name);
  if (table_.columns().size() > record_.cells.size()) {
    record_.cells.resize(table_.columns().size());
    given_.resize(record_.cells.size());
  }
  if (names_.size() < most_names && name.size() <= longest_name) {
    return names_.emplace(std::string(name), std::move(named)).first->second;
  }
  unremembered_ = std::move(named);
  return unremembered_;
}

MemberRows::Named MemberRows::understood(std::string_view name) {
  Named named;
  if (name.size() <= longest_name) named.column = table_.column_of_member(std::string(name));
  if (named.column != OrderTable::none || (map_ != nullptr && map_->ignore_others)) return named;
  named.problem = table_.not_a_fact(name);
  if (keep_ != nullptr) {
    const std::string_view outermost = name.substr(0, name.find_first_of(".["));
    const bool near = named.problem.help.starts_with("did you mean");
    named.carried = keep_->has(outermost) || keep_->has(name) || (keep_->all && !near);
  }
  return named;
}

void MemberRows::set_cell(std::uint32_t node) {
  const SkimNode& value = skim_.node(node);
  const Named& named = name_met(name_);
  const std::size_t column = named.column;
  if (column == OrderTable::none) return unknown_member(node, named);
  if (given_[column]) return fault(node, {"job.duplicate-key", text::quoted(name_) + " is given twice", ""});
  given_[column] = true;
  note(met_.columns, column);
  CsvRecord::Cell& cell = record_.cells[column];
  const bool text = value.type == JsonType::string;
  cell.begin = static_cast<std::uint32_t>(value.span.begin + (text ? 1 : 0));
  cell.end =
      static_cast<std::uint32_t>(value.type == JsonType::null ? value.span.begin : value.span.end - (text ? 1 : 0));
  if (!value.escaped) return;
  cell.doubled = true;
  cell.plain = static_cast<std::uint32_t>(record_.unquoted.size());
  append_unescaped(record_.unquoted, written({cell.begin, cell.end}));
  cell.plain_size = static_cast<std::uint32_t>(record_.unquoted.size() - cell.plain);
  if (std::string_view(record_.unquoted).substr(cell.plain).find('\0') != std::string_view::npos)
    record_.not_text = true;
}

// A list with nothing in it says that somebody looked.
void MemberRows::unknown_member(std::uint32_t node, const Named& named) {
  if (map_ != nullptr && map_->ignore_others) return;
  const SkimNode& value = skim_.node(node);
  if (value.type == JsonType::array && value.next == node + 1 && same_name(name_, "nearby")) {
    nothing_nearby_ = true;
    return;
  }
  if (!named.carried) fault(node, named.problem);
}

void MemberRows::fault(std::uint32_t node, Problem problem) {
  if (faults_.size() == most_diagnostics) return;
  const SkimNode& at = skim_.node(node);
  const Span span = at.key.end > 0 ? Span{at.key.begin - 1, at.key.end + 1} : Span{at.span.begin, at.span.begin + 1};
  faults_.push_back(SourceText(text_, file_name_, first_line_).at(span, "", std::move(problem)));
}

std::vector<std::string> MemberRows::not_read() const {
  std::vector<std::string> names;
  for (const auto& [name, named] : names_) {
    if (named.column == OrderTable::none) names.push_back(name);
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::optional<std::string> members_around_features(std::string_view collection, bool comma_behind) {
  JsonSkim skim;
  if (!skim.read(collection) || skim.node(0).type != JsonType::object) return std::nullopt;
  std::string members;
  skim.each(0, [&](std::uint32_t child) {
    const SkimNode& node = skim.node(child);
    const std::string_view key = collection.substr(node.key.begin, node.key.end - node.key.begin);
    if (key == "type" || key == "features") return;
    if (!comma_behind) members += ",\n";
    append_json_as_written(members, collection.substr(node.key.begin - 1, node.span.end - node.key.begin + 1), false);
    if (comma_behind) members += ",\n";
  });
  return members;
}

// --- jobs with members of their own ---

JobMembers::JobMembers(const KeepColumns& keep) : keep_(keep) {
  for (const JobField& field : job_fields()) {
    const std::string_view key = field.path.substr(0, field.path.find_first_of(".["));
    if (job_keys_.empty() || job_keys_.back() != key) job_keys_.push_back(key);
  }
}

bool JobMembers::is_carried(std::string_view name) const {
  if (std::find(job_keys_.begin(), job_keys_.end(), name) != job_keys_.end()) return false;
  return keep_.has(name) || (keep_.all && !nearest(name, job_keys_));
}

std::string_view JobMembers::without_kept(std::string_view text, std::vector<KeptColumn>& kept) {
  kept.clear();
  carried_.clear();
  if (!skim_.read(text) || skim_.node(0).type != JsonType::object) return text;
  met_.any_order = true;
  if (!keep_.all) {
    for (const std::string& name : keep_.names) kept.push_back({name, {}, true, false});
  }
  std::size_t last_end = 0;  // of the members that stay
  std::size_t behind_last = 0;
  skim_.each(0, [&](std::uint32_t child) {
    const SkimNode& node = skim_.node(child);
    const KeptColumn one = {text.substr(node.key.begin, node.key.end - node.key.begin),
                            text.substr(node.span.begin, node.span.end - node.span.begin), true, true};
    const std::size_t place = keep_.place_of(one.name);
    if (place < keep_.names.size()) note(met_.kept, place);
    if (keep_.all) kept.push_back(one);
    else if (place < keep_.names.size()) kept[place] = one;
    if (!is_carried(one.name)) {
      last_end = node.span.end;
      behind_last = carried_.size();
      return;
    }
    // With the comma behind it; that before the last goes as well, below.
    const bool is_last = node.next == skim_.node(0).next;
    carried_.push_back({node.key.begin - 1, is_last ? node.span.end : skim_.node(node.next).key.begin - 1});
  });
  if (behind_last < carried_.size() && last_end > 0) {
    const std::size_t comma = text.find(',', last_end);
    carried_.insert(carried_.begin() + static_cast<std::ptrdiff_t>(behind_last), Span{comma, comma + 1});
  }
  if (text.size() > longest_job) return text;  // for the full reader to refuse
  rest_.clear();
  std::size_t from = 0;
  for (const Span& span : carried_) {
    rest_.append(text.substr(from, span.begin - from));
    from = span.end;
  }
  rest_.append(text.substr(from));
  rest_.append(FastJobReader::room_behind, '\0');
  return std::string_view(rest_).substr(0, rest_.size() - FastJobReader::room_behind);
}

std::string_view JobMembers::with_blanks(std::string_view text) {
  rest_.assign(text);
  for (const Span& span : carried_) {
    for (std::size_t at = span.begin; at < span.end; ++at) {
      if (rest_[at] != '\n') rest_[at] = ' ';
    }
  }
  return rest_;
}

// --- what no order had ------------------------------------------------------------------------------------------

void MemberRows::Met::add(const Met& other) {
  any_order = any_order || other.any_order;
  const auto join = [](std::vector<bool>& to, const std::vector<bool>& from) {
    for (std::size_t i = 0; i < from.size(); ++i) {
      if (from[i]) note(to, i);
    }
  };
  join(columns, other.columns);
  join(kept, other.kept);
}

std::vector<Diagnostic> never_met(const MemberRows::Met& met, const OrderMap* map, const KeepColumns* keep,
                                  const std::string& file_name) {
  std::vector<Diagnostic> faults;
  if (!met.any_order) return faults;
  const auto tell = [&](std::string_view whose, const std::string& name, std::string help) {
    Diagnostic told;
    told.code = "csv.no-column";
    told.file = file_name;
    told.message = std::string(whose) + " names " + text::quoted(name) + ", which no order of the file has";
    told.help = std::move(help);
    faults.push_back(std::move(told));
  };
  if (map != nullptr) {
    for (std::size_t i = 0; i < map->columns.size(); ++i) {
      if (!map->columns[i].optional && !is_set(met.columns, i)) {
        tell("the map file", map->columns[i].name, "where it may be absent, say \"optional\": true for it");
      }
    }
  }
  if (keep != nullptr) {
    for (std::size_t i = 0; i < keep->names.size(); ++i) {
      if (!is_set(met.kept, i)) tell("--keep", keep->names[i], "");
    }
  }
  return faults;
}

}  // namespace mainbore::io
