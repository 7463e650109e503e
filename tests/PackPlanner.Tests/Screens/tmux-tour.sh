#!/bin/bash
# Drives the real program in tmux: every advertised key on each step at two sizes, resize storms, junk keys, signals with
# and without something laid over, a kill and a return. Not part of `dotnet test`.
# usage: tests/PackPlanner.Tests/Screens/tmux-tour.sh [seconds of junk keys, default 20]
set -u
command -v tmux >/dev/null || { echo "tmux-tour: tmux is not installed; nothing was tried"; exit 77; }
top=$(cd "$(dirname "$0")/../../.." && pwd)
program="$top/src/PackPlanner/bin/Release/net10.0/packplanner.dll"
[ -f "$program" ] || { echo "tmux-tour: build first: dotnet build -c Release"; exit 2; }
home=$(mktemp -d); socket=packplanner-tour-$$; failed=0; passed=0
trap 'exit 130' INT TERM
trap 'tmux -L "$socket" kill-server 2>/dev/null; rm -rf "$home"' EXIT

say() { echo "tmux-tour: $*"; }
ok() { passed=$((passed + 1)); }
bad() { failed=$((failed + 1)); say "FAILED: $*"; screen | sed 's/^/    | /'; }
screen() { tmux -L "$socket" capture-pane -p -t tour; }
keys() { for k in "$@"; do tmux -L "$socket" send-keys -t tour "$k"; sleep 0.15; done; }
start() { # width height environment...
  local w=$1 h=$2; shift 2
  tmux -L "$socket" new-session -d -s tour -x "$w" -y "$h" "env HOME=$home XDG_STATE_HOME=$home/state $* dotnet $program; echo ended with \$?; sleep 60"
  wait_for ' Q '
}
wait_for() { for _ in $(seq 1 150); do screen 2>/dev/null | grep -q -- "$1" && return 0; sleep 0.2; done; bad "never saw: $1"; return 1; }
pid() { pgrep -f "^dotnet $program" -P "$(tmux -L "$socket" display -p -t tour '#{pane_pid}')" | head -1; }
step_to() { # a step by its number; a busy machine may take Esc and a digit that follows at once for one key, so twice more
  for _ in 1 2 3; do
    keys "$1"
    for _ in $(seq 1 20); do screen | grep -q "\[$1 " && return 0; sleep 0.2; done
    keys Escape; sleep 0.5
  done
  return 1
}
stop() { tmux -L "$socket" kill-session -t tour 2>/dev/null; sleep 0.3; }
clean_end() { # expected exit code
  wait_for "ended with" && { screen | grep -q "ended with $1" && ok || bad "exit code is not $1"; }
  local modes; modes=$(tmux -L "$socket" display -p -t tour '#{alternate_on} #{mouse_any_flag} #{cursor_flag}')
  [ "$modes" = "0 0 1" ] && ok || bad "the terminal was left as $modes instead of 0 0 1"
}

for size in "80 24" "120 36"; do
  set -- $size
  # A first start each time: a later one comes back to where the one before was left, with what lay open there.
  rm -rf "$home"; mkdir "$home"
  start "$1" "$2"; keys Enter; wait_for 'demo copy' || continue
  for step in 1 2 3 4 5 6 7 8; do
    step_to "$step" && ok || bad "step $step at $1x$2"
    sleep 1
    # Every key that the two hint lines show here, each closed again.
    for key in $(screen | tail -2 | grep -oE '(^|  )[^ ]+ ' | tr -d ' ' | grep -vE '^(q|here:|w|U|u|D)$' | sort -u); do
      case $key in arrows) key=Down ;; Space) key=Space ;; Esc) continue ;; esac
      tmux -L "$socket" send-keys -t tour "$key"; sleep 0.3
      screen | grep -qE 'fault in the program|could not be drawn' && bad "key $key on step $step"
      keys Escape Escape; sleep 0.1
    done
    step_to "$step" && ok || bad "back on step $step at $1x$2"
  done
  keys q; clean_end 0; stop
done

start 80 24
say "resize storm"
for size in 60x18 200x60 30x6 120x36 79x23 1x1 80x22 61x19 80x24; do
  tmux -L "$socket" resize-window -t tour -x "${size%x*}" -y "${size#*x}"; sleep 0.2
done
wait_for ' Q ' && ok
say "junk keys"
end=$((SECONDS + ${1:-20}))
pool=(a b c d e f g h i j k l m n o p r s t v x y z A B N S U Z 1 2 3 4 5 6 7 8 '?' ':' '!' = / Enter Escape Tab BTab Space Up Down Left Right PPage NPage Home End BSpace DC F5 F12 M-x C-a C-l é 电)
while [ $SECONDS -lt $end ]; do tmux -L "$socket" send-keys -t tour "${pool[$((RANDOM % ${#pool[@]}))]}"; sleep 0.02; done
sleep 1; keys Escape Escape Escape Escape 1; sleep 0.5
screen | grep -qE 'fault in the program|could not be drawn|ended with' && bad "junk keys" || ok
keys q; clean_end 0; stop

for signal in INT:130 TERM:143 HUP:129 QUIT:131; do
  for over in none list; do
    start 80 24; [ $over = list ] && keys :
    kill -"${signal%:*}" "$(pid)"; clean_end "${signal#*:}"; stop
  done
done

say "killed and come back"
start 80 24; keys 2 Down Down Down; sleep 1; row=$(screen | grep '^ > ')
kill -KILL "$(pid)"; sleep 0.5; stop
start 80 24; sleep 1; screen | grep -qF "[2 Cells]" && ok || bad "not on the same step"
[ "$(screen | grep '^ > ')" = "$row" ] && ok || bad "not on the same row: was $row"
keys q; stop

# What the program itself sends, before tmux makes its own codes of it.
say "no colour, and nothing sent while nobody types"
start 80 24 NO_COLOR=1; tmux -L "$socket" pipe-pane -t tour "cat > $home/sent"
keys 3 2 : Escape; sleep 1; keys C-l; sleep 3
[ "$(grep -ac T0 "$home/sent")" -gt 0 ] && ok || bad "nothing was caught of what is sent"
grep -aqE $'\e''\[[0-9;]*(3[0-9]|4[0-9]|9[0-7])m' "$home/sent" && bad "a colour code under NO_COLOR" || ok
before=$(stat -c %s "$home/sent"); sleep 3
[ "$(stat -c %s "$home/sent")" = "$before" ] && ok || bad "$(($(stat -c %s "$home/sent") - before)) bytes sent in 3 s while nobody typed"
keys q; stop

echo "$passed passed, $failed failed"
[ $failed -eq 0 ]
