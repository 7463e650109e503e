using BenchmarkDotNet.Running;
using PackPlanner.Benchmarks;

// Tables of targets have a word of their own; everything else goes to the benchmark runner.
if (args is ["grouping"])
    GroupingTargets.Run();
else
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);

internal sealed partial class Program;
