using PackPlanner.Core.Grouping;
using PackPlanner.Core.Screening;
using PackPlanner.Screens.CellsScreen;
using PackPlanner.Screens.GroupsScreen;

namespace PackPlanner.Screens;

/// <summary>Answers that several steps share, each kept until the job's part that it rests on changes.</summary>
internal sealed class Answers
{
    private readonly Desk desk;
    private readonly Derived<CellsQuestion, ScreenedLot> lot;
    private readonly Derived<GroupsQuestion, GroupingOutcome> groups;
    private GroupingPreference prefer;
    private bool fewestMoves;

    internal Answers(Desk desk)
    {
        this.desk = desk;
        lot = new(desk, "judging the cells", (question, work) => question.Answer(), question => question.IsShort);
        groups = new(desk, "matching", Match, question => question.IsShort);
    }

    /// <summary>A verdict for each cell; null without cells, or while it is on its way.</summary>
    internal ScreenedLot? Lot => lot.Of(CellsQuestion.Of(desk.Job));

    /// <summary>Whether the verdicts are on their way.</summary>
    internal bool IsJudging => lot.IsWorking;

    /// <summary>The grouping, or why there is none; null while it is on its way or cannot be asked.</summary>
    internal GroupingOutcome? Groups => groups.Of(GroupsAsked);

    /// <summary>What the grouping was asked.</summary>
    internal GroupsQuestion? GroupsAsked => GroupsQuestion.Of(desk.Job, Lot, prefer, fewestMoves);

    /// <summary>Whether there are cells and a shape to group them into.</summary>
    internal bool HasGroups => desk.Job is { Givens: { Series: not null, Parallel: not null } } job && (!job.Tables.IsEmpty || !job.AddedRows.IsEmpty);

    /// <summary>Chooses what the grouping favours.</summary>
    internal void Prefer(GroupingPreference preference, bool fewestMoves)
    {
        prefer = preference;
        this.fewestMoves = fewestMoves;
    }

    private GroupingOutcome Match(GroupsQuestion question, BackgroundWork work) =>
        question.Answer(work.Stopped, new Better(best =>
        {
            work.Best = $"smallest {best.SmallestAh:0.000} Ah, spread {best.SpreadAh:0.000} Ah";
            desk.Around.Back(desk.Around.Redraw);
        }));

    // Progress<T> would post to whatever context the worker has; this runs where it is called and only hands over words.
    private sealed class Better(Action<GroupingProgress> told) : IProgress<GroupingProgress>
    {
        public void Report(GroupingProgress value) => told(value);
    }
}
