// The one table of what a job may say: path, kind of value, what is allowed, help, and where it is kept.
//
// The JSON reader, --set, CSV headers, the job writer, the JSON Schema and the documentation all follow it. A new fact
// is a new row. Rows of one object stand together, and an object's own rows before those of the objects inside it.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "io/text/source_text.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/job.hpp"
#include "mainbore/measure.hpp"

namespace mainbore::io {

enum class FieldType : std::uint8_t {
  text,      // one line
  lines,     // text that may have several
  quantity,  // with a unit
  size,      // nominal: "8 in", "DN 200", "200 mm"
  material,
  choice,   // one of a list of words
  machine,  // the id of a machine of the catalog
  flag,     // true or false
  whole,    // a whole number: a year, a count
  clock,    // "1:30"
};

// What a text stands for, where not every one will do.
enum class TextMeaning : std::uint8_t {
  words,
  day,   // one that begins as year, month and day names a day of the calendar
  mark,  // as it stands on the pipe; a word for "not known" says nothing
  name,  // of the order: a number is one as well
};

enum class Need : std::uint8_t {
  optional,
  always,           // in every job; in every element, for a list
  machine_figures,  // wherever a machine is described by its own figures
};

using FieldValue = std::variant<std::monostate, std::string, Measure, NominalSize, Material, int, bool, ClockPosition>;

// The words of a choice in the order of its enumeration, and further spellings of them.
struct OtherWord {
  std::string_view word;
  int means = 0;
};
// A word in use that could be more than one of them: it is asked back.
struct AskedWord {
  std::string_view word;
  std::string_view ask;  // "say which: copper type K or copper type L"
};
struct Choice {
  std::span<const std::string_view> names;
  std::span<const OtherWord> others;
  std::span<const AskedWord> asked = {};
};

// A job being read. The machine's own figures become part of the job when all of it has been read.
struct JobDraft {
  Job job;
  std::optional<MachineProfile> machine;

  JobDraft();  // declared, so that making one anew does not clear all of its bytes before its members are made
  void add_machine();
  [[nodiscard]] Job finish() && {
    add_machine();
    return std::move(job);
  }
};

struct JobField {
  std::string_view path;  // "main.od"; "nearby[].along" for the elements of a list
  FieldType type = FieldType::text;
  std::string_view help;
  Need need = Need::optional;
  TextMeaning meaning = TextMeaning::words;
  Kind kind = Kind::ratio;  // of a quantity
  Measure least;            // of a quantity, a size (inches) or a whole number
  Measure greatest;
  const Choice* choice = nullptr;
  // It says which order this is, or is told to people: no verdict, method, pressure or finding depends on it, under any
  // rules. Orders that differ in such facts alone are judged once.
  bool names_order = false;
  // `index` is the element's place in a list, 0 elsewhere.
  void (*store)(JobDraft&, std::size_t index, const FieldValue&) = nullptr;
  FieldValue (*load)(const Job&, std::size_t index, Kind) = nullptr;  // monostate: not known
  std::string_view older = {};  // a path by which files may still have it, written nowhere; empty: none

  [[nodiscard]] bool in_list() const { return path.find("[]") != std::string_view::npos; }
  [[nodiscard]] bool has_unit() const {
    return type == FieldType::size || (type == FieldType::quantity && mainbore::has_unit(kind));
  }
  [[nodiscard]] bool has_range() const {
    return type == FieldType::size || type == FieldType::quantity || type == FieldType::whole;
  }
  // The path with the list element filled in: "nearby[2].along".
  [[nodiscard]] std::string path_at(std::size_t index) const;
};

inline constexpr std::size_t most_fields = 192;
[[nodiscard]] std::span<const JobField> job_fields();

// A path as a user writes it: "main.size", "nearby[2].along".
struct FieldPath {
  const JobField* field = nullptr;
  std::size_t index = 0;
};
[[nodiscard]] std::optional<FieldPath> find_field(std::string_view path);
inline constexpr std::size_t longest_list = 1000;

// What may be written there: "a pressure with its unit, such as ...", "one of: sound, pitted, poor".
[[nodiscard]] std::string allowed_text(const JobField& field, const Catalog& catalog);

// Marks that systems write where they know nothing, in small letters: "n/a", "unknown", "?".
inline constexpr std::size_t longest_missing_mark = 8;
[[nodiscard]] bool is_missing_mark(std::string_view text);

// A value from text, as it stands in a JSON string, behind --set or in a cell of a CSV file.
[[nodiscard]] std::variant<FieldValue, Problem> read_value(const JobField& field, std::string_view text,
                                                           const Catalog& catalog);

// What is wrong with a value that has come another way than through read_value(): one outside the field's range.
[[nodiscard]] std::optional<Problem> beyond(const JobField& field, const FieldValue& value);

// Whether the job has a list by this name.
[[nodiscard]] bool is_list(std::string_view path);
// How many elements a list of the job has; nothing where the job does not have the list.
[[nodiscard]] std::optional<std::size_t> list_length(const Job& job, std::string_view list);
// Makes the list known with nothing in it.
void make_list(Job& job, std::string_view list);

}  // namespace mainbore::io
