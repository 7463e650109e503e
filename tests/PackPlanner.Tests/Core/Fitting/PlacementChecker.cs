using System.Text.Json;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>
/// Checks every rule of a fit case on an answer, from the two JSON documents alone. Written apart from the search: it shares no code with it
/// and does everything the long way, by winding numbers, sampled bars and all pairs.
/// </summary>
internal sealed partial class PlacementChecker
{
    private const double ForgiveMm = 0.02;
    private readonly JsonElement given;
    private readonly Cell[] cells;
    private readonly Dictionary<string, double> clearance = [];
    private readonly bool round;
    private readonly double diameter;
    private readonly double length;
    private readonly double thickness;
    private readonly double height;
    private readonly List<string> faults = [];

    private PlacementChecker(JsonElement fitCase, JsonElement answer)
    {
        given = fitCase;
        JsonElement cell = fitCase.GetProperty("cell");
        round = cell.GetProperty("shape").GetString() == "cylinder";
        diameter = Number(cell, "diameterMm", 0);
        length = Number(cell, "lengthMm", 0);
        thickness = Number(cell, "thicknessMm", 0);
        height = Number(cell, "heightMm", 0);
        if (fitCase.TryGetProperty("clearance", out JsonElement c))
        {
            foreach (JsonProperty p in c.EnumerateObject())
                clearance[p.Name] = p.Value.GetDouble();
        }

        cells = [.. answer.GetProperty("cells").EnumerateArray().Select(Read)];
    }

    private sealed record Cell(int Number, double[] Centre, int Axis, double[] Size, int Terminal, int? Group);

    /// <summary>Everything that is wrong with an answer; empty when it keeps every rule.</summary>
    internal static IReadOnlyList<string> Faults(string caseJson, JsonElement answer)
    {
        using JsonDocument document = JsonDocument.Parse(caseJson);
        PlacementChecker checker = new(document.RootElement, answer);
        checker.CheckNumbers(answer);
        checker.CheckWalls();
        checker.CheckPairs();
        checker.CheckGroups(answer);
        checker.CheckMass(answer);
        checker.CheckTold(answer);
        return checker.faults;
    }

    private Cell Read(JsonElement e)
    {
        double[] centre = [e.GetProperty("x").GetDouble(), e.GetProperty("y").GetDouble(), e.GetProperty("z").GetDouble()];
        int? group = e.GetProperty("group").ValueKind == JsonValueKind.Null ? null : e.GetProperty("group").GetInt32();
        int number = e.GetProperty("cell").GetInt32();
        if (round)
        {
            int axis = "xyz".IndexOf(e.GetProperty("axis").GetString()!, StringComparison.Ordinal);
            if (!AllowedAxes().Contains(axis))
                faults.Add($"cell {number} lies along {"xyz"[axis]}, which is not allowed");
            double[] size = [diameter, diameter, diameter];
            size[axis] = length;
            return new Cell(number, centre, axis, size, -1, group);
        }

        double[] box = [.. e.GetProperty("size").EnumerateArray().Select(n => n.GetDouble())];
        string terminals = e.GetProperty("terminals").GetString()!;
        int terminal = (2 * "xyz".IndexOf(terminals[1], StringComparison.Ordinal)) + (terminals[0] == '+' ? 1 : 0);
        CheckPose(number, box, terminal);
        return new Cell(number, centre, -1, box, terminal, group);
    }

    private int[] AllowedAxes() => given.GetProperty("cell").TryGetProperty("axes", out JsonElement axes)
        ? [.. axes.EnumerateArray().Select(a => "xyz".IndexOf(a.GetString()!, StringComparison.Ordinal))] : [2];

