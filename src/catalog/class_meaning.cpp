#include "catalog/class_meaning.hpp"

#include <algorithm>

namespace mainbore {
namespace {

bool made_to(const Pipe& pipe, std::uint8_t standard) {
  const std::vector<StandardUse>& known = pipe.series->made_to;
  return std::any_of(known.begin(), known.end(),
                     [&](const StandardUse& use) { return use.standard == standard && pipe.size >= use.from; });
}

}  // namespace

bool means(const ClassWord& word, const std::vector<ClassWord>& names) {
  return std::any_of(names.begin(), names.end(), [&](const ClassWord& name) {
    if (name.thousandths != word.thousandths) return false;
    if (name.mark == word.mark) return true;
    if (word.mark == ClassMark::class_number) return name.mark == ClassMark::pressure_class;
    return word.mark == ClassMark::number &&
           (name.mark == ClassMark::class_number || name.mark == ClassMark::pressure_class ||
            name.mark == ClassMark::pressure_rating);
  });
}

bool of_standard(const Pipe& pipe, const ClassWords& words) {
  if (words.family && *words.family != pipe.series->family) return false;
  return words.standards.empty() || std::any_of(words.standards.begin(), words.standards.end(),
                                                [&](std::uint8_t standard) { return made_to(pipe, standard); });
}

bool compound_left_out(const ClassWords& words, const Pipe& pipe) {
  return pipe.series->material == Material::polyethylene && !words.words.empty() &&
         pipe.class_name.find("PE") != std::string::npos &&
         std::none_of(words.words.begin(), words.words.end(),
                      [](const ClassWord& word) { return word.mark == ClassMark::resin; });
}

bool of_class(const ClassWords& words, const std::vector<ClassWord>& names) {
  return std::all_of(words.words.begin(), words.words.end(), [&](const ClassWord& word) { return means(word, names); });
}

bool means_pipe(const ClassWords& words, const Pipe& pipe) {
  return words.stray.empty() && of_standard(pipe, words) && of_class(words, pipe.names) &&
         !compound_left_out(words, pipe);
}

}  // namespace mainbore
