namespace PackPlanner.Core.Fitting;

/// <summary>Fits cells into a cavity and groups them. The door for the verb, the screens, and sizing.</summary>
public static class LayoutSearch
{
    /// <summary>Plates this much longer than the least possible are short enough: no other layout is looked at for shorter ones.</summary>
    private const double ShortPlates = 1.03;

    /// <summary>Looks for the fullest layout and the best groups in it.</summary>
    /// <param name="fitCase">A case in which <see cref="FitCaseCheck"/> found no problem.</param>
    /// <param name="effort">How long to look.</param>
    /// <param name="progress">Told of the best so far; may be null.</param>
    /// <param name="cancel">Stops the search; the best so far is grouped as well as can be done at once, and answered.</param>
    /// <param name="enough">Ends the looking for more places, so that time is left for good groups.</param>
    /// <returns>The layout; <see cref="FitAnswer.Fits"/> is false, with reasons, when what was asked does not fit.</returns>
    /// <exception cref="ArgumentException">The case has problems.</exception>
    public static FitAnswer Search(
        FitCase fitCase, FitEffort effort, IProgress<FitProgress>? progress, CancellationToken cancel, CancellationToken enough = default)
    {
        if (FitCaseCheck.Problems(fitCase) is [Problem first, ..])
            throw new ArgumentException($"{first.Where}: {first.Why}", nameof(fitCase));
        using CancellationTokenSource either = CancellationTokenSource.CreateLinkedTokenSource(cancel, enough);
        Scene scene = new(fitCase);
        LayoutChoice choice = Found(scene, effort, progress, either.Token);
        CancellationToken reasonsUntil = either.IsCancellationRequested ? either.Token : cancel;
        progress?.Report(new FitProgress("groups", choice.Layouts[0].Bodies.Count, choice.Bound, 0.7));
        (Layout layout, GroupPlan? plan, OtherLayout? other) = Grouped(scene, choice.Layouts, effort.PreferGroups, cancel);
        progress?.Report(new FitProgress("groups", layout.Bodies.Count, choice.Bound, 1));
        IReadOnlyList<FitReason> reasons = FitReasons.Of(scene, layout, plan, new QuickLooks(reasonsUntil));
        return AnswerBuilder.Build(scene, layout, plan, choice, reasons, reasonsUntil.IsCancellationRequested) with { Other = other, FirstLook = effort.IsQuick };
    }

    /// <summary>The fullest layouts, those of boxes closed up where they are to be grouped.</summary>
    internal static LayoutChoice Found(Scene scene, FitEffort effort, IProgress<FitProgress>? progress, CancellationToken cancel)
    {
        if (scene.Case.Cell is CellBody.Cylinder cylinder)
            return Cylinders(scene, cylinder, effort, progress, cancel);
        LayoutChoice choice = BoxSearch.Find(scene, effort, progress, cancel);
        return scene.Case.Series is null ? choice : choice with { Layouts = BoxClosing.Ranked(scene, choice.Layouts, cancel) };
    }

    private static LayoutChoice Cylinders(
        Scene scene, CellBody.Cylinder cell, FitEffort effort, IProgress<FitProgress>? progress, CancellationToken cancel)
    {
        List<CylinderSearch> searches = [];
        IReadOnlyList<Attitude> attitudes = Attitude.Of(scene.Case);
        foreach (Attitude attitude in attitudes)
        {
            CylinderSearch search = new(scene, cell, attitude, cancel);
            search.Nests(thorough: !effort.IsQuick, linkable: false);
            searches.Add(search);
            if (scene.Case.Series is null || !search.LayersApart)
                continue;
            // The fullest layers cannot be linked to one another: also layers that can, for larger groups in one piece.
            CylinderSearch linked = new(scene, cell, attitude, cancel);
            linked.Nests(thorough: !effort.IsQuick, linkable: true);
            searches.Add(linked);
        }

        int regular = searches.Max(s => s.RegularCount);
        int? bound = attitudes.Count == 1 ? searches[0].Bound() : null;
        progress?.Report(new FitProgress("regular nests", regular, bound, 0.2));
        List<Layout> layouts = [.. searches.Select(s => s.Regular())];
        int? free = null;
        if (!effort.IsQuick && regular > 0)
        {
            // A direction far behind will not catch up: free packing gains a few in a hundred, more only where cells are few.
            CylinderSearch[] worth = [.. searches.Where(s => s.RegularCount >= (regular * 0.85) - 3)];
            foreach (CylinderSearch search in worth)
            {
                layouts.Add(search.Free(1_000_000L * effort.MillionSteps / worth.Length, n => progress?.Report(new FitProgress("free packing", n, bound, 0.5))));
                free = Math.Max(free ?? 0, layouts[^1].Bodies.Count);
            }
        }

        foreach (CylinderSearch search in searches.Where(s => s.Regions.Select(r => r.Key).Distinct().Skip(1).Any()))
            layouts.AddRange(search.InLine());
        if (scene.Case.Series is not null && !cancel.IsCancellationRequested && searches.Any(s => s.LayersApart))
            layouts.AddRange([.. layouts.SelectMany(l => LayerShift.ClosedUp(scene, l))]);
        string method = bound is null ? "no useful bound for cells in several directions" : scene.Case.KeepOuts.Count > 0 ? "area and perimeter, less what keep-outs take" : "area and perimeter";
        return new LayoutChoice([.. layouts.OrderByDescending(l => l.Bodies.Count).ThenByDescending(l => l.Regular)], bound, method, regular, free);
    }

