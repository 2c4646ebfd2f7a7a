#!/usr/bin/env bash
# The shared library exports what exports.txt lists, under its SONAME, and nothing else; and the header declares just that.
# Usage: check_exports.sh LIBRARY SOURCE_DIR NM
set -euo pipefail
library=$1 source=$2 nm=$3
listed=$source/tests/c/exports.txt
diff -u "$listed" <("$nm" -D --defined-only "$library" | awk '$2 ~ /^[A-Z]$/ && $2 != "A" {sub(/@.*/, "", $3); print $3}' | sort)
diff -u "$listed" <(sed -n 's/^MAINBORE_API .*[ *]\(mainbore_[a-z_]*\)(.*/\1/p' "$source/include/mainbore.h" | sort)
readelf -d "$library" | grep 'SONAME.*\[libmainbore\.so\.0\]' > /dev/null
