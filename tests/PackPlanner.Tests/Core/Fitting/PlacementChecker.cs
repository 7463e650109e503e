using System.Text.Json;
using static PackPlanner.Tests.Core.Fitting.PlaneGeometry;

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
}
