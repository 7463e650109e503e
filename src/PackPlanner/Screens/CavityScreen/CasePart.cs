using System.Globalization;
using System.Text.Json.Nodes;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>One thing of a case that can be typed anew or taken out.</summary>
/// <param name="Kind">Which sort of thing.</param>
/// <param name="Index">Its place in the case's list, from 0.</param>
/// <param name="Node">What the case says of it; null for what the case does not say.</param>
internal sealed record CasePart(CasePartKind Kind, int Index, JsonObject? Node)
{
    /// <summary>Whether it is a keep-out that lies wholly outside the space.</summary>
    internal bool IsOutside { get; init; }

    /// <summary>Its word in the list.</summary>
    internal string Word => Kind switch
    {
        CasePartKind.Space => "space",
        // Numbered as the reasons of the search number those without a name.
        CasePartKind.KeepOut => Has("id") ? "keep-out" : $"keep-out {(Index + 1).ToString(CultureInfo.InvariantCulture)}",
        CasePartKind.Opening => "opening",
        CasePartKind.Weighed => "part",
        CasePartKind.Cell => "cell",
        _ => "clearances",
    };

    /// <summary>Everything of a case, in the order in which it is typed.</summary>
    internal static IReadOnlyList<CasePart> Of(JsonObject known) =>
    [
        .. Each((known["cavity"] as JsonObject)?["parts"], CasePartKind.Space),
        .. Each(known["keepOuts"], CasePartKind.KeepOut),
        .. Each(known["openings"], CasePartKind.Opening),
        .. Each(known["parts"], CasePartKind.Weighed),
        new(CasePartKind.Cell, 0, known["cell"] as JsonObject),
        new(CasePartKind.Clearances, 0, known["clearance"] as JsonObject),
    ];

    /// <summary>The same case with a part put in: in the place of another of its kind, or after the last.</summary>
    internal static JsonObject With(JsonObject known, CasePartKind kind, int? index, JsonObject node)
    {
        JsonObject changed = (JsonObject)known.DeepClone();
        switch (kind)
        {
            case CasePartKind.Cell:
                // What is not typed, such as name, mass and chemistry, stays.
                JsonObject cell = changed["cell"] as JsonObject ?? [];
                foreach (string size in new[] { "shape", "diameterMm", "lengthMm", "thicknessMm", "heightMm", "axes", "poses" })
                    cell.Remove(size);
                foreach ((string key, JsonNode? value) in node)
                    cell[key] = value?.DeepClone();
                changed["cell"] = cell.Parent is null ? cell : cell.DeepClone();
                break;
            case CasePartKind.Clearances:
                changed["clearance"] = node;
                break;
            default:
                JsonArray list = ListOf(changed, kind);
                if (index is { } at)
                    list[at] = node;
                else
                    list.Add((JsonNode)node);
                break;
        }

        return changed;
    }

    /// <summary>The same case without the part.</summary>
    internal JsonObject Out(JsonObject known)
    {
        JsonObject changed = (JsonObject)known.DeepClone();
        ListOf(changed, Kind).RemoveAt(Index);
        return changed;
    }

    /// <summary>What it is, in words with millimetres.</summary>
    internal string Says(Look look) => IsOutside ? $"outside the space, changes nothing: {What(look)}" : What(look);

