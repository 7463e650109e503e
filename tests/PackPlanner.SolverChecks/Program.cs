using PackPlanner.SolverChecks;

// Our matcher against a general solver, side by side: never a smaller smallest group, and how much less time to a proof.
int seconds = args.Length > 0 ? int.Parse(args[0], System.Globalization.CultureInfo.InvariantCulture) : 10;
int worse = GroupingAgainstSolver.Run(seconds);
Console.WriteLine(worse == 0 ? "never beaten" : $"beaten {worse} times");
return worse == 0 ? 0 : 1;
