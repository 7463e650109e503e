#!/bin/bash
# Kills the real program at random instants while it saves a job and while it writes sheets; afterwards each file must be
# the old one or the new one, whole, and what a killed program left beside must not grow without end.
# usage: tests/PackPlanner.Tests/Faults/kills.sh [kills, default 1000] [seed, default 1]
set -u
top=$(cd "$(dirname "$0")/../../.." && pwd)
program=${PACKPLANNER_DLL:-$top/src/PackPlanner/bin/Release/net10.0/packplanner.dll}
[ -f "$program" ] || { echo "kills: build first: dotnet build -c Release"; exit 2; }
kills=${1:-1000}; RANDOM=${2:-1}; failed=0; landed=0; running=0; old=0; most=0
work=$(mktemp -d); trap 'rm -rf "$work"' EXIT; cd "$work" || exit 2
run() { dotnet "$program" "$@"; }
bad() { failed=$((failed + 1)); echo "kills: FAILED: $*"; }

run demo trike --into d >/dev/null 2>&1
job=d/trike.job.json; cp "$job" first; mkdir one other; cp "$job" one/trike.job.json; cp "$job" other/trike.job.json
run job set other/trike.job.json reserve=30% title=Other >/dev/null 2>&1
for which in one other; do run sheet $which/trike.job.json --into whole-$which --date 2026-01-01 >/dev/null 2>&1; done
[ -s "$job" ] && [ -d whole-other ] || { echo "kills: the demo could not be made"; exit 2; }
# How long one undisturbed save takes, in milliseconds: the kills fall into the last part of it and a little after.
a=$(date +%s%N); for _ in 1 2 3; do run job set "$job" reserve=10% >/dev/null 2>&1; done; save=$((($(date +%s%N) - a) / 3000000))
a=$(date +%s%N); run sheet one/trike.job.json --into timed --date 2026-01-01 >/dev/null 2>&1; sheet=$((($(date +%s%N) - a) / 1000000))

kill_after() { # longest time in ms, command...
  local span=$1; shift
  dotnet "$program" "$@" >/dev/null 2>&1 & local pid=$!
  sleep "$(printf '0.%03d' $((span * 55 / 100 + RANDOM % (span * 60 / 100))) | sed -E 's/^0\.([0-9]+)([0-9]{3})$/\1.\2/')"
  kill -9 $pid 2>/dev/null && running=$((running + 1)); wait $pid 2>/dev/null
}

for ((i = 1; i <= kills; i++)); do
  if ((i % 20 == 0)); then
    # Sheets of two jobs by turns into one folder.
    if ((i % 40 == 0)); then which=one; else which=other; fi
    kill_after "$sheet" sheet $which/trike.job.json --into paper --date 2026-01-01
    for file in paper/*; do
      case $file in *.new | 'paper/*') continue ;; esac
      cmp -s "$file" "whole-one/${file#paper/}" || cmp -s "$file" "whole-other/${file#paper/}" || bad "kill $i: $file is neither old nor new"
    done
  elif ((i % 7 == 0)); then
    cp "$job" before; kill_after "$save" job add "$job" d/cells.csv
  else
    cp "$job" before; kill_after "$save" job set "$job" "reserve=$((i % 40 + 5))%"
  fi
  if cmp -s "$job" before; then old=$((old + 1))
  else
    landed=$((landed + 1))
    python3 -c 'import json,sys; json.load(open(sys.argv[1]))' "$job" 2>/dev/null || { bad "kill $i: the job is not whole"; cp before "$job"; }
  fi
  stray=$(find . -name '*.new' -o -name '*.lock' | wc -l); ((stray > most)) && most=$stray
  # A job keeps its changes; it begins anew now and then so that saving stays as quick as at first.
  if ((i % 100 == 0)); then
    run job show "$job" --json >/dev/null 2>&1 || bad "kill $i: the job does not open"
    cp first "$job"; echo "kills: $i of $kills, $running while it ran, $landed saved, $old as before, at most $most left beside, $failed failed"
  fi
done
run job set "$job" reserve=33% >/dev/null 2>&1 || bad "the job cannot be saved after all"
run sheet one/trike.job.json --into paper --date 2026-01-01 >/dev/null 2>&1
left=$(find . -name '*.new' -o -name '*.lock' | wc -l)
[ "$left" -le 1 ] || bad "$left strays stay after a whole save: $(find . -name '*.new' -o -name '*.lock' | head -3 | tr '\n' ' ')"
echo "kills: $kills kills, $running while the program ran, $landed with the change saved, $old without; at most $most files left beside, $left at the end; $failed failed"
[ $failed = 0 ]
