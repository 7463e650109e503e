using System.Globalization;
using System.Text;

namespace PackPlanner.Tests.SampleData;

/// <summary>Makes the invented lot of the bakery trike: 150 cells as a tester's owner would have written them down.</summary>
internal static class TrikeLot
{
    // Cells that the story needs, with their Ah: three just under 80 % of 5.0 Ah, ten well below, and the one that was tested twice.
    private static readonly Dictionary<int, double> Told = new()
    {
        [91] = 3.999,
        [121] = 3.936,
        [15] = 3.894,
        [120] = 3.091,
        [23] = 3.512,
        [29] = 3.204,
        [44] = 3.655,
        [58] = 3.377,
        [71] = 3.601,
        [42] = 4.400,
        [87] = 2.944,
        [103] = 3.468,
        [128] = 3.733,
        [137] = 3.290,
    };

    internal static string Csv()
    {
        Random random = new(20261012);
        StringBuilder text = new("Nr;Kapazität;Ri;Slot;Ruhespannung;Endspannung;Kiste;Zustand\n");
        string repeat = "";
        for (int cell = 1; cell <= 150; cell++)
        {
            double ah = Told.TryGetValue(cell, out double told) ? told : Math.Round(Math.Clamp(4.37 + (0.15 * Normal(random)), 4.13, 4.82), 3);
            double milliohm = Math.Round(31.2 - (7.5 * (ah - 4.37)) + (1.6 * Normal(random)), 1);
            double restV = Math.Round(3.628 + (0.009 * Normal(random)), 3);
            string condition = "ok";
            int slot = ((cell - 1) % 4) + 1;
            // Told cells do not draw fewer numbers than the others, so that changing one leaves the rest as they are.
            if (cell == 113)
                (ah, restV) = (4.603, 3.317);
            if (cell == 36)
                restV = 1.741;
            if (cell == 62)
                condition = "Delle";
            string row = Row(cell, ah, milliohm, slot, restV, 3.00, condition);
            if (cell == 6)
            {
                repeat = row;
                row = Row(cell, Math.Round(ah * 0.31, 3), milliohm, slot, restV, 3.52, condition);
            }

            text.Append(row);
            if (cell == 42)
                text.Append(Row(cell, 4.426, milliohm + 0.1, 1, restV, 3.00, condition));
        }

        string rows = text.Append(repeat).ToString();
        return $"{rows}Summe;{Milliamphours(Total(rows))};;;;;;\n";
    }

    private static string Milliamphours(double ah) => Comma((ah * 1000).ToString("#\\ ###.0", CultureInfo.InvariantCulture));

    // What a spreadsheet's owner would have under the column, the aborted test and the repeats counted like the rest.
    private static double Total(string text) => text.Split('\n').Skip(1).Where(line => line.Length > 0)
        .Sum(line => double.Parse(line.Split(';')[1].Replace(" ", "", StringComparison.Ordinal).Replace(',', '.'), CultureInfo.InvariantCulture)) / 1000;

    private static string Row(int cell, double ah, double milliohm, int slot, double restV, double endV, string condition) => string.Create(
        CultureInfo.InvariantCulture,
        $"T{cell:000};{Milliamphours(ah)};{Comma(milliohm.ToString("0.0", CultureInfo.InvariantCulture))};{slot};{Comma(restV.ToString("0.000", CultureInfo.InvariantCulture))};{Comma(endV.ToString("0.00", CultureInfo.InvariantCulture))};{(char)('A' + ((cell - 1) / 25))}{((cell - 1) % 25 / 5) + 1};{condition}\n");

    private static string Comma(string figure) => figure.Replace('.', ',');

    // Box and Muller's transform; the two uniforms are always drawn.
    private static double Normal(Random random)
    {
        double radius = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
        return radius * Math.Cos(2 * Math.PI * random.NextDouble());
    }
}
