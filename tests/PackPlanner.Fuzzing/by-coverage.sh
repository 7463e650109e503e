#!/bin/bash
# The readers of tables or logs under AFL++, which keeps what reaches new code and changes it on: a second harness beside the seeded one.
# usage: tests/PackPlanner.Fuzzing/by-coverage.sh tables|logs [seconds, default 600] [folder for its finds, default a new one]
# needs afl-fuzz (Debian package afl++); fetches the SharpFuzz tool and library, which mark the reader's own code, into that folder.
set -eu
what=${1:?tables or logs}; seconds=${2:-600}; work=${3:-$(mktemp -d)}; mkdir -p "$work"; work=$(cd "$work" && pwd)
top=$(cd "$(dirname "$0")/../.." && pwd); built=$top/src/PackPlanner/bin/Release/net10.0
[ -f "$built/PackPlanner.Formats.dll" ] || { echo "by-coverage: build first: dotnet build -c Release"; exit 2; }
command -v afl-fuzz >/dev/null || { echo "by-coverage: afl-fuzz is not installed"; exit 2; }
mkdir -p "$work/harness" "$work/seeds"; cd "$work/harness"
cat >harness.csproj <<EOF
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework><ImplicitUsings>enable</ImplicitUsings><InvariantGlobalization>true</InvariantGlobalization></PropertyGroup>
  <ItemGroup>
    <PackageReference Include="SharpFuzz" Version="2.3.0" />
    <PackageReference Include="CsvHelper" Version="34.0.0" /><PackageReference Include="MathNet.Numerics" Version="5.0.0" /><PackageReference Include="UnitsNet" Version="5.75.1" />
    <Reference Include="$built/PackPlanner.Formats.dll" /><Reference Include="$built/PackPlanner.Core.dll" />
  </ItemGroup>
</Project>
EOF
cat >Program.cs <<'EOF'
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
string file = Path.Combine(Path.GetTempPath(), $"by-coverage-{Environment.ProcessId}.csv");
// A reader refuses by its answer; whatever it throws is a find.
SharpFuzz.Fuzzer.OutOfProcess.Run(stream =>
{
    using (FileStream written = File.Create(file))
        stream.CopyTo(written);
    if (args[0] == "tables")
        CellTables.Read([file], new ReadOptions());
    else
        _ = (PackLogs.Read(file, new ReadOptions()), TesterLogs.Read(file, new ReadOptions()));
});
EOF
dotnet build -c Release -o out -nologo -v q
[ -x "$work/tool/sharpfuzz" ] || dotnet tool install SharpFuzz.CommandLine --version 2.3.0 --tool-path "$work/tool"
"$work/tool/sharpfuzz" out/PackPlanner.Formats.dll
if [ "$what" = tables ]; then from=cells; else from=logs; fi
find "$top/tests/PackPlanner.Tests/Data/spellings/$from" "$top/tests/PackPlanner.Tests/Data/broken" -type f -size -8k ! -name '*.gz' -exec cp {} "$work/seeds/" \;
export AFL_SKIP_BIN_CHECK=1 AFL_I_DONT_CARE_ABOUT_MISSING_CRASHES=1 AFL_SKIP_CPUFREQ=1 AFL_NO_AFFINITY=1 AFL_NO_UI=1 AFL_FORKSRV_INIT_TMOUT=120000
afl-fuzz -i "$work/seeds" -o "$work/found" -t 20000 -m none -V "$seconds" dotnet out/harness.dll "$what" >"$work/log" 2>&1 || { tail -20 "$work/log"; exit 1; }
grep -E '^(run_time|execs_done|execs_per_sec|corpus_count|edges_found|saved_crashes|saved_hangs) ' "$work/found/default/fuzzer_stats"
echo "by-coverage: inputs that threw, if any: $work/found/default/crashes"
