#!/usr/bin/env bash
# Builds the packages of this commit in two folders of different path, and compares them byte for byte. Two whole builds: run
# it before a release. Usage: two_builds.sh
set -euo pipefail
source=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
SOURCE_DATE_EPOCH=$(git -C "$source" log -1 --format=%ct)
export SOURCE_DATE_EPOCH
for folder in "$work/one" "$work/another/folder/deeper"; do
  mkdir -p "$folder"
  git -C "$source" archive HEAD | tar -x -C "$folder"
  bash "$folder/.ci/release" > "$work/sums.${#folder}" 2> "$work/log" || { tail -n 40 "$work/log"; exit 1; }
done
if ! cmp "$work"/sums.*; then
  diff "$work"/sums.* || true
  exit 1
fi
cat "$work/sums.${#folder}"
echo "two builds, the same bytes"
