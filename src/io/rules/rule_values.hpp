// Reads a single thing of a rules file - a text, a size, a length, a whole number - and what a rule rests on.
#pragma once

#include <cstdint>
#include <deque>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "io/job/job_fields.hpp"
#include "io/text/json_reader.hpp"
#include "mainbore/catalog.hpp"

namespace mainbore::io {

class RuleValueReader : protected JsonReader {
 protected:
  explicit RuleValueReader(const Catalog& catalog);

  // What is read from here on is of this file; of the default rules each says its source.
  void begin_file(std::string_view name, bool defaults);
  // As the file calls itself.
  void rename_file(std::string name) { file_name_ = std::move(name); }
  [[nodiscard]] const std::string& file_name() const { return file_name_; }
  [[nodiscard]] const Catalog& catalog() const { return catalog_; }
  // The texts that bases point at, for the rules to keep.
  [[nodiscard]] std::deque<std::string> take_references() { return std::move(references_); }

  // ---- looking around

  template <class Visit>
  void for_members(std::uint32_t node, Visit visit) {
    members(node, [&](std::uint32_t child) { visit(child, node_at(child).key); });
  }
  // One text, or a list of several.
  template <class Visit>
  void each_text(std::uint32_t node, Visit visit) {
    if (node_at(node).type != JsonType::array) return visit(node);
    members(node, visit);
  }
  bool is_object(std::uint32_t node, std::string_view help);
  void not_known(std::uint32_t node, std::string_view key, const std::string& what,
                 std::span<const std::string_view> known, std::string help = {});

  // ---- values

  std::string_view text_of(std::uint32_t node);
  // One line that reports will print.
  std::string plain_text(std::uint32_t node);
  std::optional<FieldValue> read_value(std::uint32_t node, const JobField& spec, std::string_view text);
  std::optional<FieldValue> read_text_value(std::uint32_t node, const JobField& spec);
  std::optional<NominalSize> read_size(std::uint32_t node, const JobField& spec);
  std::optional<Length> read_length(std::uint32_t node, const JobField& spec);
  std::optional<int> read_whole(std::uint32_t node, const JobField& spec, std::string_view help);

  // ---- what a rule rests on

  // Where the members stand that say so.
  struct BasisKeys {
    std::optional<std::uint32_t> source;
    std::optional<std::uint32_t> how;
    std::optional<std::uint32_t> reference;
    std::optional<std::uint32_t> reason;
  };
  [[nodiscard]] std::vector<std::string_view> basis_keys() const;
  // True when the key is one of those above, and read.
  bool read_basis_key(std::uint32_t node, std::string_view key, BasisKeys& basis);
  Basis basis_of(std::uint32_t node, const BasisKeys& keys);

  // The value of a rule and what it rests on.
  struct Stated {
    std::uint32_t value = 0;  // 0: the value stays as it is
    std::string unit;         // where number and unit are given apart
    Basis basis;
  };

  // A bare value, or an object with the value and what it rests on.
  std::optional<Stated> read_stated(std::uint32_t node);
  // In base units; a share may be written as a percentage.
  std::optional<double> read_number(const Stated& stated, JobField spec);

 private:
  Basis default_basis(std::uint32_t node, const BasisKeys& keys);
  Basis utility_basis(const BasisKeys& keys);
  const std::string* kept(std::string_view reference);

  const Catalog& catalog_;
  std::deque<std::string> references_;

  // of the file being read
  bool defaults_ = false;
  const std::string* file_ = nullptr;
  std::string file_name_;  // its "name", or else its file's
};

}  // namespace mainbore::io
