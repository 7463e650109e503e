using System.Text.Json;
using static PackPlanner.Tests.Core.Fitting.PlaneGeometry;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Whether each cell with its clearances lies in a part of the cavity and clear of what must be kept out.</summary>
internal sealed partial class PlacementChecker
{
    private void CheckWalls()
    {
        JsonElement parts = given.GetProperty("cavity").GetProperty("parts");
        List<JsonElement> keepOuts = given.TryGetProperty("keepOuts", out JsonElement k) ? [.. k.EnumerateArray()] : [];
        foreach (Cell c in cells)
        {
            double[] low = new double[3], high = new double[3];
            for (int a = 0; a < 3; a++)
            {
                low[a] = c.Centre[a] - (c.Size[a] / 2) - Wall(c, 2 * a);
                high[a] = c.Centre[a] + (c.Size[a] / 2) + Wall(c, (2 * a) + 1);
            }

            if (!parts.EnumerateArray().Any(p => Inside(c, p, low, high)))
                faults.Add($"cell {c.Number} is in no part with its clearances");
            foreach (JsonElement keepOut in keepOuts)
            {
                if (Hits(c, keepOut, low, high))
                    faults.Add($"cell {c.Number} is too near to a keep-out");
            }
        }
    }

    private static (int Along, double[][] Outline, double From, double To)? Drawn(JsonElement solid, int preferred)
    {
        if (solid.TryGetProperty("box", out JsonElement box))
        {
            double[] b = [.. box.EnumerateArray().Select(n => n.GetDouble())];
            (int u, int v) = Across(preferred);
            return (preferred, [[b[u], b[v]], [b[u + 3], b[v]], [b[u + 3], b[v + 3]], [b[u], b[v + 3]]], b[preferred], b[preferred + 3]);
        }

        if (!solid.TryGetProperty("prism", out JsonElement prism))
            return null;
        string plane = prism.TryGetProperty("plane", out JsonElement p) ? p.GetString()! : "xz";
        int along = plane switch { "xz" => 1, "xy" => 2, _ => 0 };
        double[][] outline = [.. prism.GetProperty("outline").EnumerateArray().Select(c => new[] { c[0].GetDouble(), c[1].GetDouble() })];
        return (along, outline, prism.GetProperty("from").GetDouble(), prism.GetProperty("to").GetDouble());
    }

    private static (int U, int V) Across(int along) => along switch { 0 => (1, 2), 1 => (0, 2), _ => (0, 1) };

    private bool Inside(Cell c, JsonElement part, double[] low, double[] high)
    {
        (int along, double[][] outline, double from, double to) = Drawn(part, round ? c.Axis : 2)!.Value;
        if (low[along] < from - ForgiveMm || high[along] > to + ForgiveMm)
            return false;
        (int u, int v) = Across(along);
        if (round && c.Axis == along)
            return Winding(outline, c.Centre[u], c.Centre[v]) != 0 && Nearest(outline, c.Centre[u], c.Centre[v]) >= (high[u] - low[u]) / 2 - ForgiveMm;
        double[][] rectangle = Rectangle(low[u] + ForgiveMm, low[v] + ForgiveMm, high[u] - ForgiveMm, high[v] - ForgiveMm);
        return rectangle.All(p => Winding(outline, p[0], p[1]) != 0) && !Cross(outline, rectangle)
            && !outline.Any(p => p[0] > rectangle[0][0] && p[0] < rectangle[2][0] && p[1] > rectangle[0][1] && p[1] < rectangle[2][1]);
    }

    private bool Hits(Cell c, JsonElement keepOut, double[] low, double[] high)
    {
        if (keepOut.TryGetProperty("tube", out JsonElement tube))
            return HitsTube(c, tube, low, high);
        (int along, double[][] outline, double from, double to) = Drawn(keepOut, round ? c.Axis : 2)!.Value;
        if (low[along] >= to - ForgiveMm || high[along] <= from + ForgiveMm)
            return false;
        (int u, int v) = Across(along);
        if (round && c.Axis == along)
            return Winding(outline, c.Centre[u], c.Centre[v]) != 0 || Nearest(outline, c.Centre[u], c.Centre[v]) < (high[u] - low[u]) / 2 - ForgiveMm;
        double[][] rectangle = Rectangle(low[u] + ForgiveMm, low[v] + ForgiveMm, high[u] - ForgiveMm, high[v] - ForgiveMm);
        return Cross(outline, rectangle) || rectangle.Any(p => Winding(outline, p[0], p[1]) != 0) || outline.Any(p => Winding(rectangle, p[0], p[1]) != 0);
    }

    private bool HitsTube(Cell c, JsonElement tube, double[] low, double[] high)
    {
        double[] a = [.. tube.GetProperty("from").EnumerateArray().Select(n => n.GetDouble())], b = [.. tube.GetProperty("to").EnumerateArray().Select(n => n.GetDouble())];
        double radius = tube.GetProperty("diameterMm").GetDouble() / 2, long2 = 0;
        for (int i = 0; i < 3; i++)
            long2 += (b[i] - a[i]) * (b[i] - a[i]);
        // A point every hundredth of a millimetre at most: the distance cannot be off by more than half of that.
        int points = Math.Clamp((int)(Math.Sqrt(long2) / 0.01), 2, 60_000);
        double least = double.PositiveInfinity;
        for (int k = 0; k <= points; k++)
        {
            double[] p = [.. Enumerable.Range(0, 3).Select(i => a[i] + ((double)k / points * (b[i] - a[i])))];
            double[] off = [.. Enumerable.Range(0, 3).Select(i => Math.Max(0, Math.Max(low[i] - p[i], p[i] - high[i])))];
            if (round)
            {
                (int u, int v) = Across(c.Axis);
                double beside = Math.Max(0, Math.Sqrt(Sq(p[u] - c.Centre[u]) + Sq(p[v] - c.Centre[v])) - ((high[u] - low[u]) / 2));
                least = Math.Min(least, Math.Sqrt(Sq(beside) + Sq(off[c.Axis])));
            }
            else
            {
                least = Math.Min(least, Math.Sqrt(off.Sum(Sq)));
            }
        }

        return least < radius - ForgiveMm;
    }
}
