#!/usr/bin/env bash
# The command, the library in C and Python give the same bytes for the same orders: 5,000, or MAINBORE_SAME_BYTES of them.
# Usage: same_bytes.sh MAINBORE C_BATCH MAKE_ORDERS PYTHON
set -euo pipefail
mainbore=$1 c_batch=$2 make_orders=$3 python=$4
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$make_orders" "${MAINBORE_SAME_BYTES:-5000}" > "$work/orders"
sed -i -e '7s/"size":/"sise":/' -e '1300s/.*/{"main":{"size":"6 in"/' "$work/orders"
run() { local status=0; "$@" || status=$?; case $status in 0 | 1 | 2 | 3) ;; *) return "$status" ;; esac; }
run "$mainbore" batch "$work/orders" --format ndjson > "$work/command"
run "$mainbore" batch "$work/orders" --format ndjson --jobs 2 > "$work/two"
run "$c_batch" < "$work/orders" > "$work/c"
"$python" -c '
import sys
import mainbore
for records in mainbore.Planner().batch_bytes(sys.stdin.buffer, jobs=2):
    sys.stdout.buffer.write(records)' < "$work/orders" > "$work/python"
[ "$(wc -l < "$work/command")" -eq "${MAINBORE_SAME_BYTES:-5000}" ]
for other in two c python; do cmp "$work/command" "$work/$other"; done
