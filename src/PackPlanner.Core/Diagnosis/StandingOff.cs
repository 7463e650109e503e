using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>How far each group stands off the middle one all the time, read without any model.</summary>
/// <remarks>
/// Where a log is too rough for the model (slow averages, charge moved unlogged) a group may be explained by a curve of its own. One that
/// reads tens of millivolts low in nine pieces of ten, while the others keep together, is to be named all the same.
/// </remarks>
internal static class StandingOff
{
    private const double LeastV = 0.025, Spreads = 3.5;

    /// <summary>Volts by which a group stands off in at least nine pieces of ten, 0 where it does not stand out; shape [groups].</summary>
    internal static double[] Of(PackModel model)
    {
        double[] still = new double[model.Groups];
        ChargeSlices.Piece[] whole = [.. model.Slices.Pieces.Where(p => p.Readings.All(r => r > 0))];
        if (model.Groups < 6 || whole.Length < 10)
            return still;
        double[] middle = [.. whole.Select(p => Robust.Median(p.Volts))], medians = new double[model.Groups];
        for (int k = 0; k < still.Length; k++)
        {
            double[] inTime = [.. whole.Select((p, i) => p.Volts[k] - middle[i])], off = [.. inTime.Order()];
            (double low, double high) = (off[off.Length / 10], off[^(1 + (off.Length / 10))]);
            medians[k] = Robust.UpperMedian(off);
            // A smaller group starts level and falls behind; what is meant here stands off from the first.
            double atFirst = Robust.Median(inTime.AsSpan(0, (whole.Length + 9) / 10));
            double steady = low > 0 ? low : high < 0 ? high : 0;
            still[k] = atFirst * steady > 0 && Math.Abs(atFirst) > 0.5 * Math.Abs(medians[k]) ? steady : 0;
        }
        double spread = 1.4826 * Robust.Median([.. medians.Select(Math.Abs)]);
        return [.. still.Select((v, k) => Math.Abs(v) > LeastV && Math.Abs(medians[k]) > Spreads * spread ? v : 0)];
    }
}
