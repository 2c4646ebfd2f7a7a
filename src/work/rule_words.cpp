#include "mainbore/rule_words.hpp"

#include <functional>

#include "mainbore/finding_words.hpp"

namespace mainbore {
namespace {

std::string sizes(std::string_view what, const std::optional<NominalSize>& from, const std::optional<NominalSize>& to) {
  std::string text(what);
  if (from && to && *from == *to) return text + " of " + from->label() + " in";
  if (from && to) return text + " of " + from->label() + " to " + to->label() + " in";
  if (from) return text + " of " + from->label() + " in and larger";
  if (to) return text + " up to " + to->label() + " in";
  return {};
}

void append_part(std::string& text, const std::string& part) {
  if (part.empty()) return;
  if (!text.empty()) text += ", ";
  text += part;
}

template <typename Word = std::identity>
std::string joined(const auto& items, Word word = {}) {
  std::string text;
  for (const auto& item : items) text += (text.empty() ? "" : " or ") + std::string(word(item));
  return text;
}

std::string lengths(std::string_view what, const std::optional<Length>& from, const std::optional<Length>& to,
                    const std::optional<Length>& above, const std::optional<Length>& below, UnitSystem system) {
  std::string text;
  const auto add = [&](std::string_view word, const std::optional<Length>& length) {
    if (length) append_part(text, std::string(word) + ' ' + format_measure(Measure(*length), system));
  };
  add("from", from);
  add("up to", to);
  add("over", above);
  add("under", below);
  return text.empty() ? text : std::string(what) + ' ' + text;
}

std::string years(const std::optional<int>& from, const std::optional<int>& to) {
  if (from && to) return "laid from " + std::to_string(*from) + " to " + std::to_string(*to);
  if (from) return "laid in " + std::to_string(*from) + " or later";
  return to ? "laid in " + std::to_string(*to) + " or earlier" : std::string();
}

std::string mains_of(const MainFilter& row, UnitSystem system) {
  std::string text = joined(row.materials, [](Material m) { return name_of(m); });
  append_part(text, sizes("mains", row.main_from, row.main_to));
  if (row.main_above) append_part(text, "mains over " + row.main_above->label() + " in");
  if (row.main_below) append_part(text, "mains under " + row.main_below->label() + " in");
  append_part(text, row.classes.empty() ? "" : "class " + joined(row.classes));
  append_part(text, row.series.empty() ? "" : "series " + joined(row.series));
  append_part(text, lengths("wall", row.wall_from, {}, {}, row.wall_below, system));
  append_part(text, lengths("bore", row.bore_from, row.bore_to, row.bore_above, row.bore_below, system));
  append_part(text, years(row.laid_from, row.laid_to));
  return text;
}

std::string any_if_empty(std::string mains) {
  if (mains.empty()) mains = "any main";
  return mains;
}

struct RowWords {
  UnitSystem system;

  std::string operator()(std::monostate) const { return {}; }
  std::string operator()(const TapLimit* row) const {
    std::string text = any_if_empty(mains_of(*row, system)) + ": ";
    text += row->largest == NominalSize() ? "none" : row->largest.label() + " in";
    if (!row->why.empty()) text += "; " + row->why;
    return row->consent.empty() ? text : text + "; with the consent of " + row->consent;
  }
  std::string operator()(const ClosedSeason* row) const {
    const std::string text = any_if_empty(mains_of(*row, system)) + ": from " + row->from_text + " to " + row->to_text;
    return row->why.empty() ? text : text + "; " + row->why;
  }
  std::string operator()(const FittingSpecification* row) const {
    std::string text = mains_of(*row, system);
    append_part(text, sizes("taps", row->tap_from, row->tap_to));
    if (row->tap_above) append_part(text, "taps over " + row->tap_above->label() + " in");
    return any_if_empty(std::move(text)) + ": " + row->text;
  }
  std::string operator()(const SizesByDwellings* row) const {
    std::string text = std::to_string(row->from);
    if (!row->to) text += " or more";
    else if (*row->to != row->from) text += " to " + std::to_string(*row->to);
    text += row->to == 1 ? " dwelling: " : " dwellings: ";
    std::string sizes;
    const auto add = [&](std::string_view what, const std::optional<NominalSize>& least) {
      if (least) append_part(sizes, std::string(what) + " of " + least->label() + " in");
    };
    add("tap", row->tap);
    add("line", row->line);
    add("meter", row->meter);
    return text + sizes + " or larger";
  }
  std::string operator()(const OwnWords* row) const { return std::string(row->id) + ": " + row->text; }
};

}  // namespace

std::string rule_in_words(const Detail& value, const RuleRow& row, UnitSystem system) {
  std::string text;
  append_detail(text, value, system);
  return text.empty() ? std::visit(RowWords{system}, row) : text;
}

std::string mains_in_words(const RuleDifference& difference) {
  if (!difference.material) return {};
  std::string text = sizes(name_of(*difference.material), difference.main_from, difference.main_to);
  if (!difference.first_class.empty()) text += ", such as " + std::string(difference.first_class);
  return text;
}

std::string consent_in_words(const RuleDifference& difference) {
  const auto* const row = std::get_if<const TapLimit*>(&difference.row_after);
  if (row == nullptr || !difference.material || (*row)->largest == NominalSize()) return {};
  if (!(*row)->consent.empty()) return "Each such tap is a hold until " + (*row)->consent + " consents.";
  const bool opens = std::holds_alternative<std::monostate>(difference.before) && (*row)->basis.utility;
  return opens ? "Closed by default: each such tap is a hold, and the row names nobody who consents." : "";
}

std::string documents_in_words(const Rules& rules) {
  std::string text;
  for (const RulesDocument& document : rules.documents) {
    if (!text.empty()) text += "; ";
    text += document.name;
    std::string about = document.title;
    append_part(about, document.edition.empty() ? "" : "edition " + document.edition);
    append_part(about, document.date.empty() ? "" : "of " + document.date);
    append_part(about, document.approver.empty() ? "" : "approved by " + document.approver);
    if (!about.empty()) text += ": " + about;
  }
  return text;
}

std::string basis_in_words(const Basis& basis) {
  if (basis.utility) {
    std::string text = basis.reference != nullptr ? *basis.reference : std::string("the utility's own rules");
    if (basis.file != nullptr && *basis.file != text) text += " (" + *basis.file + ")";
    return text;
  }
  std::string text = "default, " + std::string(name_of(basis.how));
  if (basis.source == nullptr) return text;
  text += ": " + basis.source->title;
  if (!basis.source->where.empty()) text += ", " + basis.source->where;
  return text;
}

}  // namespace mainbore
