#include "io/fast/fast_job.hpp"

#include <simdjson.h>

#include <algorithm>
#include <array>
#include <bit>
#include <bitset>
#include <cstdint>
#include <cstring>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "io/job/job_fields.hpp"
#include "io/text/text_scan.hpp"
#include "io/text/word_scan.hpp"
#include "mainbore/job_file.hpp"

namespace mainbore::io {
namespace {

namespace od = simdjson::ondemand;

static_assert(FastJobReader::room_behind >= simdjson::SIMDJSON_PADDING);

// What spellings mean, by field. A spelling has two places where it may stand, and a new one pushes out the older of
// those: the size is fixed, whatever the input, and a spelling forgotten is read again. A place is a line of the cache.
class Spellings {
 public:
  static constexpr std::size_t longest = 22;

  // The text, its size and the field, in words that can be compared at once. A text is never empty, and so never like a
  // place where nothing stands.
  using Key = std::array<std::uint64_t, 3>;

  // Reads a few bytes behind the text, which must be readable.
  static Key key_of(std::size_t field, std::string_view text) {
    constexpr int free_bytes = std::endian::native == std::endian::little ? 48 : 0;  // the last two, beyond any text
    Key key{};
    std::memcpy(key.data(), text.data(), sizeof(key));
    for (std::size_t i = 0; i < key.size(); ++i) key[i] &= masks[text.size()][i];
    key.back() |= static_cast<std::uint64_t>(text.size() << 8 | field) << free_bytes;
    return key;
  }

  [[nodiscard]] const FieldValue* find(const Key& key) const {
    const Place* const places = places_.data() + first_place(key);
    if (same(places[0].key, key)) return &places[0].value;
    if (same(places[1].key, key)) return &places[1].value;
    return nullptr;
  }
  void keep(const Key& key, const FieldValue& value) {
    Place* const places = places_.data() + first_place(key);
    places[1] = std::move(places[0]);
    places[0] = {key, value};
  }

 private:
  struct alignas(64) Place {
    Key key{};
    FieldValue value;
  };

  // Word by word: a comparison of arrays would read at once what was only just written in parts, and wait for it.
  static bool same(const Key& a, const Key& b) { return ((a[0] ^ b[0]) | (a[1] ^ b[1]) | (a[2] ^ b[2])) == 0; }

  static std::size_t first_place(const Key& key) {
    std::uint64_t hash = key[0] * 0x9E3779B97F4A7C15u;
    hash ^= key[1] * 0xBF58476D1CE4E5B9u;
    hash ^= key[2] * 0x94D049BB133111EBu;
    hash = (hash ^ (hash >> 32)) * 0x9E3779B97F4A7C15u;
    return hash >> (64 - bits) << 1;
  }

  static constexpr int bits = 11;
  // Of the first so many bytes. Bytes beyond the text are whatever stands there.
  static constexpr auto masks = [] {
    std::array<Key, longest + 1> all{};
    for (std::size_t size = 0; size <= longest; ++size) {
      for (std::size_t byte = 0; byte < size; ++byte) {
        const std::size_t place = std::endian::native == std::endian::little ? byte % 8 : 7 - byte % 8;
        all[size][byte / 8] |= std::uint64_t{0xFF} << (8 * place);
      }
    }
    return all;
  }();
  static_assert(most_fields <= 256);
  std::vector<Place> places_ = std::vector<Place>(std::size_t{2} << bits);
};

// The objects of a job by the field table: their members, which are facts or objects again.
struct Member {
  std::string_view key;
  std::array<std::uint64_t, 2> written{};  // the key's first bytes with the quote behind it, as a text has them
  std::array<std::uint64_t, 2> mask{};     // of the bytes that count
  std::uint8_t field = 0;                  // of a fact: its row
  std::uint8_t object = 0;                 // of an object or a list of them: which; 0: a fact
  bool list = false;
  std::uint8_t next = 0;  // which member followed this one in the job before
};
struct Object {
  std::vector<Member> members;
  std::uint8_t first = 0;  // which member came first in the job before
};

class ObjectTable {
 public:
  ObjectTable() {
    objects_.emplace_back();
    const auto fields = job_fields();
    for (std::size_t i = 0; i < fields.size(); ++i) {
      std::size_t object = 0;
      std::string_view rest = fields[i].path;
      for (std::size_t end = rest.find_first_of(".["); end != std::string_view::npos; end = rest.find_first_of(".[")) {
        const bool list = rest[end] == '[';
        object = object_named(object, rest.substr(0, end), list);
        rest.remove_prefix(end + (list ? 3 : 1));
      }
      Member fact = named(rest);
      fact.field = static_cast<std::uint8_t>(i);
      objects_[object].members.push_back(fact);
    }
    static_assert(most_fields <= 256);
  }

