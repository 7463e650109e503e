using System.Globalization;
using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.Jobs;

/// <summary>Cautions that the givens alone raise, whatever the cells and the layout are.</summary>
public static class JobCautions
{
    // Source: [Iso6469-4]: 60 V DC, and 100 ohm for each volt of working voltage.
    private const double TouchV = 60;
    private const double LeastOhmPerV = 100;

    private static readonly (string Key, string Word)[] Protection =
        [("fuse", "fuse"), ("disconnect", "disconnect"), ("preCharge", "pre-charge"), ("bms", "BMS with a cut-off for each group")];

    /// <summary>Judges what the job was told.</summary>
    /// <param name="givens">The givens; what is unknown is named, never passed.</param>
    /// <returns>Cautions in no order.</returns>
    public static IEnumerable<Caution> Of(JobGivens givens)
    {
        double? fullV = givens.Series * givens.FullV;
        if (fullV > TouchV)
            yield return new Caution("caution-09", SignalWord.Warning, "pack", Text($"{fullV:0.0} V when full, the limit is {TouchV:0} V DC"));
        if (Insulation(givens.NumberOf("insulationOhm"), fullV) is { } insulation)
            yield return insulation;
        if (givens.Parallel > 4 && givens.TickOf("cellFuse") != true)
            yield return new Caution("caution-22", SignalWord.Caution, "each group", Text($"{givens.Parallel} cells in parallel and no fuse for each cell stated"));
        string[] lacking = [.. Protection.Where(part => givens.TickOf(part.Key) != true).Select(part => part.Word)];
        if (givens.Series is not null && lacking.Length > 0)
            yield return new Caution("caution-23", SignalWord.Warning, "pack", $"not ticked: {string.Join(", ", lacking)}");
    }

    private static Caution? Insulation(double? ohm, double? fullV)
    {
        if (ohm is not { } known || fullV is not { } volts || known >= LeastOhmPerV * volts)
            return null;
        return new Caution(
            "caution-10", volts > TouchV ? SignalWord.Danger : SignalWord.Notice, "pack",
            Text($"{known:0} ohm to the frame at {volts:0.0} V, the least is {LeastOhmPerV * volts:0} ohm"));
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
