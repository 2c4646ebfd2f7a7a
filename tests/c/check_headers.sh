#!/usr/bin/env bash
# Each public header compiles alone. Usage: check_headers.sh SOURCE_DIR BUILD_DIR CXX
set -euo pipefail
source=$(cd "$1" && pwd) build=$(cd "$2" && pwd) cxx=$3
cd "$source/include"
# One run of the compiler for all of them would hide what a header lacks behind the one before it.
{ find . -name '*.hpp' -printf '%P\n'; echo mainbore/version.hpp; echo mainbore.h; } | sort |
  xargs -P "$(nproc)" -I{} sh -c 'printf "#include <%s>\n" "$1" | "$2" -std=c++20 -Wall -Wextra -Wpedantic -Werror -fsyntax-only \
    -I . -I "$3/include" -x c++ - || { echo "$1 does not compile alone"; exit 255; }' _ {} "$cxx" "$build"
