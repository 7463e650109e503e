#!/bin/bash
# Which lines and branches the tests run, by project and by room of Core. In a copy of the last commit, so that the tests' own packages stay as they are.
# usage: tests/PackPlanner.Tests/coverage.sh [folder for the copy and the report, default a new one] [options of the tests, such as --filter-class ...]
set -eu
top=$(cd "$(dirname "$0")/../.." && pwd)
work=${1:-$(mktemp -d)}; [ $# -gt 0 ] && shift
rm -rf "$work/tree"; mkdir -p "$work"; work=$(cd "$work" && pwd)
git clone -q --no-hardlinks "$top" "$work/tree"
cd "$work/tree"
sed -i 's|<PackageReference Include="xunit.v3" />|&<PackageReference Include="coverlet.MTP" VersionOverride="10.1.0" />|' tests/PackPlanner.Tests/PackPlanner.Tests.csproj
dotnet build tests/PackPlanner.Tests -c Release -nologo -v q -p:RestoreLockedMode=false -p:RunAnalyzers=false -p:UseMicrosoftTestingPlatformRunner=true >"$work/build.txt" || { tail "$work/build.txt"; exit 1; }
dotnet tests/PackPlanner.Tests/bin/Release/net10.0/PackPlanner.Tests.dll --coverlet --coverlet-single-hit --coverlet-output-format cobertura --coverlet-include '[PackPlanner*]*' --coverlet-include '[packplanner]*' \
  --coverlet-exclude '[PackPlanner.Tests]*' --results-directory "$work/report" "$@" >"$work/tests.txt" || { tail -5 "$work/tests.txt"; echo "coverage: not all tests passed"; }
report=$(find "$work" -name '*cobertura*.xml' -newer "$work/build.txt" | head -1)
awk '
  function part(a, b) { return b ? sprintf("%.1f %% (%d of %d)", 100 * a / b, a, b) : "-" }
  /<class / {
    match($0, /filename="[^"]*"/); file = substr($0, RSTART + 10, RLENGTH - 11); sub(/^.*src\//, "", file); split(file, at, "/")
    room = at[1] == "PackPlanner.Core" && at[3] != "" ? at[1] "/" at[2] : ""
    inLines = 0
  }
  /<\/methods>/ { inLines = 1 }
  /<methods\/>/ { inLines = 1 }
  /<line / && inLines {
    match($0, /number="[0-9]+"/); key = file ":" substr($0, RSTART + 8, RLENGTH - 9)
    hit = $0 !~ /hits="0"/
    if (!(key in seen)) { seen[key] = 1; project[key] = at[1]; of[key] = room }
    if (hit) done[key] = 1
    if (match($0, /\([0-9]+\/[0-9]+\)/)) { split(substr($0, RSTART + 1, RLENGTH - 2), b, "/"); took[key] = b[1] > took[key] ? b[1] : took[key]; could[key] = b[2] }
  }
  END {
    for (key in seen) {
      n = split(project[key] "," of[key], names, ",")
      for (i = 1; i <= n; i++) if (names[i] != "") { lines[names[i]]++; run[names[i]] += key in done; taken[names[i]] += took[key]; all[names[i]] += could[key] }
    }
    for (name in lines) printf "| %s | %s | %s |\n", name, part(run[name], lines[name]), part(taken[name], all[name]) | "sort"
  }' "$report"
