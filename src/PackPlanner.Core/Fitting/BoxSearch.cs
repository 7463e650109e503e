namespace PackPlanner.Core.Fitting;

/// <summary>Fills the cavity with box cells: slabs one cell thick along one axis, each filled by exact choice among candidate places.</summary>
internal static class BoxSearch
{
    internal static LayoutChoice Find(Scene scene, FitEffort effort, IProgress<FitProgress>? progress, CancellationToken cancel)
    {
        IReadOnlyList<Attitude> attitudes = Attitude.Of(scene.Case);
        (int? bound, string method) = BoxBound.Of(scene, attitudes);
        List<Layout> layouts = [];
        foreach (Axis along in Axes3.All)
        {
            SlabStack stack = new(scene, attitudes, along, cancel);
            List<Body> bodies = stack.Fill(effort, bound ?? int.MaxValue);
            layouts.Add(new Layout(bodies, "slabs", null, Regular: false));
            int best = layouts.Max(l => l.Bodies.Count);
            progress?.Report(new FitProgress("slabs along " + Axes3.Letter(along), best, bound, ((int)along + 1) / 4.0));
        }

        return new LayoutChoice([.. layouts.OrderByDescending(l => l.Bodies.Count)], bound, method, null, null);
    }
}
