using System.CommandLine;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>share: who carries what in a parallel group.</summary>
internal static class ShareVerb
{
    private static readonly Argument<string[]> Files = new("FILE") { Description = "a case file (JSON) or tables of cells; - reads standard input", Arity = ArgumentArity.OneOrMore };
    private static readonly Option<string?> Load = new("--load") { Description = "current drawn from each group, such as 40A, in place of the one that a case names; charging is negative: --load=-10A" };
    private static readonly Option<string?> Link = new("--link") { Description = "each piece of bar between neighbours, such as 0.2mohm (default none)" };
    private static readonly Option<string?> Places = new("--places") { Description = "the answer of fit --groups --json: cells in the groups and the order in which they stand, pieces of bar as long as they are" };
    private static readonly Option<int?> PositiveAt = new("--positive-at") { Description = "cell, from 1, at which the load leaves the positive bar (default 1)" };
    private static readonly Option<int?> NegativeAt = new("--negative-at") { Description = "cell, from 1, at which it leaves the negative bar (default the last)" };
    private static readonly Option<string?> Rating = new("--discharge-rating") { Description = "highest continuous current of one cell, such as 10A" };
    private static readonly Option<string?> RatedAh = new("--rated-ah") { Description = "capacity of one cell when new: an aged cell's rating is lowered in proportion" };
    private static readonly Option<string?> EmptyV = new("--empty-v") { Description = "group volts at which the discharge ends, such as 3.0V (default the chemistry's cut-off)" };
    private static readonly Option<bool> CellFuses = new("--cell-fuses") { Description = "each cell has a fuse or fusible link of its own" };

    internal static Verb Definition { get; } = new(
        "share",
        "who carries what in a parallel group: currents, the worst cell, what circulates",
        [
            ("packplanner share group7.json", "the case names cells, bars and load"),
            ("packplanner share cells.csv --load 40A --link 0.2mohm --positive-at 1 --negative-at 8 --chemistry NMC", "a table, to near empty"),
        ],
        [Files],
        [Load, Link, Places, PositiveAt, NegativeAt, Rating, RatedAh, EmptyV, CellFuses],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        double? typedA = call.Quantity<ElectricCurrent>(Load, "a current", "40A")?.Amperes;
        double? linkMilliohm = call.Quantity<ElectricResistance>(Link, "a resistance", "0.2mohm")?.Milliohms;
        double? ratingA = call.Quantity<ElectricCurrent>(Rating, "a current", "10A")?.Amperes;
        double? ratedAh = call.Quantity<ElectricCharge>(RatedAh, "a charge", "2.5Ah")?.AmpereHours;
        double? cutoffV = call.Quantity<ElectricPotential>(EmptyV, "a voltage", "3.0V")?.Volts;
        Chemistry? chemistry = call.Chemistry();
        int? positiveAt = TakeOff(call, PositiveAt);
        int? negativeAt = TakeOff(call, NegativeAt);
        if (linkMilliohm < 0)
            call.Refuse("--link", $"{linkMilliohm} mohm is below zero", "Give 0mohm or more.");
        if (call.Wrong is { } wrong)
            return wrong;
        Outcome<(ShareCase, RowAccount?)> read = Read(call, linkMilliohm, positiveAt, negativeAt, chemistry, ratedAh);
        if (!read.Is(out (ShareCase Case, RowAccount? Account) input, out Refusal? why))
            return why;
        chemistry ??= input.Case.Chemistry;
        if ((typedA ?? input.Case.LoadA) is not { } loadA)
            return Refusal.CommandLine("no-load", "share", "neither --load nor the case says which current is drawn", "Add --load 40A; --load 0A shows what circulates at rest.");
        IReadOnlyList<ParallelCells> groups = input.Case.Groups;
        GroupShare[] first = [.. groups.Select(group => CurrentSharing.AtFirstInstant(group, loadA))];
        List<string> understood = [.. input.Case.Understood];
        if (input.Case.LoadA is { } ofCaseA && ofCaseA != loadA)
            understood.Add(FormattableString.Invariant($"--load {loadA:0.###} A stands in place of the {ofCaseA:0.###} A that the case names."));
        SharedDischargeRun? run = Through(call, groups, chemistry, cutoffV, loadA, understood);
        ShareAnswer answer = ShareWords.Answer(groups, first, run, loadA) with
        {
            Understood = understood,
            Cautions = CautionJson.From(SharingCautions.Of(groups, first, ratingA, ratedAh, call.Value(CellFuses))),
        };
        answer = input.Account?.Fill(answer) ?? answer;
        return Reply.Of(answer, ShareAnswerContext.Default.ShareAnswer, ShareWords.Lines(answer), ShareWords.Table(answer));
    }