    private string What(Look look)
    {
        string name = Node?["id"] is JsonValue id ? $"{id}, " : "";
        if (Numbers("box") is [{ } x0, { } y0, { } z0, { } x1, { } y1, { } z1])
            return $"{name}box {Lengths(look, x1 - x0, y1 - y0, z1 - z0)} from {Plain(look, x0, y0, z0)}";
        if (Node?["prism"] is JsonObject prism)
            return $"{name}outline of {(prism["outline"] as JsonArray)?.Count ?? 0} corners in {prism["plane"] ?? "xz"}, {Of(look, prism["from"])} to {Of(look, prism["to"])}";
        if (Node?["tube"] is JsonObject tube)
            return $"{name}tube {Of(look, tube["diameterMm"])} from {Plain(look, Numbers(tube["from"]))} to {Plain(look, Numbers(tube["to"]))}";
        return Kind switch
        {
            CasePartKind.Opening => $"{name}{Side()}, {Plain(look, Numbers("rectangle"))}",
            CasePartKind.Weighed => $"{Node?["name"]} {look.Mass(Number(Node?["kg"]), 2)}{(Numbers("at") is { Length: 3 } at ? " at " + Plain(look, at) : "")}",
            CasePartKind.Cell when Has("diameterMm") => Lengths(look, Number(Node!["diameterMm"]), Number(Node["lengthMm"])) + Ways("axes"),
            CasePartKind.Cell => Lengths(look, Number(Node?["lengthMm"]), Number(Node?["thicknessMm"]), Number(Node?["heightMm"])) + Ways("poses"),
            CasePartKind.Clearances => Node is null ? "none" : string.Join(", ", Node.Select(pair => $"{Word(pair.Key)} {Of(look, pair.Value)}")),
            _ => "-",
        };

        string Side() => (Node?["side"] ?? Node?["plane"])?.ToString() switch
        {
            "+z" => "on top",
            "-z" => "below",
            "-y" => "front",
            "+y" => "back",
            "-x" => "left",
            "+x" => "right",
            "xy" or "z" => "top or floor",
            "xz" or "y" => "front or back",
            _ => "left or right",
        };

        string Ways(string key) => Node?[key] is JsonArray { Count: > 0 } ways ? $", {(key == "axes" ? "along " : "")}{string.Join(" or ", ways.Select(way => way?.ToString()))}" : "";

        static string Word(string key) => key switch
        {
            "cellGapMm" => "cell to cell",
            "layerGapMm" => "layer to layer",
            _ => key.EndsWith("Mm", StringComparison.Ordinal) ? key[..^2] : key,
        };
    }

    /// <summary>Whether the case says this of it.</summary>
    internal bool Has(string key) => Node?.ContainsKey(key) == true;

    /// <summary>Numbers of a list in the part; null when it is not there or no list of numbers.</summary>
    internal double[]? Numbers(string key) => Numbers(Node?[key]);

    internal static double[]? Numbers(JsonNode? node) =>
        node is JsonArray list && list.All(item => Number(item) is not null) ? [.. list.Select(item => Number(item)!.Value)] : null;

    internal static double? Number(JsonNode? node) => node is JsonValue value && value.TryGetValue(out double number) ? number : null;

    // A file may hold anything under that name; what is no space gives way to the one that is typed.
    private static JsonObject Cavity(JsonObject known)
    {
        if (known["cavity"] is not JsonObject cavity)
            known["cavity"] = cavity = [];
        return cavity;
    }

    private static JsonArray ListOf(JsonObject known, CasePartKind kind)
    {
        JsonObject holder = kind == CasePartKind.Space ? Cavity(known) : known;
        string key = kind switch { CasePartKind.Space => "parts", CasePartKind.KeepOut => "keepOuts", CasePartKind.Opening => "openings", _ => "parts" };
        if (holder[key] is not JsonArray list)
            holder[key] = list = [];
        return list;
    }

    private static IEnumerable<CasePart> Each(JsonNode? list, CasePartKind kind) =>
        list is JsonArray items ? items.Select((item, i) => new CasePart(kind, i, item as JsonObject)) : [];

    private static string Of(Look look, JsonNode? node) => look.Length(Number(node), 1);

    private static string Lengths(Look look, params double?[] mm) =>
        string.Join(" x ", mm.Select(value => Short(look, value))) + (look.UsUnits ? " in" : " mm");

    private static string Plain(Look look, params double[]? mm) => mm is null ? "-" : string.Join(" ", mm.Select(value => Short(look, value)));

    // As typed: no more digits than the figure has.
    private static string Short(Look look, double? mm)
    {
        if (mm is not { } known)
            return "-";
        string text = look.UsUnits ? (known / 25.4).ToString("0.##", CultureInfo.InvariantCulture) : known.ToString("0.###", CultureInfo.InvariantCulture);
        return look.DecimalComma ? text.Replace('.', ',') : text;
    }
}