    private void CheckPose(int number, double[] size, int terminal)
    {
        string[] poses = given.GetProperty("cell").TryGetProperty("poses", out JsonElement p) ? [.. p.EnumerateArray().Select(x => x.GetString()!)] : ["upright"];
        int up = terminal / 2;
        bool sizesRight = Math.Abs(size[up] - height) < 1e-9
            && new[] { 0, 1, 2 }.Where(a => a != up).Select(a => size[a]).Order().SequenceEqual(new[] { length, thickness }.Order());
        if (!sizesRight)
            faults.Add($"cell {number} has a size that no pose gives");
        int flat = new[] { 0, 1, 2 }.First(a => a != up && size[a] == thickness);
        string pose = terminal == 5 ? "upright" : terminal == 4 ? "inverted" : flat == 2 && length != thickness ? "onFace" : "onEdge";
        bool square = length == thickness && up != 2;
        if (!poses.Contains(pose) && !(square && (poses.Contains("onFace") || poses.Contains("onEdge"))))
            faults.Add($"cell {number} stands {pose}, which is not allowed");
    }

    private double Clear(string name) => clearance.GetValueOrDefault(name);

    private static double Number(JsonElement e, string name, double missing) =>
        e.TryGetProperty(name, out JsonElement v) && v.ValueKind == JsonValueKind.Number ? v.GetDouble() : missing;

    private void CheckNumbers(JsonElement answer)
    {
        if (answer.GetProperty("count").GetInt32() != cells.Length)
            faults.Add("count is not the number of cells");
        if (cells.Select(c => c.Number).Distinct().Count() != cells.Length)
            faults.Add("two cells have one number");
        if (answer.GetProperty("bound").ValueKind == JsonValueKind.Number && answer.GetProperty("bound").GetInt32() < cells.Length)
            faults.Add("more cells than the bound allows");
        if (answer.GetProperty("proven").GetBoolean() && answer.GetProperty("bound").GetInt32() != cells.Length)
            faults.Add("proven, but not equal to the bound");
    }

    // Wall clearance of a face, and what it wants from the next cell.
    private double Wall(Cell c, int face) => round
        ? Clear(face / 2 == c.Axis ? "endMm" : "wallMm")
        : face == c.Terminal ? Clear("terminalMm") : IsLarge(c, face) ? Math.Max(Clear("plateMm"), Clear("wallMm")) : Clear("wallMm");

    private double Want(Cell c, int face) => round
        ? Clear(face / 2 == c.Axis ? "layerGapMm" : "cellGapMm")
        : face == c.Terminal ? Math.Max(Clear("terminalMm"), Clear("cellGapMm")) : IsLarge(c, face) ? Clear("spacerMm") : Clear("cellGapMm");

    private bool IsLarge(Cell c, int face) => face / 2 != c.Terminal / 2 && c.Size[face / 2] == thickness;

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

    private void CheckPairs()
    {
        double far = 1 + new[] { diameter, length, thickness, height }.Max() + clearance.Values.DefaultIfEmpty(0).Max();
        for (int i = 0; i < cells.Length; i++)
        {
            for (int j = i + 1; j < cells.Length; j++)
            {
                if (Enumerable.Range(0, 3).Any(a => Math.Abs(cells[i].Centre[a] - cells[j].Centre[a]) > far))
                    continue;
                if (!Apart(cells[i], cells[j]))
                    faults.Add($"cells {cells[i].Number} and {cells[j].Number} are too near to each other");
            }
        }
    }

    private bool Apart(Cell p, Cell q)
    {
        if (round && p.Axis == q.Axis)
        {
            (int u, int v) = Across(p.Axis);
            return Math.Sqrt(Sq(p.Centre[u] - q.Centre[u]) + Sq(p.Centre[v] - q.Centre[v])) >= diameter + Clear("cellGapMm") - ForgiveMm
                || Math.Abs(p.Centre[p.Axis] - q.Centre[p.Axis]) - length >= Clear("layerGapMm") - ForgiveMm;
        }

        return Enumerable.Range(0, 3).Any(a => Gap(p, q, a) >= Needed(p, q, a) - ForgiveMm);
    }

