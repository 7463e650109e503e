using System.Text.Json.Serialization;
using PackPlanner.Core.Fitting;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>fit --json</c> prints.</summary>
public sealed record FitAnswerJson : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/fit";

    /// <summary>Places found.</summary>
    public required int Count { get; init; }

    /// <summary>Places of the best regular nest, which a moulded holder needs; null for boxes.</summary>
    public int? RegularCount { get; init; }

    /// <summary>Places when cells may lie anywhere; null when it was not looked for.</summary>
    public int? FreeCount { get; init; }

    /// <summary>All places, those of the groups first.</summary>
    public required IReadOnlyList<FitCellJson> Cells { get; init; }

    /// <summary>Groups in series; null when none was asked.</summary>
    public int? Series { get; init; }

    /// <summary>Cells in each group; null when no groups could be made.</summary>
    public int? Parallel { get; init; }

    /// <summary>Cells that belong to a group; all when no series was asked.</summary>
    public int Used { get; init; }

    /// <summary>Mass of the cells used.</summary>
    public double? CellMassKg { get; init; }

    /// <summary>Mass of the cells used and the weighed parts.</summary>
    public double? PackMassKg { get; init; }

    /// <summary>x, y, z of the cells used and the weighed parts.</summary>
    public IReadOnlyList<double>? CentreOfMassMm { get; init; }

    /// <summary>x, y, z of the cells used alone.</summary>
    public IReadOnlyList<double>? CellsCentreOfMassMm { get; init; }

    /// <summary>Volume of the bare bodies.</summary>
    public double UsedVolumeL { get; init; }

    /// <summary>Volume of the cavity less the keep-outs.</summary>
    public double CavityVolumeL { get; init; }

    /// <summary>The first over the second.</summary>
    public double? FillFraction { get; init; }

    /// <summary>Free distance left on each side; null without cells.</summary>
    public FitMarginJson? MarginMm { get; init; }

    /// <summary>No layout holds more; null when no useful bound is known.</summary>
    public int? Bound { get; init; }

    /// <summary>How the bound was proved.</summary>
    public required string BoundMethod { get; init; }

    /// <summary>True only when the count equals the bound.</summary>
    public bool Proven { get; init; }

    /// <summary>The nest.</summary>
    public required FitNestJson Nest { get; init; }

    /// <summary>The layout that was passed over where places and group size pull two ways; null when one layout has most of both.</summary>
    public FitOtherJson? Other { get; init; }

    /// <summary>The links; null without groups.</summary>
    public FitLinksJson? Links { get; init; }

    /// <summary>The groups in series order.</summary>
    public IReadOnlyList<FitGroupJson> Groups { get; init; } = [];

    /// <summary>Sense taps from pack minus on.</summary>
    public IReadOnlyList<FitTapJson> Taps { get; init; } = [];

    /// <summary>The pack divided into boxes; empty when it is built in one.</summary>
    public IReadOnlyList<FitBoxJson> Boxes { get; init; } = [];

    /// <summary>What passes through each opening.</summary>
    public IReadOnlyList<FitWayInJson> Openings { get; init; } = [];

    /// <summary>Why it does not fit; empty when it does.</summary>
    public required IReadOnlyList<FitReasonJson> Reasons { get; init; }

    /// <summary>The document of an answer.</summary>
    /// <param name="answer">From Core.</param>
    /// <param name="understood">What was assumed, one sentence each.</param>
    /// <param name="stoppedBy">Why the search ended early; null when it did not.</param>
    /// <param name="labels">The measured cell that goes to each place, by the place's number; null when none were named.</param>
    /// <returns>The document.</returns>
    public static FitAnswerJson From(FitAnswer answer, IReadOnlyList<string> understood, string? stoppedBy, IReadOnlyDictionary<int, string>? labels = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return new FitAnswerJson
        {
            Count = answer.Cells.Count,
            RegularCount = answer.RegularCount,
            FreeCount = answer.FreeCount,
            Cells = [.. answer.Cells.Select(cell => FitCellJson.From(cell, labels?.GetValueOrDefault(cell.Cell)))],
            Series = answer.Series,
            Parallel = answer.Parallel,
            Used = answer.Used,
            CellMassKg = answer.CellMassKg,
            PackMassKg = answer.PackMassKg,
            CentreOfMassMm = Triple(answer.CentreOfMass),
            CellsCentreOfMassMm = Triple(answer.CellsCentreOfMass),
            UsedVolumeL = answer.UsedVolumeL,
            CavityVolumeL = answer.CavityVolumeL,
            FillFraction = answer.CavityVolumeL > 0 ? answer.UsedVolumeL / answer.CavityVolumeL : null,
            MarginMm = answer.MarginMm is [var a, var b, var c, var d, var e, var f] ? new FitMarginJson(a, b, c, d, e, f) : null,
            Bound = answer.Bound,
            BoundMethod = answer.BoundMethod,
            Proven = answer.Proven,
            Nest = new FitNestJson(answer.NestKind, answer.NestAngleDeg),
            Other = answer.Other is { } other ? new FitOtherJson(other.Count, other.Parallel, FitWords.Other(answer)!) : null,
            Links = answer.Parallel is null ? null : new FitLinksJson(answer.NarrowestLink, answer.BusbarRatio, answer.Jumpers, answer.LinkPairs),
            Groups = [.. answer.Groups.Select(g => new FitGroupJson(g.Group, g.Cells, g.Plus, g.MassKg, Triple(g.Centre)!))],
            Taps = [.. answer.Taps.Select(t => new FitTapJson(t.Tap, t.OnGroup, t.Pole, t.NominalV, t.FullV, Triple(t.At)!))],
            Boxes = [.. answer.Boxes.Select(x => new FitBoxJson(x.Box, x.FromGroup, x.ToGroup, x.Cells, x.CellMassKg, x.NominalV, x.FullV))],
            Openings = [.. answer.WaysIn.Select(w => new FitWayInJson(w.Opening, w.PackPasses, w.CellPasses, w.PackShortMm, w.TerminalRoomMm, w.OrderIn, w.Text))],
            Reasons = [.. answer.Reasons.Select(FitReasonJson.From)],
            Understood = understood,
            StoppedBy = stoppedBy,
            Cautions = CautionJson.From(answer.Cautions),
        };
    }

    internal static double[]? Triple(PointMm? point) => point is { } p ? [p.X, p.Y, p.Z] : null;
}

