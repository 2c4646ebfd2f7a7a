#include "mainbore/nominal_size.hpp"

#include "mainbore/measure.hpp"

namespace mainbore {

std::string NominalSize::label() const {
  std::string text;
  if (ten_thousandths_ % (10000 / 16) == 0) append_sixteenths(text, number());
  else append_number(text, number(), 4);
  return text;
}

}  // namespace mainbore
