using System.Text.Json;
using static PackPlanner.Tests.Core.Fitting.PlaneGeometry;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>What the answer tells of links, poles, taps, boxes, ways in, volumes and margins, worked out again from the places alone.</summary>
internal sealed partial class PlacementChecker
{
    private void CheckTold(JsonElement answer)
    {
        Cell[][] groups = [.. cells.Where(c => c.Group is not null).GroupBy(c => c.Group!.Value).OrderBy(g => g.Key).Select(g => g.ToArray())];
        if (groups.Length > 0)
        {
            CheckLinks(answer, groups);
            CheckPoles(answer, groups);
            CheckTaps(answer, groups.Length);
            CheckBoxes(answer, groups);
        }

        CheckVolumes(answer);
        CheckMargins(answer);
        CheckOpenings(answer, groups.Length > 0 ? [.. groups.SelectMany(g => g)] : cells);
    }

    private void CheckLinks(JsonElement answer, Cell[][] groups)
    {
        double reach = Number(given.GetProperty("pack"), "linkReachMm", 0);
        JsonElement links = answer.GetProperty("links");
        int[] told = [.. links.GetProperty("pairs").EnumerateArray().Select(p => p.GetInt32())];
        int[] jumpers = [.. links.GetProperty("jumpers").EnumerateArray().Select(p => p.GetInt32())];
        if (told.Length != groups.Length - 1)
        {
            faults.Add("the pairs are not one for each link");
            return;
        }

        double sum = Tree(groups[0]) + Tree(groups[^1]);
        for (int k = 0; k + 1 < groups.Length; k++)
        {
            int pairs = groups[k].Sum(a => groups[k + 1].Count(b => Neighbours(a, b, reach)));
            // A pair at the very edge of the reach may be counted or not, within what is forgiven; every other pair must be.
            int sure = groups[k].Sum(a => groups[k + 1].Count(b => Neighbours(a, b, reach, forgive: -1e-5)));
            if (told[k] > pairs || told[k] < sure || (told[k] == 0) != jumpers.Contains(k + 1))
                faults.Add($"link {k + 1} is told with {told[k]} pairs, it has {pairs}, {sure} of them for sure");
            sum += told[k] > 0 ? Tree([.. groups[k], .. groups[k + 1]]) : 0;
        }

        if (told.Where(p => p > 0).ToArray() is { Length: > 0 } real && links.GetProperty("narrowest").GetInt32() != real.Min())
            faults.Add("the narrowest link is not the fewest of the pairs");
        double nearest = double.PositiveInfinity;
        for (int i = 0; i < cells.Length; i++)
        {
            for (int j = i + 1; j < cells.Length; j++)
            {
                double distance = Distance(cells[i], cells[j]);
                if (distance < nearest && Neighbours(cells[i], cells[j], reach))
                    nearest = distance;
            }
        }

        int parallel = groups[0].Length;
        double least = ((2.0 * (parallel - 1)) + ((groups.Length - 1.0 - jumpers.Length) * ((2.0 * parallel) - 1))) * nearest;
        if (least > 0 && double.IsFinite(least) && Math.Abs(links.GetProperty("busbarRatio").GetDouble() - (sum / least)) > 1e-6)
            faults.Add($"the bar ratio is told as {links.GetProperty("busbarRatio")}, it is {sum / least}");
    }

    /// <summary>Length of the shortest tree over centres: all pairs by rising distance, each taken that joins two pieces.</summary>
    private static double Tree(Cell[] members)
    {
        int[] piece = [.. Enumerable.Range(0, members.Length)];
        double sum = 0;
        foreach ((int i, int j, double distance) in Enumerable.Range(0, members.Length)
            .SelectMany(i => Enumerable.Range(i + 1, members.Length - i - 1).Select(j => (i, j, Distance(members[i], members[j])))).OrderBy(p => p.Item3))
        {
            if (piece[i] == piece[j])
                continue;
            sum += distance;
            (int keep, int gone) = (piece[i], piece[j]);
            for (int k = 0; k < piece.Length; k++)
                piece[k] = piece[k] == gone ? keep : piece[k];
        }

        return sum;
    }