  [[nodiscard]] Object& operator[](std::size_t object) { return objects_[object]; }
  [[nodiscard]] std::size_t size() const { return objects_.size(); }

 private:
  static Member named(std::string_view key) {
    Member member;
    member.key = key;
    const std::string written = std::string(key) + '"';
    const std::size_t size = std::min(written.size(), sizeof(member.written));
    std::memcpy(member.written.data(), written.data(), size);
    std::memset(member.mask.data(), 0xFF, size);
    return member;
  }
  std::size_t object_named(std::size_t parent, std::string_view key, bool list) {
    for (const Member& member : objects_[parent].members) {
      if (member.key == key) return member.object;
    }
    const std::size_t object = objects_.size();
    Member inner = named(key);
    inner.object = static_cast<std::uint8_t>(object);
    inner.list = list;
    objects_[parent].members.push_back(inner);
    objects_.emplace_back();
    return object;
  }

  std::vector<Object> objects_;  // the job itself first
};

bool starts_escape_of_surrogate(const char* at, const char* end) {
  return end - at >= 3 && at[1] == 'u' && (at[2] == 'd' || at[2] == 'D');
}

// Text that every field of text takes as it stands: not long, printable ASCII without escapes, no space at its ends.
bool is_plain_text(std::string_view text) {
  constexpr std::size_t longest = 200;
  constexpr std::uint64_t each = 0x0101010101010101u;
  constexpr std::uint64_t top = 0x8080808080808080u;
  if (text.empty() || text.size() > longest || text.front() == ' ' || text.back() == ' ') return false;
  std::uint64_t odd = 0;  // a top bit for each byte that is below a space, a backslash, a DEL or above
  const auto look = [&](std::size_t at, std::size_t size) {
    std::uint64_t bytes = each * 'x';
    std::memcpy(&bytes, text.data() + at, size);
    odd |= (bytes - each * 0x20) | ((bytes ^ each * '\\') - each) | bytes | (bytes + each);
  };
  // The end as one more word, some bytes of which are looked at twice.
  for (std::size_t at = 0; at + 8 < text.size(); at += 8) look(at, 8);
  if (text.size() >= 8) look(text.size() - 8, 8);
  else look(0, text.size());
  return (odd & top) == 0;
}

// The same of text in UTF-8, which may be empty: without escapes, control characters or what begins one.
bool is_text(std::string_view text) {
  constexpr std::size_t longest = 200;
  const auto odd = [](TextWord bytes) {
    return below_space(bytes) | equal_to('\\', bytes) | equal_to('\x7F', bytes) | equal_to('\xC2', bytes);
  };
  return text.size() <= longest && !any_byte(text, odd);
}

// Halves of a character are escaped in pairs; simdjson is lenient with single ones, so such texts are left alone.
bool has_surrogates(std::string_view text) {
  const char* const end = text.data() + text.size();
  const char* at = text.data();
  while (at < end) {
    at = static_cast<const char*>(std::memchr(at, '\\', static_cast<std::size_t>(end - at)));
    if (at == nullptr) return false;
    if (starts_escape_of_surrogate(at, end)) return true;
    at += 2;  // the backslash and what it escapes
  }
  return false;
}

}  // namespace

class FastJobReader::Reader {
 public:
  explicit Reader(const Catalog& catalog) : catalog_(catalog) {
    for (const JobField& field : job_fields()) {
      const auto number = static_cast<std::size_t>(&field - job_fields().data());
      if (field.need == Need::always) (field.in_list() ? always_in_element_ : always_).set(number);
      if (field.need == Need::machine_figures) machine_needs_.set(number);
      if (field.path == "machine.profile") profile_ = number;
      facts_.push_back({field.type, field.meaning, field.store});
    }
    for (const Member& member : objects_[0].members) {
      if (member.object == 0 && fields_[member.field].names_order) names_.push_back(member);
    }
  }

