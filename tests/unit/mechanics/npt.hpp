// NPT threads for the tests, made by the formulas from the diameter, pitch and gauge length of the published table.
#pragma once

#include <stdexcept>
#include <string>

#include "mainbore/mechanics/taper_thread.hpp"
#include "support/reference_table.hpp"

namespace mainbore::test {

inline mechanics::TaperThread npt(const std::string& size) {
  static const ReferenceTable table("npt_dimensions.csv");
  for (const ReferenceRow& row : table.rows()) {
    if (row.text("size") == size) {
      return mechanics::npt_thread(row.number("D") * units::inch, row.number("tpi") * units::per_inch,
                                   row.number("L1") * units::inch);
    }
  }
  throw std::runtime_error("no NPT size " + size);
}

}  // namespace mainbore::test
