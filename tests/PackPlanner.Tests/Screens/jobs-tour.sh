#!/bin/bash
# Does each of the 42 jobs of docs/jobs.md on the real program in tmux, with the keys that its row names, on the invented
# scenes and on files written here, and looks for the answer on the screen. Not part of `dotnet test`.
# usage: tests/PackPlanner.Tests/Screens/jobs-tour.sh [width height, default 80 24]
set -u
command -v tmux >/dev/null || { echo "jobs-tour: tmux is not installed; nothing was tried"; exit 77; }
top=$(cd "$(dirname "$0")/../../.." && pwd)
program="$top/src/PackPlanner/bin/Release/net10.0/packplanner.dll"
[ -f "$program" ] || { echo "jobs-tour: build first: dotnet build -c Release"; exit 2; }
width=${1:-80}; height=${2:-24}
home=$(mktemp -d); socket=packplanner-jobs-$$; jobs=0; failed=0; this=""; wrong=""
trap 'exit 130' INT TERM
trap 'tmux -L "$socket" kill-server 2>/dev/null; rm -rf "$home"' EXIT

screen() { tmux -L "$socket" capture-pane -p -t tour; }
keys() { for k in "$@"; do tmux -L "$socket" send-keys -t tour "$k"; sleep 0.15; done; }
types() { tmux -L "$socket" send-keys -t tour -l -- "$1"; sleep 0.2; }
bad() { wrong="$wrong; $*"; echo "jobs-tour: job $this: $*"; screen | sed 's/^/    | /'; }
see() { # a pattern that comes within half a minute, on a busy machine too
  for _ in $(seq 1 150); do screen | tr '\n' ' ' | tr -s ' ' | grep -qE -- "$1" && return 0; sleep 0.2; done
  bad "never saw: $1"; return 1
}
below() { # a pattern that comes into view as the cursor goes down
  for _ in $(seq 1 40); do screen | tr '\n' ' ' | tr -s ' ' | grep -qE -- "$1" && return 0; keys Down; done
  bad "never saw further down: $1"; return 1
}
file() { # a file that is written within half a minute
  for _ in $(seq 1 150); do [ -s "$1" ] && return 0; sleep 0.2; done
  bad "was not written: $1"; return 1
}
back() { keys Escape; sleep 0.5; keys Escape; sleep 0.5; }
view() { # a view of the log that shows this
  for _ in 1 2 3 4 5 6 7 8; do screen | grep -qE -- "$1" && return 0; keys t; sleep 0.8; done
  bad "no view shows: $1"; return 1
}
scene() { # how often Right, the title
  tmux -L "$socket" kill-session -t tour 2>/dev/null; rm -rf "$home/state" "$home/Documents"
  tmux -L "$socket" -f /dev/null new-session -d -s tour -x "$width" -y "$height" "cd $home; env HOME=$home XDG_STATE_HOME=$home/state dotnet $program"
  this="start of $2"; see 'What are you doing today'
  for _ in $(seq 1 "$1"); do keys Right; done
  keys Enter; see "$2"
}
at() { # a step, its work ended
  for _ in 1 2 3; do keys "$1"; sleep 0.4; screen | grep -q "\[$1 " && break; keys Escape; sleep 0.5; done
  for _ in $(seq 1 300); do screen | grep -q 'Esc stop and keep' || return 0; sleep 0.2; done
  bad "step $1 did not end its work"
}
job() { # number, words: the row of the page must name the step and the keys that are used here
  end_job; this="$1"; wrong=""; jobs=$((jobs + 1))
  local row; row=$(grep -E "^\| $1 \|" "$top/docs/jobs.md" | cut -d'|' -f4)
  for word in $2; do case $row in *"$word"*) ;; *) bad "docs/jobs.md does not name $word in:$row" ;; esac; done
}
end_job() { [ -z "$wrong" ] || failed=$((failed + 1)); }

# Files in shapes that people have.
mkdir -p "$home/my files"
{ printf 'Zellen vom Oktober\n\nNr;Kapazität mAh;Ri mOhm;V\n'
  for i in $(seq 1 20); do printf 'C%02d;2.8%02d,0;3%d,5;3,61\n' "$i" "$i" $((i % 10)); done
  printf 'C7;2.790,0;31,0;3,61\nSumme;56.000,0;;\n'; } > "$home/my files/zellen größe.csv"
{ echo 'time,current,C1,C2,C3,C4,temp'
  awk 'BEGIN { for (t = 0; t < 900; t++) { a = (t % 90 < 60) ? 40 : 0; v = 3.32 - t / 9000 - a * 0.0007
    printf "%d,%.1f,%.3f,%.3f,%.3f,%.3f,21.5\n", t, a, v, (t == 5 ? 65.535 : v - 0.002), v - a * 0.001, v } }'; } > "$home/my files/ride.csv"