  void open(std::string_view text) {
    order_ = text;
    walked_ = false;
    open_ = text.size() <= longest_job && !has_surrogates(text) &&
            parser_.iterate(text.data(), text.size(), text.size() + room_behind).get(document_) == simdjson::SUCCESS;
  }

  // The bytes between the values of names are what they are of a text that was read: so is what they say, and that they
  // are JSON. The values in them end no string and begin no other. Where one is cut out stands a byte that no text has
  // there: it could be in a string alone, and there it is no JSON.
  std::optional<Facts> facts() {
    constexpr char cut = '\x01';
    if (!open_) return std::nullopt;
    if (std::exchange(walked_, true)) document_.rewind();
    // What is no JSON here is none to read() either, and an iterator that has met it cannot go back.
    const auto give_up = [&]() -> std::optional<Facts> {
      open_ = false;
      return std::nullopt;
    };
    od::object root;
    if (document_.get_object().get(root) != simdjson::SUCCESS) return give_up();
    written_.clear();
    std::string_view id;
    const char* from = order_.data();
    for (auto entry : root) {
      if (entry.error() != simdjson::SUCCESS) return give_up();
      od::field&& field = std::move(entry).value_unsafe();
      const auto name =
          std::find_if(names_.begin(), names_.end(), [&](const Member& member) { return is_key(field.key(), member); });
      if (name == names_.end()) continue;
      const auto value = name_in(field.value().raw_json_token(), fields_[name->field]);
      if (!value) return std::nullopt;
      if (name->key == "id") id = trimmed(*value);
      written_.append(from, value->data());
      written_ += cut;
      from = value->data() + value->size();
    }
    written_.append(from, order_.data() + order_.size());
    return Facts{written_, id};
  }

  Job* read() {
    draft_.emplace();
    seen_.reset();
    if (open_ && walked_) document_.rewind();
    const bool good = open_ && read_document(document_) && is_whole();
    draft_->add_machine();
    return good ? &draft_->job : nullptr;
  }

 private:
  using Seen = std::bitset<most_fields>;

  // What nearly every reading needs of a field's row, close together.
  struct Fact {
    FieldType type = FieldType::text;
    TextMeaning meaning = TextMeaning::words;
    void (*store)(JobDraft&, std::size_t index, const FieldValue&) = nullptr;
  };

  bool read_document(od::document& document) {
    od::object root;
    if (document.get_object().get(root) != simdjson::SUCCESS) return false;
    if (!read_object(root, 0, 0, seen_)) return false;
    return document.current_location().error() == simdjson::OUT_OF_BOUNDS;  // nothing stands behind it
  }

  // `object` numbers the row of the table, `index` the element of a list that this is in.
  bool read_object(od::object& json, std::size_t number, std::size_t index, Seen& seen) {
    Object& object = objects_[number];
    std::uint8_t* guess = &object.first;
    std::uint32_t inner_seen = 0;
    for (auto entry : json) {
      // A field is read where it stands: its parts are stored one by one, and to copy them together at once would wait
      // for that.
      if (entry.error() != simdjson::SUCCESS) return false;
      od::field&& field = std::move(entry).value_unsafe();
      const std::size_t place = find(object, field.key(), *guess);
      if (place == none) return false;
      *guess = static_cast<std::uint8_t>(place);
      Member& member = object.members[place];
      guess = &member.next;
      if (member.object == 0) {
        if (seen.test(member.field)) return false;  // twice
        seen.set(member.field);
        if (!read_fact(field.value(), member.field, index)) return false;
        continue;
      }
      if ((inner_seen >> place & 1u) != 0 || place >= 32) return false;
      inner_seen |= 1u << place;
      if (member.list) {
        if (!read_list(field.value(), member)) return false;
      } else {
        od::object inner;
        if (field.value().get_object().get(inner) != simdjson::SUCCESS) return false;
        if (!read_object(inner, member.object, index, seen)) return false;
      }
    }
    return true;
  }

