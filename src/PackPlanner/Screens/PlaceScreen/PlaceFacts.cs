using PackPlanner.Core.Fitting;
using PackPlanner.Core.Grouping;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>What is left over, what it weighs and who works hardest: the figures beside the drawing.</summary>
internal static class PlaceFacts
{
    /// <summary>The room that the lines want.</summary>
    internal const int Width = 24;

    internal static IReadOnlyList<string> Lines(FitAnswer answer, FitCase fitCase, MatchedGroup? group, int? seat, Look look)
    {
        List<string> lines = [];
        string Bare(double mm) => look.UsUnits ? look.Figure(mm / 25.4, 2) : look.Figure(mm, 1);
        if (answer.MarginMm is [var left, var right, var front, var back, var below, var above])
        {
            lines.Add($"room left over, {(look.UsUnits ? "in" : "mm")}");
            lines.Add($" left {Bare(left)}, right {Bare(right)}");
            lines.Add($" front {Bare(front)}, back {Bare(back)}");
            lines.Add($" below {Bare(below)}, above {Bare(above)}");
        }

        if (answer.CellMassKg is { } kg)
            lines.Add($"cells {look.Mass(kg)}{(fitCase.CellMassLimitKg is { } limit ? $" of {look.Mass(limit)}" : "")}");
        if (answer.CellsCentreOfMass is { } middle)
        {
            lines.Add("middle of their mass");
            lines.Add($" x {Bare(middle.X)} y {Bare(middle.Y)} z {Bare(middle.Z)}");
        }

        if (group?.LargestShare is { } share)
        {
            lines.Add($"hardest-worked at {seat}");
            lines.Add($" {TextWidth.CutMiddle(share.Cell, 12)} {look.Figure(share.TimesEqual, 2)}x equal");
        }

        return lines;
    }
}
