using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Demos;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens;

/// <summary>Commands over whole jobs: new, open, copy, rename, delete.</summary>
internal static class JobCommands
{
    internal static IReadOnlyList<ListItem> Of(Desk desk)
    {
        List<ListItem> items =
        [
            new("new job", "", () => AskNew(desk, "my pack")),
            new("open a job", "", () => AskOpen(desk)),
            .. DemoJobs.Names.Select(name => new ListItem($"open an invented job: a copy of the {name}", "", () => desk.Store.Demo(name))),
        ];
        if (desk.Open is { } open)
        {
            items.Add(new("copy this job, to compare a variant", "", () => AskCopy(desk, open)));
            items.Add(new("rename this job", "", () => AskRename(desk)));
            items.Add(new("close this job", "", desk.Forget));
            items.Add(new("delete this job (it is put aside and can be opened again)", "", desk.Store.Delete));
        }

        return items;
    }

    internal static void AskNew(Desk desk, string suggested, Action? then = null)
    {
        desk.Show(new FieldOverlay(
            desk, "name of the job", $"Empty: {suggested}; a file's path: named after it, and read. Kept in {desk.Around.JobsFolder}.", "",
            name => desk.Store.WhyNotName(Named(name)),
            name =>
            {
                string? file = FileIn(name);
                if (!desk.Store.New(Named(name)))
                    return;
                if (file is not null)
                    Reading.ReadingStart.File(desk, file);
                else
                    then?.Invoke();
            }));

        string Named(string typed) => typed.Trim().Length == 0 ? suggested : FileIn(typed) is { } file ? Path.GetFileNameWithoutExtension(file) : typed;
    }

    /// <summary>Does what a key of a step does; without a job one is begun first, and then the key is pressed again on its step.</summary>
    internal static Action InJob(Desk desk, KeyEntry key, Action run) => () =>
    {
        int step = desk.At;
        if (desk.Job is not null)
        {
            run();
            return;
        }

        AskNew(desk, "my pack", () =>
        {
            desk.GoTo(step);
            desk.Press(key.Key);
        });
    };

    // Who is asked for a name and has a file in hand gives the file.
    private static string? FileIn(string typed) =>
        typed.AsSpan().ContainsAny('/', '\\', '.') && Reading.TypedPath.Full(typed, Environment.CurrentDirectory) is { } path && File.Exists(path) ? path : null;

    internal static void AskOpen(Desk desk)
    {
        IReadOnlyList<string> files = desk.Store.Recent();
        List<ListItem> items = [.. files.Select(file => new ListItem(Path.GetFileName(file), Path.GetDirectoryName(file) ?? "", () => desk.Store.OpenFile(file)))];
        items.Add(new ListItem("another file: type its path", "", () => desk.Show(new FieldOverlay(
            desk, "job file", "The whole path of a .job.json file.", desk.Around.JobsFolder + Path.DirectorySeparatorChar,
            path => File.Exists(JobPath(path)) ? null : "There is no such file.", path => desk.Store.OpenFile(JobPath(path))))));
        desk.Show(new ListOverlay(desk, "open a job", () => items));

        string JobPath(string typed) => Reading.TypedPath.Full(typed, desk.Around.JobsFolder) ?? desk.Around.JobsFolder;
    }

    private static void AskCopy(Desk desk, JobOnScreen open) => desk.Show(new FieldOverlay(
        desk, "name of the copy", "The copy is opened; this job stays as it is.", open.Now.Title + " 2",
        desk.Store.WhyNotName, name => desk.Store.CopyAs(name)));

    private static void AskRename(Desk desk) => desk.Show(new FieldOverlay(
        desk, "new name", "The title of the job; its file keeps its name. u takes it back.", desk.Job!.Title,
        name => string.IsNullOrWhiteSpace(name) ? "A job needs a name." : null,
        name => desk.Do(JobChanges.Rename(name.Trim()))));
}
