using System.Globalization;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Tables;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>What the verb job can do. Each action takes the open job and the words after it.</summary>
internal static class JobActions
{
    internal static IReadOnlyList<(string Name, Func<VerbCall, OpenJob, string[], Outcome<JobActionDone>> Run)> All { get; } =
    [
        ("new", (_, job, _) => new JobActionDone(job, [])),
        ("set", Set),
        ("add", Add),
        ("remove", JobRemoveAction.Run),
        ("show", (_, job, _) => new JobActionDone(job, [])),
        ("verdict", Verdict),
        ("edit", Edit),
        ("lock", Lock),
        ("favour", JobFavourAction.Run),
        ("tap", Tap),
        ("undo", (_, job, _) => Step(job, job.History.UndoName, "undo", history => history.Undo())),
        ("redo", (_, job, _) => Step(job, job.History.RedoName, "redo", history => history.Redo())),
        ("copy", Copy),
        ("export", Export),
    ];

    /// <summary>The job after key=value words.</summary>
    internal static Outcome<JobHistory> Told(JobHistory history, string[] words, DateOnly today)
    {
        JobHistory before = history;
        foreach (string word in words)
        {
            if (!Pair(word, "series=13").Is(out KeyValuePair<string, string>? pair, out Refusal? why))
                return why;
            (string key, string value) = (pair.Value.Key, pair.Value.Value);
            if (key == "title" && value.Length > 0)
            {
                history = history.Do(JobChanges.Rename(value));
                continue;
            }

            if (GivenCatalogue.Find(key) is not { } entry)
                return Refusal.CommandLine("unknown-given", word, $"a job is not told \"{OneLine.Of(key)}\"",
                    $"Did you mean {NearestName.Of(key, GivenCatalogue.All.Select(known => known.Key).Append("title"))}? packplanner job show JOB lists them all.");
            if (TypedGiven.Read(entry, value, percentBeside: false, out JobValue? read) is { } wrong)
                return Refusal.CommandLine("bad-given", word, wrong, "Correct the value. Nothing was changed.");
            history = history.Do(JobChanges.Set(entry.Key, read is null ? null : new Given(read, Origin.You(today))));
        }

        // All that was told at once counts together; what stood wrong before does not bar the rest.
        return CellVoltsGiven.Wrong(before.Now.Givens) is null && CellVoltsGiven.Wrong(history.Now.Givens) is { } contradicts
            ? Refusal.CommandLine("bad-given", string.Join(' ', words), contradicts, "Correct the value. Nothing was changed.")
            : history;
    }

    private static Outcome<JobActionDone> Set(VerbCall call, OpenJob job, string[] words) => words.Length == 0
        ? Missing("set", "key=value, such as series=13")
        : Told(job.History, words, Today.Date()).Is(out JobHistory? history, out Refusal? why)
            ? new JobActionDone(job with { History = history }, [.. words.Select(word => $"set {word}")])
            : why;

    private static Outcome<JobActionDone> Add(VerbCall call, OpenJob job, string[] words)
    {
        if (words.Length == 0)
            return Missing("add", "files, such as cells.csv");
        ReadOptions options = call.ReadOptions();
        if (call.Wrong is { } wrong)
            return wrong;
        return JobAdding.Add(job.History, words, options).Is(out AddedFiles? added, out Refusal? why)
            ? call.UnmetColumn() is { } unmet ? unmet : new JobActionDone(job with { History = added.History }, added.Did, added.Account, added.Understood)
            : why;
    }

