using PackPlanner.Core.Fitting;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>The line above the drawing: from where it is seen, which layer, what the signs mean; said shorter where it has less room, never cut.</summary>
internal static class PlaceHeading
{
    /// <param name="area">The drawing with its heading.</param>
    /// <param name="pack">The pack.</param>
    /// <param name="layer">The layer, from 0.</param>
    /// <param name="fromBelow">Which side.</param>
    /// <param name="inView">Which rows are seen; empty when all are.</param>
    internal static void Paint(Area area, PlacedPack pack, int layer, bool fromBelow, string inView)
    {
        string right = inView.Length > 0 ? $"  {area.Look.Of(inView)} " : "";
        int room = area.Width - 2 - TextWidth.Of(right);
        string[] said = [.. Said(pack, layer, fromBelow).Select(area.Look.Of)];
        area.Write(1, 0, TextWidth.Cut(said.FirstOrDefault(words => TextWidth.Of(words) <= room) ?? said[^1], room), Ink.Bold);
        if (right.Length > 0)
            area.WriteRight(0, right);
    }

    // From the whole to what must not be missing.
    private static IEnumerable<string> Said(PlacedPack pack, int layer, bool fromBelow)
    {
        IReadOnlyList<PlacedCell> cells = pack.Layers[layer];
        string side = fromBelow ? "below, mirrored" : "above";
        string layers = pack.Layers.Count > 1 ? $", layer {layer + 1} of {pack.Layers.Count}" : "";
        string spare = cells.Any(cell => pack.SeatOf(cell) is null) ? "; .. spare" : "";
        bool lies = cells.Any(cell => pack.SeatOf(cell) is not null && pack.IsPlusUp(cell) is null);
        bool stands = cells.Any(cell => pack.IsPlusUp(cell) is not null);
        string lying = !lies ? "" : cells.All(cell => cell.Terminals == "+z") ? "; o both poles on top" : "; o lies";
        yield return $"seen from {side}{layers}{(layers.Length > 0 ? " (PgUp PgDn)" : "")}{spare}{lying}{(stands ? "; sign: the end that faces you" : "")}";
        yield return $"seen from {side}{layers}{spare}{lying}{(stands ? "; sign: the end facing you" : "")}";
        yield return $"from {side}{layers}{spare}{lying}{(stands ? "; sign: end facing you" : "")}";
        yield return $"from {side}{layers}{spare}{lying}";
        yield return $"from {side}{layers}{lying}";
        yield return $"{side}{layers}";
    }
}
