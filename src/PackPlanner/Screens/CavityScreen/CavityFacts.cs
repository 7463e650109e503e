using PackPlanner.Core.Fitting;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>What a search for places found, line by line.</summary>
internal static class CavityFacts
{
    internal static IReadOnlyList<(string Word, string Says)> Of(FitCase fitCase, FitAnswer answer, Look look)
    {
        List<(string, string)> facts =
        [
            ("cell", $"{fitCase.CellName}, {Size(fitCase.Cell, look)}"),
            ("places", $"{answer.Cells.Count}" + (answer.Bound is { } bound ? $", proven limit {bound}" : "") + $" ({Nest(answer)})"),
            ("used", answer.Series is { } s ? $"{answer.Used} for {s}s{answer.Parallel?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "-"}p" : $"{answer.Used}; series is not said"),
            ("cells weigh", answer.CellMassKg is { } kg ? look.Mass(kg) + (fitCase.CellMassLimitKg is { } limit ? $" of {look.Mass(limit)} allowed" : "") : "-"),
            ("with parts", look.Mass(answer.PackMassKg)),
        ];
        if (answer.CellsCentreOfMass is { } centre)
            facts.Add(("middle", $"x {look.Bare(centre.X, 0)}  y {look.Bare(centre.Y, 0)}  z {look.Length(centre.Z, 0)}"));
        if (answer.MarginMm.Count == 6)
        {
            facts.Add(("spare left", $"{look.Length(answer.MarginMm[0])}, right {look.Length(answer.MarginMm[1])}"));
            facts.Add(("front", $"{look.Length(answer.MarginMm[2])}, back {look.Length(answer.MarginMm[3])}"));
            facts.Add(("below", $"{look.Length(answer.MarginMm[4])}, above {look.Length(answer.MarginMm[5])}"));
        }

        foreach (WayIn way in answer.WaysIn)
            facts.Add(("way in", way.Text));
        foreach (FitReason reason in answer.Reasons)
        {
            facts.Add(("no:", reason.Text));
            if (reason.Change is { } change)
                facts.Add(("would help", change));
        }

        return facts;
    }

    internal static string Nest(FitAnswer answer) => answer.NestKind switch
    {
        "hex" => "staggered rows",
        "square" => "plain rows",
        string kind => kind,
    };

    private static string Size(CellBody cell, Look look) => cell switch
    {
        CellBody.Cylinder round => $"{look.Bare(round.DiameterMm)} x {look.Length(round.LengthMm)}",
        CellBody.Box box => $"{look.Bare(box.LengthMm, 0)} x {look.Bare(box.ThicknessMm, 0)} x {look.Length(box.HeightMm, 0)}",
        _ => "-",
    };
}