    private static Outcome<JobActionDone> Verdict(VerbCall call, OpenJob job, string[] words)
    {
        if (words is not [.. string[] labels, string typed] || labels.Length == 0)
            return Missing("verdict", "labels and use, hold, reject or auto, such as T091 hold --reason \"repeat it\"");
        Verdict verdict = default;
        bool auto = typed.Equals("auto", StringComparison.OrdinalIgnoreCase);
        if (!auto && !(Enum.TryParse(typed, ignoreCase: true, out verdict) && Enum.IsDefined(verdict) && !char.IsAsciiDigit(typed[0])))
            return Refusal.CommandLine("bad-verdict", typed, "it is none of use, hold, reject and auto", "Write the verdict after the labels.");
        string reason = call.Value(JobVerb.Reason) ?? "";
        if (!auto && reason.Length == 0)
            return Refusal.CommandLine("no-reason", "--reason", "a verdict by hand needs its reason", "Add --reason \"what you saw\".");
        if (Unknown(job, labels) is { } unknown)
            return unknown;
        JobHistory history = job.History;
        foreach (string label in labels)
            history = history.Do(JobChanges.SetVerdict(label, auto ? null : new VerdictOverride(verdict, reason, Origin.You(Today.Date()))));
        return new JobActionDone(job with { History = history }, [.. labels.Select(label => $"{typed.ToLowerInvariant()} {label}")]);
    }

    private static Outcome<JobActionDone> Edit(VerbCall call, OpenJob job, string[] words)
    {
        if (words.Length < 2)
            return Missing("edit", "a label and column=value, such as T091 capacityAh=4.1Ah; T091#2 is its second test");
        string[] name = words[0].Split('#');
        int test = 1;
        if (name.Length > 2 || (name.Length == 2 && !(int.TryParse(name[1], NumberStyles.None, CultureInfo.InvariantCulture, out test) && test > 0)))
            return Refusal.CommandLine("bad-test", words[0], "the number of the test was expected after #", "Write T091#2 for the second test of T091.");
        int tests = job.History.Now.Rows.Count(row => row.Label == name[0]);
        if (test > tests)
            return Unknown(job, [name[0]]) ?? Refusal.Input("no-such-test", words[0], $"{name[0]} has {tests} tests", "Count its tests from 1.");
        JobHistory history = job.History;
        foreach (string word in words[1..])
        {
            if (!Pair(word, "capacityAh=4.1Ah").Is(out KeyValuePair<string, string>? pair, out Refusal? why))
                return why;
            if (TypedCellValue.Column(pair.Value.Key) is not { } field)
                return Refusal.CommandLine("unknown-column", word, $"cells have no column \"{OneLine.Of(pair.Value.Key)}\"",
                    $"Did you mean {NearestName.Of(pair.Value.Key, TypedCellValue.Columns)}? Known are {string.Join(", ", TypedCellValue.Columns)}.");
            if (TypedCellValue.Read(field, pair.Value.Value, out JobValue? value) is { } wrong)
                return Refusal.CommandLine("bad-value", word, wrong, "Correct the value. Nothing was changed.");
            history = history.Do(JobChanges.Edit(new CellKey(name[0], test, field), new CellEdit(value, Origin.You(Today.Date()))));
        }

        return new JobActionDone(job with { History = history }, [$"changed {words.Length - 1} values of {words[0]}; what was read is kept"]);
    }

    private static Outcome<JobActionDone> Lock(VerbCall call, OpenJob job, string[] words)
    {
        if (words.Length == 0)
            return Missing("lock", "label=group, such as T005=1; T005= sets it free");
        JobHistory history = job.History;
        foreach (string word in words)
        {
            if (!Pair(word, "T005=1").Is(out KeyValuePair<string, string>? pair, out Refusal? why))
                return why;
            int group = 0;
            if (pair.Value.Value.Length > 0 && !(int.TryParse(pair.Value.Value, NumberStyles.None, CultureInfo.InvariantCulture, out group) && group > 0))
                return Refusal.CommandLine("bad-group", word, "the number of a group from 1 was expected", "Write label=group, such as T005=1.");
            if (Unknown(job, [pair.Value.Key]) is { } unknown)
                return unknown;
            history = history.Do(JobChanges.Lock(pair.Value.Key, group == 0 ? null : group));
        }

        return new JobActionDone(job with { History = history }, [.. words.Select(word => $"lock {word}")]);
    }