    private static double Distance(Cell p, Cell q) => Math.Sqrt(Enumerable.Range(0, 3).Sum(a => Sq(p.Centre[a] - q.Centre[a])));

    private void CheckPoles(JsonElement answer, Cell[][] groups)
    {
        Dictionary<int, string?> plus = answer.GetProperty("cells").EnumerateArray().ToDictionary(c => c.GetProperty("cell").GetInt32(), c => c.GetProperty("plus").GetString());
        if (cells.Any(c => c.Group is null && plus[c.Number] is not null))
            faults.Add("a spare place has a pole");
        foreach (Cell[] group in groups)
        {
            // All of a group look one way along their own poles, and the next group the other way, so that each plate joins plus to minus.
            if (group.Select(c => plus[c.Number]![0]).Distinct().Count() != 1)
                faults.Add($"group {group[0].Group} has cells both ways up");
            if (round && group.Any(c => plus[c.Number]![1] != "xyz"[c.Axis]))
                faults.Add($"group {group[0].Group} has poles that do not lie along its cells");
        }

        if (groups.Zip(groups.Skip(1)).Any(two => plus[two.First[0].Number]![0] == plus[two.Second[0].Number]![0]))
            faults.Add("two groups that follow one another stand the same way up");
    }

    private void CheckTaps(JsonElement answer, int series)
    {
        JsonElement[] taps = [.. answer.GetProperty("taps").EnumerateArray()];
        double nominal = Number(given.GetProperty("cell"), "nominalV", double.NaN);
        if (!taps.Select(t => t.GetProperty("tap").GetInt32()).SequenceEqual(Enumerable.Range(0, series + 1)))
            faults.Add("the taps are not 0 to the number of groups");
        if (!double.IsNaN(nominal) && taps.Any(t => Math.Abs(t.GetProperty("nominalV").GetDouble() - (nominal * t.GetProperty("tap").GetInt32())) > 1e-9))
            faults.Add("a tap has wrong volts");
    }

    private void CheckBoxes(JsonElement answer, Cell[][] groups)
    {
        JsonElement[] boxes = [.. answer.GetProperty("boxes").EnumerateArray()];
        if (boxes.Length == 0)
            return;
        int[] covered = [.. boxes.SelectMany(b => Enumerable.Range(b.GetProperty("fromGroup").GetInt32(), b.GetProperty("toGroup").GetInt32() - b.GetProperty("fromGroup").GetInt32() + 1))];
        if (!covered.SequenceEqual(Enumerable.Range(1, groups.Length)) || boxes.Length != (int)Number(given, "boxes", 1))
            faults.Add("the boxes do not hold each group once");
        if (boxes.Any(b => b.GetProperty("cells").GetInt32() != groups[0].Length * (b.GetProperty("toGroup").GetInt32() - b.GetProperty("fromGroup").GetInt32() + 1)))
            faults.Add("a box is told with a wrong number of cells");
    }

    private void CheckVolumes(JsonElement answer)
    {
        double body = round ? Math.PI / 4 * diameter * diameter * length : length * thickness * height;
        if (Math.Abs(answer.GetProperty("usedVolumeL").GetDouble() - (cells.Length * body / 1e6)) > 1e-9)
            faults.Add("usedVolumeL is wrong");
        double kg = Number(answer, "cellMassKg", double.NaN);
        double parts = given.TryGetProperty("parts", out JsonElement p) ? p.EnumerateArray().Sum(part => part.GetProperty("kg").GetDouble()) : 0;
        if (!double.IsNaN(kg) && Math.Abs(answer.GetProperty("packMassKg").GetDouble() - kg - parts) > 1e-9)
            faults.Add("packMassKg is wrong");
    }

