using System.Text.Json;
using PackPlanner.Core.Fitting;

namespace PackPlanner.Formats.Json;

/// <summary>Reads the solids of a fit case: boxes, prisms, and tubes among the keep-outs, in millimetres.</summary>
public static class FitSolidsJson
{
    /// <summary>The parts of the cavity of a case.</summary>
    /// <param name="input">An object with a field cavity.</param>
    /// <param name="understood">Gets one sentence for each thing put right.</param>
    /// <returns>The parts; empty, with a problem noted, when there are none.</returns>
    public static IReadOnlyList<NamedSolid> Cavity(JsonInput input, List<string> understood)
    {
        ArgumentNullException.ThrowIfNull(input);
        JsonInput? cavity = input.PartNeeded("cavity", "Give cavity.parts, a list of boxes or prisms.");
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
            return tube.Numbers("from", 3) is { Length: 3 } from && tube.Numbers("to", 3) is { Length: 3 } to && tube.NumberNeeded("diameterMm") is double d
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
        if (prism.Raw("outline") is not { ValueKind: JsonValueKind.Array } list)
        {
            prism.Refuse("outline", "is missing or is no list", "Give the corners, each as [a, b].");
            return null;
        }

        List<OutlinePointMm> outline = [];
        foreach (JsonElement corner in list.EnumerateArray())
        {
            if (corner.ValueKind != JsonValueKind.Array || corner.GetArrayLength() != 2
                || !corner.EnumerateArray().All(n => n.ValueKind == JsonValueKind.Number && double.IsFinite(n.GetDouble())))
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
}
