using PackPlanner.Core.Sharing;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.GroupsScreen;

/// <summary>May the cells of a group be joined now: the current on joining, the limit, what to bring each cell to, the order.</summary>
internal static class JoinOverlay
{
    internal static TextOverlay Of(JoinPlan plan, Look look)
    {
        JoinStep[] late = [.. plan.Cells.Where(step => IsLate(step) || step.Reason is not null)];
        string answer = late.Length == 0
            ? plan.Cells.Any(step => step.InrushA is null) ? "cannot be told for all: a reading is missing" : "yes, in the order below: every current stays under its limit"
            : $"{plan.Cells.Count - late.Length} of them yes; not yet: {string.Join(", ", late.Select(step => step.Label))}";
        List<(string, string)> lines = [("answer", answer)];
        foreach (JoinStep step in plan.Cells.OrderBy(step => step.Place ?? int.MaxValue).ThenBy(step => step.Label, StringComparer.Ordinal))
            lines.Add(($"{step.Place?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "-"}  {step.Label}", Words(step, look)));
        if (plan.WorstPair is { } pair)
            lines.Add(("worst pair", $"{pair.Giver} and {pair.Receiver} alone: {look.Figure(pair.InrushA, 1)} A"));
        lines.Add(("rule", $"volts apart over all resistances in the path; an unknown rating is taken as {look.Figure(JoiningCheck.UnknownRatingPerHour, 1)} of the Ah as amperes"));
        return new TextOverlay($"May I join the cells of group {plan.Group} now?", lines);
    }

    private static bool IsLate(JoinStep step) => step.IsLate || step.InOrderA > step.LimitA;

    private static string Words(JoinStep step, Look look)
    {
        if (step.Reason is { } reason)
            return reason == "not-to-be-charged" ? "not to be joined: it is not to be charged" : "no resting volts: measure it on the day of joining";
        if (step.InrushA is not { } ampere)
            return "its current cannot be told: mΩ is missing";
        // Joined in the order, a cell meets those before it; one that must be brought to volts first is measured against all the others.
        if (!IsLate(step))
            return step.Place == 1 ? "the first of the order" : $"{look.Figure(step.InOrderA ?? ampere, 1)} A on joining those above, limit {look.Figure(step.LimitA, 1)} A";
        string words = $"{look.Figure(Math.Max(ampere, step.InOrderA ?? 0), 1)} A on joining, limit {look.Figure(step.LimitA, 1)} A";
        words += $": bring it to {look.Figure(step.BringToV, 2)} V alone";
        if (step.Within is { } within)
            words += $", {look.Figure(within.LowV, 2)}-{look.Figure(within.HighV, 2)} V will do";
        return step.ResistorOhm > 0 ? words + $"; or through {look.Figure(step.ResistorOhm, 2)} ohm" + (step.Hours is { } hours ? $" for {look.Figure(hours, 1)} h" : "") : words;
    }
}
