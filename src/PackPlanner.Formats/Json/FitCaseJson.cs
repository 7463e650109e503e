using PackPlanner.Core;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Fitting;

namespace PackPlanner.Formats.Json;

/// <summary>Reads a fit case: cavity, keep-outs, cell, clearances and what is wanted of the pack.</summary>
public static class FitCaseJson
{
    /// <summary>Reads and checks a whole case.</summary>
    /// <param name="input">The outermost object.</param>
    /// <param name="understood">Gets one sentence for each thing assumed or put right.</param>
    /// <returns>A case that can be searched, or what is wrong with it.</returns>
    public static Outcome<FitCase> Read(JsonInput input, List<string> understood)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(understood);
        JsonInput? cell = input.PartNeeded("cell", "Give the cell's shape, sizes in mm and massG.");
        IReadOnlyList<NamedSolid> cavity = FitSolidsJson.Cavity(input, understood);
        IReadOnlyList<NamedSolid> keepOuts = FitSolidsJson.KeepOuts(input, understood);
        CellBody? body = cell is null ? null : Body(cell);
        JsonInput? pack = input.Part("pack"), limits = input.Part("limits");
        Chemistry? chemistry = cell is null ? null : ChemistryOf(cell);
        FitCase read = new(
            cavity,
            keepOuts,
            cell?.Text("name") ?? "cell",
            body ?? new CellBody.Cylinder(1, 1, [Axis.Z]),
            cell?.Number("massG"),
            ClearancesOf(input),
            pack?.Whole("series"),
            pack?.Whole("parallel"),
            pack?.Number("linkReachMm") ?? 0,
            pack?.Whole("jumpersAllowed") ?? 0,
            limits?.Number("cellMassKg"),
            WeighedParts(input),
            Openings(input),
            input.Whole("boxes") ?? 1,
            cell?.Number("nominalV", 0) ?? chemistry?.NominalV,
            cell?.Number("fullV", 0) ?? chemistry?.FullV,
            input.Flag("ventPath"));
        if (input.Wrong is { } wrong)
            return wrong;
        IReadOnlyList<Problem> problems = FitCaseCheck.Problems(read);
        if (problems.Count > 0)
        {
            string more = problems.Count == 1 ? "" : $" ({(problems.Count == 2 ? "One more thing is" : $"{problems.Count - 1} more things are")} wrong: {string.Join("; ", problems.Skip(1).Take(3).Select(p => $"{p.Where}: {p.Why}"))}{(problems.Count > 4 ? "; …" : "")}.)";
            return new Refusal(ExitCodes.Input, "bad-case", problems[0] with
            {
                Where = $"{input.File}, {problems[0].Where}",
                Remedy = problems[0].Remedy + more,
            });
        }