    private static SharedDischargeRun? Through(
        VerbCall call, IReadOnlyList<ParallelCells> groups, Chemistry? chemistry, double? cutoffV, double loadA, List<string> understood)
    {
        bool capacities = groups.All(group => group.Cells.All(cell => cell.CapacityAh is > 0));
        string? lacking = loadA <= 0 ? "the load is no discharge"
            : !capacities ? "not every cell has a capacity above zero"
            : chemistry is null ? "the chemistry is not given"
            : null;
        if (lacking is not null)
        {
            understood.Add($"Only the first instant is shown: {lacking}.");
            return null;
        }

        understood.Add($"On the way down the cells start from their resting volts and follow the {chemistry!.Name} curve; resistances are taken as constant.");
        if (chemistry.HasFlatCurve && groups.Any(group => group.Cells.Any(cell => cell.OpenCircuitV is > 3.15 and < 3.40)))
            understood.Add("Between 3.15 V and 3.40 V resting volts of this chemistry tell little about charge, so the way down is a rough picture.");
        return SharedDischarge.Run(groups, chemistry, cutoffV ?? chemistry.CutoffV, loadA, call.Stopped);
    }

    private static Outcome<(ShareCase, RowAccount?)> Read(
        VerbCall call, double? linkMilliohm, int? positiveAt, int? negativeAt, Chemistry? chemistry, double? ratedAh)
    {
        if (!GroupFiles.Open(call, call.Value(Files)!, chemistry, ratedAh).Is(out GroupInput? input, out Refusal? why)
            || !input.ChemistryOf(chemistry).Is(out ChemistryFound? found, out why))
            return why;
        if (input.Case is { } json)
        {
            if (!ShareCase.Read(json).Is(out ShareCase? shareCase, out why))
                return why;
            string? differs = call.Given(Places) ? "the case says how its cells stand, and --places does"
                : linkMilliohm is { } link && !shareCase.HasLinks(link) ? "the bars of the case and --link say different things"
                : positiveAt is { } plus && shareCase.Groups.Any(group => group.PositiveAt != plus) ? "positiveAt and --positive-at say different things"
                : negativeAt is { } minus && shareCase.Groups.Any(group => group.NegativeAt != minus) ? "negativeAt and --negative-at say different things"
                : null;
            return differs is null ? (shareCase, null) : Refusal.Input("given-contradicts", input.Name, differs, "Leave the option out, or correct the case.");
        }

        FitLinks? links = null;
        if (call.Value(Places) is { } places && !FitLinks.Read(places).Is(out links, out why))
            return why;
        if (!CellGroups.Networks(links?.Grouped(input.Rows) ?? input.Rows, linkMilliohm ?? 0, positiveAt ?? 1, negativeAt, found.Chemistry, input.Name).Is(out ShareCase? table, out why))
            return why;
        if (links is not null && !links.Arranged(table, positiveAt ?? 1, negativeAt).Is(out table, out why))
            return why;
        return (table with { Chemistry = found.Chemistry, Understood = [.. input.Understood, .. table.Understood] }, input.Account);
    }

    private static int? TakeOff(VerbCall call, Option<int?> option)
    {
        int? at = call.Value(option);
        if (at < 1)
            call.Refuse(option.Name, $"{at} is no cell", "Count the cells along the bar from 1.");
        return at;
    }
}
