using PackPlanner.Core.Jobs;
using PackPlanner.Core.Sizing;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>Which S, P and cell there are to choose from, with what binds each; Enter takes one into the job.</summary>
internal static class ChoicesOverlay
{
    internal static ListOverlay Of(Desk desk) => new(desk, "no other beats these; right: what binds, the limit that stops more", () => Lines(desk));

    private static IReadOnlyList<ListItem> Lines(Desk desk)
    {
        if (desk.Answers.Choices is not { } known)
            return [new ListItem("the choices are being worked out", "", null)];
        return known.Choices.Count > 0
            ? [.. known.Choices.Select(choice => new ListItem(Words(choice, Tried(known, choice), desk.Look), choice.Binding?.Text ?? "", () => Take(desk, choice)))]
            : [new ListItem("No number of cells in series serves:", "", null), .. known.WhyNone.Select(why => new ListItem("  " + why, "", null))];
    }

    // A choice of the cell that the space is about was brought down to what fits; of other cells only volts, amperes and mass are known.
    private static string Tried(SizeQuestion.Answered known, PackChoice choice) =>
        known.TriedCell is not { } tried ? "" : (choice.Cell.Name ?? "") == tried ? ", fits" : ", space not tried";

    private static string Words(PackChoice choice, string tried, Look look)
    {
        string broken = choice.LimitsBroken.Count > 0 ? $"  BREAKS {string.Join(", ", choice.LimitsBroken)}" : "";
        return $"{choice.Series}s{choice.Parallel?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "-"}p {choice.Cell.Name}{tried}  "
            + $"{look.Figure(choice.VoltageCutoffV, 1)}-{look.Figure(choice.VoltageFullV, 1)} V  {look.Figure(choice.EnergyUsableWh / 1000, 2)} kWh  "
            + $"{look.Distance(choice.RangeKm)}  {look.Mass(choice.PackMassKg)}  {look.Figure(choice.CellPeakA, 1)} A a cell{broken}";
    }

    private static void Take(Desk desk, PackChoice choice)
    {
        Given Of(double value) => new(new JobValue.Number(value), Origin.You(desk.Today));
        JobChange series = JobChanges.Set("series", Of(choice.Series));
        JobChange? parallel = choice.Parallel is { } p ? JobChanges.Set("parallel", Of(p)) : null;
        string name = $"take {choice.Series}s{choice.Parallel}p";
        desk.Do(new JobChange(name, job => parallel is null ? series.Apply(job) : parallel.Apply(series.Apply(job))));
        desk.Says = $"{name}: u takes it back. The cell itself stays that of the space; i adds another case.";
    }
}
