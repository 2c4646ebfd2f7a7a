// The digits of a number, written where they are wanted.
#pragma once

#include <cstddef>

namespace mainbore {

inline constexpr std::size_t longest_number = 64;
// As append_number (measure.hpp) has it, into room for `longest_number` bytes; returns the end of it.
char* put_number(char* to, double value, int decimals);

}  // namespace mainbore
