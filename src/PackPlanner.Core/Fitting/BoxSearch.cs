namespace PackPlanner.Core.Fitting;

/// <summary>Fills the cavity with box cells: slabs one cell thick along one axis, each filled by choice among candidate places.</summary>
internal static class BoxSearch
{
    internal static LayoutChoice Find(Scene scene, FitEffort effort, IProgress<FitProgress>? progress, CancellationToken cancel)
    {
        IReadOnlyList<Attitude> attitudes = Attitude.Of(scene.Case);
        (int? bound, string method) = BoxBound.Of(scene, attitudes);
        SlabStack[] stacks = [.. Axes3.All.Select(along => new SlabStack(scene, attitudes, along, cancel))];
        foreach (SlabStack stack in stacks)
            stack.LookQuickly();
        // What the quick look found is often tidier than a search's answer of the same size, and then has shorter plates.
        List<List<Body>> found = [.. stacks.Select(s => s.Bodies())];
        int best = stacks.Max(s => s.Count);
        progress?.Report(new FitProgress("quick slabs", best, bound, 0.2));
        if (!effort.IsQuick)
        {
            SlabStack[] worth = [.. stacks.Where(s => s.Count >= (best * 0.9) - 2).OrderByDescending(s => s.Count)];
            foreach (SlabStack stack in worth)
            {
                stack.LookWell(100_000L * effort.MillionSteps / worth.Length, bound ?? int.MaxValue);
                best = Math.Max(best, stack.Count);
                foreach ((SlabClass slab, int proven) in stack.Proven)
                {
                    // One class along this axis: each box crosses one of so many planes, and no plane crosses more than was proved.
                    int limit = BoxBound.Layers(scene.Parts[0], slab) * proven;
                    if (limit < (bound ?? int.MaxValue) && SlabClass.Of(attitudes, stack.Along).Count == 1)
                        (bound, method) = (limit, "layers times complete search of one layer");
                }

                progress?.Report(new FitProgress("slabs", best, bound, 0.6));
                if (best == bound)
                    break;
            }
        }

        found.AddRange(stacks.Select(s => s.Bodies()));
        Layout[] layouts = [.. found.Select(b => new Layout(b, "slabs", null, Regular: false))];
        return new LayoutChoice([.. layouts.OrderByDescending(l => l.Bodies.Count)], bound, method, null, null);
    }
}
