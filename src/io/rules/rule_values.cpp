#include "io/rules/rule_values.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"

namespace mainbore::io {
namespace {

// Values are read as those of a job are, so that one spelling serves both; their faults are the rules' here.
constexpr std::array<std::pair<std::string_view, std::string_view>, 8> codes_of_a_job = {{
    {"job.duplicate-key", "rules.duplicate-key"},
    {"job.unknown-value", "rules.unknown-value"},
    {"job.wrong-type", "rules.wrong-type"},
    {"job.no-unit", "rules.wrong-quantity"},
    {"job.unknown-unit", "rules.wrong-quantity"},
    {"job.wrong-unit", "rules.wrong-quantity"},
    {"job.not-a-quantity", "rules.wrong-quantity"},
    {"job.out-of-range", "rules.out-of-range"},
}};
constexpr JsonCodes rules_codes{"rules.unknown-key", "rules.wrong-type", codes_of_a_job};

constexpr JobField printed_text{
    .path = "text", .type = FieldType::text, .help = "a line of text", .least = Measure(), .greatest = Measure()};

}  // namespace

RuleValueReader::RuleValueReader(const Catalog& catalog) : JsonReader(rules_codes), catalog_(catalog) {}

void RuleValueReader::begin_file(std::string_view name, bool defaults) {
  defaults_ = defaults;
  file_name_ = name;
  file_ = defaults ? nullptr : kept(name);
}

bool RuleValueReader::is_object(std::uint32_t node, std::string_view help) {
  const JsonType type = node_at(node).type;
  if (type == JsonType::object) return true;
  wrong_type(node, "an object", std::string(help));
  return false;
}

void RuleValueReader::not_known(std::uint32_t node, std::string_view key, const std::string& what,
                                std::span<const std::string_view> known, std::string help) {
  if (enough()) return;
  if (help.empty()) help = nearest_and_known(key, known, "one of: ");
  add_at_key(node, {"rules.unknown-key", quoted(key) + " is not " + what, std::move(help)});
}

std::string_view RuleValueReader::text_of(std::uint32_t node) {
  const JsonNode& found = node_at(node);
  if (found.type != JsonType::string) {
    wrong_type(node, "a text");
    return {};
  }
  return found.text;
}

std::string RuleValueReader::plain_text(std::uint32_t node) {
  if (node_at(node).type != JsonType::string) return std::string(text_of(node));
  auto read = read_value(node, printed_text, node_at(node).text);
  return read ? std::get<std::string>(std::move(*read)) : std::string();
}

std::optional<FieldValue> RuleValueReader::read_value(std::uint32_t node, const JobField& spec, std::string_view text) {
  auto read = io::read_value(spec, text, catalog_);
  if (auto* const problem = std::get_if<Problem>(&read)) {
    add(node, std::move(*problem));
    return std::nullopt;
  }
  return std::get<FieldValue>(std::move(read));
}

std::optional<FieldValue> RuleValueReader::read_text_value(std::uint32_t node, const JobField& spec) {
  const JsonNode& found = node_at(node);
  if (found.type == JsonType::string || found.type == JsonType::number) return read_value(node, spec, found.text);
  wrong_type(node, "a value", allowed_text(spec, catalog_));
  return std::nullopt;
}

std::optional<NominalSize> RuleValueReader::read_size(std::uint32_t node, const JobField& spec) {
  const auto read = read_text_value(node, spec);
  return read ? std::optional(std::get<NominalSize>(*read)) : std::nullopt;
}

std::optional<Length> RuleValueReader::read_length(std::uint32_t node, const JobField& spec) {
  const auto read = read_text_value(node, spec);
  return read ? std::optional(std::get<Measure>(*read).as<Length>()) : std::nullopt;
}

std::optional<int> RuleValueReader::read_whole(std::uint32_t node, const JobField& spec, std::string_view help) {
  if (node_at(node).type != JsonType::number) {
    wrong_type(node, help.substr(0, help.find(',')), std::string(help));
    return std::nullopt;
  }
  const auto read = read_text_value(node, spec);
  return read ? std::optional(std::get<int>(*read)) : std::nullopt;
}

std::vector<std::string_view> RuleValueReader::basis_keys() const {
  if (defaults_) return {"source", "how", "note"};
  return {"reference", "reason"};
}

bool RuleValueReader::read_basis_key(std::uint32_t node, std::string_view key, BasisKeys& basis) {
  const auto known = basis_keys();
  if (std::find(known.begin(), known.end(), key) == known.end()) return false;
  const bool printed = key == "reference" || key == "reason";
  static_cast<void>(printed ? plain_text(node) : std::string(text_of(node)));
  if (key == "source") basis.source = node;
  if (key == "how") basis.how = node;
  if (key == "reference") basis.reference = node;
  if (key == "reason") basis.reason = node;
  return true;
}

Basis RuleValueReader::basis_of(std::uint32_t node, const BasisKeys& keys) {
  return defaults_ ? default_basis(node, keys) : utility_basis(keys);
}

Basis RuleValueReader::utility_basis(const BasisKeys& keys) {
  Basis basis;
  basis.rule = true;
  basis.how = How::published;  // in the utility's own standard
  basis.utility = true;
  const auto given = [&](const std::optional<std::uint32_t>& at) {
    return at ? node_at(*at).text : std::string_view();
  };
  const std::string_view reference = given(keys.reference);
  basis.reference = kept(reference.empty() ? std::string_view(file_name_) : reference);
  // A reason in which there is nothing to read is none.
  const std::string_view reason = given(keys.reason);
  if (!text::is_blank(reason)) basis.reason = kept(reason);
  basis.file = file_;
  return basis;
}

Basis RuleValueReader::default_basis(std::uint32_t node, const BasisKeys& keys) {
  Basis basis;
  basis.rule = true;
  if (!keys.source || !keys.how) {
    add(node, {"rules.missing", "a default without \"source\" and \"how\"", ""});
    return basis;
  }
  basis.source = catalog_.source(text_of(*keys.source));
  if (basis.source == nullptr) {
    add(*keys.source, {"rules.unknown-value", quoted(text_of(*keys.source)) + " is not a known source", ""});
  }
  for (const How known : {How::published, How::derived, How::common_practice, How::memory}) {
    if (text_of(*keys.how) == name_of(known)) {
      basis.how = known;
      return basis;
    }
  }
  add(*keys.how, {"rules.unknown-value", quoted(text_of(*keys.how)) + " does not say how a number was had", ""});
  return basis;
}

const std::string* RuleValueReader::kept(std::string_view reference) {
  const auto found = std::find(references_.begin(), references_.end(), reference);
  return found != references_.end() ? &*found : &references_.emplace_back(reference);
}

std::optional<RuleValueReader::Stated> RuleValueReader::read_stated(std::uint32_t node) {
  const std::size_t before = faults();
  Stated stated;
  if (node_at(node).type != JsonType::object) {
    stated.value = node;
    stated.basis = basis_of(node, {});
  } else {
    BasisKeys basis;
    for_members(node, [&](std::uint32_t child, std::string_view key) {
      if (key == "value") {
        stated.value = child;
      } else if (key == "unit") {
        stated.unit = text_of(child);
      } else if (!read_basis_key(child, key, basis)) {
        std::vector<std::string_view> known = basis_keys();
        known.insert(known.begin(), {"value", "unit"});
        not_known(child, key, "part of a rule", known);
      }
    });
    if (stated.value == 0 && !basis.reference) {
      add(node, {"rules.missing", "a rule without a value", "\"value\": ..."});
    }
    stated.basis = basis_of(node, basis);
  }
  if (stated.value != 0 && node_at(stated.value).type == JsonType::null) {
    add(stated.value, {"rules.wrong-type", "null would take the rule away",
                       "give a value, or leave the key out to keep the rule as it is"});
  }
  if (faults() > before) return std::nullopt;
  return stated;
}

std::optional<double> RuleValueReader::read_number(const Stated& stated, JobField spec) {
  const JsonNode& node = node_at(stated.value);
  if (node.type != JsonType::string && node.type != JsonType::number) {
    wrong_type(stated.value, "a value", allowed_text(spec, catalog_));
    return std::nullopt;
  }
  std::string text(node.text);
  if (node.type == JsonType::number && !stated.unit.empty()) text += ' ' + stated.unit;
  double scale = 1.0;
  if (spec.kind == Kind::ratio && text.ends_with('%')) {
    scale = 0.01;
    spec.kind = Kind::percent;
    spec.least = Measure(spec.least.base() / scale, Kind::percent);
    spec.greatest = Measure(spec.greatest.base() / scale, Kind::percent);
  }
  const auto read = read_value(stated.value, spec, text);
  return read ? std::optional(std::get<Measure>(*read).base() * scale) : std::nullopt;
}

}  // namespace mainbore::io
