using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens;

/// <summary>Job files on the user's disk: new, open, copy, put aside, and which one was on screen last.</summary>
internal sealed class JobStore(Desk desk, Surroundings around)
{
    private readonly Lock disk = new();
    private readonly Lock writing = new();
    private string remembered = "";
    private string? waiting;
    private bool writes;

    /// <summary>Why a name cannot be that of a new job; null when it can.</summary>
    internal string? WhyNotName(string name)
    {
        string file = FileOf(name);
        if (name.Trim().Length == 0)
            return "A job needs a name.";
        return File.Exists(file) ? $"{file} exists already; choose another name, or open it." : null;
    }

    /// <summary>Makes an empty job and puts it on the screen.</summary>
    internal bool New(string name) => Put(FileOf(name), JobHistory.Of(new Job { Title = name.Trim() }), step: 0);

    /// <summary>A copy of the job on screen under another name, to compare a variant.</summary>
    internal void CopyAs(string name)
    {
        if (desk.Open is not { } open)
            return;
        if (!JobFile.Copy(open.OpenFile, FileOf(name)).Is(out OpenJob? copy, out Refusal? why))
        {
            Tell(why);
            return;
        }

        desk.Use(new JobOnScreen(copy, around.Now), desk.At, isCopy: true);
        desk.Do(JobChanges.Rename(name.Trim()));
    }

    /// <summary>A copy of an invented job.</summary>
    internal void Demo(string name)
    {
        if (DemoStart.Of(name).Is(out JobHistory? history, out Refusal? why))
            Put(FreeFile(name), history, DemoStart.FirstStep(name));
        else
            Tell(why);
    }

    /// <summary>Opens a job file.</summary>
    internal bool OpenFile(string file)
    {
        if (!JobFile.Open(file).Is(out OpenJob? open, out Refusal? why))
        {
            Tell(why);
            return false;
        }

        JobFile.SweepStrays(open.Path);
        desk.Use(new JobOnScreen(open, around.Now), 0);
        return true;
    }

    /// <summary>Puts the job's file aside under another ending and closes it; nothing is erased.</summary>
    internal void Delete()
    {
        if (desk.Open is not { } open)
            return;
        string aside = FreeAside(open.File);
        try
        {
            File.Move(open.File, aside, overwrite: false);
            desk.Forget();
            Deleted = (open.File, aside);
            desk.Says = $"Put aside as {aside}; u brings it back.";
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            desk.Says = $"Not deleted: {OneLine.Of(fault.Message)} Nothing was changed.";
        }
    }

    /// <summary>The job that was put aside last while this program ran, and where it lies; null when none was.</summary>
    internal (string File, string Aside)? Deleted { get; private set; }

    /// <summary>Brings back what was put aside last, under its own name or a free one, and opens it.</summary>
    internal void BringBack()
    {
        if (Deleted is not { } deleted)
            return;
        try
        {
            string file = File.Exists(deleted.File) ? FreeFile(Path.GetFileName(deleted.File)[..^JobFile.Ending.Length]) : deleted.File;
            File.Move(deleted.Aside, file, overwrite: false);
            Deleted = null;
            if (OpenFile(file))
                desk.Says = $"brought back: {file}";
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            desk.Says = $"Not brought back: {OneLine.Of(fault.Message)} It lies as {deleted.Aside}.";
        }
    }

    /// <summary>Job files of the user's folder, the newest first.</summary>
    internal IReadOnlyList<string> Recent()
    {
        try
        {
            return Directory.Exists(around.JobsFolder)
                ? [.. new DirectoryInfo(around.JobsFolder).EnumerateFiles("*" + JobFile.Ending).OrderByDescending(file => file.LastWriteTimeUtc).ThenBy(file => file.Name, StringComparer.Ordinal).Take(50).Select(file => file.FullName)]
                : [];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    /// <summary>Opens the job that was named, or the one that was on screen last, at the same screen and row.</summary>
    internal void Resume(string? named)
    {
        LastPlace? last = LastPlace.Read(around.LastJobFile);
        // What was said on the command line wins over what was chosen last time.
        if (last is not null)
            desk.Lasting = last.Look;
        if (desk.Look == new Look())
            desk.Look = desk.Lasting;
        string? file = named is null ? last?.File : Path.GetFullPath(named);
        if (file is null || (named is null && !File.Exists(file)))
            return;
        if (OpenFile(file) && last is not null && last.File == file)
            last.Restore(desk);
    }

    /// <summary>Remembers where the user is, so that a kill loses nothing but the last keys.</summary>
    internal void RememberPlace()
    {
        string place = LastPlace.Of(desk);
        if (place == remembered)
            return;
        remembered = place;
        // No key waits for the disk. One writer at a time, and it always takes the newest place.
        lock (writing)
        {
            waiting = place;
            if (writes)
                return;
            writes = true;
        }

        around.Aside(WritePlaces);
    }

    /// <summary>Remembers where the user is and waits until that is written: for leaving.</summary>
    internal void RememberPlaceNow()
    {
        lock (disk)
        {
            lock (writing)
                waiting = null;
            LastPlace.Write(around.LastJobFile, remembered = LastPlace.Of(desk));
        }
    }

    /// <summary>Says why something could not be done.</summary>
    internal void Tell(Refusal why) => desk.Says = OneLine.Of($"{why.Problem.Where}: {why.Problem.Why}. {why.Problem.Remedy}");

    private void WritePlaces()
    {
        while (true)
        {
            // A place is taken only by whoever may write it, so that an older one never lands on a newer one.
            lock (disk)
            {
                string? place;
                lock (writing)
                {
                    (place, waiting) = (waiting, null);
                    writes = place is not null;
                }

                if (place is null)
                    return;
                LastPlace.Write(around.LastJobFile, place);
            }
        }
    }

    private bool Put(string file, JobHistory history, int step)
    {
        try
        {
            Directory.CreateDirectory(around.JobsFolder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            desk.Says = $"{around.JobsFolder} cannot be made: {OneLine.Of(fault.Message)} Nothing was changed.";
            return false;
        }

        if (!JobFile.Create(file, history).Is(out OpenJob? open, out Refusal? why))
        {
            Tell(why);
            return false;
        }

        desk.Use(new JobOnScreen(open, around.Now), step);
        return true;
    }

    // A job of the same name may have been put aside before; it is nobody's to erase.
    private static string FreeAside(string file)
    {
        string aside = Path.ChangeExtension(file, ".deleted.json");
        for (int i = 2; File.Exists(aside) || Directory.Exists(aside); i++)
            aside = Path.ChangeExtension(file, FormattableString.Invariant($".deleted-{i}.json"));
        return aside;
    }

    private string FreeFile(string name)
    {
        string file = FileOf(name);
        for (int i = 2; File.Exists(file); i++)
            file = FileOf($"{name} {i}");
        return file;
    }

    private string FileOf(string name)
    {
        string bare = string.Concat(name.Trim().Select(c => char.IsLetterOrDigit(c) || c is '-' or '_' ? char.ToLowerInvariant(c) : '-')).Trim('-');
        return Path.Combine(around.JobsFolder, (bare.Length == 0 ? "job" : bare) + JobFile.Ending);
    }
}
