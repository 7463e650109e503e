using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>A start that reads charge off the curve as it was believed to be, and capacity off how that charge falls with the charge drawn.</summary>
/// <remarks>
/// The scan bends the curve at every point of its grid, and a curve that may be bent can explain half a knee by another capacity. Both ends of a log that goes far down
/// tell where it stood, whatever lies between: a fit begun there is taken where it costs much less.
/// </remarks>
internal static class AnchoredStart
{
    private const int Steps = 15;

    // Nearer than this it is the valley that was found already.
    private const double SameCapacity = 0.03, SameCharge = 0.02;

    // A little better is no other valley but another place in the same one, which is no nearer to the truth. Our choice, on simulated packs.
    private const double Much = 100;

    // Doubt of the unbent curve, which where it is flat is a doubt of charge.
    private const double CurveSdV = 0.02;
    private const double LeastWindow = 0.4;

    /// <summary>The fit from that start, where there is one and it is the better.</summary>
    /// <param name="model">The model.</param>
    /// <param name="fit">The fit so far.</param>
    /// <returns>Null where the fit so far stays.</returns>
    internal static PackFit? Better(PackModel model, PackFit fit)
    {
        if (Read(model) is not var (logCapacity, charge))
            return null;
        double[] x = (double[])fit.X.Clone();
        double larger = logCapacity - x[model.MeanAt], fuller = charge - x[model.MeanAt + 1];
        if (Math.Abs(larger) < SameCapacity && Math.Abs(fuller) < SameCharge)
            return null;
        Array.Clear(x, 0, model.Curve.Shapes);
        foreach (int at in Enumerable.Range(0, model.Groups).Select(model.GroupAt).Append(model.MeanAt))
        {
            // Charge stands behind log capacity, of the pack as of each group.
            x[at] += larger;
            x[at + 1] += fuller;
        }
        PackFit trial = new(model, x);
        trial.CopyFloors(fit);
        trial.Run(Steps, adaptFloors: false, enough: 0.01);
        return trial.Judgement < fit.Judgement - Much ? trial : null;
    }

    /// <summary>Straight line through the charges that the median group's volts tell, over the charge drawn.</summary>
    /// <returns>Log capacity over rated and charge at the first row; null where the log goes through too little of the curve.</returns>
    internal static (double LogCapacity, double Charge)? Read(PackModel model)
    {
        double[] bareV = model.Curve.Bent([]);
        (double Mean, double Sd)[] slow = PackStart.ExpectedSlow(model);
        double weights = 0, drawn = 0, charges = 0, square = 0, product = 0, highest = 0, lowest = 1;
        foreach (ChargeSlices.Piece piece in model.Slices.Pieces)
        {
            double[] read = [.. piece.Volts.Where(double.IsFinite)];
            if (read.Length == 0)
                continue;
            double z = ChargeAt(model, bareV, Robust.Median(read) + (model.Shape.Warm(piece.TemperatureDegC) * model.UnitOhm * PackStart.DriveA(slow, piece)), out double slopeV);
            double sd = 0.01 + (CurveSdV / Math.Max(0.05, slopeV)), weight = 1 / (sd * sd);
            weights += weight;
            drawn += weight * piece.DrawnAh;
            charges += weight * z;
            square += weight * piece.DrawnAh * piece.DrawnAh;
            product += weight * piece.DrawnAh * z;
            (highest, lowest) = (Math.Max(highest, z), Math.Min(lowest, z));
        }
        double spread = square - (drawn * drawn / weights), perAh = -(product - (drawn * charges / weights)) / spread;
        return highest - lowest < LeastWindow || !(spread > 0) || !(perAh * model.RatedAh is > 0.6 and < 2.5) ? null
            : (-Math.Log(perAh * model.RatedAh), Math.Min(1.03, (charges + (perAh * drawn)) / weights));
    }

    private static double ChargeAt(PackModel model, double[] bareV, double volts, out double slopeV)
    {
        double low = 0, high = 1;
        for (int i = 0; i < 30; i++)
        {
            double middle = (low + high) / 2;
            if (model.Curve.Volts(middle, bareV, out _) < volts)
                low = middle;
            else
                high = middle;
        }
        model.Curve.Volts(low, bareV, out slopeV);
        return low;
    }
}
