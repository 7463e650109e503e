using PackPlanner.Core.Cautions;
using PackPlanner.Core.Fitting;

namespace PackPlanner.Core.Jobs;

/// <summary>What a job has to say of its layout: what the layout itself raises, and what only the job knows.</summary>
public static class LayoutOfJob
{
    /// <summary>All cautions of a layout: its own, its sense taps, which stand whatever the figures are, ways in that are too small, and what nobody has said of flat cells.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="givens">What the job was told.</param>
    /// <returns>In no order.</returns>
    public static IEnumerable<Caution> Cautions(FitAnswer layout, JobGivens givens)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(givens);
        return [.. layout.Cautions, .. Taps(layout), .. TooSmall(layout) is { } way ? [WayIn(way)] : Array.Empty<Caution>(), .. Unclamped(layout, givens)];
    }

    /// <summary>The way in that lets most through, where none lets the finished pack through.</summary>
    /// <param name="layout">The layout.</param>
    /// <returns>Null where the pack passes, and where no way in is known.</returns>
    public static WayIn? TooSmall(FitAnswer layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        return layout.WaysIn.Any(way => way.PackPasses) ? null
            : layout.WaysIn.OrderByDescending(way => way.CellPasses).ThenBy(way => way.PackShortMm).FirstOrDefault();
    }

    private static Caution[] Taps(FitAnswer layout) => layout is not { Fits: true, Series: not null } || layout.Cautions.Any(caution => caution.Code == "caution-19") ? []
        : [new("caution-19", SignalWord.Warning, "sense taps", $"{layout.Series + 1} taps are listed: measure all before plugging in")];

    private static Caution WayIn(WayIn way) => new(
        "caution-34", way.CellPasses ? SignalWord.Notice : SignalWord.Caution, way.Opening, way.Text[(way.Opening.Length + 2)..],
        way.CellPasses ? "Put the cells in one by one, the furthest first, insulated until each is linked; or plan a larger way in." : null);

    // Clearances are room to swell, not a clamp: unless somebody says so, nobody knows whether there is one.
    private static IEnumerable<Caution> Unclamped(FitAnswer layout, JobGivens givens)
    {
        if (layout.Cells.Count > 0 && layout.Cells[0].RoundAlong is null && givens.TickOf("clamping") is null && layout.Cautions.All(caution => caution.Code != "caution-25"))
        {
            yield return new("caution-25", SignalWord.Notice, "clamping", $"{Caution.NotChecked}: whether the flat cells are clamped, or have room to swell, is not said; clearances alone hold nothing",
                "Say whether they are (given clamping); the cell maker says how hard, and how far they swell.");
        }
    }
}
