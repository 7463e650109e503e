namespace PackPlanner.Core.Fitting;

/// <summary>Layouts of one cell in one space, found once and grouped for one S and P after another, as sizing asks for them.</summary>
public sealed class SpaceLayouts
{
    private readonly FitCase fitCase;
    private readonly LayoutChoice choice;

    private SpaceLayouts(FitCase fitCase, LayoutChoice choice) => (this.fitCase, this.choice) = (fitCase, choice);

    /// <summary>Looks for the fullest layouts.</summary>
    /// <param name="fitCase">A case in which <see cref="FitCaseCheck"/> found no problem; its S and P do not matter.</param>
    /// <param name="effort">How long to look.</param>
    /// <param name="cancel">Stops the search; the best so far counts.</param>
    /// <returns>The layouts.</returns>
    public static SpaceLayouts Find(FitCase fitCase, FitEffort effort, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(fitCase);
        ArgumentNullException.ThrowIfNull(effort);
        // With an S, so that layouts which can be linked are looked for too.
        FitCase linked = fitCase with { Series = fitCase.Series ?? 1 };
        return new SpaceLayouts(linked, LayoutSearch.Found(new Scene(linked), effort, null, cancel));
    }

    /// <summary>Groups the cells.</summary>
    /// <param name="series">Groups in series, at least 1.</param>
    /// <param name="parallel">Cells in a group; null: as many as possible.</param>
    /// <param name="cancel">Stops the search; what can be grouped at once is.</param>
    /// <returns>Places of the layout and cells in a group; null where no such groups can be linked.</returns>
    public (int Places, int Parallel)? Grouped(int series, int? parallel, CancellationToken cancel)
    {
        Scene scene = new(fitCase with { Series = series, Parallel = parallel });
        (Layout layout, GroupPlan? plan, _) = LayoutSearch.Grouped(scene, choice.Layouts, preferGroups: false, cancel);
        return plan is null ? null : (layout.Bodies.Count, plan.Parallel);
    }
}
