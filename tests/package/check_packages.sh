#!/usr/bin/env bash
# Makes the packages of a build twice: the same bytes, each with what it should have, and nothing that lintian warns of.
# Usage: check_packages.sh BUILD_DIR
set -euo pipefail
here=$(cd "$(dirname "$0")/../.." && pwd)
build=$(cd "$1" && pwd)
work=$(mktemp -d)
# The build goes back to the prefix that it had.
trap 'rm -rf "$work"; cmake -S "$here" -B "$build" -DCMAKE_INSTALL_PREFIX=/usr/local > /dev/null' EXIT
first=$(bash "$here/.ci/release" --from "$build")
# What was made first is looked at while the second is made: each takes a core.
cp "$here"/build/packages/*.deb "$work"
if command -v lintian > /dev/null; then lintian --allow-root --fail-on error,warning "$work"/*.deb & else true & fi
lintian=$!
sleep 1
[ "$(bash "$here/.ci/release" --from "$build")" = "$first" ] || { echo "two runs give packages of other bytes"; exit 1; }
cd "$here/build/packages"
[ "$(ls ./*.deb | wc -l)" -eq 4 ]
listed=$(for package in *.deb; do dpkg-deb -c "$package"; done)
for file in usr/bin/mainbore usr/share/man/man1/mainbore.1.gz usr/share/bash-completion/completions/mainbore \
  usr/share/zsh/vendor-completions/_mainbore usr/share/fish/vendor_completions.d/mainbore.fish \
  usr/lib/python3/dist-packages/mainbore/py.typed usr/include/mainbore.h usr/share/doc/libmainbore0/copyright; do
  grep -q "$file\$" <<< "$listed" || { echo "in no package: $file"; exit 1; }
done
dpkg-deb -f mainbore_*.deb Depends | grep -q libstdc++6
! dpkg-deb -f libmainbore0_*.deb Depends | grep -Eq 'tbb|cli11'
wait "$lintian" || { echo "lintian warns of what stands above"; exit 1; }
echo "four packages, the same bytes twice"
