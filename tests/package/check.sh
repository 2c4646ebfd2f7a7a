#!/usr/bin/env bash
# Installs the build into a folder of its own and builds, links and runs a user of it.
# Usage: check.sh BUILD_DIR SOURCE_DIR CXX
set -euo pipefail
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cmake --install "$1" --prefix "$work/prefix" > "$work/log"
cmake -S "$2/tests/package" -B "$work/build" -G Ninja -DCMAKE_PREFIX_PATH="$work/prefix" -DCMAKE_CXX_COMPILER="$3" >> "$work/log"
cmake --build "$work/build" >> "$work/log"
"$work/build/user"
"$work/prefix/bin/mainbore" --version
for file in man/man1/mainbore.1 bash-completion/completions/mainbore zsh/site-functions/_mainbore \
  fish/vendor_completions.d/mainbore.fish; do
  test -s "$work/prefix/share/$file" || { echo "not installed: share/$file"; exit 1; }
done
