using BenchmarkDotNet.Running;
using PackPlanner.Benchmarks;
using PackPlanner.Benchmarks.Peer;

// Tables of targets have a word of their own; everything else goes to the benchmark runner.
if (args is ["all", .. var words])
    return EveryTarget.Run(words);
else if (args is ["grouping"])
    GroupingTargets.Run();
else if (args is ["grouping-growth"])
    GroupingGrowth.Run();
else if (args is ["power"])
    PowerTargets.Run();
else if (args is ["diagnosis", var from, var to])
    DiagnosisTargets.Run(int.Parse(from, System.Globalization.CultureInfo.InvariantCulture), int.Parse(to, System.Globalization.CultureInfo.InvariantCulture));
else if (args is ["fitting", .. var fitting])
    FittingTargets.Run(fitting is [var work, ..] ? int.Parse(work, System.Globalization.CultureInfo.InvariantCulture) : 700, fitting is [_, var only, ..] ? only : null);
else if (args is ["fitting-random", .. var random])
    return RandomCavities.Run(Number(random, 0, 200), Number(random, 1, 1), Number(random, 2, 10));
else if (args is ["fitting-growth", .. var growth])
    FittingGrowth.Run(Number(growth, 0, 0));
else if (args is ["fitting-limit", .. var limits])
    FittingLimit.Run([.. limits.Where(l => double.TryParse(l, out _)).Select(l => double.Parse(l, System.Globalization.CultureInfo.InvariantCulture)).DefaultIfEmpty(5)], limits.FirstOrDefault(l => !double.TryParse(l, out _)));
else if (args is ["screens", .. var parts])
    ScreensTargets.Run(parts);
else if (args is ["reading", .. var sizes])
    ReadingTargets.Run(sizes.Length == 0 ? [30, 100, 300] : [.. sizes.Select(size => int.Parse(size, System.Globalization.CultureInfo.InvariantCulture))]);
else if (args is ["reading-memory", var file])
    ReadingTargets.Memory(file);
else if (args is ["diagnosis-speed", .. var most])
    DiagnosisSpeed.Run(most.Length == 0 ? 3_000_000 : int.Parse(most[0], System.Globalization.CultureInfo.InvariantCulture));
else if (args is ["minimiser", var seed, var packs])
    MinimiserTargets.Run(int.Parse(seed, System.Globalization.CultureInfo.InvariantCulture), int.Parse(packs, System.Globalization.CultureInfo.InvariantCulture));
else if (args is ["diagnosis-peer", var first, var last, ..])
    PeerTargets.Run(
        int.Parse(first, System.Globalization.CultureInfo.InvariantCulture), int.Parse(last, System.Globalization.CultureInfo.InvariantCulture), keep: args.Contains("keep"),
        each: args.Contains("each"), only: args.FirstOrDefault(a => PeerScenario.Kinds.Any(kind => kind.StartsWith(a, StringComparison.Ordinal))));
else
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
return 0;

static int Number(string[] words, int at, int otherwise) => at < words.Length ? int.Parse(words[at], System.Globalization.CultureInfo.InvariantCulture) : otherwise;

internal sealed partial class Program;
