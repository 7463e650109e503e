using System.Runtime.CompilerServices;
using PackPlanner.Core.Screening;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Plots;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>Resistance against capacity of the whole lot, a sign for each verdict; without resistance, how many have how much.</summary>
internal static class LotPlot
{
    // Drawn at every key, gathered once for each lot: ten thousand cells take longer to sort than to draw.
    private static readonly ConditionalWeakTable<ScreenedLot, (double X, double Y, string Sign)[]> Gathered = [];

    internal static void Paint(Area area, ScreenedLot lot)
    {
        (double, double, string)[] points = Gathered.GetValue(lot, PointsOf);
        if (points.Length > 2)
        {
            ScatterPlot.Paint(area, points, "Ah");
            area.Write(0, area.Height - 1, area.Look.Of("mΩ"));
            return;
        }

        double[] ah = [.. lot.Cells.Select(cell => cell.CapacityAh).OfType<double>()];
        if (ah.Length < 3)
            return;
        (double low, double high) = PlotFrame.Range(ah);
        PlotFrame frame = new(area.Part(0, 0, area.Width, 4), low, high, 0, 1);
        frame.PaintAxes("Ah");
        // The bars are one row high, so the axis beside them has no scale: the highest says its count.
        string bars = CountBars.Of(ah, low, high, frame.Inside.Width, out int most);
        area.Write(0, 0, $"cells│ the highest stands for {most}");
        area.Write(0, 1, "     │" + bars);
    }

    // Rejected last, so that the gravest sign lies on top.
    private static (double X, double Y, string Sign)[] PointsOf(ScreenedLot lot) =>
    [
        .. lot.Cells.Where(cell => cell.CapacityAh is not null && cell.ResistanceMilliohm is not null)
            .OrderBy(cell => cell.Verdict)
            .Select(cell => (cell.CapacityAh!.Value, cell.ResistanceMilliohm!.Value, Sign(cell.Verdict))),
    ];

    private static string Sign(Verdict verdict) => verdict switch
    {
        Verdict.Use => "·",
        Verdict.Hold => "o",
        _ => "x",
    };
}
