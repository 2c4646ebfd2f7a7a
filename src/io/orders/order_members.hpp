// Orders in JSON read as rows of a table: their members are columns, which a map file names as it names those of a table.
//
//     {"WO_NO": 3001, "PIPE": {"MATERIAL": "CI", "DIA": 6}, ...}     columns WO_NO, PIPE.MATERIAL, PIPE.DIA
//     {"type": "Feature", "geometry": {...}, "properties": {"WO_NO": 3001, ...}}     of GeoJSON: WO_NO
//
// A member inside another has both names, with a dot between; one in a list its place: nearby[0].what. Where the map does
// not say `"ignore_others": true`, which it does unless it says otherwise, every member is a column or the path of a
// fact, or is asked for by --keep; any other makes the order unreadable. Whatever members an input has, memory is bounded.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "io/fast/json_skim.hpp"
#include "io/orders/keep_columns.hpp"
#include "io/orders/order_table.hpp"

namespace mainbore::io {

// A feature of GeoJSON (RFC 7946) as it stands in the text.
struct FeatureText {
  std::string_view text;
  Span properties;  // empty: it has none
};

class MemberRows {
 public:
  // What is passed by reference or pointer must outlive this. `keep` and `map` may be nullptr. `given_back`: of features,
  // every property is kept where `keep` names none.
  MemberRows(const Catalog& catalog, const OrderMap* map, const std::string& file_name, const KeepColumns* keep,
             bool features, bool given_back);

  // The order of one text, whose first line has this number. The text must outlive what is done with `order`. Sets
  // neither row nor line.
  // `nodes`: of a text that JsonSkim has read already; empty: it has not.
  void read(std::string_view text, std::int64_t first_line, OrderRecord& order, std::span<const SkimNode> nodes = {});

  // The same in two steps, and between them what OrderTable::facts() says. False: there is no second step.
  bool begin(std::string_view text, std::int64_t first_line, OrderRecord& order, std::span<const SkimNode> nodes = {});
  void read_facts();
  [[nodiscard]] std::optional<std::string_view> facts();
  [[nodiscard]] bool repeats() const { return table_.repeats(); }

  // The feature last read; nullptr where the text was none.
  [[nodiscard]] const FeatureText* feature() const { return feature_.text.empty() ? nullptr : &feature_; }

  // For the report on columns: the order last read as a row.
  [[nodiscard]] OrderTable& table() { return table_; }
  [[nodiscard]] const CsvRecord& record() const { return record_; }
  [[nodiscard]] bool is_row() const { return is_row_; }
  [[nodiscard]] std::vector<std::string> not_read() const;

  // Names of the map and of --keep that some order had.
  struct Met {
    bool any_order = false;
    std::vector<bool> columns;  // those of the map, then those of its id, as the table has them
    std::vector<bool> kept;
    void add(const Met& other);
  };
  [[nodiscard]] const Met& met() const { return met_; }

 private:
  struct NameHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
  };
  bool skim(std::span<const SkimNode> nodes);
  bool open_feature(std::uint32_t& members);
  void tell_faults();
  void note_kept(std::uint32_t members);
  void read_members(std::uint32_t object, std::size_t prefix);
  void read_value(std::uint32_t node);
  bool read_quantity(std::uint32_t object);
  void set_cell(std::uint32_t node);
  // What a member's name stands for. Of one that is no fact all is worked out once: to look for the nearest path takes as
  // long as to plan ten orders.
  struct Named {
    std::size_t column = OrderTable::none;
    bool carried = false;  // no fact, and asked for by --keep
    Problem problem;       // of one that is neither
  };
  [[nodiscard]] const Named& name_met(std::string_view name);
  [[nodiscard]] Named understood(std::string_view name);
  void unknown_member(std::uint32_t node, const Named& named);
  void fault(std::uint32_t node, Problem problem);
  [[nodiscard]] std::string_view written(Span span) const { return text_.substr(span.begin, span.end - span.begin); }
  [[nodiscard]] std::string text_of(std::uint32_t node) const;

  const Catalog& catalog_;
  const OrderMap* map_;
  const std::string& file_name_;
  const KeepColumns* keep_;
  bool features_;
  bool given_back_;
  OrderTable table_;
  std::unordered_map<std::string, Named, NameHash, std::equal_to<>> names_;  // as written; bounded
  Named unremembered_;
  // Orders of one file have the same members in the same order: the name met next in the last one is tried first.
  std::vector<const std::pair<const std::string, Named>*> usual_;
  std::size_t met_next_ = 0;

  // Of the order at hand.
  std::string_view text_;
  std::int64_t first_line_ = 1;
  OrderRecord* order_ = nullptr;
  JsonSkim skim_;
  CsvRecord record_;
  std::string name_;
  std::vector<bool> given_;  // columns
  std::vector<KeptColumn> kept_;
  std::vector<Diagnostic> faults_;
  bool is_row_ = false;
  bool nothing_nearby_ = false;
  FeatureText feature_;
  Met met_;
};

// Of a collection of features, as JSON: its members but its type and the features, each with a comma behind it, or before
// it. Nothing where the text is no object.
[[nodiscard]] std::optional<std::string> members_around_features(std::string_view collection, bool comma_behind);

// Orders in JSON that are jobs (job_file.hpp) with members beside the job's own that are carried on.
class JobMembers {
 public:
  // `keep` must outlive this.
  explicit JobMembers(const KeepColumns& keep);

  // The text without the members that are no job's and were asked for, good until the next, with the room behind it that
  // the fast reader needs; what is carried on goes into `kept`. A text that is no JSON comes back as it is.
  [[nodiscard]] std::string_view without_kept(std::string_view text, std::vector<KeptColumn>& kept);
  // The same text with blanks in their place, for whoever says where in it something stands.
  [[nodiscard]] std::string_view with_blanks(std::string_view text);
  [[nodiscard]] const MemberRows::Met& met() const { return met_; }

 private:
  [[nodiscard]] bool is_carried(std::string_view name) const;

  const KeepColumns& keep_;
  std::vector<std::string_view> job_keys_;
  JsonSkim skim_;
  std::vector<Span> carried_;  // of the text at hand, each with a comma
  std::string rest_;
  MemberRows::Met met_;
};

// What the map or --keep names and no order had; empty where all was met, or where nothing could be read.
[[nodiscard]] std::vector<Diagnostic> never_met(const MemberRows::Met& met, const OrderMap* map,
                                                const KeepColumns* keep, const std::string& file_name);

}  // namespace mainbore::io
