using MathNet.Numerics.Interpolation;

namespace PackPlanner.Core.Cells;

/// <summary>Resting voltage of a cell against its state of charge: rising, smooth, quick to evaluate.</summary>
/// <remarks>
/// State of charge is 0 at resting <see cref="EmptyV"/> and 1 at resting <see cref="FullV"/>. Between its points the
/// curve is the monotone cubic of Fritsch and Carlson (MathNet), read once into an even grid, because a discharge
/// asks for it millions of times. Outside 0..1 it goes on along the slope at its end.
/// </remarks>
public sealed class OpenCircuitCurve
{
    private const int Steps = 4000;
    private const int FewestPoints = 4;
    private readonly double[] gridV = new double[Steps + 1];
    private readonly double[] pointFraction;
    private readonly double[] pointV;

    /// <summary>Builds the curve through measured points.</summary>
    /// <param name="fraction">State of charge 0..1, rising, shape [n], n ≥ 4, first 0 and last 1.</param>
    /// <param name="volts">Volts, shape [n]; made non-decreasing by a least lift where a reading falls by noise.</param>
    /// <param name="standing">Measured or assumed.</param>
    /// <param name="from">Source key.</param>
    /// <exception cref="ArgumentException">Shapes differ, too few points, or fractions do not rise from 0 to 1.</exception>
    public OpenCircuitCurve(IReadOnlyList<double> fraction, IReadOnlyList<double> volts, Standing standing, string from)
    {
        if (fraction.Count != volts.Count || fraction.Count < FewestPoints)
            throw new ArgumentException("A curve needs at least four points, as many volts as fractions.");
        if (fraction[0] != 0 || fraction[^1] != 1 || fraction.Zip(fraction.Skip(1)).Any(pair => pair.Second <= pair.First))
            throw new ArgumentException("Fractions must rise from 0 to 1.");
        pointFraction = [.. fraction];
        pointV = [.. volts];
        for (int i = 1; i < pointV.Length; i++)
            pointV[i] = Math.Max(pointV[i], pointV[i - 1] + 1e-5);
        CubicSpline spline = CubicSpline.InterpolatePchipSorted(pointFraction, pointV);
        for (int i = 0; i <= Steps; i++)
            gridV[i] = spline.Interpolate((double)i / Steps);
        Standing = standing;
        From = from;
    }

    /// <summary>Resting volts at state of charge 0.</summary>
    public double EmptyV => gridV[0];

    /// <summary>Resting volts at state of charge 1.</summary>
    public double FullV => gridV[^1];

    /// <summary>Measured or assumed.</summary>
    public Standing Standing { get; }

    /// <summary>Source key.</summary>
    public string From { get; }

    /// <summary>Resting volts at a state of charge.</summary>
    /// <param name="fraction">State of charge; 0 is empty, 1 is full.</param>
    /// <returns>Volts.</returns>
    public double VoltsAt(double fraction)
    {
        double place = fraction * Steps;
        int i = Math.Clamp((int)place, 0, Steps - 1);
        return gridV[i] + (place - i) * (gridV[i + 1] - gridV[i]);
    }

    /// <summary>Slope of the curve.</summary>
    /// <param name="fraction">State of charge.</param>
    /// <returns>Volts per unit of state of charge; divide by 100 for volts per point.</returns>
    public double SlopeAt(double fraction)
    {
        double low = Math.Clamp(fraction - 0.0025, 0, 0.995);
        return (VoltsAt(low + 0.005) - VoltsAt(low)) / 0.005;
    }

    /// <summary>State of charge at a resting voltage.</summary>
    /// <param name="volts">Volts; beyond the curve's ends the end slope goes on.</param>
    /// <returns>State of charge, possibly outside 0..1.</returns>
    public double FractionAt(double volts)
    {
        int low = 0;
        int high = Steps;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (gridV[middle] <= volts)
                low = middle;
            else
                high = middle;
        }

        return (low + (volts - gridV[low]) / (gridV[high] - gridV[low])) / Steps;
    }

    /// <summary>The same cell with other ends: 0 and 1 moved to the given resting voltages.</summary>
    /// <param name="fullV">Resting volts that count as full.</param>
    /// <param name="emptyV">Resting volts that count as empty; below <paramref name="fullV"/>.</param>
    /// <returns>A curve whose ends are those voltages.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The voltages are not in rising order.</exception>
    public OpenCircuitCurve Between(double fullV, double emptyV)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(fullV, emptyV);
        (List<double> fractions, List<double> volts) = Moved(fullV, emptyV);
        if (fractions.Count < FewestPoints)
            throw new ArgumentOutOfRangeException(nameof(fullV), "The voltages lie outside this chemistry's curve.");
        return new OpenCircuitCurve(fractions, volts, Standing, From);
    }

    /// <summary>Whether the curve has a shape between two resting voltages, so that <see cref="Between"/> can be asked.</summary>
    /// <param name="fullV">Resting volts that count as full.</param>
    /// <param name="emptyV">Resting volts that count as empty.</param>
    /// <returns>False where they are not in rising order, or too near to one another or too far out to hold points of the curve.</returns>
    public bool Spans(double fullV, double emptyV) => fullV > emptyV && Moved(fullV, emptyV).Fractions.Count >= FewestPoints;

    private (List<double> Fractions, List<double> Volts) Moved(double fullV, double emptyV)
    {
        double from = FractionAt(emptyV);
        double to = FractionAt(fullV);
        List<double> fractions = [0];
        List<double> volts = [emptyV];
        for (int i = 0; i < pointV.Length; i++)
        {
            double moved = (pointFraction[i] - from) / (to - from);
            if (moved > 1e-4 && moved < 1 - 1e-4)
            {
                fractions.Add(moved);
                volts.Add(pointV[i]);
            }
        }

        fractions.Add(1);
        volts.Add(fullV);
        return (fractions, volts);
    }

    /// <summary>Mean volts between two states of charge, as an ideal load would see it.</summary>
    /// <param name="low">Lower state of charge.</param>
    /// <param name="high">Higher state of charge.</param>
    /// <returns>Volts.</returns>
    public double MeanVolts(double low, double high)
    {
        const int pieces = 400;
        double sum = 0;
        for (int i = 0; i < pieces; i++)
            sum += VoltsAt(low + (high - low) * (i + 0.5) / pieces);
        return sum / pieces;
    }
}
