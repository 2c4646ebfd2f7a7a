#include <algorithm>
#include <array>
#include <charconv>
#include <string>
#include <string_view>

#include "mainbore/catalog.hpp"
#include "text/digit.hpp"

namespace mainbore {
namespace {

using text::is_digit;
constexpr bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
constexpr char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

// A run of letters, or a number with its decimals.
struct Token {
  std::string_view text;  // in small letters
  std::string_view written;
  char before = '\0';  // what parts it from the token before; nothing where they are joined
  bool number = false;
};

// What a word of letters stands for.
enum class Meaning : std::uint8_t {
  nothing,    // says nothing of the class
  issuer,     // nor does who issues its standard
  kind,       // of the figure behind it
  pressure,   // "pressure class", "pressure rating"
  thickness,  // "thickness class"
  family,
  iron,      // "iron pipe size"
  standard,  // weight
  resin,     // of the number joined to it
};

struct Word {
  std::string_view text;
  Meaning meaning = Meaning::nothing;
  ClassMark kind = ClassMark::number;
  OdFamily family = OdFamily::unnamed;
};
constexpr Word nothing(std::string_view text) { return {text}; }
constexpr Word kind(std::string_view text, ClassMark mark) { return {text, Meaning::kind, mark}; }
constexpr Word family(std::string_view text, OdFamily of) { return {text, Meaning::family, ClassMark::number, of}; }

constexpr std::array words = {
    kind("dr", ClassMark::dimension_ratio),
    kind("sdr", ClassMark::dimension_ratio),
    kind("pc", ClassMark::pressure_class),
    kind("class", ClassMark::class_number),
    kind("cl", ClassMark::class_number),
    kind("tc", ClassMark::thickness_class),
    kind("pr", ClassMark::pressure_rating),
    kind("sch", ClassMark::schedule),
    kind("schedule", ClassMark::schedule),
    kind("type", ClassMark::letter),
    Word{"awwa", Meaning::issuer},
    Word{"ansi", Meaning::issuer},
    Word{"astm", Meaning::issuer},
    Word{"asme", Meaning::issuer},
    nothing("nsf"),
    nothing("psi"),
    nothing("pipe"),
    nothing("water"),
    nothing("main"),
    nothing("wall"),
    nothing("in"),
    nothing("inch"),
    nothing("weight"),
    nothing("wt"),
    nothing("special"),
    nothing("mj"),
    nothing("mechanical"),
    nothing("joint"),
    nothing("push"),
    nothing("on"),
    nothing("restrained"),
    family("ips", OdFamily::iron_pipe_size),
    family("ciod", OdFamily::cast_iron),
    family("diod", OdFamily::cast_iron),
    family("dips", OdFamily::cast_iron),
    family("cts", OdFamily::copper_tube),
    Word{"pressure", Meaning::pressure},
    Word{"thickness", Meaning::thickness},
    Word{"iron", Meaning::iron},
    Word{"std", Meaning::standard},
    Word{"standard", Meaning::standard},
    Word{"pe", Meaning::resin},
    Word{"hdpe", Meaning::resin},
};

const Word* word_of(std::string_view text) {
  const auto* const found = std::find_if(words.begin(), words.end(), [&](const Word& word) {
    return word.text.size() == text.size() && word.text[0] == text[0] && word.text == text;
  });
  return found == words.end() ? nullptr : found;
}

// Polyethylene compounds by their number.
constexpr std::array resins = {2406, 3406, 3408, 3608, 4710};

// Years of editions that two figures behind a standard can mean, where no class of that standard is called so.
struct Edition {
  std::string_view standard;
  std::string_view year;
};
constexpr std::array editions = {Edition{"c900", "16"}, Edition{"c905", "10"}, Edition{"c906", "15"},
                                 Edition{"c151", "17"}, Edition{"a2151", "17"}};

bool is_edition(std::string_view standard, std::string_view year) {
  if (year.size() == 4) return year.starts_with("19") || year.starts_with("20");
  if (year.size() != 2) return false;
  if (year[0] == '0' || year[0] >= '6') return true;
  return std::any_of(editions.begin(), editions.end(),
                     [&](const Edition& one) { return one.standard == standard && one.year == year; });
}

class ClassReader {
 public:
  ClassReader(const Catalog& catalog, std::string_view text, Material material)
      : catalog_(catalog), text_(text), material_(material) {}

  ClassWords read() {
    if (text_.size() > small_.size() || !split()) {
      stray(text_);
      return found_;
    }
    while (at_ < count_ && found_.stray.empty()) step();
    return found_;
  }

 private:
  // ---- tokens

