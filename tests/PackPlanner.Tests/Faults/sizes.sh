#!/bin/bash
# Files of a size that nobody means: ten million rows, a line of 1 GB, gzip bombs, thousands of columns, an endless device,
# a log that shrinks and one that grows while it is read. Each gives an answer or a clear error, in memory that the contract
# allows: 100 MB and twice the bytes of the text.
# usage: tests/PackPlanner.Tests/Faults/sizes.sh      (several GB of room under $TMPDIR, some minutes)
set -u
top=$(cd "$(dirname "$0")/../../.." && pwd)
program=${PACKPLANNER_DLL:-$top/src/PackPlanner/bin/Release/net10.0/packplanner.dll}
[ -f "$program" ] || { echo "sizes: build first: dotnet build -c Release"; exit 2; }
[ -x /usr/bin/time ] || { echo "sizes: needs /usr/bin/time to see memory"; exit 2; }
work=$(mktemp -d); passed=0; failed=0
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 2
ok() { passed=$((passed + 1)); }
bad() { failed=$((failed + 1)); echo "sizes: FAILED: $*"; }

# exit code wanted, words wanted in the answer, bytes of the text, what for, verb and its arguments
tries() {
  local want=$1 word=$2 bytes=$3 what=$4 rc s kb allowed; shift 4
  /usr/bin/time -f '%e %M' -o used timeout -k 20 300 dotnet "$program" "$@" --json >out 2>err; rc=$?
  read -r s kb < <(tail -1 used); allowed=$(( (100000000 + 2 * bytes) / 1000000 ))
  printf '| %s | %s | %s s | %s MB of %s |\n' "$what" "$rc" "$s" "$((kb * 1024 / 1000000))" "$allowed"
  if [ $rc != "$want" ]; then bad "$what: exit $rc instead of $want: $(head -c 300 out)"; return; fi
  if ! python3 -c 'import json; json.load(open("out"))' 2>/dev/null; then bad "$what: not one JSON document"; return; fi
  if ! grep -q -- "$word" out; then bad "$what: no word of $word: $(head -c 300 out)"; return; fi
  if [ $((kb * 1024 / 1000000)) -gt $allowed ]; then bad "$what: more memory than allowed"; return; fi
  ok
}

rows() { # rows, groups: a plain wide log on standard output
  awk -v n="$1" -v g="$2" 'BEGIN { printf "time_s,current_a"; for (c = 1; c <= g; c++) printf ",cell_%d_v", c; print "";
    for (i = 0; i < n; i++) { line = i "," (i % 600 < 60 ? 0 : 20); v = 4.1 - 0.9 * i / n - (i % 600 < 60 ? 0 : 0.04);
      for (c = 1; c <= g; c++) line = line "," sprintf("%.3f", v - c / 100000); print line } }'
}

echo '| input | exit | time | memory |'; echo '| --- | --- | --- | --- |'
rows 10000000 3 >ten.csv
tries 0 '"rows": 10000000' "$(stat -c %s ten.csv)" "ten million rows, 3 groups" look ten.csv
gzip -1 -c ten.csv >ten.csv.gz
tries 0 '"rows": 10000000' "$(stat -c %s ten.csv)" "the same as .csv.gz" look ten.csv.gz
rm ten.csv ten.csv.gz

{ printf 'cell,capacity_ah\nA1,'; head -c 1000000000 /dev/zero | tr '\0' '7'; echo; } >line.csv
tries 3 '"where"' 1000000000 "a line of 1 GB" look line.csv
rm line.csv
head -c 4600000000 /dev/zero | gzip -1 >zeros.csv.gz
tries 3 '"where"' 4294967296 "4.6 GB of nothing in a gzip file" look zeros.csv.gz
{ echo cell,capacity_ah; yes 'C1,2.5' | head -n 600000000; } | gzip -1 >rows.csv.gz
tries 3 '"where"' 4200000000 "600 million rows in a gzip file" look rows.csv.gz
rm ./*.gz

rows 2000 10000 >wide.csv
tries 0 '"groups": 10000' "$(stat -c %s wide.csv)" "10,000 columns, 2,000 rows" look wide.csv
rm wide.csv
tries 3 '"where"' 0 "an endless device" look /dev/zero

# Shrinks: half of it is cut off while it is read. Grows: rows come after it was opened.
rows 3000000 3 >still.csv; whole=$(stat -c %s still.csv)
cp still.csv shrinks.csv; (sleep 0.4; truncate -s $((whole / 2)) shrinks.csv) &
/usr/bin/time -f '%e %M' -o used timeout 120 dotnet "$program" look shrinks.csv --json >out 2>err; rc=$?; wait
read -r s kb < <(tail -1 used); echo "| shrinks to a half while it is read | $rc | $s s | $((kb * 1024 / 1000000)) MB |"
if { [ $rc = 0 ] || [ $rc = 3 ]; } && python3 -c 'import json; json.load(open("out"))' 2>/dev/null && ! grep -q '   at PackPlanner' err; then ok; else bad "a log that shrinks: exit $rc: $(head -c 300 out)"; fi
cp still.csv grows.csv; (for i in 1 2 3 4 5 6 7 8; do head -n 50000 still.csv | tail -n 49999 >>grows.csv; sleep 0.1; done) &
/usr/bin/time -f '%e %M' -o used timeout 120 dotnet "$program" look grows.csv --json >out 2>err; rc=$?; wait
read -r s kb < <(tail -1 used); echo "| grows while it is read | $rc | $s s | $((kb * 1024 / 1000000)) MB |"
if { [ $rc = 0 ] || [ $rc = 3 ]; } && python3 -c 'import json; json.load(open("out"))' 2>/dev/null && ! grep -q '   at PackPlanner' err; then ok; else bad "a log that grows: exit $rc: $(head -c 300 out)"; fi

echo "sizes: $passed passed, $failed failed"
[ $failed = 0 ]
