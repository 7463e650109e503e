using System.CommandLine;
using PackPlanner.Core.Balancing;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;
using PackPlanner.Core.Sharing;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>balance: how far are the groups out of step, and how long does levelling take?</summary>
internal static class BalanceVerb
{
    private static readonly Argument<string[]> Files = new("FILE") { Description = "an answer of diagnose (JSON), or a table of groups with state of charge, charge offsets or resting volts", Arity = ArgumentArity.OneOrMore };
    private static readonly Option<string?> Bleed = new("--bleed") { Description = "current of each balancer, such as 60mA" };
    private static readonly Option<string?> Duty = new("--duty") { Description = "part of the time that the balancers work, such as 50% (default 100%)" };
    private static readonly Option<string?> Charger = new("--charger") { Description = "current of a charger for one group, such as 5A" };
    private static readonly Option<string> Level = new("--level") { Description = "top or bottom (default top)", DefaultValueFactory = _ => "top" };

    internal static Verb Definition { get; } = new(
        "balance",
        "how far the groups are out of step, what to bleed or add, and how long it takes",
        [
            ("packplanner balance groups.csv --bleed 60mA --charger 2A", "state of charge or resting volts of each group"),
            ("packplanner balance diagnosis.json --bleed 100mA", "charge offsets from an answer of diagnose"),
        ],
        [Files],
        [Bleed, Duty, Charger, Level, GroupFiles.RatedAh],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        double? bleedA = call.Quantity<ElectricCurrent>(Bleed, "a current", "60mA")?.Amperes;
        double? chargerA = call.Quantity<ElectricCurrent>(Charger, "a current", "5A")?.Amperes;
        double duty = call.Quantity<Ratio>(Duty, "a share", "50%")?.DecimalFractions ?? 1;
        double? ratedAh = GroupFiles.RatedAhOf(call);
        Chemistry? asked = call.Chemistry();
        string level = call.Value(Level)!.ToLowerInvariant();
        if (level is not ("top" or "bottom"))
            call.Refuse("--level", $"\"{level}\" is neither top nor bottom", "Write --level top or --level bottom.");
        if (bleedA <= 0 || chargerA <= 0 || duty is <= 0 or > 1)
            call.Refuse("--bleed, --charger, --duty", "currents are above zero, the duty from above 0% to 100%", "Correct the figure, or leave it out.");
        if (call.Wrong is { } wrong)
            return wrong;
        if (!GroupFiles.Open(call, call.Value(Files)!, asked, ratedAh).Is(out GroupInput? input, out Refusal? why))
            return why;
        if (!Found(input, asked, ratedAh).Is(out GroupsFound? found, out why))
            return why;
        BalancingRequest request = new(found.Groups, bleedA, duty, chargerA, level == "top");
        BalancingPlan other = Balancer.Plan(request with { AtTop = !request.AtTop });
        BalanceAnswer answer = BalanceWords.Answer(Balancer.Plan(request), other, request.AtTop, LargestInrushA(found), found.DriftAhPerMonth) with
        {
            Understood = found.Understood,
            Cautions = CautionJson.From(found.Cautions),
        };
        answer = input.Account?.Fill(answer) ?? answer;
        return Reply.Of(answer, BalanceAnswerContext.Default.BalanceAnswer, BalanceWords.Lines(answer), BalanceWords.Table(answer));
    }

    private static Outcome<GroupsFound> Found(GroupInput input, Chemistry? asked, double? ratedAh)
    {
        if (input.Case is { } json)
            return input.ChemistryOf(asked).Is(out ChemistryFound? named, out Refusal? unread) && GroupCharges.Read(json, named.Chemistry).Is(out GroupCharges? read, out unread)
                ? FromAnswer(read, named.Chemistry).WithCapacity(ratedAh)
                : unread;
        if (!BenchCells.Judge(input, asked).Is(out BenchCells? bench, out Refusal? why))
            return why;
        bench.LeaveUngroupedOut();
        if (!FromTable(bench).Is(out GroupsFound? found, out why))
            return why;
        found = found.WithCapacity(ratedAh);
        return InParallel(found with
        {
            Understood = [.. bench.Understood, .. found.Understood],
            Cautions = [.. found.Cautions, .. bench.SafetyCautions()],
            DriftAhPerMonth = DriftAhPerMonth(bench),
            Joining = Joining(
                found.Groups, bench.Chemistry,
                [.. bench.Cells.Select(cell => new JoinCell(cell.Label, cell.RestV, cell.ResistanceMilliohm, cell.CapacityAh, cell.HeldForSafety))]),
            Chemistry = bench.Chemistry,
        });
    }

    // A table of cells with the number of their group: those of one number stand in parallel and are levelled as one.
    private static GroupsFound InParallel(GroupsFound found)
    {
        IGrouping<int, int>[] members = [.. Enumerable.Range(0, found.Groups.Count).GroupBy(g => found.Groups[g].Number)];
        if (members.Length == found.Groups.Count)
            return found;
        return found with
        {
            Groups = [.. members.Select(group => GroupCharge.Together(group.Key, [.. group.Select(g => found.Groups[g])]))],
            Joining = [.. members.Select(group => JoinCell.Together($"{group.Key}", [.. group.Select(g => found.Joining[g])]))],
            Understood = [.. found.Understood, $"Rows of one group number are cells in parallel: {found.Groups.Count} cells in {members.Length} groups."],
            DriftAhPerMonth = null,
        };
    }

    private static GroupsFound FromAnswer(GroupCharges read, Chemistry? chemistry) => new(read.Groups, read.Understood, read.Cautions)
    {
        Joining = Joining(
            read.Groups, chemistry,
            [.. read.Groups.Select((group, g) => new JoinCell($"{group.Number}", null, read.ResistanceMilliohm[g], group.CapacityAh, group.NotToBeCharged))]),
        Chemistry = chemistry,
    };

