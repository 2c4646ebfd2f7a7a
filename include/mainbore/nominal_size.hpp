// A nominal size is a name, not a length.
//
// "6-inch pipe" measures 6.90 in outside as ductile iron, 6.625 in as steel and 7.10 in as old pit-cast iron: nothing on
// it is six inches. Mixing the name with a length is the commonest mistake of the trade, so here the two do not mix:
// there is no conversion from NominalSize to Length; only a catalog row turns the one into the other.
//
// Stored as ten-thousandths of the nominal inch, so that 5/8 and 1/16 are exact and sizes compare exactly. A size written
// as DN or in millimeters keeps that name beside it, because in most countries it names another pipe; comparisons are of
// the nominal inches alone.
//
//     NominalSize::inches(1.25).label()  -> "1-1/4"
//     NominalSize::inches(31.4).label()  -> "31.4"        (not a standard size, but somebody's card says so)
#pragma once

#include <compare>
#include <cstdint>
#include <string>

namespace mainbore {

class NominalSize {
 public:
  constexpr NominalSize() = default;
  static constexpr NominalSize inches(double nominal) {
    return NominalSize(static_cast<std::int32_t>(nominal * 10000.0 + (nominal < 0 ? -0.5 : 0.5)));
  }
  // The same size as somebody wrote it by its metric name.
  [[nodiscard]] constexpr NominalSize written_as_dn(int dn) const {
    NominalSize size = *this;
    size.dn_ = dn;
    return size;
  }

  // The metric name it was written by, 150 of "DN 150" or "150 mm"; 0 where it was written in inches.
  [[nodiscard]] constexpr int dn() const { return dn_; }

  // The number in the name. For tables, ratios of names ("at most a quarter of the main") and display only.
  [[nodiscard]] constexpr double number() const { return ten_thousandths_ / 10000.0; }
  // As the trade writes it, without the unit: "3/4", "1-1/4", "12", "2-1/2"; decimals where no 1/16 fits.
  [[nodiscard]] std::string label() const;

  constexpr bool operator==(const NominalSize& other) const { return ten_thousandths_ == other.ten_thousandths_; }
  constexpr auto operator<=>(const NominalSize& other) const { return ten_thousandths_ <=> other.ten_thousandths_; }

 private:
  explicit constexpr NominalSize(std::int32_t value) : ten_thousandths_(value) {}
  std::int32_t ten_thousandths_ = 0;
  std::int32_t dn_ = 0;
};

}  // namespace mainbore
