using System.Text.Json.Serialization;
using PackPlanner.Core.Fitting;

namespace PackPlanner.Formats.Json;

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
