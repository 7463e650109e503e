namespace PackPlanner.Core.Packs;

/// <summary>Copper cables by nominal cross-section: what the standard allows, because nominal area is not metal area.</summary>
/// <remarks>Source: [Iec60228]: highest conductor resistance at 20 °C, plain copper, as three cable makers reproduce it.</remarks>
public static class CableTable
{
    private static readonly (double Mm2, double Stranded, double Flexible)[] Rows =
    [
        (1.5, 12.1, 13.3), (2.5, 7.41, 7.98), (4, 4.61, 4.95), (6, 3.08, 3.30), (10, 1.83, 1.91), (16, 1.15, 1.21),
        (25, 0.727, 0.780), (35, 0.524, 0.554), (50, 0.387, 0.386), (70, 0.268, 0.272), (95, 0.193, 0.206),
    ];

    /// <summary>Nominal cross-sections in the table, square millimetres.</summary>
    public static IReadOnlyList<double> SizesMm2 { get; } = [.. Rows.Select(row => row.Mm2)];

    /// <summary>Highest resistance of a size.</summary>
    /// <param name="areaMm2">Nominal cross-section, one of <see cref="SizesMm2"/>.</param>
    /// <param name="flexible">Class 5 (flexible) or class 2 (stranded).</param>
    /// <returns>Ohms per kilometre at 20 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The size is not in the table.</exception>
    public static double OhmPerKm(double areaMm2, bool flexible)
    {
        int row = Array.FindIndex(Rows, each => each.Mm2 == areaMm2);
        ArgumentOutOfRangeException.ThrowIfNegative(row, nameof(areaMm2));
        return flexible ? Rows[row].Flexible : Rows[row].Stranded;
    }

    // Source: [WireTable], chassis wiring: short, in free air, so optimistic. By gauge; 1/0 is 0, 4/0 is -3.
    private static readonly (int Gauge, double CarriesA)[] Carries = [(10, 55), (8, 73), (6, 101), (4, 135), (2, 181), (0, 245), (-3, 380)];

    /// <summary>Smallest flexible cable with no more ohms than the copper wire that a table lets carry a current.</summary>
    /// <param name="ratingA">Rating of the fuse before it, amperes.</param>
    /// <returns>Square millimetres; null above what the tables hold.</returns>
    /// <remarks>Source: [WireTable] for the currents, [LspFuseGuide] for a fuse never above what its conductor carries.</remarks>
    public static double? SmallestForFuse(double ratingA)
    {
        foreach ((int gauge, double carriesA) in Carries)
        {
            if (carriesA < ratingA)
                continue;
            // Below the table's first wire in proportion: a thinner wire carries more for its metal, so this stays on the careful side.
            double mostOhmPerKm = Conductors.AwgOhmPerKm(gauge) * Math.Max(1, Carries[0].CarriesA / ratingA);
            double found = Rows.FirstOrDefault(row => row.Flexible <= mostOhmPerKm).Mm2;
            return found > 0 ? found : null;
        }

        return null;
    }

    /// <summary>Smallest flexible cable whose drop stays within a limit.</summary>
    /// <param name="loadA">Amperes.</param>
    /// <param name="wayM">Length of one way, metres; the current goes there and back.</param>
    /// <param name="mostV">Volts that may be lost at 20 °C.</param>
    /// <returns>Square millimetres; null when even the largest loses more.</returns>
    public static double? SmallestForDrop(double loadA, double wayM, double mostV)
    {
        foreach ((double areaMm2, _, double flexible) in Rows)
            if (loadA * flexible * 2 * wayM / 1000 <= mostV * (1 + 1e-12))
                return areaMm2;
        return null;
    }
}