        Assumptions(read, pack, understood);
        return read;
    }

    /// <summary>The clearances of a case; 0 where absent.</summary>
    /// <param name="input">An object that may have a field clearance.</param>
    /// <returns>Millimetres.</returns>
    public static Clearances ClearancesOf(JsonInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        JsonInput? c = input.Part("clearance");
        double Of(string name) => c?.Number(name) ?? 0;
        return new Clearances(Of("wallMm"), Of("endMm"), Of("plateMm"), Of("terminalMm"), Of("cellGapMm"), Of("spacerMm"), Of("layerGapMm"));
    }

    /// <summary>The bare body of a cell.</summary>
    /// <param name="cell">An object with shape and sizes.</param>
    /// <returns>The body; null, with a problem noted, when it cannot be told.</returns>
    public static CellBody? Body(JsonInput cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        string? shape = cell.Text("shape")?.ToLowerInvariant();
        shape ??= cell.Has("diameterMm") ? "cylinder" : cell.Has("thicknessMm") ? "box" : null;
        switch (shape)
        {
            case "cylinder":
                return cell.NumberNeeded("diameterMm") is double d && cell.NumberNeeded("lengthMm") is double l
                    ? new CellBody.Cylinder(d, l, Choices(cell, "axes", [Axis.Z], AxisOf, "x, y or z")) : null;
            case "box":
                return cell.NumberNeeded("lengthMm") is double length && cell.NumberNeeded("thicknessMm") is double thickness && cell.NumberNeeded("heightMm") is double height
                    ? new CellBody.Box(length, thickness, height, Choices(cell, "poses", [BoxPose.Upright], PoseOf, "upright, inverted, onEdge or onFace")) : null;
            default:
                cell.Refuse("shape", $"is {(shape is null ? "missing" : $"\"{shape}\"")}, cylinder or box was expected", "Write \"shape\": \"cylinder\" with diameterMm and lengthMm, or \"box\" with lengthMm, thicknessMm and heightMm.");
                return null;
        }
    }

    private static List<WeighedPart> WeighedParts(JsonInput input) =>
        [.. input.Parts("parts").Select((p, i) => new WeighedPart(
            p.Text("name") ?? $"part {i + 1}",
            p.NumberNeeded("kg") ?? 0,
            p.Numbers("at", 3) is { Length: 3 } at ? new PointMm(at[0], at[1], at[2]) : null))];

    private static List<Opening> Openings(JsonInput input)
    {
        List<Opening> openings = [];
        foreach (JsonInput o in input.Parts("openings"))
        {
            string plane = o.Text("plane")?.ToLowerInvariant() ?? "";
            string letters = plane.TrimStart('+', '-');
            Axis? across = letters switch { "xz" or "y" => Axis.Y, "xy" or "z" => Axis.Z, "yz" or "x" => Axis.X, _ => null };
            string side = o.Text("side") ?? plane;
            bool? positive = side.StartsWith('+') ? true : side.StartsWith('-') ? false : null;
            if (across is null)
                o.Refuse("plane", $"is \"{plane}\"", "Write the plane of the hole, xy, xz or yz; or its side, such as +z for a lid on top.");
            else if (o.Numbers("rectangle", 4) is { Length: 4 } r)
                openings.Add(new Opening(o.Text("id") ?? $"opening {openings.Count + 1}", across.Value, positive, new OutlinePointMm(r[0], r[1]), new OutlinePointMm(r[2], r[3])));
            else if (!o.Has("rectangle"))
                o.Refuse("rectangle", "is missing", "Give two corners of the hole as four numbers.");
        }

        return openings;
    }

    private static Chemistry? ChemistryOf(JsonInput cell)
    {
        if (cell.Text("chemistry") is not { } name)
            return null;
        Chemistry? found = Chemistries.Find(name);
        if (found is null)
            cell.Refuse("chemistry", $"is \"{name}\"", $"Use one of {string.Join(", ", Chemistries.All.Select(c => c.Name))}, or leave it out.");
        return found;
    }

    private static void Assumptions(FitCase read, JsonInput? pack, List<string> understood)
    {
        if (pack?.Has("linkReachMm") != true && read.Series is not null)
            understood.Add("pack.linkReachMm is not given: only cells that stand at the required gap count as neighbours.");
        if (read.NominalV is null && read.Series is not null)
            understood.Add("Neither nominalV nor chemistry of the cell is given, so the volts expected at the taps are not known.");
        if (read.CellMassG is null)
            understood.Add("cell.massG is not given, so masses are not known.");
    }

    private static IReadOnlyList<T> Choices<T>(JsonInput cell, string name, IReadOnlyList<T> usual, Func<string, T?> read, string wanted)
        where T : struct
    {
        if (cell.Texts(name) is not { } words)
            return usual;
        List<T> chosen = [];
        foreach (string word in words)
        {
            if (read(word) is { } choice)
                chosen.Add(choice);
            else
                cell.Refuse(name, $"has \"{word}\"", $"Use {wanted}.");
        }

        return chosen;
    }

    private static Axis? AxisOf(string word) => word.ToLowerInvariant() switch { "x" => Axis.X, "y" => Axis.Y, "z" => Axis.Z, _ => null };

    private static BoxPose? PoseOf(string word) => word.ToLowerInvariant() switch
    {
        "upright" => BoxPose.Upright,
        "inverted" => BoxPose.Inverted,
        "onedge" => BoxPose.OnEdge,
        "onface" => BoxPose.OnFace,
        _ => null,
    };
}
