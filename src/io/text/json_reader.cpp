#include "io/text/json_reader.hpp"

#include <algorithm>

#include "io/text/nearest.hpp"
#include "mainbore/job_file.hpp"

namespace mainbore::io {

std::string nearest_and_known(std::string_view found, std::span<const std::string_view> known,
                              std::string_view before) {
  std::string help;
  if (const auto near = nearest(found, known)) help = "did you mean \"" + std::string(*near) + "\"?  ";
  return help + std::string(before) + listed(known);
}

std::optional<std::string> quantity_text(const JsonText& json, std::uint32_t node) {
  const JsonNode& given = json.node(node);
  if (given.type != JsonType::object || node + 3 != given.next) return std::nullopt;
  const JsonNode* value = &json.node(node + 1);
  const JsonNode* unit = &json.node(node + 2);
  if (value->key == "unit") std::swap(value, unit);
  const bool is_one =
      value->key == "value" && value->type == JsonType::number && unit->key == "unit" && unit->type == JsonType::string;
  return is_one ? std::optional(std::string(value->text) + ' ' + std::string(unit->text)) : std::nullopt;
}

bool JsonReader::enough() const { return diagnostics_.size() >= most_diagnostics; }

std::string_view JsonReader::own_code(std::string_view code) const {
  const auto found =
      std::find_if(codes_.of_a_job.begin(), codes_.of_a_job.end(), [&](const auto& one) { return one.first == code; });
  return found == codes_.of_a_job.end() ? code : found->second;
}

void JsonReader::add(Diagnostic diagnostic) {
  if (!enough()) diagnostics_.push_back(std::move(diagnostic));
}

void JsonReader::add(std::uint32_t at, Problem problem) { add(at, node_at(at).span, std::move(problem)); }

void JsonReader::add(std::uint32_t at, Span span, Problem problem) {
  if (enough()) return;
  problem.code = own_code(problem.code);
  // Of a whole document only its first character: it may be long.
  if (at == 0) span.end = span.begin + 1;
  diagnostics_.push_back(source_->at(span, json_->pointer(at), std::move(problem)));
}

void JsonReader::wrong_type(std::uint32_t at, std::string_view wanted, std::string help) {
  add(at,
      {codes_.wrong_type, std::string(article_of(node_at(at).type)) + " where " + std::string(wanted) + " should stand",
       std::move(help)});
}

bool JsonReader::expect(std::uint32_t at, JsonType type, std::string_view such_as) {
  if (node_at(at).type == type) return true;
  wrong_type(at, article_of(type), such_as.empty() ? std::string() : "such as " + std::string(such_as));
  return false;
}

void JsonReader::unknown_key(std::uint32_t at, std::string_view where, std::span<const std::string_view> known,
                             std::string hint) {
  if (enough()) return;
  const std::string help =
      hint.empty() ? nearest_and_known(node_at(at).key, known) : std::move(hint) + "  known here: " + listed(known);
  add_at_key(at, {codes_.unknown_key, quoted(node_at(at).key) + " is not part of " + std::string(where), help});
}

void JsonReader::tell_faults() {
  for (const JsonFault& fault : json_->faults()) {
    if (enough()) return;
    Problem problem = fault.problem;
    const bool has_place = problem.code == "job.duplicate-key";
    problem.code = own_code(problem.code);
    add(source_->at(fault.span, has_place ? json_->pointer(fault.node) : "", std::move(problem)));
  }
}

std::vector<Diagnostic> JsonReader::found() { return std::move(diagnostics_); }

std::vector<Diagnostic> JsonReader::found_in_order() {
  const auto rank = [](const Diagnostic& d) { return std::pair(d.line == 0, std::pair(d.line, d.column)); };
  std::stable_sort(diagnostics_.begin(), diagnostics_.end(),
                   [&](const Diagnostic& a, const Diagnostic& b) { return rank(a) < rank(b); });
  return std::move(diagnostics_);
}

}  // namespace mainbore::io