  bool split() {
    std::transform(text_.begin(), text_.end(), small_.begin(), lower);
    char before = ' ';
    for (std::size_t at = 0; at < text_.size();) {
      const std::size_t begin = at;
      const bool number = starts_number(at, before);
      if (number) {
        while (at < text_.size() && (is_digit(text_[at]) || starts_decimals(at))) ++at;
      } else {
        while (at < text_.size() && is_letter(text_[at])) ++at;
      }
      if (at == begin) {
        before = text_[at++];
        continue;
      }
      if (count_ == tokens_.size()) return false;
      tokens_[count_++] = {{small_.data() + begin, at - begin}, text_.substr(begin, at - begin), before, number};
      before = '\0';
    }
    return true;
  }
  // The point of ".250" begins a number; that of "cl.52" parts two words.
  [[nodiscard]] bool starts_number(std::size_t at, char before) const {
    return is_digit(text_[at]) || (starts_decimals(at) && before == ' ');
  }
  [[nodiscard]] bool starts_decimals(std::size_t at) const {
    return text_[at] == '.' && at + 1 < text_.size() && is_digit(text_[at + 1]);
  }

  [[nodiscard]] const Token& token(std::size_t ahead = 0) const { return tokens_[at_ + ahead]; }
  [[nodiscard]] bool has(std::size_t ahead) const { return at_ + ahead < count_; }
  [[nodiscard]] bool next_is(std::size_t ahead, std::string_view word) const {
    return has(ahead) && token(ahead).text == word;
  }

  // ---- what they say

  void step() {
    if (read_standard()) return;
    if (token().number) return read_number(ClassMark::number);
    if (const Word* const word = word_of(token().text)) return read_word(*word);
    if (token().text.size() == 1) return read_letter();
    read_material_or_joined();
  }

  void read_word(const Word& word) {
    switch (word.meaning) {
      case Meaning::issuer:
        found_.issuer = true;
        ++at_;
        return;
      case Meaning::nothing:
        ++at_;
        return;
      case Meaning::kind:
        ++at_;
        return read_figure(word.kind);
      case Meaning::pressure:
        if (next_is(1, "class")) return skip_to_figure(2, ClassMark::pressure_class);
        if (next_is(1, "rating")) return skip_to_figure(2, ClassMark::pressure_rating);
        return stray(token().written);
      case Meaning::thickness:
        if (next_is(1, "class")) return skip_to_figure(2, ClassMark::thickness_class);
        return stray(token().written);
      case Meaning::iron:
        if (!next_is(1, "pipe") || !(next_is(2, "size") || next_is(2, "sizes"))) return read_material_or_joined();
        at_ += 3;
        found_.family = OdFamily::iron_pipe_size;
        return;
      case Meaning::family:
        ++at_;
        if (found_.family && *found_.family != word.family) return stray(tokens_[at_ - 1].written);
        found_.family = word.family;
        return;
      case Meaning::standard:
        ++at_;
        return add({ClassMark::standard_weight, 0});
      case Meaning::resin:
        if (has(1) && token(1).number && token(1).before == '\0') return skip_to_figure(1, ClassMark::resin);
        return read_material_or_joined();
    }
  }

  void skip_to_figure(std::size_t words_read, ClassMark mark) {
    at_ += words_read;
    read_figure(mark);
  }

  // The figure of a kind of class. A kind without one says nothing that could be relied on.
  void read_figure(ClassMark mark) {
    if (has(0) && token().number) return read_number(mark);
    const bool lettered = mark == ClassMark::class_number || mark == ClassMark::letter;
    if (has(0) && lettered && token().text.size() == 1) return read_letter();
    if (mark == ClassMark::schedule && has(0) && token().text == "std") return;
    stray(tokens_[at_ - 1].written);
  }

  void read_letter() {
    add({ClassMark::letter, token().text[0] - 'a' + 1});
    ++at_;
  }

  void read_number(ClassMark mark) {
    const Token& number = token();
    double value = 0.0;
    const char* const end = number.text.data() + number.text.size();
    const auto [stop, error] = std::from_chars(number.text.data(), end, value);
    const double thousandths = value * 1000.0;
    const int whole = static_cast<int>(std::min(thousandths + 0.5, 1e9));
    if (error != std::errc() || stop != end || thousandths > 1e8 || std::abs(thousandths - whole) > 1e-6) {
      return stray(number.written);
    }
    const bool resin = mark == ClassMark::number && whole % 1000 == 0 &&
                       std::find(resins.begin(), resins.end(), whole / 1000) != resins.end();
    ++at_;
    add({resin ? ClassMark::resin : mark, whole});
  }

  // ---- standards