  bool read_list(od::value& value, const Member& member) {
    od::array array;
    if (value.get_array().get(array) != simdjson::SUCCESS) return false;
    make_list(draft_->job, member.key);
    std::size_t index = 0;
    for (auto entry : array) {
      od::object element;
      if (index == longest_list || entry.get_object().get(element) != simdjson::SUCCESS) return false;
      Seen seen;
      if (!read_object(element, member.object, index, seen) || (always_in_element_ & ~seen).any()) return false;
      ++index;
    }
    return true;
  }

  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  // Reads a few bytes behind the key, which the room behind the text allows.
  static bool is_key(od::raw_json_string written, const Member& member) {
    std::array<std::uint64_t, 2> words{};
    std::memcpy(words.data(), written.raw(), sizeof(words));
    if (((words[0] ^ member.written[0]) & member.mask[0]) != 0) return false;
    if (((words[1] ^ member.written[1]) & member.mask[1]) != 0) return false;
    const std::size_t size = member.key.size();
    if (size < sizeof(words)) return true;
    return std::memcmp(written.raw(), member.key.data(), size) == 0 && written.raw()[size] == '"';
  }
  // Keys are compared as they are written: one with an escape in it is left to the full reader.
  static std::size_t find(const Object& object, od::raw_json_string written, std::size_t guess) {
    if (is_key(written, object.members[guess])) return guess;
    for (std::size_t place = 0; place < object.members.size(); ++place) {
      if (is_key(written, object.members[place])) return place;
    }
    return none;
  }

  bool read_fact(od::value& value, std::size_t number, std::size_t index) {
    const Fact& fact = facts_[number];
    switch (fact.type) {
      case FieldType::flag: {
        bool flag = false;
        if (value.get_bool().get(flag) != simdjson::SUCCESS) return false;
        fact.store(*draft_, index, flag);
        return true;
      }
      case FieldType::whole: {
        std::int64_t whole = 0;
        if (value.get_int64().get(whole) != simdjson::SUCCESS) return false;
        const JobField& field = fields_[number];
        if (static_cast<double>(whole) < field.least.base() || static_cast<double>(whole) > field.greatest.base()) {
          return false;
        }
        fact.store(*draft_, index, static_cast<int>(whole));
        return true;
      }
      default: {
        const std::string_view token = value.raw_json_token();  // up to the next one, with the space between
        return token.starts_with('"') ? read_string(value, token, fact, number, index)
                                      : read_number(value, token, fields_[number], index);
      }
    }
  }

  // "fixture_units": 22 is the same as "fixture_units": "22".
  bool read_number(od::value& value, std::string_view token, const JobField& field, std::size_t index) {
    const bool as_text =
        field.type == FieldType::quantity || field.type == FieldType::size || field.meaning == TextMeaning::name;
    if (!as_text) return false;
    if (value.get_double().error() != simdjson::SUCCESS) return false;
    return store(token.substr(0, token.find_first_of(" \t\r\n")), field, index) != nullptr;
  }