    /// <summary>
    /// The layout whose groups are largest; among equals the fullest, then the one with the shortest plates. Where larger groups would cost
    /// more places than <see cref="MayLose"/> allows, the fullest layout is kept unless larger groups were preferred.
    /// </summary>
    internal static (Layout Layout, GroupPlan? Plan, OtherLayout? Other) Grouped(
        Scene scene, IReadOnlyList<Layout> layouts, bool preferGroups, CancellationToken cancel)
    {
        FitCase c = scene.Case;
        int? most = c is { CellMassLimitKg: double kg, CellMassG: double g } ? (int)Math.Floor((kg * 1000 / g) + 1e-9) : null;
        Layout fullest = layouts[0];
        if (c.Series is not int series)
            return (most < fullest.Bodies.Count ? fullest with { Bodies = [.. fullest.Bodies.Take(most.Value)] } : fullest, null, null);
        (Layout Layout, GroupPlan? Plan) best = (fullest, null), kept = (fullest, null);
        int? fullestParallel = null;
        int nearlyAll = fullest.Bodies.Count - MayLose(fullest.Bodies.Count, c.Cell is CellBody.Box);
        int stopped = 0;
        foreach (Layout layout in layouts)
        {
            // Stopped, any groups will do; where the fullest layout gave none the next may.
            if (cancel.IsCancellationRequested && (best.Plan is not null || stopped++ > 1))
                break;
            int places = Math.Min(layout.Bodies.Count, most ?? int.MaxValue), known = best.Plan?.Parallel ?? 0;
            int largest = Math.Min(c.Parallel ?? int.MaxValue, places / series), smallest = c.Parallel ?? 1;
            bool asFull = layout.Bodies.Count == best.Layout.Bodies.Count;
            // The layouts come fullest first: the others cannot have larger groups, and as large ones only count in one as full.
            if (largest < Math.Max(smallest, known) || (largest == known && (!asFull || best.Plan?.BusbarRatio <= ShortPlates)))
                break;
            NeighbourGraph graph = NeighbourGraph.Of(layout.Bodies, c.Clearances, c.LinkReachMm);
            double[] angles = layout.AngleRad is double a ? [a] : [];
            GroupPlan? found = GroupPlanner.Plan(graph, series, largest, Math.Max(smallest, known + (asFull ? 0 : 1)), c.JumpersAllowed, angles, cancel);
            if (found is null || (found.Parallel == known && !(found.BusbarRatio < best.Plan?.BusbarRatio - 1e-9)))
                continue;
            best = (layout, found);
            fullestParallel = layout.Bodies.Count == fullest.Bodies.Count ? found.Parallel : fullestParallel;
            if (layout.Bodies.Count >= nearlyAll || preferGroups)
                kept = best;
        }

        // A layout that can be linked comes before a fuller one that cannot.
        if (kept.Plan is null)
            kept = best;
        OtherLayout? other = kept.Layout.Bodies.Count < fullest.Bodies.Count
            ? new OtherLayout(fullest.Bodies.Count, fullestParallel, IsFuller: true)
            : best.Plan?.Parallel > kept.Plan?.Parallel ? new OtherLayout(best.Layout.Bodies.Count, best.Plan?.Parallel, IsFuller: false) : null;
        return (kept.Layout, kept.Plan, other);
    }

    /// <summary>
    /// Places that larger groups may cost: one of fewer than sixty, else two in a hundred; of many boxes one in twelve, because the fullest
    /// layouts lie in pieces that no plate joins, and a place without a group is of no use.
    /// </summary>
    private static int MayLose(int places, bool boxes) => places < 60 ? 1 : places / (boxes ? 12 : 50);
}
