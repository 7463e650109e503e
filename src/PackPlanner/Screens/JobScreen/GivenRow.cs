using PackPlanner.Core.Jobs;

namespace PackPlanner.Screens.JobScreen;

/// <summary>One line of the givens form: one thing to know, or two or more that belong together.</summary>
/// <param name="What">In words.</param>
/// <param name="Keys">Keys of the <see cref="GivenCatalogue"/>, in the order in which they stand on the line.</param>
/// <param name="Between">What stands between the values.</param>
internal sealed record GivenRow(string What, IReadOnlyList<string> Keys, string Between = " / ")
{
    /// <summary>Whether the line counts among the nine that are asked first.</summary>
    internal bool IsFirst { get; init; }

    internal IEnumerable<GivenEntry> Entries => Keys.Select(key => GivenCatalogue.Find(key)!);

    /// <summary>The lines of the form: those asked first, then the rest as the catalogue has it.</summary>
    internal static IReadOnlyList<GivenRow> All { get; } = Build();

    private static IReadOnlyList<GivenRow> Build()
    {
        GivenRow[] first =
        [
            new("chemistry", ["chemistry"]),
            new("rated Ah of one cell", ["ratedAh"]),
            new("in series x in parallel", ["series", "parallel"], " x "),
            new("full / empty V per cell", ["fullV", "emptyV"]),
            new("steady / peak load A", ["steadyA", "peakA"]),
            new("controller lowest/highest V", ["controllerLowV", "controllerHighV"]),
            new("charger V and A", ["chargerV", "chargerA"]),
            new("Wh per km", ["whPerKm"]),
            new("in the box", ["fuse", "disconnect", "preCharge", "bms"]),
        ];
        HashSet<string> taken = [.. first.SelectMany(row => row.Keys)];
        GivenRow[] rest = [.. GivenCatalogue.All.Where(entry => !taken.Contains(entry.Key)).Select(entry => new GivenRow(entry.What, [entry.Key]))];
        return [.. first.Select(row => row with { IsFirst = true }), .. rest];
    }
}