  // "C900", "C-900", "A21.51", "B36.10M", "1908", with the year of an edition behind it.
  bool read_standard() {
    std::array<char, 16> name{};
    std::size_t size = 0;
    std::size_t taken = 0;
    const auto take = [&](const Token& from) {
      for (const char c : from.text) {
        if (c != '.' && size < name.size()) name[size++] = c;
      }
      ++taken;
    };
    if (!token().number) {
      if (token().text.size() > 1 || !has(1) || !token(1).number) return false;
      take(token());
    }
    take(token(taken));
    const std::size_t without_letter = size;
    const std::size_t taken_without = taken;
    if (has(taken) && !token(taken).number && token(taken).text.size() == 1 && token(taken).before == '\0') {
      take(token(taken));
      if (add_standard({name.data(), size}, taken)) return true;
    }
    return add_standard({name.data(), without_letter}, taken_without);
  }

  bool add_standard(std::string_view name, std::size_t taken) {
    const std::vector<std::string>& known = catalog_.standards();
    const auto at = std::find(known.begin(), known.end(), name);
    if (at == known.end()) return false;
    const std::string_view first = token().written;
    const std::string_view last = token(taken - 1).written;
    const auto place = static_cast<std::uint8_t>(at - known.begin());
    if (!of_material(place)) {
      found_.stray_of = catalog_.material_of_standard(place);
      stray({first.data(), static_cast<std::size_t>(last.data() + last.size() - first.data())});
      return true;
    }
    if (found_.standards.size() < most_standards) found_.standards.push_back(place);
    at_ += taken;
    if (has(0) && token().number && token().before == '-' && is_edition(name, token().text)) ++at_;
    return true;
  }

  [[nodiscard]] bool of_material(std::uint8_t standard) const {
    return std::any_of(catalog_.series().begin(), catalog_.series().end(), [&](const PipeSeries& series) {
      return series.material == material_ &&
             std::any_of(series.made_to.begin(), series.made_to.end(),
                         [&](const StandardUse& use) { return use.standard == standard; });
    });
  }

  // ---- the material's own names, and words written together

  void read_material_or_joined() {
    for (const std::size_t length : {std::size_t{2}, std::size_t{1}}) {
      if (length > 1 && (!has(1) || token(1).number)) continue;
      const std::string_view last = token(length - 1).written;
      const std::string_view first = token().written;
      const std::string_view text(first.data(), static_cast<std::size_t>(last.data() + last.size() - first.data()));
      const auto material = catalog_.read_material(text).material;
      if (!material) continue;
      if (*material == material_) {
        at_ += length;
        return;
      }
      found_.stray_of = material;
      return stray(text);
    }
    if (!part_joined()) stray(token().written);
  }

  // "dipc350": a name of the material, or a word, and then another word or a letter.
  bool part_joined() {
    const std::string_view joined = token().text;
    for (const bool letter : {false, true}) {
      for (std::size_t length = joined.size() - 1; length >= 2; --length) {
        const std::string_view rest = joined.substr(length);
        if (letter ? rest.size() > 1 : word_of(rest) == nullptr) continue;
        const std::string_view first = joined.substr(0, length);
        if (word_of(first) == nullptr && catalog_.read_material(first).material != material_) continue;
        return part_at(length);
      }
    }
    return false;
  }

  bool part_at(std::size_t length) {
    if (count_ == tokens_.size()) return false;
    const Token joined = token();
    for (std::size_t i = count_++; i > at_ + 1; --i) tokens_[i] = tokens_[i - 1];
    tokens_[at_] = {joined.text.substr(0, length), joined.written.substr(0, length), joined.before, false};
    tokens_[at_ + 1] = {joined.text.substr(length), joined.written.substr(length), '\0', false};
    return true;
  }

  // ---- the answer

  void add(ClassWord word) {
    auto& found = found_.words;
    if (std::find(found.begin(), found.end(), word) != found.end()) return;
    if (found.size() == most_words) return stray(tokens_[at_ - 1].written);
    found.push_back(word);
  }
  void stray(std::string_view word) { found_.stray = word.empty() ? ShortText("?") : ShortText(word); }

  static constexpr std::size_t most_words = 6;
  static constexpr std::size_t most_standards = 6;
  const Catalog& catalog_;
  std::string_view text_;
  Material material_;
  std::array<char, 64> small_;
  std::array<Token, 20> tokens_;
  std::size_t count_ = 0;
  std::size_t at_ = 0;
  ClassWords found_;
};

}  // namespace

ClassWords Catalog::read_class(std::string_view text, Material material) const {
  return ClassReader(*this, text, material).read();
}

std::optional<Material> Catalog::material_of_standard(std::uint8_t standard) const {
  for (const PipeSeries& one : series_) {
    for (const StandardUse& use : one.made_to) {
      if (use.standard == standard) return one.material;
    }
  }
  return std::nullopt;
}

}  // namespace mainbore
