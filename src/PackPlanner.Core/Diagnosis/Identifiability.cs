using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Whether a log determines capacities at all: a statement about the log, not about a group.</summary>
/// <param name="Told">Capacities can be told.</param>
/// <param name="Reason">What the log does not reach; null when told.</param>
/// <param name="Remedy">What to log next; null when told.</param>
/// <param name="Window">Share of its charge through which the group was followed that ends the log.</param>
internal sealed record Identifiability(bool Told, string? Reason, string? Remedy, double Window)
{
    /// <summary>The same of every group, shape [groups].</summary>
    internal double[] Windows { get; private init; } = [];

    // Of the group that ends the ride (or the charge) this much of its charge must have been followed, less the doubt of the estimate.
    private const double SlopingWindow = 0.70, WindowDoubt = 0.05;
    private const double FlatTop = 0.98, FlatBottom = 0.10, FlatTopDoubt = 0.012, FlatBottomDoubt = 0.02;

    /// <summary>Judges a fitted log.</summary>
    internal static Identifiability Of(PackEstimator.Estimate estimate, bool flat)
    {
        (double[] low, double[] high) = Followed(estimate);
        return Judge(estimate, flat, low, high) with { Windows = [.. low.Zip(high, (from, to) => to - from)] };
    }

    private static (double[] Low, double[] High) Followed(PackEstimator.Estimate estimate)
    {
        PackFit fit = estimate.Fit;
        int groups = estimate.Model.Groups, pieces = estimate.Model.Slices.Pieces.Length;
        double[] low = new double[groups], high = new double[groups];
        for (int k = 0; k < groups; k++)
        {
            (low[k], high[k]) = (double.PositiveInfinity, double.NegativeInfinity);
            for (int i = 0; i < pieces; i++)
            {
                double z = fit.ChargeAt(i, k);
                (low[k], high[k]) = (Math.Min(low[k], z), Math.Max(high[k], z));
            }
        }
        return (low, high);
    }

    private static Identifiability Judge(PackEstimator.Estimate estimate, bool flat, double[] low, double[] high)
    {
        bool rides = estimate.Model.Slices.Pieces.Any(p => p.CurrentA > 0.1 * estimate.Model.RatedAh && p.Slice.Kind == 1);
        int ends = rides ? Array.IndexOf(low, low.Min()) : Array.IndexOf(high, high.Max());
        string seen = FormattableString.Invariant($"group {ends + 1} was followed from about {100 * high[ends]:f0} % to {100 * low[ends]:f0} % of charge");
        if (!flat)
        {
            double window = high[ends] - low[ends];
            return window >= SlopingWindow - WindowDoubt ? new(true, null, null, window) : new(
                false, FormattableString.Invariant($"the log covers {100 * window:f0} % of the charge of the group that ends it ({seen}); capacity needs {100 * SlopingWindow:f0} %"),
                "Charge slowly until the charger stops, rest an hour, then log one ride down to the low-voltage cut-off.", window);
        }
        bool top = Math.Max(high[ends], Robust.Median(high)) > FlatTop - FlatTopDoubt, bottom = low[ends] < FlatBottom + FlatBottomDoubt;
        return top && bottom ? new(true, null, null, high[ends] - low[ends]) : new(
            false, (top, bottom) switch
            {
                (false, false) => $"the log stays on the flat part of the curve: neither the knee near full nor the one near empty is reached ({seen})",
                (true, _) => $"the log does not reach the knee near empty ({seen})",
                _ => $"the log does not reach the knee near full ({seen})",
            },
            "Log one slow full charge until the charger stops, then a ride down to the low-voltage cut-off.", high[ends] - low[ends]);
    }
}
