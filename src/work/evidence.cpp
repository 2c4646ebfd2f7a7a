#include "mainbore/evidence.hpp"

#include "mainbore/finding_words.hpp"

namespace mainbore {

std::string_view words_of(const Evidence& item) {
  return item.finding ? text_of(*item.finding).title : name_of(item.what);
}

}  // namespace mainbore
