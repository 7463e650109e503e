using PackPlanner.Core.Fitting;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>The pack from the side: what stands at which height, and what is left above and below.</summary>
internal static class PlaceSide
{
    private const int Indent = 9;

    /// <summary>Lines from the lid down, not to scale; the figures are.</summary>
    internal static IReadOnlyList<string> Lines(FitCase fitCase, PlacedPack pack, Look look, int width)
    {
        (double floor, double lid) = new SightLines(fitCase).Extent(Axis.Z);
        List<(double Low, double High, string Words)> slices = [];
        double from = floor;
        foreach ((IReadOnlyList<PlacedCell> layer, int number) in pack.Layers.Select((layer, i) => (layer, i + 1)))
        {
            (double low, double high) = (layer.Min(cell => cell.Centre.Z - (cell.SizeMm.Z / 2)), layer.Max(cell => cell.Centre.Z + (cell.SizeMm.Z / 2)));
            Free(from, low, number == 1 ? "below: strip, insulation" : "between the layers");
            slices.Add((low, high, pack.Layers.Count == 1 ? $"cells, {look.Length(high - low)}" : $"layer {number}, {look.Length(high - low)}"));
            from = high;
        }

        Free(from, lid, "above: links, sense leads, insulation");
        int inner = Math.Clamp(width - Indent - 2, 10, 46);
        List<string> lines = ["side view" + (pack.Answer.CellsCentreOfMass is { } middle ? $"; middle of mass x {look.Bare(middle.X, 0)} y {look.Bare(middle.Y, 0)} z {look.Length(middle.Z, 0)}" : "")];
        for (int i = slices.Count - 1; i >= 0; i--)
        {
            bool top = i == slices.Count - 1;
            lines.Add(Edge(slices[i].High, top ? "┌" : "├", top ? "┐" : "┤"));
            lines.Add(new string(' ', Indent) + "│" + TextWidth.Fit(" " + slices[i].Words, inner) + "│");
        }

        lines.Add(Edge(floor, "└", "┘"));
        return lines;

        void Free(double low, double high, string where)
        {
            if (high - low > 0.05)
                slices.Add((low, high, $"{look.Length(high - low)} {where}"));
        }

        string Edge(double at, string open, string shut) => TextWidth.Fit(look.Length(at), Indent - 1, right: true) + " " + open + new string('─', inner) + shut;
    }
}
