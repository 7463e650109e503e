using PackPlanner.Core.Cells;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.EnergyScreen;

/// <summary>What the Energy step says.</summary>
internal static class EnergyPicture
{
    private const string Question = "How much energy can I use, and how far is that?";

    internal static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "a list from what the label says to what reaches the controller, every loss named, that adds up"),
        ("wants", "groups (3 Groups, or a log in 7 Log) and the chemistry; best also the load, the controller's lowest volts, the temperature and Wh per km (e here)"),
        ("verb", "packplanner energy answers the same"),
    ];

    /// <param name="desk">The desk.</param>
    /// <param name="isFormer">Whether figures from before stay on the screen meanwhile.</param>
    internal static StepPicture Waiting(Desk desk, bool isFormer)
    {
        if (isFormer)
            return new StepPicture(Question, "The energy is being counted anew; the figures below are those from before.", "Wait a moment, or go on: nothing is lost");
        if (desk.Job is not { } job)
            return new StepPicture(Question, "No job is open.", "1 Job: open or begin a job first");
        if (!desk.Answers.HasGroups && job.Logs.IsEmpty)
            return new StepPicture(Question, "Nothing to count yet: there are no groups.", "3 Groups first; the load and Wh per km can be said here (e)");
        if (desk.Answers.WasStopped)
            return StepPicture.Stopped(Question, 6);
        if (desk.Answers.IsCounting)
            return new StepPicture(Question, "The energy is being counted.", "Wait a moment, or go on: nothing is lost");
        if (!desk.Answers.HasGroups && desk.Answers.IsDiagnosing)
            return new StepPicture(Question, "The log is being judged first; the energy follows it.", "Wait a moment, or go on: nothing is lost");
        if (desk.Answers.Groups is GroupingOutcome.Contradicts { ToReplace.Count: > 0 })
            return new StepPicture(Question, "A cell in the groups must be replaced first; the energy follows them.", "3 Groups: x in that group shows the best three spares");
        return EnergyQuestion.WhyNot(job.Givens) is { } why
            ? new StepPicture(Question, $"It cannot be counted: {why}.", "e: change it")
            : new StepPicture(Question, "The groups are not there yet; the energy follows them.", job.Logs.IsEmpty ? "3 Groups: see how they stand" : "7 Log: see whether capacities can be told");
    }

    internal static StepPicture Of(StringFigures answered, JobGivens givens, Look look)
    {
        EnergyBudget budget = answered.Budget;
        string km = givens.NumberOf("whPerKm") is > 0 and { } use ? $", {look.Distance(budget.UsableWh / use)} at {look.Use(use)}" : "";
        string load = answered.Request.Load is LoadPlan.ConstantCurrent steady
            ? $" at {look.Figure(steady.LoadA, 0)} A; {Kwh(budget.UsableWhAtRest, look)} kWh at rest{(Off(answered.Request) is { Length: > 0 } off ? $", before {off}" : "")}"
            : $" at rest{(Off(answered.Request) is { Length: > 0 } taken ? $" less {taken}" : "")} (no load said)";
        string answer = $"{Amount(budget, look)}{km}{load}. {Ends(answered, look)}";
        string end = budget.EndsAtOnce ? "the load ends it at once" : budget.EndedByController ? "controller ends it"
            : budget.Spread.EndAlike > 1 ? $"ends at {look.Figure(budget.EndPackV, 1)} V" : $"group {budget.EndsAtGroup} ends it";
        string far = givens.NumberOf("whPerKm") is > 0 and { } each ? $", {look.Distance(budget.UsableWh / each)}" : "";
        string loaded = answered.Request.Load is LoadPlan.ConstantCurrent drawn ? $" at {look.Figure(drawn.LoadA, 0)} A" : " at rest";
        return new StepPicture(Question, answer, Next(budget, givens, look), answered.Raised)
        {
            Short = $"{(IsWithin(budget) ? Amount(budget, look) : Range(budget, look) + " kWh")}{far}{loaded}; {end}.",
        };
    }

    // What a figure at rest may or may not have taken off: with a load it is the bare pack, without one all but the load is.
    private static string Off(EnergyRequest request)
    {
        List<string> parts = [];
        if (request.TemperatureDegC < ColdCapacity.TestDegC)
            parts.Add("cold");
        if (request.PackEmptyV > request.Groups.Count * request.EndsAtV)
            parts.Add("controller");
        if (request.ReserveFraction > 0)
            parts.Add("reserve");
        return parts.Count < 2 ? string.Concat(parts) : $"{string.Join(", ", parts.SkipLast(1))} and {parts[^1]}";
    }

    internal static string Ends(StringFigures answered, Look look)
    {
        EnergyBudget budget = answered.Budget;
        string volts = $"{look.Figure(budget.EndPackV, 1)} V";
        int alike = budget.Spread.EndAlike;
        if (budget.EndsAtOnce)
            return EnergyWords.AtOnce(budget.EndsAtGroup, budget.EndedByController);
        if (budget.EndedByController)
            return $"The controller's lowest volts end it, {volts}" + (alike > 1 ? "." : $"; group {budget.EndsAtGroup} is then the lowest.");
        return alike > 1
            ? $"One of {alike} like groups ends it at {volts}."
            : $"Group {budget.EndsAtGroup} ends it at its cut-off; the pack then gives {volts}.";
    }

    private static string Next(EnergyBudget budget, JobGivens givens, Look look)
    {
        if (givens.SteadyA is null)
            return "e: say the steady load, and heat and cut-off under load are counted too";
        if (budget.EndsAtOnce)
            return "e: say a smaller load; or more cells in parallel, 1 Job";
        if (givens.NumberOf("whPerKm") is null)
            return "e: say Wh per km, and km are told too";
        double gain = budget.AfterBalance.UsableWh - budget.UsableWh;
        if (gain > budget.UsableWh * 0.01)
            return $"r: remedies. Balancing all groups to full gives {look.Figure(gain, 0)} Wh more";
        UsableAfter? one = budget.AfterReplacement.Count > 0 ? budget.AfterReplacement[0] : null;
        return one is { } && one.UsableWh - budget.UsableWh > budget.Spread.HalfWidthWh
            ? $"r: remedies. A new group {one.Groups[0]} gives {look.Figure(one.UsableWh - budget.UsableWh, 0)} Wh more"
            : "8 Sheets for the bench; r shows what each remedy would give";
    }

    // Of many like groups one is surely weaker than it reads: then the figure of the readings lies above what is likely, and no ± holds both.
    // A spread too small for two decimals of a kWh is said in Wh, never as nought, and then both are.
    private static string Amount(EnergyBudget budget, Look look) =>
        !IsWithin(budget) ? $"{Kwh(budget.UsableWh, look)} kWh as read, likely {Range(budget, look)}"
        : budget.Spread.HalfWidthWh < 5 ? $"{look.Figure(budget.UsableWh, 0)} Wh{(budget.UsableWh < 0.5 ? "" : $" ± {look.Figure(Math.Max(1, budget.Spread.HalfWidthWh), 0)}")}"
        : $"{Kwh(budget.UsableWh, look)} kWh ± {Kwh(budget.Spread.HalfWidthWh, look)}";

    private static bool IsWithin(EnergyBudget budget) => budget.UsableWh >= budget.Spread.LowWh && budget.UsableWh <= budget.Spread.HighWh;

    private static string Range(EnergyBudget budget, Look look) => $"{look.Figure(budget.Spread.LowWh / 1000, 3)}-{look.Figure(budget.Spread.HighWh / 1000, 3)}";

    private static string Kwh(double wh, Look look) => look.Figure(wh / 1000, 2);
}
