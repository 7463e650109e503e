using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Every field of a job's state. A property of <see cref="Job"/> that is not here would be lost; a test counts them.</summary>
internal static class JobParts
{
    internal static IReadOnlyList<JobPart> All { get; } =
    [
        new("title", job => job.Title, job => job.Title, (job, state, _) => job with { Title = state.Text("title") ?? "job" }),
        new("demo", job => job.IsDemo, job => job.IsDemo ? true : null, (job, state, _) => job with { IsDemo = state.Flag("demo") ?? false }),
        new("givens", job => job.Givens.Known, job => Keyed(job.Givens.Known, GivenText), ReadGivens),
        new("tables", job => job.Tables, job => Ids(job.Tables.Select(table => table.Source)),
            (job, state, sources) => job with { Tables = [.. sources.Of<JobTable>(state, "tables")] }),
        new("addedRows", job => job.AddedRows, job => ListOf(job.AddedRows.Select(row => (JsonNode)CellRowNode.Of(row))),
            (job, state, _) => job with { AddedRows = [.. state.Parts("addedRows").Select(CellRowText.Read)] }),
        new("edits", job => job.Edits, EditParts.Write, (job, state, _) => job with { Edits = EditParts.Read(state) }),
        new("verdicts", job => job.Verdicts, job => Keyed(job.Verdicts, VerdictText), ReadVerdicts),
        new("locks", job => job.Locks, job => Keyed(job.Locks, group => group), ReadLocks),
        new("grouping", job => job.Grouping, job => job.Grouping is { } grouping ? GroupingText(grouping) : null, ReadGrouping),
        new("favour", job => job.Favour, job => job.Favour == GroupsFavour.EqualAh ? null : FavourText.Of(job.Favour), ReadFavour),
        new("fitCase", job => job.FitCase, job => job.FitCase?.Source.Id, (job, state, sources) => job with { FitCase = sources.One(state, "fitCase") }),
        new("fitAnswer", job => job.FitAnswer, job => job.FitAnswer?.Source.Id, (job, state, sources) => job with { FitAnswer = sources.One(state, "fitAnswer") }),
        new("sizeNeed", job => job.SizeNeed, job => job.SizeNeed?.Source.Id, (job, state, sources) => job with { SizeNeed = sources.One(state, "sizeNeed") }),
        new("placement", job => job.Placement, PlacementParts.Write, (job, state, _) => job with { Placement = PlacementParts.Read(state) }),
        new("logs", job => job.Logs, job => Ids(job.Logs.Select(log => log.Source)),
            (job, state, sources) => job with { Logs = [.. sources.Of<JobLog>(state, "logs")] }),
        new("tapReadings", job => job.TapReadings, job => Keyed(job.TapReadings, TapText), ReadTaps),
        new("cautionsRead", job => job.CautionsRead, job => Words(job.CautionsRead), (job, state, _) => job with { CautionsRead = Set(state, "cautionsRead") }),
        new("sheetsTicked", job => job.SheetsTicked, job => Words(job.SheetsTicked), (job, state, _) => job with { SheetsTicked = Set(state, "sheetsTicked") }),
        new("sourcesEver", job => job.SourcesEver, job => job.SourcesEver, (job, state, _) => job with { SourcesEver = state.Whole("sourcesEver", 0) ?? 0 }),
    ];

    /// <summary>The whole state.</summary>
    internal static JsonObject Write(Job job)
    {
        JsonObject state = [];
        foreach (JobPart part in All)
        {
            if (part.Write(job) is { } node)
                state[part.Name] = node;
        }

        return state;
    }

    /// <summary>What must be applied to one job's state to get another's; parts that they share are not looked at.</summary>
    internal static JsonObject Patch(Job from, Job to)
    {
        JsonObject before = [];
        JsonObject after = [];
        foreach (JobPart part in All.Where(part => !Equals(part.Shared(from), part.Shared(to))))
        {
            if (part.Write(from) is { } was)
                before[part.Name] = was;
            if (part.Write(to) is { } now)
                after[part.Name] = now;
        }

        return MergePatch.Between(before, after);
    }

    private static Job ReadGivens(Job job, JsonInput state, JobSources sources)
    {
        JobGivens givens = JobGivens.None;
        if (state.Part("givens") is not { } part)
            return job with { Givens = givens };
        // A key that this version does not know is kept in the file as an unknown field.
        foreach (string key in part.Names.Where(key => GivenCatalogue.Find(key)?.Key == key))
        {
            if (part.Part(key) is { } given && JobValueText.Read(given) is { } value)
                givens = givens.With(key, new Given(value, JobValueText.ReadOrigin(given)));
        }

        return job with { Givens = givens };
    }

    private static Job ReadVerdicts(Job job, JsonInput state, JobSources sources)
    {
        ImmutableSortedDictionary<string, VerdictOverride>.Builder verdicts = ImmutableSortedDictionary.CreateBuilder<string, VerdictOverride>(StringComparer.Ordinal);
        foreach ((string label, JsonInput part) in PartsOf(state, "verdicts"))
        {
            if (Enum.TryParse(part.Text("verdict"), ignoreCase: true, out Verdict verdict) && Enum.IsDefined(verdict))
                verdicts[label] = new VerdictOverride(verdict, part.Text("reason") ?? "", JobValueText.ReadOrigin(part));
            else
                part.Refuse("verdict", $"is \"{part.Text("verdict")}\", use, hold or reject was expected", "Write one of the three.");
        }

        return job with { Verdicts = verdicts.ToImmutable() };
    }

