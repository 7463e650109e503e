using System.Diagnostics;
using System.Globalization;

namespace PackPlanner.Mutation;

/// <summary>Changes rooms at a sample of places and prints which changes no test noticed.</summary>
/// <param name="rooms">Rooms of Core, with commas between; <c>*</c> stands for all.</param>
/// <param name="sample">How many changes of each room, and of all together for <c>*</c>; 0 takes all.</param>
/// <param name="seed">Draws the sample.</param>
/// <param name="only">Where not empty: these changes instead of a sample.</param>
internal sealed class MutationRun(string rooms, int sample, int seed, IReadOnlyList<int> only)
{
    // Tests of one change are tried from the quickest on, for at most this much processor time unchanged.
    private const double MostTestsMs = 10_000;

    // One that takes longer than this by itself is left out, and with it what follows in its class: whole fits and searches that hardly ever got a turn.
    private const double MostTestMs = 3_000;

    private const string Outside = "PackPlanner.Tests.Outside.";
    private const string Verb = "PackPlanner.Tests.Verbs.";
    private const string Survived = "survived";
    private const string Unseen = "seen by no test";
    private const string Late = "timed out";

    private readonly List<(bool Passes, double Ms, string Name, HashSet<int> Seen)> tests = [];
    private readonly string root = FindRoot();
    private string folder = "";
    private string beginnings = "";
    private WorkerProcess? worker;

    internal int Run()
    {
        Stopwatch clock = Stopwatch.StartNew();
        string built = Path.Combine(root, "tests", "PackPlanner.Tests", "bin", "Release", "net10.0");
        // Under the checkout, so that the tests find their data.
        folder = Path.Combine(AppContext.BaseDirectory, "changed-" + rooms.Replace(',', '-').Replace('*', 'x'));
        Copy(built, folder);
        string[] names = rooms == "*" ? [.. Directory.GetDirectories(Path.Combine(root, "src", "PackPlanner.Core")).Select(path => Path.GetFileName(path)!)] : rooms.Split(',');
        MutatedBuild build = new(root, built, names);
        IReadOnlyList<Change> possible = build.All();
        Random random = new(seed);
        // In the order drawn, so that a run that is stopped early has tried a sample too.
        Change[] drawn = [.. possible.OrderBy(_ => random.Next())];
        Change[] chosen = only.Count > 0 ? build.Chosen([.. drawn.Where(change => only.Contains(change.Id))], 0, RoomOf)
            : build.Chosen(drawn, sample, change => rooms == "*" ? rooms : RoomOf(change));
        build.Write(chosen.Select(change => change.Id).ToHashSet(), Path.Combine(folder, "PackPlanner.Core.dll"));
        beginnings = string.Join(' ', [.. names.Select(name => $"PackPlanner.Tests.Core.{name}."), .. names.SelectMany(Classes).Distinct()]);
        Console.WriteLine($"{possible.Count} changes in {rooms}, some of which would not compile; {chosen.Length} tried");
        Look(possible.Max(change => change.Id));
        List<(Change Change, string Fate)> fates = [];
        foreach (Change change in chosen)
        {
            fates.Add((change, Try(change, chosen)));
            Console.WriteLine($"{change.Id} {change.File}:{change.Line} {change.Kind}: {change.Before} -> {change.After}: {fates[^1].Fate}");
        }

        worker?.Dispose();
        foreach (IGrouping<string, (Change, string)> room in fates.GroupBy(fate => RoomOf(fate.Change)))
            Sum(room.Key, [.. room]);
        Sum("all", [.. fates]);
        Console.WriteLine($"{clock.Elapsed.TotalMinutes:F0} min");
        return 0;
    }

    private static void Sum(string room, (Change Change, string Fate)[] fates)
    {
        Change[] left = [.. fates.Where(fate => fate.Fate is Survived or Unseen).Select(fate => fate.Change).OrderBy(change => change.Id)];
        if (room != "all")
            foreach (Change change in left)
                Console.WriteLine($"survived: {change.Id} {change.File}:{change.Line} {change.Kind}: {change.Before} -> {change.After}");
        int late = fates.Count(fate => fate.Fate == Late);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{room}: of {fates.Length} changes {fates.Length - late - left.Length} killed, {late} timed out, {left.Length} survived: {100.0 * (fates.Length - left.Length) / fates.Length:F1} % noticed"));
    }

    private static string RoomOf(Change change) => change.File.Split(Path.DirectorySeparatorChar)[0];

