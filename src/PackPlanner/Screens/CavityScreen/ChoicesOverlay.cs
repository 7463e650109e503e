using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Sizing;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>Which S, P and cell there are to choose from, with what binds the one under the cursor; Enter takes one into the job.</summary>
internal static class ChoicesOverlay
{
    internal static ListOverlay Of(Desk desk) => new(desk, "no other beats these; no: breaks a limit; fits: tried in the space", () => Lines(desk));

    private static IReadOnlyList<ListItem> Lines(Desk desk)
    {
        if (desk.Answers.Choices is not { } known)
            return [new ListItem("the choices are being worked out", "", null)];
        return known.Choices.Count > 0
            ? [.. known.Choices.Select(choice => new ListItem(Words(choice, desk.Look), Tried(known, choice), () => Take(desk, choice)) { Tells = () => Tells(choice, known) })]
            : [new ListItem("No number of cells in series serves:", "", null), .. known.WhyNone.Select(why => new ListItem("  " + why, "", null))];
    }

    // A choice of the cell that the space is about was brought down to what fits; of other cells only volts, amperes and mass are known.
    private static string Tried(SizeQuestion.Answered known, PackChoice choice) =>
        known.TriedCell is { } tried && (choice.Cell.Name ?? "") == tried ? "fits" : "";

    private static string Words(PackChoice choice, Look look)
    {
        string shape = $"{choice.Series}s{choice.Parallel?.ToString(CultureInfo.InvariantCulture) ?? "-"}p";
        string volts = $"{look.Figure(choice.VoltageCutoffV, 1)}-{look.Figure(choice.VoltageFullV, 1)} V";
        return $"{(choice.LimitsBroken.Count > 0 ? "no" : "  ")} {TextWidth.Fit(shape, 6)} {TextWidth.Fit(TextWidth.CutMiddle(choice.Cell.Name ?? "cell", 13), 13)} {TextWidth.Fit(volts, 11, right: true)} "
            + $"{look.Figure(choice.EnergyUsableWh / 1000, 2)} kWh {TextWidth.Fit(look.Distance(choice.RangeKm), 6, right: true)} "
            + $"{TextWidth.Fit(look.Mass(choice.PackMassKg), 7, right: true)} {TextWidth.Fit(look.Figure(choice.CellPeakA, 1), 5, right: true)} A";
    }

    private static string Tells(PackChoice choice, SizeQuestion.Answered known)
    {
        string broken = choice.LimitsBroken.Count > 0 ? $"breaks {string.Join(", ", choice.LimitsBroken.Select(code => code.Replace('-', ' ')))}; " : "";
        string space = known.TriedCell is null || Tried(known, choice).Length > 0 ? "" : "; not tried in the space";
        return $"{broken}{(choice.Binding is { } binds ? $"binds: {binds.Text}" : "no limit binds")}{space}; A: of one cell at the peak";
    }

    private static void Take(Desk desk, PackChoice choice)
    {
        Given Of(double value) => new(new JobValue.Number(value), Origin.You(desk.Today));
        bool another = Chemistries.Find(choice.Cell.Chemistry) is { } chemistry && desk.Job!.Givens.Chemistry is { } own && own != chemistry;
        if (another && desk.Job!.Rows.Count > 0)
        {
            desk.Says = $"Not taken: it is of {choice.Cell.Chemistry}, and the cells of this job are {desk.Job.Givens.Chemistry!.Name}. : \"copy this job\" begins a variant.";
            return;
        }

        JobChange series = JobChanges.Set("series", Of(choice.Series));
        JobChange? parallel = choice.Parallel is { } p ? JobChanges.Set("parallel", Of(p)) : null;
        string name = $"take {choice.Series}s{choice.Parallel}p";
        desk.Do(new JobChange(name, job => OfCell(choice.Cell, job, another, desk.Today).Aggregate(parallel is null ? series.Apply(job) : parallel.Apply(series.Apply(job)), (done, change) => change.Apply(done))));
        string broken = choice.LimitsBroken.Count > 0 ? $" It breaks {string.Join(", ", choice.LimitsBroken.Select(code => code.Replace('-', ' ')))}." : "";
        desk.Says = $"{name}: u takes it back.{broken} The space is still laid out for its own cell; i adds another case.";
    }

    // What the job has not been told of its cell is that of the choice: else its volts and Ah would be others than those it was chosen by.
    // With a cell of another chemistry comes all of it: volts of one beside the rules of the other would charge it wrongly.
    private static IEnumerable<JobChange> OfCell(SizingCell cell, Job job, bool another, DateOnly today)
    {
        Origin you = Origin.You(today);
        if (cell.Chemistry is { } chemistry && Chemistries.Find(chemistry) is { } known && (another || job.Givens.Chemistry is null))
            yield return JobChanges.Set("chemistry", new Given(new JobValue.Word(known.Name), you));
        foreach ((string key, double? value) in new (string Key, double? Value)[] { ("ratedAh", cell.CapacityAh), ("fullV", cell.FullV), ("emptyV", cell.CutoffV), ("nominalV", cell.NominalV) })
        {
            if (GivenCatalogue.Find(key) is not null && (another || (value is not null && !job.Givens.Known.ContainsKey(key))))
                yield return JobChanges.Set(key, value is { } told ? new Given(new JobValue.Number(told), you) : null);
        }
    }
}
