#!/bin/sh
# Runs every netlist again where ngspice is installed and compares with the printed values kept beside it.
# sh rerun.sh          compare            sh rerun.sh --keep   write the printed values anew
cd "$(dirname "$0")" || exit 1
command -v ngspice >/dev/null || { echo "ngspice is not installed"; exit 2; }
differs=0
for netlist in *.cir; do
    printed=${netlist%.cir}.txt
    values=$( { ngspice --version | grep -o 'ngspice-[0-9]*' | head -1
        ngspice -b "$netlist" 2>/dev/null | grep -E '^(terminal|-i\(vs|term_|cell)' | awk '{ print $1, $3 }'; } )
    if [ "$1" = --keep ]; then
        printf '%s\n' "$values" > "$printed"
    elif [ "$values" != "$(cat "$printed")" ]; then
        echo "$netlist: other values than in $printed"; differs=1
    fi
done
[ $differs = 0 ] && echo "all netlists agree with the values kept"
exit $differs