    /// <summary>Moved by a margin the whole pack still keeps off the walls; moved a little further it does not.</summary>
    private void CheckMargins(JsonElement answer)
    {
        // 0.02 mm is forgiven, which a wall that a cell slides along uses up slowly.
        const double Little = 2;
        bool tubes = given.TryGetProperty("keepOuts", out JsonElement k) && k.EnumerateArray().Any(o => o.TryGetProperty("tube", out _));
        // A sampled bar for each cell and side would take minutes.
        if (cells.Length == 0 || tubes)
            return;
        foreach (JsonProperty margin in answer.GetProperty("marginMm").EnumerateObject())
        {
            int axis = "xyz".IndexOf(margin.Name[1], StringComparison.Ordinal), sign = margin.Name[0] == '+' ? 1 : -1;
            double mm = margin.Value.GetDouble();
            if (mm < 0 || !HoldsMoved(axis, sign * mm) || HoldsMoved(axis, sign * (mm + Little)))
                faults.Add($"the margin {margin.Name} is not {mm}");
        }
    }

    private bool HoldsMoved(int axis, double mm)
    {
        int before = faults.Count;
        foreach (Cell c in cells)
            c.Centre[axis] += mm;
        CheckWalls();
        foreach (Cell c in cells)
            c.Centre[axis] -= mm;
        bool holds = faults.Count == before;
        faults.RemoveRange(before, faults.Count - before);
        return holds;
    }

    private void CheckOpenings(JsonElement answer, Cell[] used)
    {
        JsonElement[] asked = given.TryGetProperty("openings", out JsonElement o) ? [.. o.EnumerateArray()] : [];
        JsonElement[] told = [.. answer.GetProperty("openings").EnumerateArray()];
        if (cells.Length == 0)
            return;
        if (asked.Length != told.Length)
            faults.Add("not every opening is answered");
        foreach ((JsonElement opening, JsonElement way) in asked.Zip(told))
        {
            string plane = opening.GetProperty("plane").GetString()!;
            int along = plane.TrimStart('+', '-') switch { "xz" or "y" => 1, "xy" or "z" => 2, _ => 0 };
            (int u, int v) = Across(along);
            double[] r = [.. opening.GetProperty("rectangle").EnumerateArray().Select(n => n.GetDouble())];
            double[] hole = [.. new[] { Math.Abs(r[2] - r[0]), Math.Abs(r[3] - r[1]) }.Order()];
            double[] block = [.. new[] { Extent(used, u), Extent(used, v) }.Order()], cell = [.. used[0].Size.Order()];
            if (way.GetProperty("packPasses").GetBoolean() != (block[0] <= hole[0] && block[1] <= hole[1]))
                faults.Add($"whether the block passes {way.GetProperty("opening")} is wrong");
            bool passes = cell[0] <= hole[0] && cell[1] <= hole[1];
            int[] order = [.. way.GetProperty("orderIn").EnumerateArray().Select(n => n.GetInt32())];
            if (passes != way.GetProperty("cellPasses").GetBoolean() || !order.Order().SequenceEqual(passes ? used.Select(c => c.Number).Order() : []))
                faults.Add($"the order into {way.GetProperty("opening")} does not hold each cell in use once");
            double sign = plane.StartsWith('-') ? -1 : 1;
            double[] depth = [.. order.Select(n => sign * cells.First(c => c.Number == n).Centre[along])];
            if (depth.Zip(depth.Skip(1)).Any(two => two.First > two.Second + 1e-9))
                faults.Add($"a cell nearer to {way.GetProperty("opening")} goes in before one further in");
        }
    }

    private static double Extent(Cell[] used, int a) => used.Max(c => c.Centre[a] + (c.Size[a] / 2)) - used.Min(c => c.Centre[a] - (c.Size[a] / 2));
}
