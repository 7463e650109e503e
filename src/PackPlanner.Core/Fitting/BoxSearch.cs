namespace PackPlanner.Core.Fitting;

/// <summary>Fills the cavity with box cells: slabs one cell thick along one axis, each filled by choice among candidate places.</summary>
internal static class BoxSearch
{
    /// <summary>What the quick look may cost along each axis: about three seconds on two cores, and far more than most cases take.</summary>
    private const long QuickWork = 120_000_000;

    private const long FirstWork = 500_000;

    private const int MostSearched = 4;

    private const int Many = 100;

    /// <summary>Boxes that a quick look finds room for.</summary>
    /// <param name="scene">Walls and keep-outs.</param>
    /// <param name="work">What the look may cost, about, in the steps of <see cref="SlabStack.Work"/>.</param>
    /// <param name="cancel">Stops the look.</param>
    /// <param name="spent">What it cost.</param>
    internal static int QuickCount(Scene scene, long work, CancellationToken cancel, out long spent)
    {
        SlabStack[] stacks = Looked(scene, Attitude.Of(scene.Case), work / 3, cancel);
        spent = stacks.Sum(s => s.Work);
        return stacks.Max(s => s.Count);
    }

    private static SlabStack[] Looked(Scene scene, IReadOnlyList<Attitude> attitudes, long workEach, CancellationToken cancel)
    {
        SlabStack[] stacks = [.. Axes3.All.Select(along => new SlabStack(scene, attitudes, along, cancel))];
        foreach (SlabStack stack in stacks)
            stack.LookQuickly(workEach);
        return stacks;
    }

    /// <summary>The attitudes of each pose by itself; none where there is only one.</summary>
    private static IEnumerable<IReadOnlyList<Attitude>> Alone(FitCase fitCase) =>
        fitCase.Cell is CellBody.Box box && box.Poses.Distinct().Skip(1).Any()
            ? box.Poses.Distinct().Order().Select(pose => Attitude.Of(fitCase with { Cell = box with { Poses = [pose] } }))
            : [];

    // What was proved of one pose says nothing of the others. With one class along the axis each box crosses one of so many planes, and
    // no plane crosses more than was proved.
    private static int? ProvenLimit(Scene scene, IReadOnlyList<Attitude> attitudes, SlabStack stack)
    {
        if (stack.Attitudes.Count < attitudes.Count || SlabClass.Of(attitudes, stack.Along).Count != 1)
            return null;
        int? limit = null;
        foreach ((SlabClass slab, int proven) in stack.Proven)
            limit = Math.Min(limit ?? int.MaxValue, BoxBound.Layers(scene.Parts[0], slab) * proven);
        return limit;
    }

    internal static LayoutChoice Find(Scene scene, FitEffort effort, IProgress<FitProgress>? progress, CancellationToken cancel)
    {
        IReadOnlyList<Attitude> attitudes = Attitude.Of(scene.Case);
        (int? bound, string method) = BoxBound.Of(scene, attitudes);
        // Told within a second; it counts only when the search is stopped before the quick look ends.
        SlabStack[] firsts = Looked(scene, attitudes, FirstWork, CancellationToken.None);
        progress?.Report(new FitProgress("first slabs", firsts.Max(s => s.Count), bound, 0.02));
        // All poses together have so many places that, with many boxes, one pose alone looked at closely holds more; with few, mixing pays.
        IReadOnlyList<Attitude>[] poses = [.. Alone(scene.Case)];
        SlabStack[] alone = [.. poses.SelectMany(pose => Looked(scene, pose, QuickWork / 2 / poses.Length, cancel))];
        bool many = alone.Select(s => s.Count).DefaultIfEmpty(0).Max() >= Many;
        SlabStack[] stacks = [.. Looked(scene, attitudes, many ? QuickWork / 3 : QuickWork, cancel), .. alone];
        // What the quick look found is often tidier than a search's answer of the same size, and then has shorter plates.
        List<List<Body>> found = [.. stacks.Select(s => s.Bodies())];
        int best = stacks.Max(s => s.Count);
        progress?.Report(new FitProgress("quick slabs", best, bound, 0.2));
        if (!effort.IsQuick)
        {
            SlabStack[] worth = [.. stacks.Where(s => s.Count >= (best * 0.9) - 2).OrderByDescending(s => s.Count).Take(MostSearched)];
            foreach (SlabStack stack in worth)
            {
                stack.LookWell(100_000L * effort.MillionSteps / worth.Length, bound ?? int.MaxValue);
                best = Math.Max(best, stack.Count);
                if (ProvenLimit(scene, attitudes, stack) is { } limit && limit < (bound ?? int.MaxValue))
                    (bound, method) = (limit, "layers times complete search of one layer");
                progress?.Report(new FitProgress("slabs", best, bound, 0.6));
                if (best == bound)
                    break;
            }
        }

        found.AddRange(stacks.Select(s => s.Bodies()));
        if (cancel.IsCancellationRequested)
            found.AddRange(firsts.Select(s => s.Bodies()));
        Layout[] layouts = [.. found.Select(b => new Layout(b, "slabs", null, Regular: false))];
        return new LayoutChoice([.. layouts.OrderByDescending(l => l.Bodies.Count)], bound, method, null, null);
    }
}
