using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Screens;

/// <summary>The job on screen and the file in which every change is kept at once.</summary>
internal sealed class JobOnScreen(OpenJob opened, Func<DateTime> now)
{
    private OpenJob open = opened;

    internal string File => open.Path;

    internal OpenJob OpenFile => open;

    internal JobHistory History => open.History;

    internal Job Now => open.History.Now;

    /// <summary>When the last change was written; null before the first.</summary>
    internal DateTime? SavedAt { get; private set; }

    /// <summary>Why the last change could not be written; null when it was.</summary>
    internal Refusal? NotSaved { get; private set; }

    internal void Do(JobChange change) => Take(History.Do(change));

    internal void Undo() => Take(History.Undo());

    internal void Redo() => Take(History.Redo());

    /// <summary>Tries again to write what could not be written.</summary>
    internal void Save()
    {
        if (JobFile.Save(open).Is(out OpenJob? saved, out Refusal? why))
            (open, SavedAt) = (saved, now());
        NotSaved = why;
    }

    private void Take(JobHistory after)
    {
        if (ReferenceEquals(after, History))
            return;
        open = open with { History = after };
        Save();
    }
}
