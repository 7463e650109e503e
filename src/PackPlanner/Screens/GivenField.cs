using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.JobScreen;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens;

/// <summary>Asks for something that a job may be told, from whatever screen needs it.</summary>
internal static class GivenField
{
    /// <summary>Asks for one.</summary>
    internal static void Ask(Desk desk, string key)
    {
        if (desk.Job is not { } job || GivenCatalogue.Find(key) is not { } entry)
            return;
        switch (entry.Kind)
        {
            case GivenKind.Chemistry:
                AskChemistry(desk, entry);
                break;
            case GivenKind.YesNo:
                Tick(desk, entry);
                break;
            default:
                desk.Show(new FieldOverlay(
                    desk, Asked(entry, desk.Look),
                    entry.Without.Length > 0 ? $"Empty makes it unknown: {entry.Without}." : "Empty makes it unknown.",
                    GivenWords.Initial(entry, job.Givens, desk.Look),
                    text => TypedGiven.Read(entry, AsTyped(desk, entry, text), percentBeside: true, out JobValue? read) is { } wrong
                        ? wrong + (text.Contains(',') && !desk.Look.DecimalComma ? " (or : decimal mark)" : "")
                        : Beside(entry, read, job.Givens),
                    text =>
                    {
                        // Taken as it stood, it stays with whom it came from.
                        if (text == GivenWords.Initial(entry, job.Givens, desk.Look))
                            return;
                        TypedGiven.Read(entry, AsTyped(desk, entry, text), percentBeside: true, out JobValue? value);
                        Take(desk, entry, value);
                    }));
                break;
        }
    }

    // What cannot stand beside the rest; what stood so before is not asked about again.
    private static string? Beside(GivenEntry entry, JobValue? value, JobGivens givens) => CellVoltsGiven.Wrong(givens) is not null || value is null ? null
        : CellVoltsGiven.Wrong(givens.With(entry.Key, new Given(value, Origin.You(default)))) is { } why ? $"{char.ToUpperInvariant(why[0])}{why[1..]}." : null;

    /// <summary>Asks which of some to change.</summary>
    /// <param name="desk">The desk.</param>
    /// <param name="title">What they are.</param>
    /// <param name="keys">Keys of the catalogue.</param>
    /// <param name="known">What holds for this screen while the user has said nothing, each with its origin; null where nothing does.</param>
    internal static void Choose(Desk desk, string title, IReadOnlyList<string> keys, Func<Job, JobGivens>? known = null) => desk.Show(new ListOverlay(
        desk, title,
        () => desk.Job is not { } job ? [] :
        [
            .. Items(desk, keys, known?.Invoke(job) ?? job.Givens),
        ],
        staysOpen: true));

    private static IEnumerable<ListItem> Items(Desk desk, IReadOnlyList<string> keys, JobGivens givens) => keys.Select(key => GivenCatalogue.Find(key)!).Select(entry => new ListItem(
        $"{Bare(entry)}: {GivenWords.Value(entry, givens, desk.Look).TrimEnd()}", GivenWords.From(new GivenRow("", [entry.Key]), givens), () => Ask(desk, entry.Key)));

    // What is typed has a unit, said once.
    private static string Asked(GivenEntry entry, Look look)
    {
        string unit = FieldUnits.Symbol(entry.Kind, look);
        if (FieldUnits.AreOthers(entry.Kind, look))
            return $"{Bare(entry)} ({unit})";
        bool said = entry.What.Split(' ', ',').Contains(unit) || entry.Kind is GivenKind.Milliohm or GivenKind.WattHoursPerKm;
        return said || unit.Length == 0 ? entry.What : $"{entry.What} ({unit})";
    }

    // Masses and lengths are shown with the unit of the look, which need not be that of the name.
    private static string Bare(GivenEntry entry) =>
        entry.Kind is GivenKind.Kilograms or GivenKind.Millimetres && entry.What.LastIndexOf(", ", StringComparison.Ordinal) is > 0 and { } comma ? entry.What[..comma] : entry.What;

    /// <summary>Ticked, then not there, then unknown.</summary>
    internal static void Tick(Desk desk, GivenEntry entry) => Take(desk, entry, desk.Job!.Givens.TickOf(entry.Key) switch
    {
        null => new JobValue.YesNo(true),
        true => new JobValue.YesNo(false),
        false => null,
    });

    // Who reads decimal commas types them too.
    private static string AsTyped(Desk desk, GivenEntry entry, string text) => FieldUnits.Typed(entry.Kind, desk.Look.DecimalComma ? text.Replace(',', '.') : text, desk.Look);

    private static void AskChemistry(Desk desk, GivenEntry entry) => desk.Show(new ListOverlay(desk, "chemistry of the cells", () =>
    [
        .. Chemistries.All.Select(c => new ListItem(
            $"{c.Name,-4} {c.Electrodes}", $"{desk.Look.Figure(c.NominalV, 2)} V", () => Take(desk, entry, new JobValue.Word(c.Name))) { IsNow = desk.Job?.Givens.Chemistry == c }),
        new ListItem("-    unknown", "", () => Take(desk, entry, null)),
    ]));

    // The same value again is no change: who said it first is still the one.
    private static void Take(Desk desk, GivenEntry entry, JobValue? value)
    {
        if (!Equals(value, desk.Job!.Givens.Known.GetValueOrDefault(entry.Key)?.Value))
            desk.Do(JobChanges.Set(entry.Key, value is null ? null : new Given(value, Origin.You(desk.Today))));
    }
}
