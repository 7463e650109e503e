using PackPlanner.Core.Bench;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>Which cells lose charge at rest (caution 14).</summary>
internal static class LeakReasons
{
    /// <summary>
    /// Most cells lose 1 to 5 % a month, more in the first days. Source: [CellTestMaker], a maker's page. Held above
    /// this when the readings lie a week apart or more.
    /// </summary>
    internal const double MostPercentPerMonth = 5;

    private const double FewestDays = 7;

    // Without a curve, millivolts a day may only be compared between cells that rest at nearly the same volts.
    private const double AlikeV = 0.1;

    internal static IEnumerable<(CellDraft Cell, VerdictReason Reason)> Of(IReadOnlyList<CellDraft> cells)
    {
        CellDraft[] told = [.. cells.Where(cell => cell.SelfDischarge?.PercentPerMonth is not null)];
        bool[] unlike = Leaking(told, loss => loss.PercentPerMonth!.Value, loss => loss.SpreadPercentPerMonth ?? 0);
        double median = told.Length == 0 ? 0 : Robust.Median([.. told.Select(cell => cell.SelfDischarge!.PercentPerMonth!.Value)]);
        for (int i = 0; i < told.Length; i++)
        {
            double percent = told[i].SelfDischarge!.PercentPerMonth!.Value;
            bool over = percent > MostPercentPerMonth && !(told[i].SelfDischarge!.Days < FewestDays);
            if (unlike[i])
                yield return (told[i], Loss(percent, median, LimitOrigin.LotMedian, "%/month"));
            else if (over)
                yield return (told[i], Loss(percent, MostPercentPerMonth, LimitOrigin.CommonPractice, "%/month"));
        }

        foreach ((CellDraft, VerdictReason) reason in WithoutCurve(cells))
            yield return reason;
    }

    /// <summary>Cells whose fall, without a curve to turn it into charge, can be held against enough others that stood at their volts.</summary>
    internal static IEnumerable<CellDraft> Compared(IReadOnlyList<CellDraft> cells) => Alike(cells, Outliers.FewestReadings).SelectMany(alike => alike);

    private static IEnumerable<(CellDraft Cell, VerdictReason Reason)> WithoutCurve(IReadOnlyList<CellDraft> cells)
    {
        foreach (CellDraft[] alike in Alike(cells, fewest: 1))
        {
            bool[] unlike = Leaking(alike, loss => loss.MillivoltPerDay, loss => loss.SpreadMillivoltPerDay ?? 0);
            double median = Robust.Median([.. alike.Select(cell => cell.SelfDischarge!.MillivoltPerDay)]);
            for (int i = 0; i < alike.Length; i++)
                if (unlike[i])
                    yield return (alike[i], Loss(alike[i].SelfDischarge!.MillivoltPerDay, median, LimitOrigin.LotMedian, "mV/day"));
        }
    }

    // By the volts at which a cell began: by those at which it ended, a leaker would take itself out of the comparison.
    private static IEnumerable<CellDraft[]> Alike(IReadOnlyList<CellDraft> cells, int fewest)
    {
        (double V, CellDraft Cell)[] bare =
        [
            .. cells.Where(cell => cell is { SelfDischarge: { Answer: LeakAnswer.NoCurve } loss, RestV: not null } && !(loss.Days < SelfDischarge.FewestDays))
                .Select(cell => (BeganAtV(cell), cell)).OrderBy(entry => entry.Item1).ThenBy(entry => entry.cell.Label, StringComparer.Ordinal),
        ];
        for (int from = 0, to = 0; from < bare.Length; from = to)
        {
            while (to < bare.Length && bare[to].V - bare[from].V <= AlikeV)
                to++;
            if (to - from >= fewest)
                yield return [.. bare[from..to].Select(entry => entry.Cell)];
        }
    }

    private static double BeganAtV(CellDraft cell) =>
        cell.RestV!.Value + Math.Max(0, cell.SelfDischarge!.MillivoltPerDay) * (cell.SelfDischarge.Days ?? 0) / 1000;

    // Only a cell that loses more than the rest is a finding; one that loses less is not.
    private static bool[] Leaking(CellDraft[] cells, Func<SelfDischarge, double> loss, Func<SelfDischarge, double> spread)
    {
        double[] values = [.. cells.Select(cell => loss(cell.SelfDischarge!))];
        bool[] unlike = Outliers.Of(values, [.. cells.Select(cell => spread(cell.SelfDischarge!))]);
        double median = values.Length == 0 ? 0 : Robust.Median(values);
        return [.. unlike.Select((odd, i) => odd && values[i] > median)];
    }

    private static VerdictReason Loss(double value, double limit, LimitOrigin from, string unit) =>
        new(ReasonCodes.LosesCharge, ReadingName.SelfDischarge, value, limit, from, Verdict.Hold, "caution-14", Unit: unit);
}
