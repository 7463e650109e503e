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

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(FitAnswerJson))]
public sealed partial class FitAnswerJsonContext : JsonSerializerContext;
