#!/bin/bash
# The same bytes out of every verb: with one core and with two, in other languages, time zones and folders.
# usage: tests/PackPlanner.Tests/Faults/same-bytes.sh
set -u
top=$(cd "$(dirname "$0")/../../.." && pwd)
program=${PACKPLANNER_DLL:-$top/src/PackPlanner/bin/Release/net10.0/packplanner.dll}
data=$top/tests/PackPlanner.Tests/Data
[ -f "$program" ] || { echo "same-bytes: build first: dotnet build -c Release"; exit 2; }
work=$(mktemp -d); trap 'rm -rf "$work"' EXIT; cd "$work" || exit 2
dotnet "$program" demo trike --into d >/dev/null 2>&1; [ -f d/cells.csv ] || { echo "same-bytes: no demo"; exit 2; }
cp "$data"/sample-logs/* "$data"/pulsebat/*_cells.csv "$data"/pulsebat/steps_LMO_C_25_B_24.csv.gz "$data"/sizing/*.json d/
printf 'group,capacityAh,resistanceMilliohm,stateOfCharge\n1,39.276,3.47,0.80\n2,39.270,3.42,0.79\n3,38.1,3.6,0.81\n' >d/groups.csv
sizing=$(basename "$(ls "$data"/sizing/*.json | head -1)")
mapfile -t lines <<EOF
look cells.csv sample01.csv sample02.csv LMO_10Ah_cells.csv
cells cells.csv --rated-ah 5
cells LMO_10Ah_cells.csv
capacity steps_LMO_C_25_B_24.csv.gz
match cells.csv --series 13 --parallel 7 --all
match LMO_10Ah_cells.csv --series 8 --parallel 10 --all
diagnose sample01.csv --given sample01.given.json
diagnose sample02.csv --given sample02.given.json
diagnose sample05.csv --given sample05.given.json
compare sample01.csv sample01.csv --given sample01.given.json
fit tray.json
size $sizing
energy groups.csv --load 20A --chemistry NMC
share cells.csv --load 10A --link 0.2mohm
join cells.csv --link 0.2mohm
balance groups.csv --bleed 60mA --chemistry NMC
job show trike.job.json
sheet trike.job.json --into paper --date 2026-01-01
EOF
failed=0; compared=0
all() { # folder, environment...
  local where=$1; shift; rm -rf "$where"; cp -r d "$where"
  for i in "${!lines[@]}"; do (cd "$where" && for as in --json --csv ""; do
    env "$@" timeout 120 dotnet "$program" ${lines[$i]} $as >"out.$i.${as#--}" 2>"err.$i.${as#--}"; echo "exit $?" >>"out.$i.${as#--}"; done); done
}
all base DOTNET_PROCESSOR_COUNT=2 LANG=C TZ=UTC
grep -l '^exit [^0]' base/out.* | while read -r f; do echo "same-bytes: note: ${lines[$(cut -d. -f2 <<<"$f")]}: $(tail -1 "$f")"; done
asked() { case $1 in out.*) echo "${lines[$(cut -d. -f2 <<<"$1")]}";; *) echo "a sheet";; esac; }
compare() { for f in base/out.* base/paper/*; do compared=$((compared + 1)); cmp -s "$f" "$2/${f#base/}" || { failed=$((failed + 1)); echo "same-bytes: FAILED: $1: ${f#base/} ($(asked "${f#base/}"))"; }; done; }
all one DOTNET_PROCESSOR_COUNT=1 LANG=C TZ=UTC; compare "one core" one
mkdir -p "$work/über 電池"; all "über 電池/a" DOTNET_PROCESSOR_COUNT=2 LANG=de_DE.UTF-8 LC_ALL=de_DE.UTF-8 TZ=Pacific/Auckland DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=0; compare "another folder, language and time zone" "über 電池/a"
echo "same-bytes: ${#lines[@]} command lines, each as JSON, table and words, and the sheets: $compared files compared, $failed differ"
[ $failed = 0 ]
