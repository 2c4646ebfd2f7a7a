#!/usr/bin/env bash
# Installs the packages in a bare system, uses them as somebody new would, and removes them without a trace.
# Usage: chroot.sh PACKAGES_DIR [RELEASE [MIRROR]]. Skipped (77) without debootstrap or without root.
set -euo pipefail
packages=$(cd "$1" && pwd)
# shellcheck source=/dev/null
release=${2:-$(. /etc/os-release && echo "$VERSION_CODENAME")}
mirror=${3:-$(cat /etc/apt/sources.list /etc/apt/sources.list.d/* 2> /dev/null | sed -n 's/^\(deb .*\|URIs:\) *\(http[^ ]*\).*/\2/p' | head -n 1 || true)}
source=$(cd "$(dirname "$0")/../.." && pwd)
command -v debootstrap > /dev/null && [ "$(id -u)" -eq 0 ] && [ -n "$mirror" ] || { echo "needs debootstrap, root and a mirror"; exit 77; }

root=$(mktemp -d)
trap 'umount "$root/proc" 2> /dev/null || true; rm -rf --one-file-system "$root"' EXIT
chmod 755 "$root"  # users of the system inside, such as that of the manual, must get in
debootstrap --variant=minbase --include=man-db,bash-completion "$release" "$root" "$mirror" > "$root.log" 2>&1 || { tail "$root.log"; exit 1; }
rm -f "$root.log"
mount -t proc proc "$root/proc"
for file in /etc/apt/apt.conf.d/*; do cp "$file" "$root/etc/apt/apt.conf.d/" 2> /dev/null || true; done
cp /etc/resolv.conf "$root/etc/" 2> /dev/null || true
# A bare image leaves out manual pages to be small.
rm -f "$root"/etc/dpkg/dpkg.cfg.d/*docker* 2> /dev/null || true
inside() { chroot "$root" /usr/bin/env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root DEBIAN_FRONTEND=noninteractive "$@"; }
inside apt-get update -qq
# What the users of the packages need, and theirs is not: a compiler, the shells.
inside apt-get install -y -qq --no-install-recommends gcc libc6-dev pkgconf fish zsh python3 > /dev/null
files() { (cd "$root" && find . -xdev \( -path ./proc -o -path ./var -o -path ./tmp -o -path ./root -o -path ./etc/ld.so.cache \) -prune -o -print | sort); }
files > "$packages/../before"

mkdir "$root/tmp/packages"
cp "$packages"/*.deb "$root/tmp/packages/"
inside sh -c 'apt-get install -y -qq --no-install-recommends /tmp/packages/*.deb' > /dev/null
echo "installed: $(inside dpkg-query -W -f '${Package} ' mainbore libmainbore0 libmainbore-dev python3-mainbore)"

inside mainbore --version
status=0
inside mainbore plan --set main.material=PVC --set main.size="8 in" --set service.size="1 in" --set main.pressure="65 psi" > /dev/null || status=$?
[ "$status" -eq 3 ] || { echo "plan: exit status $status"; exit 1; }
inside man -P cat mainbore | grep -q 'plans service taps'
inside bash -c '. /usr/share/bash-completion/bash_completion; _completion_loader mainbore; complete -p mainbore' | grep -q _mainbore
inside fish -c 'complete -C "mainbore rules "' | grep -q '^check'
inside zsh -fc 'autoload -Uz compinit; compinit -u -D; echo ${_comps[mainbore]}' | grep -q _mainbore
cp "$source/examples/c/one_job.c" "$source/examples/python/one_job.py" "$root/tmp/"
inside sh -c 'cd /tmp && cc -std=c89 -pedantic -Werror one_job.c $(pkg-config --cflags --libs mainbore) -o one_job && { ./one_job; [ $? -eq 3 ]; }' | head -n 1
inside python3 /tmp/one_job.py | head -n 1
test -s "$root/usr/share/doc/mainbore/copyright"
test -s "$root/usr/share/doc/mainbore/examples/jobs/ductile_iron_direct.json"

inside apt-get purge -y -qq mainbore libmainbore0 libmainbore-dev python3-mainbore > /dev/null
inside apt-get autoremove --purge -y -qq > /dev/null
left=$(files | comm -13 "$packages/../before" - | grep mainbore || true)
rm -f "$packages/../before"
[ -z "$left" ] || { printf 'left behind:\n%s\n' "$left"; exit 1; }
echo "removed without a trace"
