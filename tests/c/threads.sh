#!/usr/bin/env bash
# Builds the library with the thread sanitizer, without optimization and without program and tests, and runs eight threads on
# one planner. Usage: threads.sh [BUILD_DIR], where what was built is used again.
set -euo pipefail
source=$(cd "$(dirname "$0")/../.." && pwd)
build=${1:-$source/build/thread}
cmake -S "$source" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_COMPILER=clang++ -DMAINBORE_BUILD_TESTS=OFF \
  -DMAINBORE_BUILD_PROGRAM=OFF -DCMAKE_CXX_FLAGS="-O1 -g0 -fsanitize=thread" > "$build.log" 2>&1 || { cat "$build.log"; exit 1; }
cmake --build "$build" --target mainbore
clang++ -std=c++20 -O1 -fsanitize=thread -I"$source/include" "$source/tests/c/threads.cpp" "$build/src/libmainbore.a" -lsimdjson \
  -pthread -o "$build/threads"
TSAN_OPTIONS=halt_on_error=1 "$build/threads"
echo "eight threads on one planner: no race, and each got the same"