    private static double Gap(Cell p, Cell q, int a) => Math.Abs(p.Centre[a] - q.Centre[a]) - ((p.Size[a] + q.Size[a]) / 2);

    private double Needed(Cell p, Cell q, int a)
    {
        (Cell lower, Cell upper) = p.Centre[a] <= q.Centre[a] ? (p, q) : (q, p);
        return Math.Max(Want(lower, (2 * a) + 1), Want(upper, 2 * a));
    }

    private bool Neighbours(Cell p, Cell q, double reach, double forgive = ForgiveMm)
    {
        if (round)
        {
            if (p.Axis != q.Axis)
                return false;
            (int u, int v) = Across(p.Axis);
            double aside = Math.Sqrt(Sq(p.Centre[u] - q.Centre[u]) + Sq(p.Centre[v] - q.Centre[v])), along = Math.Abs(p.Centre[p.Axis] - q.Centre[p.Axis]);
            return (aside <= diameter + Clear("cellGapMm") + reach + forgive && along <= (length / 4) + Math.Min(0, forgive))
                || (aside <= (diameter / 4) + Math.Min(0, forgive) && along - length <= Clear("layerGapMm") + reach + forgive);
        }

        for (int a = 0; a < 3; a++)
        {
            double gap = Gap(p, q, a);
            bool facing = Enumerable.Range(0, 3).Where(b => b != a).All(b => -Gap(p, q, b) >= (Math.Min(p.Size[b], q.Size[b]) / 4) - forgive);
            if (gap > -forgive && gap <= Needed(p, q, a) + reach + forgive && facing)
                return true;
        }

        return false;
    }

    private void CheckGroups(JsonElement answer)
    {
        JsonElement pack = given.TryGetProperty("pack", out JsonElement p) ? p : default;
        int series = pack.ValueKind == JsonValueKind.Object ? (int)Number(pack, "series", 0) : 0;
        Cell[][] groups = [.. cells.Where(c => c.Group is not null).GroupBy(c => c.Group!.Value).OrderBy(g => g.Key).Select(g => g.ToArray())];
        if (groups.Length == 0)
        {
            if (series > 0 && answer.GetProperty("reasons").GetArrayLength() == 0)
                faults.Add("no groups and no reason");
            return;
        }

        double reach = Number(pack, "linkReachMm", 0);
        int parallel = groups[0].Length, wanted = (int)Number(pack, "parallel", 0);
        if (groups.Length != series || !groups.Select(g => g[0].Group!.Value).SequenceEqual(Enumerable.Range(1, series)))
            faults.Add($"groups are not 1 to {series}");
        if (groups.Any(g => g.Length != parallel) || (wanted > 0 && parallel != wanted) || parallel != answer.GetProperty("parallel").GetInt32())
            faults.Add("groups differ in size from each other or from what was asked");
        foreach (Cell[] group in groups)
        {
            if (!Connected(group, reach))
                faults.Add($"group {group[0].Group} is not in one piece");
        }

        int broken = 0, narrowest = int.MaxValue;
        for (int k = 0; k + 1 < groups.Length; k++)
        {
            int pairs = groups[k].Sum(a => groups[k + 1].Count(b => Neighbours(a, b, reach)));
            broken += pairs == 0 ? 1 : 0;
            narrowest = pairs > 0 ? Math.Min(narrowest, pairs) : narrowest;
        }

        if (broken > (int)Number(pack, "jumpersAllowed", 0))
            faults.Add($"{broken} links between groups are missing");
        JsonElement told = answer.GetProperty("links").GetProperty("narrowest");
        if (narrowest < int.MaxValue && told.ValueKind == JsonValueKind.Number && told.GetInt32() > narrowest)
            faults.Add($"the narrowest link is told as {told.GetInt32()}, it is {narrowest}");
    }

