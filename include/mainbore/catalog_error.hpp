// What a faulty catalog file raises.
//
// The message names the file, the series or entry, the row and the fault:
//     pipes/pvc.json: series pvc-c900, row 12 (6 DR 18): twice the wall is not less than the outside diameter
#pragma once

#include <stdexcept>

namespace mainbore {

class CatalogError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

}  // namespace mainbore
