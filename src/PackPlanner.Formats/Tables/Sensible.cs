namespace PackPlanner.Formats.Tables;

/// <summary>What a reading of one lithium cell, or of cells in parallel, can be. Wider than any cell that is sold.</summary>
internal static class Sensible
{
    // Ah, V, A, milliohm, degC, g. From 20 mAh to a thousand Ah; a pack's cell current below 5000 A; common practice, no source.
    internal static (double Low, double High) Range(Dimension of) => of switch
    {
        Dimension.Charge => (0.02, 1000),
        Dimension.Voltage => (0.5, 10),
        Dimension.Current => (0.001, 5000),
        Dimension.Resistance => (0.02, 1000),
        Dimension.Temperature => (-60, 150),
        Dimension.Mass => (0.5, 50000),
        Dimension.Energy => (0.02, 5000),
        _ => (double.NegativeInfinity, double.PositiveInfinity),
    };

    internal static bool Holds(Dimension of, double value)
    {
        (double low, double high) = Range(of);
        return value >= low && value <= high;
    }
}