cat > "$home/my files/lot.csv" <<'LOT'
label;model;rated Ah;capacity Ah;slot;rest V;date;later rest V;later date
A01;Alpha 30;3.0;2.80;1;3.612;2026-10-01;3.611;2026-10-31
A02;Alpha 30;3.0;2.78;2;3.612;2026-10-01;3.560;2026-10-31
A03;Alpha 30;3.0;2.82;1;3.613;2026-10-01;3.612;2026-10-31
A04;Alpha 30;3.0;2.79;2;3.611;2026-10-01;3.610;2026-10-31
A05;Alpha 30;3.0;2.81;1;3.612;2026-10-01;3.611;2026-10-31
B01;Beta 35;3.5;3.20;2;3.612;2026-10-01;3.611;2026-10-31
B02;Beta 35;3.5;3.22;1;3.612;2026-10-01;3.611;2026-10-31
B03;Beta 35;3.5;3.24;2;3.612;2026-10-01;3.611;2026-10-31
A01;Alpha 30;3.0;2.74;2;;;;
A03;Alpha 30;3.0;2.76;2;;;;
B02;Beta 35;3.5;3.15;2;;;;
LOT
cat > "$home/my files/two.case.json" <<'CASE'
{"cell":{"shape":"cylinder","diameterMm":21.2,"lengthMm":70.2,"massG":69},"clearance":{"wallMm":2,"endMm":2,"cellGapMm":1},
 "cavity":{"parts":[{"box":[0,0,0,150,100,80]},{"box":[200,0,0,350,100,80]}]}}
CASE

scene 0 'Bakery trike'
job 1 '2 i'
  at 2; keys i; see 'name or path'; types "$home/my files/zellen größe.csv"; keys Enter; see 'Have I read your file right'; see 'accept'; see 'capacity, mAh'; back
job 2 '2 = v e'
  at 2; see '135 use, 3 hold, 12 reject of 150'; keys =; see 'where .* comes from'; back
  keys v; see 'verdict'; back; keys e; see 'numbers of this screen|limits'; back
job 3 '3 b'
  at 3; see 'within 0\.[0-9]+ Ah, proven best'; keys b; see 'even currents'; back
job 13 '2'
  at 3; keys e Down Enter; see 'cells in parallel'; keys BSpace; types 12; keys Enter; back; at 2; see 'test about [0-9]+ more|[0-9]+ more'; keys u; see 'undone'
job 14 '3 l m b'
  at 3; keys l; see 'locked in group'; keys Enter; see '\[x\]'; back; keys u; see 'undone'; at 3; sleep 2
  keys m; see 'exchange which cell'; keys Enter; see 'with'; back; keys b; see 'fewest moves'; back
job 15 '3 x'
  at 3; keys x; see 'which cell of group . comes out'; keys Enter; see 'Ah'; see 'mΩ'; back
job 16 '3 Enter'
  at 3; keys Enter; see '[0-9.]+x, [0-9.]+ of 22 A'; back
job 12 '3 j'
  at 3; keys j; see 'May I join the cells of group'; see 'A on joining those above, limit'; back
job 40 '2 f 8'
  at 2; keys f; types 'verdict=reject'; keys Enter; see '12 of 150'; keys f; sleep 0.3; for _ in $(seq 1 16); do keys BSpace; done; keys Enter
  at 8; keys Down Down Down Down Down Enter; see 'held|reject'; back
job 37 '2 i'
  at 2; keys i; types "$home/my files/zellen größe.csv"; keys Enter; see 'Have I read'; below 'C7.*C07|C07.*C7'; back
job 7 '4 a i'
  at 4; see '117.{1,12}proven limit [0-9]+'; keys a; see 'must stay free'; back; keys i; see 'name or path'; back
job 32 '4'
  at 4; below 'way in'
job 30 '4 5'
  at 4; see 'cells weigh'; at 5; see 'middle of their mass'
