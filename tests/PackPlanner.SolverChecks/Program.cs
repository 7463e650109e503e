using PackPlanner.Benchmarks;
using PackPlanner.SolverChecks;

// The whole table of targets of grouping. First our matcher against a general solver, side by side: never a smaller smallest
// group, and how much less time to a proof; then against sorting, what is reached, and how far resistances are levelled.
// With the word boxes instead our packing of boxes against that solver: never fewer; with paths our paths through layouts of one cell in each group.
int seconds = args.Length > 0 ? int.Parse(args[0], System.Globalization.CultureInfo.InvariantCulture) : 10;
if (args is [_, "boxes"])
    return BoxesAgainstSolver.Run(seconds) == 0 ? 0 : 1;
if (args is [_, "paths"])
    return PathsAgainstSolver.Run(seconds) == 0 ? 0 : 1;
int worse = GroupingAgainstSolver.Run(seconds);
GroupingTargets.Run();
return worse == 0 ? 0 : 1;
