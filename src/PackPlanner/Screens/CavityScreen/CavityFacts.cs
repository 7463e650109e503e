using PackPlanner.Core.Fitting;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>What a search for places found, line by line.</summary>
internal static class CavityFacts
{
    /// <summary>The word of the line that tells what the full search found.</summary>
    internal const string FullSearch = "full search";

    internal static IReadOnlyList<(string Word, string Says)> Of(Desk desk, FitCase fitCase, FitAnswer answer, FitAnswer? most)
    {
        Look look = desk.Look;
        List<(string, string)> facts =
        [
            .. answer.Reasons.SelectMany(Why).Select(line => (line.Word, look.Prose(line.Says))),
            ("cell", $"{fitCase.CellName}, {Size(fitCase.Cell, look)}"),
            ("places", $"{answer.Cells.Count}" + (answer.Bound is { } bound ? $", proven limit {bound}" : "") + $" ({Nest(answer)}{Regular(answer)})"),
            ("used", Used(answer)),
            .. answer is { FirstLook: true, Cells.Count: > 0 } ? [(FullSearch, CavityWords.OfFullSearch(desk, answer, most))] : Array.Empty<(string, string)>(),
            ("cells weigh", answer is { CellMassKg: { } kg, Used: > 0 } ? look.Mass(kg) + (fitCase.CellMassLimitKg is { } limit ? $" of {look.Mass(limit)} allowed" : "") : "-"),
            ("with parts", answer is { PackMassKg: { } all, Used: > 0 } ? look.Mass(all) : "-"),
        ];
        // Where a weighed part has no place, or a cell no mass, the middle of all cannot be told.
        if ((answer.CentreOfMass ?? answer.CellsCentreOfMass) is { } centre)
            facts.Add(("middle", $"x {look.Bare(centre.X, 0)}  y {look.Bare(centre.Y, 0)}  z {look.Length(centre.Z, 0)}{(answer.CentreOfMass is null ? ", cells alone" : "")}"));
        if (answer.MarginMm.Count == 6)
        {
            // The way in is told of the cells used alone.
            string sides = $"{look.Length(answer.MarginMm[0])}, right {look.Length(answer.MarginMm[1])}";
            facts.Add(answer.Used < answer.Cells.Count ? ($"room of {answer.Cells.Count}", $"left {sides}") : ("spare left", sides));
            facts.Add(("front", $"{look.Length(answer.MarginMm[2])}, back {look.Length(answer.MarginMm[3])}"));
            facts.Add(("below", $"{look.Length(answer.MarginMm[4])}, above {look.Length(answer.MarginMm[5])}"));
        }

        foreach (WayIn way in answer.WaysIn)
            facts.Add(("way in", look.Prose(way.Text)));
        return facts;
    }

    private static IEnumerable<(string Word, string Says)> Why(FitReason reason) =>
        reason.Change is { } change ? [("no:", reason.Text), ("would help", change)] : [("no:", reason.Text)];

    private static string Used(FitAnswer answer) => answer switch
    {
        { Series: null } => $"{answer.Used}; series is not said",
        { Parallel: null } => $"none: no {answer.Series}s in one piece",
        _ => $"{answer.Used} for {answer.Series}s{answer.Parallel}p",
    };

    // Free places want each its own seat; moulded holders are made for rows.
    private static string Regular(FitAnswer answer) =>
        answer is { NestKind: "free", RegularCount: { } regular } ? $", not in rows; rows hold {regular}" : "";

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
