#!/usr/bin/env bash
# The manual page: no formatter warns of it, no line of it is wider than a terminal, every section is there.
# Exits 77, "skipped", where there is no formatter.
# Usage: check_manual.sh PAGE
set -euo pipefail
page=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export LC_ALL=C

# Plain characters, without the marks of bold and underlined ones.
if command -v groff > /dev/null && groff -man -Tascii /dev/null > /dev/null 2>&1; then
  groff -man -ww -Tascii -P-c -P-bou -rLL=80n "$page" > "$work/page" 2> "$work/warnings"
elif command -v mandoc > /dev/null; then
  mandoc -T lint -W error "$page" > "$work/warnings"
  mandoc -T ascii -O width=80 "$page" | sed 's/.\x08//g' > "$work/page"
else
  echo "neither groff nor mandoc is installed"
  exit 77
fi
if [ -s "$work/warnings" ]; then
  cat "$work/warnings"
  exit 1
fi

if grep -nE '^.{81}' "$work/page"; then
  echo "lines wider than 80 columns"
  exit 1
fi
for section in NAME SYNOPSIS DESCRIPTION COMMANDS OPTIONS 'FACTS OF A JOB' 'EXIT STATUS' ENVIRONMENT 'SEE ALSO'; do
  grep -qx "$section" "$work/page" || { echo "no section $section"; exit 1; }
done
# Quotes, hyphens and backslashes as they are typed.
grep -qF 'mainbore plan job.json --set main.pressure="565 kPa" --units si' "$work/page" ||
  { echo "an example is not as it is typed"; exit 1; }
grep -qE ' \\$' "$work/page" || { echo "no example goes on in the next line"; exit 1; }
