#!/bin/bash
# Tries the completion for bash in bash itself, and has each other shell that is installed read its own script.
# Not part of `dotnet test`. usage: tests/PackPlanner.Tests/Verbs/completion.sh
set -u
top=$(cd "$(dirname "$0")/../../.." && pwd)
program="$top/src/PackPlanner/bin/Release/net10.0/packplanner.dll"
[ -f "$program" ] || { echo "completion: build first: dotnet build -c Release"; exit 2; }
here=$(mktemp -d); trap 'rm -rf "$here"' EXIT
failed=0
cd "$here" && touch cells.csv trike.job.json
for shell in bash zsh fish pwsh; do dotnet "$program" completion "$shell" >"$shell.completion" || failed=1; done
source ./bash.completion

offers() { # words typed so far, the last of them half typed; then what must be offered
  local want="${!#}"; COMP_WORDS=("${@:1:$#-1}"); COMP_CWORD=$(($# - 2))
  COMPREPLY=(); _packplanner
  # Where nothing of its own is offered bash falls back on names of files, by `complete -o default`.
  [ ${#COMPREPLY[@]} -gt 0 ] || COMPREPLY=($(compgen -f -- "${COMP_WORDS[COMP_CWORD]}"))
  case " ${COMPREPLY[*]} " in *" $want "*) echo "${COMP_WORDS[*]} -> $want" ;; *) echo "FAILED: ${COMP_WORDS[*]} offers '${COMPREPLY[*]}', not $want"; failed=1 ;; esac
}
offers packplanner mat match
offers packplanner match --ser --series
offers packplanner match cel cells.csv
offers packplanner cells cells.csv --chemistry N NMC
offers packplanner sheet tri trike.job.json
offers packplanner sheet trike.job.json ta taps
offers packplanner job a add
offers packplanner demo sc scooter
offers packplanner explain two-r two-readings
offers packplanner fit --prefer gr groups
offers packplanner match --prefer ev even-currents
offers packplanner help di diagnose
complete -p packplanner | grep -q -- '-o default' || { echo "FAILED: files are not completed"; failed=1; }
for shell in zsh fish; do
  if command -v "$shell" >/dev/null; then "$shell" -n "$shell.completion" && echo "$shell reads it" || failed=1; else echo "$shell is not installed: not tried"; fi
done
if command -v pwsh >/dev/null; then pwsh -NoProfile -File pwsh.completion && echo "pwsh reads it" || failed=1; else echo "pwsh is not installed: not tried"; fi
[ $failed -eq 0 ] && echo "completion: all as expected" || echo "completion: FAILED"
exit $failed