    private static Job ReadLocks(Job job, JsonInput state, JobSources sources)
    {
        ImmutableSortedDictionary<string, int>.Builder locks = ImmutableSortedDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        JsonInput? part = state.Part("locks");
        foreach (string label in part?.Names ?? [])
        {
            if (part!.Whole(label, 1) is { } group)
                locks[label] = group;
        }

        return job with { Locks = locks.ToImmutable() };
    }

    private static Job ReadGrouping(Job job, JsonInput state, JobSources sources)
    {
        if (state.Part("grouping") is not { } part)
            return job with { Grouping = null };
        IReadOnlyList<string>[] groups = [.. part.Parts("groups").Select(group => group.Texts("cells") ?? [])];
        JobSource? source = part.Part("source") is { } read ? SourceText.ReadSource(read.Text("id") ?? "", read) : null;
        return job with { Grouping = new JobGrouping(groups, JobValueText.ReadOrigin(part), source) };
    }

    private static Job ReadFavour(Job job, JsonInput state, JobSources sources)
    {
        if (state.Text("favour") is not { } named)
            return job with { Favour = GroupsFavour.EqualAh };
        if (FavourText.Read(named) is { } favour)
            return job with { Favour = favour };
        state.Refuse("favour", $"is \"{named}\"", $"Write {string.Join(", ", FavourText.Names)}, or leave it out.");
        return job;
    }

    private static Job ReadTaps(Job job, JsonInput state, JobSources sources)
    {
        ImmutableSortedDictionary<int, TapReading>.Builder taps = ImmutableSortedDictionary.CreateBuilder<int, TapReading>();
        foreach ((string tap, JsonInput part) in PartsOf(state, "tapReadings"))
        {
            if (int.TryParse(tap, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && part.Number("volts") is { } volts)
                taps[number] = new TapReading(volts, JobValueText.ReadOrigin(part), part.Text("groupsBelow"));
            else
                part.Refuse("volts", $"is missing, or tap \"{tap}\" is not a number", "Name taps 0, 1, 2 and give each its volts.");
        }

        return job with { TapReadings = taps.ToImmutable() };
    }

    private static JsonObject GivenText(Given given)
    {
        JsonObject node = [];
        JobValueText.Write(node, given.Value);
        JobValueText.Write(node, given.From);
        return node;
    }

    private static JsonObject VerdictText(VerdictOverride verdict)
    {
        JsonObject node = new() { ["verdict"] = verdict.Verdict.ToString().ToLowerInvariant(), ["reason"] = verdict.Reason };
        JobValueText.Write(node, verdict.From);
        return node;
    }

    private static JsonObject GroupingText(JobGrouping grouping)
    {
        JsonObject node = new()
        {
            ["groups"] = ListOf(grouping.Groups.Select((cells, i) => (JsonNode)new JsonObject { ["group"] = i + 1, ["cells"] = Words(cells) ?? [] })),
        };
        JobValueText.Write(node, grouping.From);
        if (grouping.Source is { } source)
        {
            node["source"] = new JsonObject
            {
                ["id"] = source.Id,
                ["file"] = source.File,
                ["sha256"] = source.Sha256,
                ["kind"] = SourceText.Name(source.Kind),
                ["understood"] = Words(source.Understood) ?? [],
            };
        }

        return node;
    }

    private static JsonObject TapText(TapReading reading)
    {
        JsonObject node = new() { ["volts"] = reading.Volts };
        JobValueText.Write(node, reading.From);
        if (reading.GroupsBelow is { } below)
            node["groupsBelow"] = below;
        return node;
    }

    /// <summary>The objects of a field that is keyed by label or number.</summary>
    internal static IEnumerable<(string Name, JsonInput Part)> PartsOf(JsonInput input, string field)
    {
        if (input.Part(field) is not { } keyed)
            yield break;
        foreach (string name in keyed.Names)
        {
            if (keyed.Part(name) is { } part)
                yield return (name, part);
        }
    }

    internal static JsonArray? Words(IEnumerable<string> words) => ListOf(words.Select(word => (JsonNode)JsonValue.Create(word)));

    private static JsonArray? Ids(IEnumerable<JobSource> sources) => Words(sources.Select(source => source.Id));

    private static JsonArray? ListOf(IEnumerable<JsonNode> items) => items.ToArray() is { Length: > 0 } some ? new JsonArray(some) : null;

    private static JsonObject? Keyed<TKey, T>(IReadOnlyDictionary<TKey, T> entries, Func<T, JsonNode> write)
        where TKey : notnull
    {
        if (entries.Count == 0)
            return null;
        JsonObject node = [];
        foreach ((TKey key, T value) in entries)
            node[string.Create(CultureInfo.InvariantCulture, $"{key}")] = write(value);
        return node;
    }

    private static ImmutableSortedSet<string> Set(JsonInput state, string field) =>
        ImmutableSortedSet.Create(StringComparer.Ordinal, state.Texts(field) ?? []);
}