job 6 '6 Enter'
  at 6; see '[0-9.]+ kWh (as read, likely|±)'; see 'usable'; keys Enter; see 'nominal|Ah'; back
job 9 '6 e'
  at 6; keys e; see 'controller'; back; below 'pack volts, full'
job 25 '6 e'
  at 6; see 'temperature 8 °C'; keys e; see 'temperature'; back
job 33 '6 Enter'
  at 6; keys Home; for _ in 1 2 3 4 5; do keys Down; done; see '> heat in cells'; keys Enter; see ' W'; back
job 41 '6 !'
  at 6; keys !; see 'short circuit'; back
job 39 '8 6 e'
  at 6; keys e; below 'charger'; back; at 8; keys Home; for _ in 1 2 3 4 5 6 7; do keys Down; done; see '> .*first-charge'; keys Enter; see 'V|charge'; back
job 10 '8 Space w'
  at 8; keys Home Space; see '\[x\] labels'; keys w; see 'written'; file "$home/Documents/PackPlanner/trike/sheets/labels.html"
job 11 '!'
  for step in 1 2 3 4 5 6 7 8; do at $step; keys !; see 'do not'; back; done
job 34 '1 u U'
  at 1; keys Down Enter; see 'rated Ah'; keys BSpace BSpace BSpace; types 4.9; keys Enter; see '4\.9'; keys u; see 'undone'; keys U; see 'made again'; keys u; see 'undone'
job 35 '='
  for step in 1 2 3 4 5 6 8; do at $step; keys =; see 'comes from'; back; done
job 36 'w y'
  at 3; keys y; see 'copied|takes no copies'; keys w; see 'write to'; keys Enter; see 'written'; file "$home/Documents/PackPlanner/trike-groups.csv"
job 38 ':'
  at 6; keys :; types 'by script'; see 'packplanner energy'; back
job 42 ':'
  at 4; keys :; types 'units'; keys Enter; see ' in\b'; see 'lb'; keys :; types 'decimal'; keys Enter; see '[0-9],[0-9]'
  keys :; types 'units'; keys Enter; keys :; types 'decimal'; keys Enter; see '8\.1 kg'
job 29 '4 i'
  at 4; keys i; types "$home/my files/two.case.json"; keys Enter; see 'a cavity'; keys End Enter; at 4; see 'places'; below 'box .* from'

scene 1 'Orchard tractor'
job 4 '7 Enter'
  at 7; see 'Group 11: low capacity'; keys Enter; see 'ground'; back
job 5 '7 6 r'
  at 7; keys r; see 'kWh'; back; at 6; keys r; see 'Wh'; back
job 20 '7 t'
  at 7; view 'mΩ'; see '0\.[0-9]+'
job 21 '7 t'
  view 'group .*Ah.*mΩ|group .*mΩ.*Ah'; see '71\.0'
job 26 '7 t'
  view ' at +what '; see 'end|cut|limit'
job 22 '7 t'
  view 'bleed Ah'
job 23 '7 d t'
  view 'change Ah'; keys d; see 'log before|log 1 of 2'
job 24 '7 t e'
  keys e; see 'km'; back

scene 2 'Step-through scooter'
job 8 '4 Enter'
  at 4; keys Enter; see '[0-9]+s[0-9]+p .* V .* kWh'
job 31 '4 Enter'
  see 'NMC'; see 'LFP'; back
job 18 '7 i'
  at 7; keys i; see 'name or path'; types "$home/my files/ride.csv"; keys Enter; see 'Have I read your log right'; see '900 rows'; see 'Plus is discharge'
job 19 '7 i'
  see 'set aside'; below '65\.535'; back
job 17 '2 ='
  at 2; keys i; types "$home/my files/lot.csv"; keys Enter; see '8 cells'; keys End Enter; at 2; see 'A0'; keys /; types A02; keys Enter; sleep 0.5; see '> .*A02'; see 'loses charge'; keys =; see 'mV/day|a day|%/month'; back
job 27 '2 c ='
  keys c; below '> ... model'; keys Enter; back; see 'Alpha 30|Beta 35'; keys /; for _ in 1 2 3; do keys BSpace; done; types B01; keys Enter; see '> .*B01'; keys =; see 'of 3.50 Ah rated, model Beta 35'; back
job 28 '2 ='
  keys =; below 'slot'; back
end_job
echo "$jobs jobs, $failed failed"
[ $failed -eq 0 ] && [ $jobs -eq 42 ]
