# Writes the data files as one C++ source of string literals.
#
#   cmake -DDATA_DIR=<dir> -DFILES="a.json|pipes/b.json" -DOUTPUT=<file.cpp> -P embed.cmake
#
# A literal holds at most 15000 bytes, the least that every compiler takes, and ends behind a line break, so that no
# character is ever cut in two.
set(piece_limit 15000)

string(REPLACE "|" ";" files "${FILES}")
set(definitions "")
set(table "")
set(index 0)
foreach(path IN LISTS files)
  file(READ "${DATA_DIR}/${path}" rest)
  string(FIND "${rest}" ")mainbore\"" clash)
  if(NOT clash EQUAL -1)
    message(FATAL_ERROR "${path} holds the text that ends a literal")
  endif()
  set(pieces "")
  while(NOT rest STREQUAL "")
    string(LENGTH "${rest}" length)
    if(length GREATER piece_limit)
      string(SUBSTRING "${rest}" 0 ${piece_limit} piece)
      string(FIND "${piece}" "\n" cut REVERSE)
      if(cut EQUAL -1)
        message(FATAL_ERROR "${path} has a line longer than ${piece_limit} bytes")
      endif()
      math(EXPR cut "${cut} + 1")
      string(SUBSTRING "${rest}" 0 ${cut} piece)
      string(SUBSTRING "${rest}" ${cut} -1 rest)
    else()
      set(piece "${rest}")
      set(rest "")
    endif()
    string(APPEND pieces "    R\"mainbore(${piece})mainbore\",\n")
  endwhile()
  string(APPEND definitions "constexpr std::string_view pieces_${index}[] = {\n${pieces}};\n")
  string(APPEND table "    {\"${path}\", pieces_${index}},\n")
  math(EXPR index "${index} + 1")
endforeach()

file(WRITE "${OUTPUT}.new" "// Made from data/ by embed.cmake. Do not edit.
#include \"catalog/embedded.hpp\"

namespace mainbore::embedded {
namespace {
${definitions}
constexpr File all[] = {
${table}};
}  // namespace

std::span<const File> files() { return all; }

}  // namespace mainbore::embedded
")
file(RENAME "${OUTPUT}.new" "${OUTPUT}")
