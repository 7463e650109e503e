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
        JsonInput? cell = Needed(input, "cell", "Give the cell's shape, sizes in mm and massG.");
        IReadOnlyList<NamedSolid> cavity = Cavity(input, understood);
        IReadOnlyList<NamedSolid> keepOuts = KeepOuts(input, understood);
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
            string more = problems.Count == 1 ? "" : $" ({problems.Count - 1} more things are wrong: {string.Join("; ", problems.Skip(1).Take(3).Select(p => p.Where))}.)";
            return new Refusal(ExitCodes.Input, "bad-case", problems[0] with
            {
                Where = $"{input.File}, {problems[0].Where}",
                Remedy = problems[0].Remedy + more,
            });
        }

        Assumptions(read, pack, understood);
        return read;
    }

    /// <summary>The parts of the cavity of a case.</summary>
    /// <param name="input">An object with a field cavity.</param>
    /// <param name="understood">Gets one sentence for each thing put right.</param>
    /// <returns>The parts; empty, with a problem noted, when there are none.</returns>
    public static IReadOnlyList<NamedSolid> Cavity(JsonInput input, List<string> understood)
    {
        ArgumentNullException.ThrowIfNull(input);
        JsonInput? cavity = Needed(input, "cavity", "Give cavity.parts, a list of boxes or prisms.");
        if (cavity is null)
            return [];
        if (!cavity.Has("parts"))
            cavity.Refuse("parts", "is missing", "Give a list of boxes or prisms.");
        return Solids(cavity, "parts", "cavity part", tubes: false, understood);
    }

    /// <summary>The keep-outs of a case.</summary>
    /// <param name="input">An object that may have a field keepOuts.</param>
    /// <param name="understood">Gets one sentence for each thing put right.</param>
    /// <returns>The keep-outs, perhaps none.</returns>
    public static IReadOnlyList<NamedSolid> KeepOuts(JsonInput input, List<string> understood)
    {
        ArgumentNullException.ThrowIfNull(input);
        return Solids(input, "keepOuts", "keep-out", tubes: true, understood);
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
                return Size(cell, "diameterMm") is double d && Size(cell, "lengthMm") is double l
                    ? new CellBody.Cylinder(d, l, Choices(cell, "axes", [Axis.Z], AxisOf, "x, y or z")) : null;
            case "box":
                return Size(cell, "lengthMm") is double length && Size(cell, "thicknessMm") is double thickness && Size(cell, "heightMm") is double height
                    ? new CellBody.Box(length, thickness, height, Choices(cell, "poses", [BoxPose.Upright], PoseOf, "upright, inverted, onEdge or onFace")) : null;
            default:
                cell.Refuse("shape", $"is {(shape is null ? "missing" : $"\"{shape}\"")}, cylinder or box was expected", "Write \"shape\": \"cylinder\" with diameterMm and lengthMm, or \"box\" with lengthMm, thicknessMm and heightMm.");
                return null;
        }
    }

    private static List<NamedSolid> Solids(JsonInput input, string name, string word, bool tubes, List<string> understood)
    {
        List<NamedSolid> solids = [];
        int number = 0;
        foreach (JsonInput item in input.Parts(name))
        {
            number++;
            string called = item.Text("id") is { Length: > 0 } id ? $"{word} {number} ({id})" : $"{word} {number}";
            if (Shape(item, called, tubes, understood) is { } shape)
                solids.Add(new NamedSolid(called, shape));
        }

        return solids;
    }

    private static Solid? Shape(JsonInput item, string called, bool tubes, List<string> understood)
    {
        if (item.Has("box"))
        {
            return item.Numbers("box", 6) is { Length: 6 } b
                ? new Solid.Box(new PointMm(b[0], b[1], b[2]), new PointMm(b[3], b[4], b[5])) : null;
        }

        if (item.Part("prism") is { } prism)
            return Prism(prism, called, understood);
        if (tubes && item.Part("tube") is { } tube)
        {
            return tube.Numbers("from", 3) is { Length: 3 } from && tube.Numbers("to", 3) is { Length: 3 } to && Size(tube, "diameterMm") is double d
                ? new Solid.Tube(new PointMm(from[0], from[1], from[2]), new PointMm(to[0], to[1], to[2]), d) : MissingTube(tube);
        }

        item.Refuse(tubes ? "box, prism or tube" : "box or prism", "is missing", "Give one of them.");
        return null;
    }

    private static Solid? MissingTube(JsonInput tube)
    {
        if (!tube.Has("from") || !tube.Has("to"))
            tube.Refuse("from and to", "are missing", "Give the centres of both ends, each as [x, y, z].");
        return null;
    }

    private static Solid.Prism? Prism(JsonInput prism, string called, List<string> understood)
    {
        string plane = prism.Text("plane")?.ToLowerInvariant() ?? "xz";
        Axis? extrusion = plane switch { "xz" => Axis.Y, "xy" => Axis.Z, "yz" => Axis.X, _ => null };
        if (extrusion is null)
            prism.Refuse("plane", $"is \"{plane}\"", "Write xz, xy or yz; outline coordinates come in the order of the two letters.");
        double? from = prism.Number("from"), to = prism.Number("to");
        if (from is null || to is null)
            prism.Refuse("from and to", "must both be numbers", "Say from where to where the outline is drawn out.");
        List<OutlinePointMm>? outline = Outline(prism, called, understood);
        return extrusion is { } axis && from is { } a && to is { } b && outline is not null ? new Solid.Prism(axis, outline, a, b) : null;
    }

    private static List<OutlinePointMm>? Outline(JsonInput prism, string called, List<string> understood)
    {
        if (prism.Raw("outline") is not { ValueKind: System.Text.Json.JsonValueKind.Array } list)
        {
            prism.Refuse("outline", "is missing or is no list", "Give the corners, each as [a, b].");
            return null;
        }

        List<OutlinePointMm> outline = [];
        foreach (System.Text.Json.JsonElement corner in list.EnumerateArray())
        {
            if (corner.ValueKind != System.Text.Json.JsonValueKind.Array || corner.GetArrayLength() != 2
                || !corner.EnumerateArray().All(n => n.ValueKind == System.Text.Json.JsonValueKind.Number && double.IsFinite(n.GetDouble())))
            {
                prism.Refuse($"outline[{outline.Count}]", "is not a pair of numbers", "Write each corner as [a, b].");
                return null;
            }

            OutlinePointMm point = new(corner[0].GetDouble(), corner[1].GetDouble());
            if (outline.Count == 0 || outline[^1] != point)
                outline.Add(point);
        }

        if (outline.Count > 1 && outline[0] == outline[^1])
        {
            outline.RemoveAt(outline.Count - 1);
            understood.Add($"{called}: the last corner repeats the first and was taken as the close of the outline.");
        }

        return outline;
    }

    private static List<WeighedPart> WeighedParts(JsonInput input) =>
        [.. input.Parts("parts").Select((p, i) => new WeighedPart(
            p.Text("name") ?? $"part {i + 1}",
            Size(p, "kg") ?? 0,
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

    private static double? Size(JsonInput item, string name)
    {
        if (!item.Has(name))
            item.Refuse(name, "is missing", "Give it as a number.");
        return item.Number(name);
    }

    private static JsonInput? Needed(JsonInput input, string name, string remedy)
    {
        if (!input.Has(name))
            input.Refuse(name, "is missing", remedy);
        return input.Part(name);
    }
}
