using PackPlanner.Core.Cautions;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Screens.LogScreen;

/// <summary>Which of the job's logs is on the screen.</summary>
internal sealed class LogChoice(Desk desk)
{
    private int? chosen;
    private int logsBefore;

    /// <summary>Its place among the job's logs, from 0. The latest tells how the pack is now; the energy and the sheets ask it too.</summary>
    internal int Which
    {
        get
        {
            int logs = desk.Job?.Logs.Count ?? 0;
            // Who adds a log wants to see it, whichever was on the screen.
            if (logs > logsBefore)
                chosen = null;
            logsBefore = logs;
            return Math.Clamp(chosen ?? int.MaxValue, 0, Math.Max(0, logs - 1));
        }
    }

    /// <summary>The log beside it: the next one, after the last the first.</summary>
    internal int Other => (Which + 1) % Math.Max(1, desk.Job?.Logs.Count ?? 1);

    internal RideLog? Log => desk.Job is { Logs.IsEmpty: false } job ? job.Logs[Which].Log : null;

    /// <summary>What is to be warned of: what the latest log warns of holds whichever log is looked at.</summary>
    /// <param name="known">What the log on the screen shows.</param>
    internal IReadOnlyList<Caution> Warns(RideDiagnosis known) => Which == desk.Job!.Logs.Count - 1 ? known.Cautions
        : [.. known.Cautions.Union(desk.Answers.Diagnosis(desk.Job.Logs.Count - 1)?.Cautions ?? [])];

    internal void ShowOther() => chosen = Other;

    /// <summary>How a plot names a log where there are several.</summary>
    internal string Named(int which) => desk.Job!.Logs.Count > 1 ? $"log {which + 1} of {desk.Job.Logs.Count}: " : "";
}