/// <summary>A place. A round cell has an axis; a box has a size and the direction of its terminals.</summary>
public sealed record FitCellJson
{
    /// <summary>Its number, from 1.</summary>
    public required int Cell { get; init; }

    /// <summary>Centre of the bare body, millimetres.</summary>
    public required double X { get; init; }

    /// <summary>Centre of the bare body, millimetres.</summary>
    public required double Y { get; init; }

    /// <summary>Centre of the bare body, millimetres.</summary>
    public required double Z { get; init; }

    /// <summary>Axis of a round cell.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Axis { get; init; }

    /// <summary>Size of a box as placed, along x, y, z.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<double>? Size { get; init; }

    /// <summary>Where the terminal face of a box looks.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Terminals { get; init; }

    /// <summary>Where the plus pole looks; null for a spare place.</summary>
    public string? Plus { get; init; }

    /// <summary>1..series; null for a spare place.</summary>
    public int? Group { get; init; }

    /// <summary>The measured cell that goes here; absent when no groups were named, or for a spare place.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Label { get; init; }

    internal static FitCellJson From(PlacedCell cell, string? label) => new()
    {
        Label = label,
        Cell = cell.Cell,
        X = cell.Centre.X,
        Y = cell.Centre.Y,
        Z = cell.Centre.Z,
        Axis = cell.RoundAlong?.ToString().ToLowerInvariant(),
        Size = cell.RoundAlong is null ? FitAnswerJson.Triple(cell.SizeMm) : null,
        Terminals = cell.Terminals,
        Plus = cell.Plus,
        Group = cell.Group,
    };
}

/// <summary>Free distance left on each side, millimetres.</summary>
public sealed record FitMarginJson(
    [property: JsonPropertyName("-x")] double MinusX,
    [property: JsonPropertyName("+x")] double PlusX,
    [property: JsonPropertyName("-y")] double MinusY,
    [property: JsonPropertyName("+y")] double PlusY,
    [property: JsonPropertyName("-z")] double MinusZ,
    [property: JsonPropertyName("+z")] double PlusZ);

