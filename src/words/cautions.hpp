// The cautions, each in full and in a few words.
#pragma once

#include <cstdint>
#include <string_view>

#include "mainbore/language.hpp"

namespace mainbore::words {

struct CautionText {
  std::string_view brief;  // for the card, at most 37 columns, so that two stand side by side
  std::string_view text;
};

enum class CautionWord : std::uint8_t {
  who_decides,
  identify,
  other_lines,
  prove_empty,
  shut_off,
  out_of_line,  // {pressure} {hole} {push}; all may be missing
  read_zero,
  trapped_air,
  pit_fills,  // {flow} {time}; both may be missing
  eyes,
  clean,
  not_alone,
  pit,       // {depth} {least_depth}; at most one is known
  pit_deep,  // {depth} {least_depth}; at most one is known
  wet_ground,
  digger,
  wet_electric,
  bond,
  static_charge,
  powered,
  asbestos,
  brittle,
  wire,
  blanket,
  polyethylene,
  coupon,
  poor_wall,  // {condition}
  encasement,
  lead,
  slack,
  end,
};

[[nodiscard]] const CautionText& caution_text(CautionWord word, Language language);

}  // namespace mainbore::words
