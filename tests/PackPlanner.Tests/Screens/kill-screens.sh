#!/bin/bash
# Ends the text screens of the built program in tmux by a signal, at a random instant: while the job is being changed, with
# something laid over, while a search runs. Looks each time whether the job file is whole and has every change that stood
# on the screen, whether the next start is on the same step and row, whether the terminal is as it was, and whether the
# process is gone. Not part of `dotnet test`.
# usage: tests/PackPlanner.Tests/Screens/kill-screens.sh [times, default 50] [seed]
set -u
command -v tmux >/dev/null || { echo "kill-screens: tmux is not installed; nothing was tried"; exit 77; }
top=$(cd "$(dirname "$0")/../../.." && pwd)
program="$top/src/PackPlanner/bin/Release/net10.0/packplanner.dll"
[ -f "$program" ] || { echo "kill-screens: build first: dotnet build -c Release"; exit 2; }
times=${1:-50}; RANDOM=${2:-$$}; echo "kill-screens: $times times, seed ${2:-$$}"
home=$(mktemp -d); socket=packplanner-kill-$$; failed=0; passed=0
jobs="$home/Documents/PackPlanner"; state=$home/state
trap 'exit 130' INT TERM
trap 'tmux -L "$socket" kill-server 2>/dev/null; rm -rf "$home"' EXIT

screen() { tmux -L "$socket" capture-pane -p -t pane; }
ok() { passed=$((passed + 1)); }
bad() { failed=$((failed + 1)); echo "kill-screens: FAILED ($round): $*"; screen | sed 's/^/    | /'; }
send() { tmux -L "$socket" send-keys -t pane "$@"; }
wait_for() { for _ in $(seq 1 300); do screen 2>/dev/null | grep -q -- "$1" && return 0; sleep 0.1; done; bad "never saw: $1"; return 1; }
start() {
  tmux -L "$socket" kill-session -t pane 2>/dev/null
  tmux -L "$socket" new-session -d -s pane -x 80 -y 24 "env HOME=$home XDG_STATE_HOME=$state dotnet $program; echo ended with \$?; sleep 600"
  wait_for ' Q '
}
pid() { pgrep -P "$(tmux -L "$socket" display -p -t pane '#{pane_pid}')" -f "^dotnet $program" | head -1; }
step() { screen | grep -oE '\[[1-8] [A-Z][a-z]+\]' | head -1; }
# What stands behind the mark of the cursor, without the tick, which the keys change.
row() { screen | grep -E '^ >' | head -1 | sed 's/^ >[ *!]*//; s/^\[[x -]\] *//; s/^- *//' | awk '{print $1}'; }
revision() { screen | head -1 | grep -oE 'rev [0-9]+' | grep -oE '[0-9]+'; }
# Presses the digit until the step is there: Esc and a digit that follows at once may arrive as one key.
step_to() { for _ in $(seq 1 40); do screen | grep -q "\[$1 " && return 0; send Escape; sleep 0.4; send "$1"; sleep 0.6; done; bad "never on step $1"; return 1; }
down() { # so many rows, and until the screen has followed
  for _ in $(seq 1 "$1"); do send Down; done
  local before=; for _ in $(seq 1 40); do sleep 0.7; [ "$(row)" = "$before" ] && return; before=$(row); done
}
nap() { sleep "$((RANDOM % 2)).$(printf %03d $((RANDOM % 1000)))"; }
# Is the process there at all, and not merely waiting for its parent to take note?
lives() { grep -q '^State:[^Z]*$' "/proc/$1/status" 2>/dev/null; }

# Each of these leaves the cursor on one row of one step and presses keys until it is ended itself.
changing() { while true; do send Space; sleep 0.05; done; }
# Ticks are no revision of the pack; a group that is turned over is one.
turning() { while true; do send g; sleep 0.05; done; }
laid_over() { while true; do for key in : j o i Escape '?' Down Escape '!' Down Escape = Escape; do send "$key"; sleep 0.07; done; done; }
in_a_field() { while true; do for key in v 2 Enter a b c BSpace d Escape Escape; do send "$key"; sleep 0.07; done; done; }
searching() { while true; do send l; sleep 0.1; done; }