    private static Outcome<JobActionDone> Tap(VerbCall call, OpenJob job, string[] words)
    {
        if (words.Length == 0)
            return Missing("tap", "tap=volts from pack minus, such as 3=10.86V");
        JobHistory history = job.History;
        foreach (string word in words)
        {
            if (!Pair(word, "3=10.86V").Is(out KeyValuePair<string, string>? pair, out Refusal? why))
                return why;
            if (!int.TryParse(pair.Value.Key.TrimStart('B', 'b'), NumberStyles.None, CultureInfo.InvariantCulture, out int tap))
                return Refusal.CommandLine("bad-tap", word, "the number of a tap was expected before =", "Write 3=10.86V; tap 0 is pack minus.");
            if (TypedCellValue.Volts(pair.Value.Value, out JobValue? value) is { } wrong)
                return Refusal.CommandLine("bad-value", word, wrong, "Correct the value. Nothing was changed.");
            history = history.Do(JobChanges.ReadTap(tap, value is JobValue.Number volts ? new TapReading(volts.Value, Origin.You(Today.Date())) : null));
        }

        return new JobActionDone(job with { History = history }, [.. words.Select(word => $"tap {word}")]);
    }

    private static Outcome<JobActionDone> Step(OpenJob job, string? name, string what, Func<JobHistory, JobHistory> move) => name is null
        ? Refusal.NoAnswer($"nothing-to-{what}", job.Path, $"there is nothing to {what}", "packplanner job show JOB lists the changes.")
        : new JobActionDone(job with { History = move(job.History) }, [$"{what}: {name}"]);

    private static Outcome<JobActionDone> Copy(VerbCall call, OpenJob job, string[] words) => words is not [string to]
        ? Missing("copy", "the new job's file")
        : JobFile.Copy(job, to).Is(out OpenJob? copy, out Refusal? why) ? new JobActionDone(copy, [$"copied to {copy.Path}"]) : why;

    private static Outcome<JobActionDone> Export(VerbCall call, OpenJob job, string[] words)
    {
        if (words.Length > (call.Value(JobVerb.Into) is null ? 1 : 0))
            return Refusal.CommandLine("unexpected-word", words[^1], "export writes all that the job holds into one folder", "Leave the word out; choose among the files afterwards.");
        string folder = call.Value(JobVerb.Into) ?? (words is [string named] ? named : "");
        if (folder.Length == 0)
            return Missing("export", "a folder: --into DIR");
        return JobExport.Write(job, folder, call.DecimalOut == "comma", call.Stopped).Is(out IReadOnlyList<string>? files, out Refusal? why)
            ? new JobActionDone(job, [.. files.Select(file => $"wrote {file}")], Understood: JobExport.NotInTheTable(job.History.Now), Files: files)
            : why;
    }

    private static Refusal Missing(string action, string what) =>
        Refusal.CommandLine("words-missing", $"job {action}", $"it wants {what}", "packplanner help job shows examples.");

    private static Refusal? Unknown(OpenJob job, string[] labels)
    {
        HashSet<string> known = [.. job.History.Now.Rows.Select(row => row.Label)];
        return labels.FirstOrDefault(label => !known.Contains(label)) is not { } stranger ? null
            : known.Count == 0 ? Refusal.Input("no-cells", stranger, "the job has no cells yet", "Add a table by job add JOB cells.csv.")
            : Refusal.Input("unknown-cell", stranger, "the job has no cell of this label", $"Did you mean {NearestName.Of(stranger, known)}? Nothing was changed.");
    }

    private static Outcome<KeyValuePair<string, string>?> Pair(string word, string example)
    {
        int equals = word.IndexOf('=', StringComparison.Ordinal);
        return equals > 0
            ? new KeyValuePair<string, string>?(new(word[..equals].Trim(), word[(equals + 1)..].Trim()))
            : Refusal.CommandLine("no-equals", word, "a name, an equals sign and a value were expected", $"Write it as {example}.");
    }
}
