using System.Text.Json;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Which cells make a group, whether each is in one piece, and what all weigh together.</summary>
internal sealed partial class PlacementChecker
{
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
}
