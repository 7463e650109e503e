using System.CommandLine;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>join: may these be connected now?</summary>
internal static class JoinVerb
{
    private static readonly Argument<string[]> Files = new("FILE") { Description = "tables of cells, or of groups, with resting volts and resistance; - reads standard input", Arity = ArgumentArity.OneOrMore };
    private static readonly Option<string?> Link = new("--link") { Description = "link or lead in the path of the current, such as 0.2mohm (default none)" };
    private static readonly Option<string?> ChargeRating = new("--charge-rating") { Description = "highest charging current of one cell (default half its Ah as amperes)" };
    private static readonly Option<string?> DischargeRating = new("--discharge-rating") { Description = "highest discharge current of one cell (default half its Ah as amperes)" };

    internal static Verb Definition { get; } = new(
        "join",
        "may these cells be connected in parallel now: current, volts to bring each to, order",
        [
            ("packplanner join cells.csv --link 0.2mohm --chemistry NMC", "each cell against the others of its group"),
            ("packplanner join cells.csv --charge-rating 2A --discharge-rating 10A --json", "with the data sheet's ratings"),
        ],
        [Files],
        [Link, ChargeRating, DischargeRating, GroupFiles.RatedAh],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        double? linkMilliohm = call.Quantity<ElectricResistance>(Link, "a resistance", "0.2mohm")?.Milliohms;
        double? chargeA = call.Quantity<ElectricCurrent>(ChargeRating, "a current", "2A")?.Amperes;
        double? dischargeA = call.Quantity<ElectricCurrent>(DischargeRating, "a current", "10A")?.Amperes;
        double? ratedAh = GroupFiles.RatedAhOf(call);
        Chemistry? asked = call.Chemistry();
        if (linkMilliohm < 0)
            call.Refuse("--link", $"{linkMilliohm} mohm is below zero", "Give 0mohm or more.");
        if (chargeA <= 0 || dischargeA <= 0)
            call.Refuse("--charge-rating, --discharge-rating", "a rating is above zero", "Correct the figure, or leave it out.");
        if (call.Wrong is { } wrong)
            return wrong;
        if (!BenchCells.Read(call, call.Value(Files)!, asked, ratedAh).Is(out BenchCells? cells, out Refusal? why))
            return why;
        if (cells.Cells.All(cell => cell.RestV is null))
            return Refusal.Input("no-resting-volts", cells.Name, "no cell has resting volts", "Measure them at rest on the day of joining.");
        JoinRequest[] requests =
        [
            .. cells.Groups().Select(group => new JoinRequest(
                group.Number,
                [.. group.Cells.Select(cell => new JoinCell(cell.Label, cell.RestV, cell.ResistanceMilliohm is > 0 ? cell.ResistanceMilliohm : null, cell.CapacityAh, cell.HeldForSafety))],
                linkMilliohm ?? 0, chargeA, dischargeA, cells.Chemistry)),
        ];
        JoinPlan[] plans = [.. requests.Select(JoiningCheck.Plan)];
        JoinAnswer answer = cells.Account.Fill(JoinWords.Answer(requests, plans) with
        {
            Understood = [.. cells.Understood, .. Assumptions(linkMilliohm, chargeA, dischargeA, cells)],
            Cautions = CautionJson.From([.. plans.SelectMany(plan => plan.Cautions), .. cells.SafetyCautions()]),
        });
        return Reply.Of(answer, JoinAnswerContext.Default.JoinAnswer, JoinWords.Lines(answer), JoinWords.Table(answer));
    }

    private static IEnumerable<string> Assumptions(double? linkMilliohm, double? chargeA, double? dischargeA, BenchCells cells)
    {
        if (linkMilliohm is null)
            yield return "No --link: the path has no more resistance than the cells, which makes the currents larger.";
        if (chargeA is null || dischargeA is null)
            yield return "A rating that is not given is taken as half the cell's Ah as amperes (common practice, no source).";
        if (cells.Cells.Any(cell => cell.ResistanceMilliohm is not > 0))
            yield return "A cell of unknown resistance counts among the others with the lowest resistance known, so that no current is made to look small.";
    }
}
