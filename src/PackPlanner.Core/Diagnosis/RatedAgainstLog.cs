using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Whether the rated capacity can be meant, beside the charge that the log counts.</summary>
internal static class RatedAgainstLog
{
    // A group does not give a third more than its label says; and where rests lie half the curve apart, far more than a seventh of it flowed (our choice).
    private const double MostDrawn = 1.3, TellingSpan = 0.5, LeastDrawn = 1.0 / 7;

    /// <summary>A note where they contradict each other.</summary>
    /// <param name="columns">The log.</param>
    /// <param name="given">What the owner said.</param>
    /// <param name="chargedUnseen">The pack was charged while nothing was logged, so that rides add up to more than it holds.</param>
    internal static IEnumerable<string> Notes(DiagnosisColumns columns, PackGiven given, bool chargedUnseen)
    {
        if (chargedUnseen)
            yield break;
        // What counts as a rest goes by amperes for each rated Ah; here the largest current stands for it, for the rated figure is what is doubted.
        double mostA = columns.CurrentA.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max();
        ChargeCount count = ChargeCount.Of(columns.TimeS, columns.CurrentA, columns.RowsAreAverages, mostA);
        double movedAh = count.DrawnAh.Max() - count.DrawnAh.Min();
        if (movedAh > MostDrawn * given.RatedGroupAh)
            yield return RatedDoubt.Says(given.RatedGroupAh, movedAh, "one way the log moves");
        else if (movedAh > 0 && movedAh < LeastDrawn * given.RatedGroupAh && RestsSpan(columns, count, given) is var span && span > TellingSpan)
            yield return RatedDoubt.Says(given.RatedGroupAh, movedAh / span, FormattableString.Invariant($"the rests of the log lie {100 * span:0} % of charge apart, and by the current a group then holds"));
    }

    // Charge by the curve at the fullest and the emptiest rest, of the groups' mean: whole charge is 1.
    private static double RestsSpan(DiagnosisColumns columns, ChargeCount count, PackGiven given)
    {
        OpenCircuitCurve curve = given.Chemistry.Curve.Spans(given.FullV, given.EmptyV) ? given.Chemistry.Curve.Between(given.FullV, given.EmptyV) : given.Chemistry.Curve;
        double[] volts = new double[columns.Groups];
        double least = 1, most = 0;
        for (int row = 0; row < columns.Rows; row++)
        {
            if (!count.Resting[row] || !columns.CopyVolts(row, volts))
                continue;
            double charge = curve.FractionAt(volts.Average());
            (least, most) = (Math.Min(least, charge), Math.Max(most, charge));
        }

        return most - least;
    }
}