    // Volts that were not measured follow from the charge, where the curve tells.
    private static IReadOnlyList<JoinCell> Joining(IReadOnlyList<GroupCharge> groups, Chemistry? chemistry, IReadOnlyList<JoinCell> cells) =>
    [
        .. cells.Select((cell, g) => cell with
        {
            RestV = cell.RestV ?? (groups[g].Fraction is { } fraction && chemistry is not null ? CurveTells.VoltsAt(chemistry, fraction) : null),
            ResistanceMilliohm = cell.ResistanceMilliohm is > 0 ? cell.ResistanceMilliohm : null,
        }),
    ];

    private static Outcome<GroupsFound> FromTable(BenchCells bench)
    {
        List<string> understood = [];
        List<Caution> cautions = [];
        if (bench.Cells.All(cell => cell.Rows[^1].ChargeOffsetAh is not null))
            return FromOffsets(bench);
        double?[] stated = [.. bench.Cells.Select(cell => cell.Rows[^1].StateOfChargeFraction)];
        bool byCharge = stated.Any(fraction => fraction is not null);
        if (SeriesGroups.AreOffsets(stated))
        {
            understood.Add(SeriesGroups.OffsetsUnderstood);
            double most = stated.Max()!.Value;
            stated = [.. stated.Select(fraction => 1 + fraction - most)];
        }

        if (!byCharge && bench.Cells.All(cell => cell.RestV is null))
            return Refusal.Input("no-charge", bench.Name, "no group has a state of charge or resting volts", "Add a column stateOfCharge, chargeOffsetAh or restV.");
        if (!byCharge && bench.Chemistry is null)
            return Refusal.Input("no-chemistry", bench.Name, "resting volts tell the charge only where the chemistry is known", $"Add --chemistry and one of {string.Join(", ", Chemistries.All)}.");
        GroupCharge[] groups = [.. bench.Cells.Select((cell, i) => Charge(cell, i + 1, byCharge, stated[i], bench.Chemistry))];
        int silent = groups.Count(group => !group.NotToBeCharged && group.Fraction is null);
        if (!byCharge && silent > 0 && bench.Chemistry is { HasFlatCurve: true } flat)
            cautions.Add(new Caution("caution-30", SignalWord.Notice, $"{silent} groups",
                $"cannot tell the charge from resting volts between 3.15 V and 3.40 V on {flat.Name}; charge slowly until the first group reaches its knee, then read again"));
        if (!byCharge)
            understood.Add(GroupCharges.RestUnderstood(bench.Chemistry!));
        return new GroupsFound(groups, understood, cautions);
    }

    private static GroupsFound FromOffsets(BenchCells bench)
    {
        double fullestAh = bench.Cells.Where(cell => !cell.HeldForSafety).Select(cell => cell.Rows[^1].ChargeOffsetAh!.Value).DefaultIfEmpty(0).Max();
        return new GroupsFound(
            [.. bench.Cells.Select((cell, i) => new GroupCharge(
                BenchCells.Of(cell) ?? i + 1, cell.CapacityAh, null, null, fullestAh - cell.Rows[^1].ChargeOffsetAh!.Value, cell.HeldForSafety))],
            [GroupCharges.OffsetsInAhUnderstood], []);
    }

    private static GroupCharge Charge(ScreenedCell cell, int place, bool byCharge, double? stated, Chemistry? chemistry)
    {
        int number = BenchCells.Of(cell) ?? place;
        if (byCharge)
            return new GroupCharge(number, cell.CapacityAh, stated, NotToBeCharged: cell.HeldForSafety);
        (double Fraction, double Spread)? told = cell.RestV is { } restV && chemistry is not null ? CurveTells.FractionAt(chemistry, restV) : null;
        return new GroupCharge(number, cell.CapacityAh, told?.Fraction, told?.Spread, NotToBeCharged: cell.HeldForSafety);
    }

    // Of all groups or of none: one that is not known could be the worst.
    private static double? LargestInrushA(GroupsFound found)
    {
        JoinPlan plan = JoiningCheck.Plan(new JoinRequest(1, found.Joining, 0, null, null, found.Chemistry));
        return plan.Cells.All(step => step is { Reason: null, InrushA: not null }) ? plan.Cells.Max(step => step.InrushA) : null;
    }

    private static double? DriftAhPerMonth(BenchCells bench)
    {
        (double, double)[] told = [.. bench.Cells.Where(cell => cell.CapacityAh is not null && cell.SelfDischarge?.PercentPerMonth is not null)
            .Select(cell => (cell.CapacityAh!.Value, cell.SelfDischarge!.PercentPerMonth!.Value))];
        return told.Length > 1 ? Balancer.DriftAh(told, months: 1) : null;
    }

    private sealed record GroupsFound(IReadOnlyList<GroupCharge> Groups, IReadOnlyList<string> Understood, IReadOnlyList<Caution> Cautions)
    {
        internal IReadOnlyList<JoinCell> Joining { get; init; } = [];

        internal Chemistry? Chemistry { get; init; }

        internal double? DriftAhPerMonth { get; init; }

        // A share of an unknown capacity is no charge; with what the cell held when new it is one, a little too large.
        internal GroupsFound WithCapacity(double? ratedAh) => ratedAh is null || Groups.All(group => group.CapacityAh is not null) ? this : this with
        {
            Groups = [.. Groups.Select(group => group with { CapacityAh = group.CapacityAh ?? ratedAh })],
            Understood = [.. Understood, $"{Groups.Count(group => group.CapacityAh is null)} of {Groups.Count} capacities are not known; --rated-ah stands for them, and a worn group holds less."],
        };
    }
}
