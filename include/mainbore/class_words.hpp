// What the class of a pipe says, word by word.
//
// "AWWA C900-16 DR 18" names a standard, its edition and a dimension ratio. Every word is a standard of the catalog, a
// family of outside diameters, a figure of the class, a resin, the material itself, or one of a short list that says
// nothing of the class ("AWWA", "psi"). A word that is none of these, or that belongs to another material, is kept as the
// stray word: what it might have meant is not guessed.
#pragma once

#include <cstdint>
#include <optional>

#include "mainbore/bounded_list.hpp"
#include "mainbore/material.hpp"
#include "mainbore/short_text.hpp"

namespace mainbore {

enum class ClassMark : std::uint8_t {
  dimension_ratio,  // DR 18, SDR 18
  pressure_class,   // PC 350, pressure class 350
  pressure_rating,  // PR 200
  class_number,     // Class 150: of a number alone the tables tell what kind of class it is
  thickness_class,  // TC 52, special thickness class 52
  schedule,         // Sch 40
  number,           // 150, 150 psi, 0.250 wall
  letter,           // Class B, Type K
  resin,            // PE4710
  standard_weight   // STD
};

struct ClassWord {
  ClassMark mark = ClassMark::number;
  int thousandths = 0;  // of the figure; of a letter its place in the alphabet
  friend bool operator==(const ClassWord&, const ClassWord&) = default;
};

// Families of outside diameters that a word can name.
enum class OdFamily : std::uint8_t { unnamed, iron_pipe_size, cast_iron, copper_tube };

struct ClassWords {
  BoundedList<ClassWord, 6> words;
  BoundedList<std::uint8_t, 6> standards;  // places in Catalog::standards()
  std::optional<OdFamily> family;
  bool issuer = false;               // names who issues the American standards: AWWA, ANSI, ASTM, ASME
  ShortText stray;                   // the first word that means nothing here; empty where there is none
  std::optional<Material> stray_of;  // the material that it belongs to, where it is known at all

  [[nodiscard]] bool empty() const { return words.empty() && standards.empty() && !family; }
  // Whether it says that the pipe is American, whatever unit its size is named in.
  [[nodiscard]] bool names_standard() const { return issuer || family || !standards.empty(); }
};

}  // namespace mainbore