# A server whose last session ends is gone for a moment; this one is never the last.
tmux -L "$socket" new-session -d -s keeper "sleep 100000"
round=0; start && send Enter && wait_for 'demo copy' || exit 1
job=$(ls "$jobs"/*.job.json)
signals=(KILL:137 TERM:143 HUP:129 QUIT:131 INT:130)
for round in $(seq 1 "$times"); do
  signal=${signals[$((round % 5))]}
  case $((RANDOM % 5)) in
    0) what=changing; step_to 8; down $((RANDOM % 6)) ;;
    1) what=laid_over; step_to $((RANDOM % 8 + 1)); down $((RANDOM % 4)) ;;
    2) what=turning; step_to 5; for _ in $(seq 1 80); do [ "$(row)" = no ] || break; sleep 0.3; done; down $((RANDOM % 4)) ;;
    3) what=in_a_field; step_to 2; down $((RANDOM % 9)) ;;
    *) what=searching; step_to 3; down $((RANDOM % 9)) ;;
  esac
  round="$round, ${signal%:*} while $what"
  step_before=$(step); row_before=$(row); process=$(pid)
  $what & presser=$!
  nap
  revision_before=$(revision)
  kill -"${signal%:*}" "$process"
  kill "$presser" 2>/dev/null; wait "$presser" 2>/dev/null
  for _ in $(seq 1 150); do lives "$process" || break; sleep 0.1; done
  lives "$process" && bad "process $process is left" || ok
  wait_for "ended with" && { screen | grep -q "ended with ${signal#*:}" && ok || bad "exit code is not ${signal#*:}"; }
  if [ "${signal%:*}" != KILL ]; then
    modes=$(tmux -L "$socket" display -p -t pane '#{alternate_on} #{mouse_any_flag} #{cursor_flag}')
    [ "$modes" = "0 0 1" ] && ok || bad "the terminal was left as $modes instead of 0 0 1"
  fi
  shown=$(dotnet "$program" job show "$job" --json 2>&1) && ok || bad "the job file is not whole: $shown"
  saved=$(echo "$shown" | grep -oE '"revision": *[0-9]+' | grep -oE '[0-9]+')
  [ "${saved:--1}" -ge "${revision_before:-0}" ] && ok || bad "revision $revision_before stood on the screen, ${saved:-none} in the file"
  start || continue
  # What a kill left half written beside the job is swept when the job is opened.
  strays=$(find "$jobs" -name '*.new')
  [ -z "$strays" ] && ok || bad "left beside after the next start: $strays"
  sleep 0.5
  [ "$(step)" = "$step_before" ] && ok || bad "not on the same step: was $step_before"
  # The verdicts and groups may still be on their way.
  for _ in $(seq 1 80); do [ "$(row)" = "$row_before" ] && break; sleep 0.1; done
  [ "$(row)" = "$row_before" ] && ok || bad "not on the same row: was $row_before"
done
# What was put there on purpose: of no process, of one that runs, and of somebody else.
round="at the end"; step_to 8; send Escape
tmux -L "$socket" kill-session -t pane
for middle in 2147483647 $$ mine; do echo half > "$job.$middle.new"; done
start
left=$(cd "$jobs" && echo *.new | tr ' ' '\n' | sed 's/.*json\.//; s/\.new//' | sort | tr '\n' ' ')
[ "$left" = "$(printf '%s\n' $$ mine | sort | tr '\n' ' ')" ] && ok || bad "swept wrongly: left $left"
rm -f "$job.$$.new" "$job.mine.new"
# The file that keeps the place is swept at its next change.
step_to 8; send Space; sleep 2; step_to 1; send q; wait_for "ended with 0"
strays=$(find "$home" -name '*.new')
[ -z "$strays" ] && ok || bad "left beside: $strays"
echo "$passed passed, $failed failed"
[ $failed -eq 0 ]
