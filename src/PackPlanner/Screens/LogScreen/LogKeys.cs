using PackPlanner.Core.Diagnosis;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Plots;

namespace PackPlanner.Screens.LogScreen;

/// <summary>What can be done on the Log step.</summary>
internal static class LogKeys
{
    internal static IReadOnlyList<KeyAction> Of(Desk desk, LogModel model, RideDiagnosis known)
    {
        LogPlots plots = model.Plots;
        PlotWindow focus = plots.Window;
        List<KeyAction> keys =
        [
            new(KeyBook.NextPane, focus.HasFocus ? "table" : "plot", "goes between plot and table; in the plot left and right move in time, or from rest to rest", () => focus.HasFocus = !focus.HasFocus),
            focus.HasFocus
                ? new(KeyBook.NextView, $"next plot: {plots.NextName}", "goes through volts, volts less the median, the drop of each group, and the groups at rest", plots.Next)
                : new(KeyBook.NextView, $"next view: {model.NextView}", "goes through findings, groups, events, remedies, balance, and what changed since the log before", model.GoToNextView),
            new(KeyBook.ZoomIn, focus.HasFocus ? "nearer" : "", "looks at half the time shown", () => focus.Zoom(0.5)),
            new(KeyBook.ZoomOut, focus.HasFocus ? "farther" : "", "looks at twice the time shown", () => focus.Zoom(2)),
            new(KeyBook.Open, "open", "shows what the row under the cursor rests on", () => model.WhereFrom() is null ? "nothing is under the cursor" : null, model.Open),
            focus.HasFocus
                ? new(KeyBook.SecondLog, plots.IsBeside ? "one log" : "beside", "draws the next log of this job beside this one, or this one alone again", WhyOneLog, () => plots.IsBeside = !plots.IsBeside)
                : new(KeyBook.SecondLog, "other log", "shows the next log of this job; in the plot it draws it beside this one", WhyOneLog, model.ShowOtherLog),
            new(KeyBook.Remedy, "remedies", "shows what each remedy would give back", () => known.Remedies.Count == 0 ? "there is none to try" : null, model.ShowRemedies),
        ];
        keys.AddRange(WithoutDiagnosis(desk));
        if (focus.HasFocus)
            keys.Add(new(KeyBook.Columns, "groups", "chooses the groups that are drawn", () => plots.Choose(desk, known.Groups.Count)));
        else
            keys.AddRange(TableKeys.Of(desk, model.Shown));
        return keys;

        string? WhyOneLog() => desk.Job!.Logs.Count < 2 ? "the job has one log; i adds another" : null;
    }

    internal static IReadOnlyList<KeyAction> WithoutDiagnosis(Desk desk) =>
    [
        new(KeyBook.AddFile, "add a log", "adds a log, after showing how it was read", JobCommands.InJob(desk, KeyBook.AddFile, () => FileChooser.Ask(desk))),
        new(KeyBook.Numbers, "numbers", "changes chemistry, rated Ah, series, parallel and limits", JobCommands.InJob(desk, KeyBook.Numbers,
            () => GivenField.Choose(desk, "numbers of this screen", ["chemistry", "ratedAh", "series", "parallel", "fullV", "emptyV", "balanceA", "kmBefore", "kmNow"]))),
    ];
}
