using System.Collections.Immutable;

namespace PackPlanner.Core.Jobs;

/// <summary>A job with every change that led to it, so that each can be taken back and made again, without limit.</summary>
/// <remarks>
/// Jobs share what a change did not touch, so a thousand changes cost little more than one. The revision never falls:
/// an undo counts up too, or two sheets of one number could differ. Ticks of sheets and cautions marked as read change nothing on any sheet, and so
/// they can be taken back but are not counted: sheets of one design carry one revision.
/// </remarks>
public sealed record JobHistory
{
    /// <summary>The job as it stands.</summary>
    public required Job Now { get; init; }

    /// <summary>How often the job was changed, undo and redo included, ticks and marks left out; stands on every sheet.</summary>
    public int Revision { get; init; }

    /// <summary>Changes made, oldest first.</summary>
    public ImmutableList<JobStep> Done { get; init; } = [];

    /// <summary>Changes taken back, the last one taken back first.</summary>
    public ImmutableList<JobStep> Undone { get; init; } = [];

    /// <summary>Name of the change that undo would take back; null when there is none.</summary>
    public string? UndoName => Done.IsEmpty ? null : Done[^1].Name;

    /// <summary>Name of the change that redo would make again; null when there is none.</summary>
    public string? RedoName => Undone.IsEmpty ? null : Undone[0].Name;

    /// <summary>A job without changes.</summary>
    /// <param name="job">The job.</param>
    /// <returns>Its history.</returns>
    public static JobHistory Of(Job job) => new() { Now = job };

    /// <summary>Makes a change. One that changes nothing is not counted.</summary>
    /// <param name="change">The change.</param>
    /// <returns>The new history; changes that had been taken back are gone.</returns>
    public JobHistory Do(JobChange change)
    {
        Job after = change.Apply(Now);
        return after == Now
            ? this
            : this with { Now = after, Revision = Revision + Counted(Now, after), Done = Done.Add(new JobStep(change.Name, Now, after)), Undone = [] };
    }

    /// <summary>Takes the last change back.</summary>
    /// <returns>The new history; the same one when there is nothing to take back.</returns>
    public JobHistory Undo() => Done.IsEmpty ? this : this with
    {
        Now = Done[^1].Before,
        Revision = Revision + Counted(Now, Done[^1].Before),
        Done = Done.RemoveAt(Done.Count - 1),
        Undone = Undone.Insert(0, Done[^1]),
    };

    /// <summary>Makes the change that was last taken back again.</summary>
    /// <returns>The new history; the same one when there is nothing to make again.</returns>
    public JobHistory Redo() => Undone.IsEmpty ? this : this with
    {
        Now = Undone[0].After,
        Revision = Revision + Counted(Now, Undone[0].After),
        Done = Done.Add(Undone[0]),
        Undone = Undone.RemoveAt(0),
    };

    private static int Counted(Job before, Job after) => before with { SheetsTicked = after.SheetsTicked, CautionsRead = after.CautionsRead } == after ? 0 : 1;
}
