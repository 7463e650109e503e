#!/bin/bash
# The real program where the world around it is against it: a full disk, a read-only folder, two programs on one job, a
# clock set back, no home, odd paths, files that vanish, grow, are folders or pipes, devices as output.
# usage: tests/PackPlanner.Tests/Faults/surroundings.sh      (the full disk needs the right to mount a tmpfs)
set -u
top=$(cd "$(dirname "$0")/../../.." && pwd)
program=${PACKPLANNER_DLL:-$top/src/PackPlanner/bin/Release/net10.0/packplanner.dll}
[ -f "$program" ] || { echo "surroundings: build first: dotnet build -c Release"; exit 2; }
work=$(mktemp -d); passed=0; failed=0; skipped=0
trap 'mountpoint -q "$work/small" && umount "$work/small"; chmod -R u+w "$work"; rm -rf "$work"' EXIT
cd "$work" || exit 2
run() { timeout -k 20 60 dotnet "$program" "$@"; }
ok() { passed=$((passed + 1)); }
bad() { failed=$((failed + 1)); echo "surroundings: FAILED: $*"; }
skip() { skipped=$((skipped + 1)); echo "surroundings: not tried here: $*"; }
# exit code wanted, what for, command...: the code, one JSON document, and no stack trace.
gives() {
  local want=$1 what=$2; shift 2
  run "$@" --json >out 2>err; local rc=$?
  if [ $rc != "$want" ]; then bad "$what: exit $rc instead of $want: $(head -c 300 out)"
  elif ! python3 -c 'import json; json.load(open("out"))' 2>/dev/null; then bad "$what: not one JSON document"
  elif grep -q '   at PackPlanner' out err; then bad "$what: a stack trace"
  else ok; fi
}
says() { if grep -q -- "$1" out; then ok; else bad "$2: no word of $1: $(head -c 300 out)"; fi; }
same() { if cmp -s "$1" "$2"; then ok; else bad "$3"; fi; }

run demo trike --into d >/dev/null 2>&1; job=d/trike.job.json; cp "$job" before

# A full disk.
mkdir small
if mount -t tmpfs -o size=1m tmpfs small 2>/dev/null; then
  cp "$job" small/a.job.json; cp "$job" before
  head -c 2m /dev/zero >small/fill 2>/dev/null
  gives 3 "job set on a full disk" job set small/a.job.json reserve=12%
  says job-not-written "job set on a full disk"
  same small/a.job.json before "the job on a full disk is not as it was"
  gives 3 "sheets on a full disk" sheet "$job" --into small/paper
  gives 3 "an answer on a full disk" look d/cells.csv --output small/answer.json
  [ -z "$(find small -name '*.new')" ] && ok || bad "half-written files stay on the full disk: $(find small -name '*.new' | head -2)"
  rm small/fill; gives 0 "job set after room was made" job set small/a.job.json reserve=12%
  umount small
else skip "a full disk (no right to mount)"; fi

# A folder that may not be written, as a user other than root.
mkdir locked; cp "$job" locked/a.job.json; chmod a-w locked/a.job.json; chmod 555 locked; chmod 755 "$work"
if [ "$(id -u)" != 0 ]; then as=(); elif command -v setpriv >/dev/null; then as=(setpriv --reuid 65534 --regid 65534 --clear-groups env HOME=/nonexistent); else as=(false); fi
if [ -r "$program" ] && "${as[@]}" dotnet "$program" --version >/dev/null 2>&1; then
  "${as[@]}" dotnet "$program" job set locked/a.job.json reserve=12% --json >out 2>err; rc=$?
  [ $rc = 3 ] && ok || bad "a read-only folder gives $rc: $(head -c 300 out)"
  same locked/a.job.json before "a job in a read-only folder changed"
  "${as[@]}" dotnet "$program" job show locked/a.job.json --json >out 2>err && ok || bad "a job in a read-only folder is not shown"
else skip "a read-only folder (the program cannot be run as another user here)"; fi

# Two programs on one job, many times at once: each that says it saved is in the file.
cp "$job" two.job.json; saved=0
for round in 1 2 3 4 5; do
  pids=()
  for who in 1 2 3 4; do run job edit two.job.json "T00$who" "restV=3.6$round${who}V" --quiet >/dev/null 2>&1 & pids+=("$!:3.6$round$who"); done
  for one in "${pids[@]}"; do wait "${one%%:*}" && { saved=$((saved + 1)); grep -q "${one##*:}" two.job.json && ok || bad "round $round: a change that was called saved is gone"; }; done
done
[ $saved -gt 0 ] && ok || bad "nobody could save"
echo "surroundings: of 20 saves by four programs at once $saved were made, the others refused"

# The clock.
if command -v faketime >/dev/null; then
  faketime '1999-01-01 00:00:00' timeout 60 dotnet "$program" job set two.job.json reserve=13% --json >out 2>err && ok || bad "a clock set back: $(head -c 300 out)"
