#include "report/mixing.hpp"

#include <algorithm>

#include "report/round_up.hpp"

namespace mainbore::report {
namespace {

std::string whole(double value, std::string_view unit) {
  std::string text;
  append_number(text, value, 0);
  return (text += ' ') += unit;
}

}  // namespace

Mixing mixing_of(const SwabMix& swab, UnitSystem system) {
  if (system == UnitSystem::si) {
    const double each = round_up(swab.milliliters_per_liter(), 5.0);
    const double made = round_up(1000.0 * (swab.finished / units::liter), 5.0);
    const double stock = std::min(round_up(each * made / 1000.0, 5.0), made);
    return {whole(stock, "mL"), whole(made - stock, "mL"), whole(each, "mL"), whole(each, "mL to each liter made")};
  }
  const double each = round_up(swab.fluid_ounces_per_gallon(), 1.0);
  const double made = 128.0 * (swab.finished / units::gallon);
  const double stock = std::min(round_up(each * made / 128.0, 1.0), made);
  return {whole(stock, "fl oz"), whole(made - stock, "fl oz"), whole(each, "fl oz"),
          whole(each, "fl oz to each gallon made")};
}

}  // namespace mainbore::report