/// <summary>The nest.</summary>
/// <param name="Kind">hex, square, free, slabs, block or none.</param>
/// <param name="AngleDeg">Direction of the rows; null when there are none.</param>
public sealed record FitNestJson(string Kind, double? AngleDeg);

/// <summary>A layout that was passed over.</summary>
/// <param name="Count">Its places.</param>
/// <param name="Parallel">Cells in each of its groups; null when its groups cannot be linked.</param>
/// <param name="Text">What it would gain and cost, in words.</param>
public sealed record FitOtherJson(int Count, int? Parallel, string Text);

/// <summary>The links.</summary>
/// <param name="Narrowest">Fewest neighbouring pairs between two groups joined by a plate.</param>
/// <param name="BusbarRatio">Length of the plates over the least possible.</param>
/// <param name="Jumpers">Links made by cable: the number of the group before each.</param>
/// <param name="Pairs">Neighbouring pairs between each group and the next.</param>
public sealed record FitLinksJson(int? Narrowest, double? BusbarRatio, IReadOnlyList<int> Jumpers, IReadOnlyList<int> Pairs);

/// <summary>A group in its place.</summary>
/// <param name="Group">1..series.</param>
/// <param name="Cells">Numbers of its cells.</param>
/// <param name="Plus">Where its plus poles look.</param>
/// <param name="MassKg">Mass of its cells.</param>
/// <param name="CentreMm">x, y, z of the middle of its cells.</param>
public sealed record FitGroupJson(int Group, IReadOnlyList<int> Cells, string Plus, double? MassKg, IReadOnlyList<double> CentreMm);

/// <summary>A sense tap.</summary>
/// <param name="Tap">0 is pack minus; tap k is the plus of group k.</param>
/// <param name="Group">The group whose plate it sits on.</param>
/// <param name="Pole">minus for tap 0, else plus.</param>
/// <param name="NominalV">Expected volts from pack minus at nominal.</param>
/// <param name="FullV">Expected volts from pack minus with full cells.</param>
/// <param name="AtMm">x, y, z of the middle of the cells on that plate.</param>
public sealed record FitTapJson(int Tap, int Group, string Pole, double? NominalV, double? FullV, IReadOnlyList<double> AtMm);

/// <summary>One of the boxes of a divided pack.</summary>
/// <param name="Box">From 1.</param>
/// <param name="FromGroup">Its first group.</param>
/// <param name="ToGroup">Its last group.</param>
/// <param name="Cells">Cells in it.</param>
/// <param name="CellMassKg">Mass of its cells.</param>
/// <param name="NominalV">Volts across it at nominal.</param>
/// <param name="FullV">Volts across it when full.</param>
public sealed record FitBoxJson(int Box, int FromGroup, int ToGroup, int Cells, double? CellMassKg, double? NominalV, double? FullV);

/// <summary>What passes through an opening.</summary>
/// <param name="Opening">Its name.</param>
/// <param name="PackPasses">Whether the block of cells passes as it stands.</param>
/// <param name="CellPasses">Whether a single cell passes.</param>
/// <param name="PackShortMm">How much the opening is too small for the block; null when it passes.</param>
/// <param name="TerminalRoomMm">Free distance before the cells on the side of the opening.</param>
/// <param name="OrderIn">Cell numbers in the order in which they go in.</param>
/// <param name="Text">The same in words.</param>
public sealed record FitWayInJson(
    string Opening, bool PackPasses, bool CellPasses, double? PackShortMm, double? TerminalRoomMm, IReadOnlyList<int> OrderIn, string Text);

/// <summary>Why it does not fit.</summary>
/// <param name="Code">Stable.</param>
/// <param name="Axis">x, y or z; null when none in particular.</param>
/// <param name="ShortMm">How much is short along it; null when it is no matter of length.</param>
/// <param name="Text">In words, with the sum.</param>
/// <param name="Change">The nearest change that would help; null when none was found.</param>
public sealed record FitReasonJson(string Code, string? Axis, double? ShortMm, string Text, string? Change)
{
    internal static FitReasonJson From(FitReason reason) =>
        new(reason.Code, reason.Along?.ToString().ToLowerInvariant(), reason.ShortMm, reason.Text, reason.Change);
}

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(FitAnswerJson))]
public sealed partial class FitAnswerJsonContext : JsonSerializerContext;