else skip "a clock set back (faketime is not installed)"; fi
touch -d '2099-01-01' two.job.json; gives 0 "a job from the future" job set two.job.json reserve=14%

# No home, and a home that may not be written.
env -u HOME -u XDG_STATE_HOME DOTNET_CLI_HOME="$work" timeout 60 dotnet "$program" cells d/cells.csv --json >out 2>err; [ $? = 0 ] && ok || bad "no HOME: $(head -c 300 out)"
env HOME=/nonexistent timeout 60 dotnet "$program" job set two.job.json reserve=15% --json >out 2>err; [ $? = 0 ] && ok || bad "HOME that is not there: $(head -c 300 out)"

# Spaces and letters beyond ASCII.
odd='Zellen übrig 電池 '\''x'\'' [1]*'; mkdir "$odd"; cp d/cells.csv "$odd/Zellen é.csv"
gives 0 "an odd path: look" look "$odd/Zellen é.csv"
gives 0 "an odd path: job new" job new "$odd/tägliches Rad.job.json" chemistry=NMC series=13 parallel=9
gives 0 "an odd path: job add" job add "$odd/tägliches Rad.job.json" "$odd/Zellen é.csv"
gives 0 "an odd path: sheet" sheet "$odd/tägliches Rad.job.json" --into "$odd/Blätter"
[ -n "$(find "$odd/Blätter" -name '*.html')" ] && ok || bad "an odd path: no sheet"

# A folder, a pipe, a device, a link to itself in place of a file.
mkdir folder.csv; ln -s loop.csv loop.csv; mkfifo pipe.csv
for verb in look cells capacity diagnose share join balance energy fit size match; do
  case $verb in diagnose) more=(--chemistry NMC) ;; match) more=(--series 2 --parallel 2) ;; share) more=(--load 10A) ;; *) more=() ;; esac
  gives 3 "$verb on a folder" "$verb" folder.csv "${more[@]}"
  gives 3 "$verb on a link to itself" "$verb" loop.csv "${more[@]}"
done
gives 3 "job show on a folder" job show folder.csv
cat d/cells.csv >pipe.csv & gives 0 "cells from a named pipe" cells pipe.csv; wait $!
run cells d/cells.csv --json | sed 's/pipe.csv//; s/d\/cells.csv//g' >one; sed 's/pipe.csv//g' out >other; same one other "a pipe is read otherwise than the file"
run cells <(cat d/cells.csv) --json >out 2>err && ok || bad "cells from the shell's own pipe: $(head -c 300 out)"
timeout 20 dotnet "$program" look pipe.csv >/dev/null 2>&1 & p=$!; sleep 2; kill -TERM "$(pgrep -P $p)" 2>/dev/null; wait $p; rc=$?
[ $rc = 130 ] && ok || bad "stopped while it waits for a pipe: exit $rc instead of 130"
gives 3 "look on zeros without end" look /dev/zero
cp -a /dev/null own-null 2>/dev/null
dotnet "$program" look d/cells.csv --output /dev/null >/dev/null 2>&1; [ -c /dev/null ] && ok || bad "--output /dev/null replaced the device"
ln -s "$PWD/real.json" link.json; echo old >real.json; chmod 600 real.json
dotnet "$program" look d/cells.csv --json --output link.json >/dev/null 2>&1
[ -L link.json ] && ok || bad "--output replaced a link"; [ "$(stat -c %a real.json)" = 600 ] && ok || bad "--output opened a private file to others"
gives 3 "--output to a folder" look d/cells.csv --output folder.csv

# A file that grows, shrinks or vanishes while it is read.
{ echo 'time_s,current_A,cell_1_V,cell_2_V,cell_3_V'; awk 'BEGIN { for (t = 0; t < 400000; t++) print t ",10,3.7,3.6" t % 10 ",3.6" }'; } >grow.csv
( for _ in $(seq 1 200); do echo '400001,10,3.7,3.7,3.6' >>grow.csv; sleep 0.01; done ) & gives 0 "a log that grows" look grow.csv; wait $!
cp grow.csv shrink.csv; ( sleep 0.35; : >shrink.csv ) & run look shrink.csv --json >out 2>err; rc=$?; wait $!
case $rc in 0 | 3) ok ;; *) bad "a log that is emptied while it is read: exit $rc: $(head -c 300 out)" ;; esac
cp grow.csv gone.csv; ( sleep 0.35; rm gone.csv ) & run diagnose gone.csv --chemistry NMC --series 3 --parallel 2 --rated-ah 10 --json >out 2>err; rc=$?; wait $!
case $rc in 0 | 3) ok ;; *) bad "a log that vanishes while it is read: exit $rc: $(head -c 300 out)" ;; esac

echo "surroundings: $passed passed, $failed failed, $skipped not tried"
[ $failed = 0 ]