    private bool Connected(Cell[] group, double reach)
    {
        HashSet<int> seen = [0];
        Queue<int> todo = new([0]);
        while (todo.TryDequeue(out int i))
        {
            for (int j = 0; j < group.Length; j++)
            {
                if (!seen.Contains(j) && Neighbours(group[i], group[j], reach))
                {
                    seen.Add(j);
                    todo.Enqueue(j);
                }
            }
        }

        return seen.Count == group.Length;
    }

    private void CheckMass(JsonElement answer)
    {
        double grams = Number(given.GetProperty("cell"), "massG", double.NaN);
        bool series = given.TryGetProperty("pack", out JsonElement pack) && Number(pack, "series", 0) > 0;
        Cell[] used = series ? [.. cells.Where(c => c.Group is not null)] : cells;
        if (double.IsNaN(grams))
            return;
        double kg = used.Length * grams / 1000;
        if (Math.Abs(answer.GetProperty("cellMassKg").GetDouble() - kg) > 1e-9)
            faults.Add("cellMassKg is wrong");
        if (given.TryGetProperty("limits", out JsonElement limits) && Number(limits, "cellMassKg", double.PositiveInfinity) < kg - 1e-9)
            faults.Add("the mass limit is passed");
        if (used.Length == 0)
            return;
        double[] moment = [.. Enumerable.Range(0, 3).Select(a => used.Sum(c => c.Centre[a]) * grams / 1000)];
        if (given.TryGetProperty("parts", out JsonElement parts))
        {
            foreach (JsonElement part in parts.EnumerateArray())
            {
                double partKg = part.GetProperty("kg").GetDouble();
                kg += partKg;
                for (int a = 0; a < 3; a++)
                    moment[a] += partKg * part.GetProperty("at")[a].GetDouble();
            }
        }

        for (int a = 0; a < 3; a++)
        {
            if (Math.Abs(answer.GetProperty("centreOfMassMm")[a].GetDouble() - (moment[a] / kg)) > 1e-6)
                faults.Add($"the centre of mass is wrong along {"xyz"[a]}");
        }
    }

    private static double Sq(double v) => v * v;

    private static double[][] Rectangle(double u0, double v0, double u1, double v1) => [[u0, v0], [u1, v0], [u1, v1], [u0, v1]];

    private static int Winding(double[][] outline, double x, double y)
    {
        double turned = 0;
        for (int i = 0; i < outline.Length; i++)
        {
            double[] a = outline[i], b = outline[(i + 1) % outline.Length];
            double ax = a[0] - x, ay = a[1] - y, bx = b[0] - x, by = b[1] - y;
            turned += Math.Atan2((ax * by) - (ay * bx), (ax * bx) + (ay * by));
        }

        return (int)Math.Round(turned / (2 * Math.PI));
    }

    private static double Nearest(double[][] outline, double x, double y)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < outline.Length; i++)
        {
            double[] a = outline[i], b = outline[(i + 1) % outline.Length];
            double dx = b[0] - a[0], dy = b[1] - a[1], l2 = Sq(dx) + Sq(dy);
            double t = l2 == 0 ? 0 : Math.Clamp((((x - a[0]) * dx) + ((y - a[1]) * dy)) / l2, 0, 1);
            least = Math.Min(least, Math.Sqrt(Sq(x - a[0] - (t * dx)) + Sq(y - a[1] - (t * dy))));
        }

        return least;
    }

    private static bool Cross(double[][] p, double[][] q)
    {
        for (int i = 0; i < p.Length; i++)
        {
            for (int j = 0; j < q.Length; j++)
            {
                double[] a = p[i], b = p[(i + 1) % p.Length], c = q[j], d = q[(j + 1) % q.Length];
                if (Turn(a, b, c) * Turn(a, b, d) < 0 && Turn(c, d, a) * Turn(c, d, b) < 0)
                    return true;
            }
        }

        return false;
    }

    private static double Turn(double[] a, double[] b, double[] c) => ((b[0] - a[0]) * (c[1] - a[1])) - ((b[1] - a[1]) * (c[0] - a[0]));
}
