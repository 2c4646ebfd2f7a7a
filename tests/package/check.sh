#!/usr/bin/env bash
# Installs the build into a folder of its own and builds, links and runs users of it, by find_package and by pkg-config; and
# configures a project that takes in the source.
# Usage: check.sh BUILD_DIR SOURCE_DIR CXX
set -euo pipefail
build=$1 source=$2 cxx=$3
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
prefix=$work/prefix
cmake --install "$build" --prefix "$prefix" > "$work/log"

cmake -S "$source/tests/package" -B "$work/build" -G Ninja -DCMAKE_PREFIX_PATH="$prefix" -DCMAKE_CXX_COMPILER="$cxx" >> "$work/log"
cmake --build "$work/build" >> "$work/log"
"$work/build/user"
# What it does is what the README shows.
shown() { sed -e 's|  *//.*||' -e 's/^ *//' "$@"; }
sed -n '/^```cpp/,/^```/{/^```/!p}' "$source/README.md" | shown | grep . > "$work/shown"
shown "$source/tests/package/user.cpp" > "$work/done"
left=$(grep -vxFf "$work/done" "$work/shown" || true)
[ -z "$left" ] || { printf 'README.md shows what tests/package/user.cpp does not do:\n%s\n' "$left"; exit 1; }
planned() { local status=0; "$@" > "$work/card" || status=$?; [ "$status" -eq 3 ] && grep -q 'STOP NUMBERS' "$work/card"; }
planned "$work/build/one_job"

if command -v pkg-config > /dev/null; then
  libdir=$(dirname "$(find "$prefix" -name libmainbore.so)")
  # The files name the prefix that the build was configured for.
  flags() { PKG_CONFIG_PATH=$libdir/pkgconfig pkg-config --define-variable=prefix="$prefix" --define-variable=libdir="$libdir" \
    --define-variable=includedir="$prefix/include" --cflags --libs "$1"; }
  # shellcheck disable=SC2046  # a list of words
  cc -std=c89 -pedantic -Werror "$source/examples/c/one_job.c" $(flags mainbore) -o "$work/one_job"
  LD_LIBRARY_PATH=$libdir planned "$work/one_job"
  # shellcheck disable=SC2046
  "$cxx" "$source/tests/package/user.cpp" $(flags mainbore-cpp) -o "$work/user"
  "$work/user"
fi
cmake -S "$source/tests/package/subproject" -B "$work/subproject" -G Ninja -DMAINBORE_SOURCE="$source" -DCMAKE_CXX_COMPILER="$cxx" >> "$work/log"

"$prefix/bin/mainbore" --version
for file in man/man1/mainbore.1 bash-completion/completions/mainbore zsh/site-functions/_mainbore \
  fish/vendor_completions.d/mainbore.fish doc/mainbore/LICENSE doc/mainbore/docs/job.md doc/mainbore/examples/orders/week.csv; do
  test -s "$prefix/share/$file" || { echo "not installed: share/$file"; exit 1; }
done
# Everything that the build installs is listed: uninstalling takes away just that.
(cd "$build" && while read -r file || [ -n "$file" ]; do rm "$prefix/${file#"$prefix/"}"; done < install_manifest.txt)
left=$(find "$prefix" -type f -o -type l | head -n 5)
[ -z "$left" ] || { printf 'not in install_manifest.txt:\n%s\n' "$left"; exit 1; }

# Below /usr/local every shell finds its completion without being told where. fish has a folder of the administrator for that.
DESTDIR=$work/root cmake --install "$build" --component program --prefix /usr/local >> "$work/log"
for file in usr/local/share/bash-completion/completions/mainbore usr/local/share/zsh/site-functions/_mainbore \
  etc/fish/completions/mainbore.fish; do
  test -s "$work/root/$file" || { echo "not installed: /$file"; exit 1; }
done
if command -v fish > /dev/null; then
  # Into a variable: a grep that has seen enough would end the pipe under a shell that still writes.
  folders=$(env -i HOME="$work" PATH="$PATH" fish -c 'string join \n $fish_complete_path')
  grep -qx /etc/fish/completions <<< "$folders"
fi