  // A string that says what it means as it is written, without escapes, or that has been met before is read where it
  // stands; nearly every one is.
  bool read_string(od::value& value, std::string_view token, const Fact& fact, std::size_t number, std::size_t index) {
    while (token.back() != '"') token.remove_suffix(1);
    const std::string_view written = token.substr(1, std::max<std::size_t>(token.size(), 2) - 2);
    const auto pass = [&] { return value.get_raw_json_string().error() == simdjson::SUCCESS; };
    if ((fact.type == FieldType::text || fact.type == FieldType::lines) &&
        (fact.meaning == TextMeaning::words || fact.meaning == TextMeaning::name)) {
      if (!is_plain_text(written)) return read_afresh(value, fields_[number], index) != nullptr;
      std::get<std::string>(text_).assign(written);
      fact.store(*draft_, index, text_);
      return pass();
    }
    if (written.empty() || written.size() > Spellings::longest) {
      return read_afresh(value, fields_[number], index) != nullptr;
    }
    const Spellings::Key key = Spellings::key_of(number, written);
    if (const FieldValue* const known = spellings_.find(key)) {
      fact.store(*draft_, index, *known);
      return pass();
    }
    const FieldValue* const fresh = read_afresh(value, fields_[number], index);
    if (fresh != nullptr) spellings_.keep(key, *fresh);
    return fresh != nullptr;
  }
  // Stores what a text means and returns it, good until the next.
  const FieldValue* store(std::string_view text, const JobField& field, std::size_t index) {
    read_ = read_value(field, text, catalog_);
    const auto* const known = std::get_if<FieldValue>(&read_);
    if (known != nullptr) field.store(*draft_, index, *known);
    return known;
  }
  const FieldValue* read_afresh(od::value& value, const JobField& field, std::size_t index) {
    std::string_view text;
    return value.get_string().get(text) == simdjson::SUCCESS ? store(text, field, index) : nullptr;
  }

  // What stands between the quotes of a text, or the digits of a number that is one as well: where it is surely taken,
  // whatever else the text holds.
  static std::optional<std::string_view> name_in(std::string_view token, const JobField& field) {
    if (token.starts_with('"')) {
      while (token.back() != '"') token.remove_suffix(1);
      const std::string_view written = token.substr(1, std::max<std::size_t>(token.size(), 2) - 2);
      if (is_plain_text(written) || is_text(written)) return written;
      return std::nullopt;
    }
    constexpr std::size_t most_digits = 15;
    const std::string_view number = trimmed(token);
    const bool whole = !number.empty() && number.size() <= most_digits && number.front() != '0' &&
                       number.find_first_not_of("0123456789") == std::string_view::npos;
    return field.meaning == TextMeaning::name && whole ? std::optional(number) : std::nullopt;
  }

  // Everything required is there, and a machine of its own figures has those it needs and does not contradict itself.
  [[nodiscard]] bool is_whole() const {
    if ((always_ & ~seen_).any()) return false;
    if (!draft_->machine) return true;
    const MachineProfile& machine = *draft_->machine;
    return !seen_.test(profile_) && (machine_needs_ & ~seen_).none() && machine.smallest_tap <= machine.largest_tap &&
           !(machine.saddle_od_from && machine.saddle_od_to && *machine.saddle_od_from > *machine.saddle_od_to);
  }

  const Catalog& catalog_;
  std::span<const JobField> fields_ = job_fields();
  std::vector<Fact> facts_;
  od::parser parser_{longest_job + room_behind};
  ObjectTable objects_;
  Spellings spellings_;
  FieldValue text_ = std::string();  // so that its memory is used again
  std::variant<FieldValue, Problem> read_;
  std::vector<Member> names_;  // of the job itself
  std::string_view order_;     // being read
  od::document document_;
  bool open_ = false;
  bool walked_ = false;
  std::string written_;
  std::optional<JobDraft> draft_;  // of the job being read
  Seen seen_;
  Seen always_;
  Seen always_in_element_;
  Seen machine_needs_;
  std::size_t profile_ = 0;
};

FastJobReader::FastJobReader(const Catalog& catalog) : reader_(std::make_unique<Reader>(catalog)) {}
FastJobReader::FastJobReader(FastJobReader&&) noexcept = default;
FastJobReader& FastJobReader::operator=(FastJobReader&&) noexcept = default;
FastJobReader::~FastJobReader() = default;

void FastJobReader::open(std::string_view text) { reader_->open(text); }
std::optional<FastJobReader::Facts> FastJobReader::facts() { return reader_->facts(); }
Job* FastJobReader::read() { return reader_->read(); }
Job* FastJobReader::read(std::string_view text) {
  reader_->open(text);
  return reader_->read();
}

}  // namespace mainbore::io