    // Beside a room's own tests those against outside figures and the verbs that show its figures; for other rooms all of both, which takes long.
    private static string[] Classes(string room) => room switch
    {
        "Grouping" => [Outside + "Grouping", Verb + "MatchVerb"],
        "Sharing" => [Outside + "Sharing", Outside + "Circuit", Outside + "Joining", Verb + "ShareVerb", Verb + "JoinVerb"],
        "UsableEnergy" => [Outside + "UsableEnergy", Outside + "PulseAndDrift", Outside + "RoadLoad", Outside + "Conductor", Verb + "EnergyVerb"],
        "Screening" => [Outside + "LotStatistics", Outside + "Repeatability", Verb + "CellsVerb"],
        // Whole fits and whole searches of many seconds: they would hardly ever be tried.
        "Diagnosis" or "Fitting" => [],
        _ => [Outside, Verb],
    };

    // Runs every test unchanged, to see how long it takes and what it comes by.
    private void Look(int most)
    {
        worker = Begin(0);
        worker.Order($"seen {most} 0");
        while (worker.Answer(MostTestMs) is { } line && line != "done")
        {
            if (line.Length == 0)
            {
                worker.Dispose();
                tests.Add((false, MostTestMs, $"the {tests.Count + 1}th (too slow)", []));
                worker = Begin(0);
                worker.Order($"seen {most} {tests.Count}");
                continue;
            }

            string[] words = line.Split(' ');
            if (words[0] == "skipped")
            {
                tests.Add((false, MostTestMs, words[1] + " (too slow)", []));
                continue;
            }

            if (words[0] != "test")
                throw new InvalidOperationException($"the tests do not run to their end unchanged: {line}");
            tests.Add((words[2] == "True", double.Parse(words[3], CultureInfo.InvariantCulture), words[4], [.. words[5].Split(',', StringSplitOptions.RemoveEmptyEntries).Select(int.Parse)]));
        }

        Console.WriteLine($"{tests.Count} tests, {tests.Sum(test => test.Ms) / 1000:F0} s of processor time; fail unchanged and are left out: {string.Join(", ", tests.Where(test => !test.Passes).Select(test => test.Name))}");
    }

    private WorkerProcess Begin(int changeFromStart)
    {
        WorkerProcess begun = new(folder, changeFromStart);
        begun.Order($"list {beginnings}");
        if (begun.Answer(60_000) is not { Length: > 0 })
            throw new InvalidOperationException("the tests do not load");
        return begun;
    }

    private string Try(Change change, Change[] chosen)
    {
        // What is worked out once shows in any test that comes by its file, or by nothing else that is changed.
        HashSet<int> shows = change.AtStart ? [.. chosen.Where(other => other.File == change.File).Select(other => other.Id)] : [change.Id];
        double budgetMs = MostTestsMs;
        List<int> covering = [];
        IEnumerable<int> passing = Enumerable.Range(0, tests.Count).Where(i => tests[i].Passes).OrderBy(i => tests[i].Ms);
        IEnumerable<int> meeting = passing.Where(i => tests[i].Seen.Overlaps(shows));
        foreach (int test in change.AtStart && !meeting.Any() ? passing : meeting)
        {
            if ((budgetMs -= tests[test].Ms) < 0)
                break;
            covering.Add(test);
        }

        if (covering.Count == 0)
            return Unseen;
        WorkerProcess own;
        if (change.AtStart)
        {
            try
            {
                own = Begin(change.Id);
            }
            catch (InvalidOperationException)
            {
                return "killed as the program starts";
            }
        }
        else
        {
            own = worker ??= Begin(0);
        }

        string fate = Try(own, change.Id, covering);
        if (change.AtStart || fate is Late or "killed: the program died")
            own.Dispose();
        if (!change.AtStart && fate is Late or "killed: the program died")
            worker = null;
        return fate;
    }

    private string Try(WorkerProcess own, int id, List<int> covering)
    {
        own.Order($"try {id} {string.Join(' ', covering)}");
        double mostMs = 20_000;
        while (true)
        {
            string? line = own.Answer(mostMs);
            if (line is null)
                return "killed: the program died";
            if (line.Length == 0)
                return Late;
            if (!line.StartsWith("begun ", StringComparison.Ordinal))
                return line;
            mostMs = 3000 + 8 * tests[int.Parse(line[6..], CultureInfo.InvariantCulture)].Ms;
        }
    }

    private static void Copy(string from, string to)
    {
        if (Directory.Exists(to))
            Directory.Delete(to, recursive: true);
        foreach (string file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    private static string FindRoot()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "PackPlanner.sln")))
                return at.FullName;
        throw new InvalidOperationException("no PackPlanner.sln above the program");
    }
}
