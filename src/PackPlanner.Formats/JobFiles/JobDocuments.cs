using System.Text;
using System.Text.Json;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.JobFiles;

/// <summary>JSON documents of ours on their way into a job: told apart by what they hold, not by their names.</summary>
public static class JobDocuments
{
    /// <summary>The change that takes a JSON file in.</summary>
    /// <param name="file">The file, as named by the user.</param>
    /// <param name="bytes">Its content.</param>
    /// <param name="job">The job it is to go into.</param>
    /// <returns>The change, or why the file has no place in a job.</returns>
    public static Outcome<JobChange> Change(string file, byte[] bytes, Job job)
    {
        ReadOnlyMemory<byte> text = bytes.AsSpan() is [0xEF, 0xBB, 0xBF, ..] ? bytes.AsMemory(3) : bytes;
        JsonElement root;
        try
        {
            using JsonDocument document = JsonDocument.Parse(text, Lenient);
            root = document.RootElement.Clone();
        }
        catch (JsonException fault)
        {
            return Refusal.Input("not-json", $"{file}, line {fault.LineNumber + 1}", "this is not JSON", "Mend the file there. Nothing was added.");
        }

        if (root.ValueKind != JsonValueKind.Object)
            return Unknown(file);
        if (JsonVersion.Newer(file, root) is { } newer)
            return newer;
        JsonInput input = JsonInput.Of(file, root);
        SourceKind? kind = KindOf(input);
        // Figures of an answer are worked out, many of them for a group: none of them is a given of the job.
        if (kind is null && SchemaOf(input) is var schema && schema.StartsWith(Answers, StringComparison.Ordinal))
            return Refusal.Input("answer-not-a-given", file, $"this is an answer of packplanner {OneLine.Of(schema[Answers.Length..])}, and what it says was worked out, not measured",
                "Add the table or log that it came from, or an answer of match or fit; set what the job is to know by job set JOB series=13. Nothing was added.");
        JobSource Source(SourceKind of) => new(job.NextSourceId, Path.GetFileName(file), JobFile.FingerprintOf(bytes), of, []);
        return kind switch
        {
            SourceKind.Groups => Grouping(input, Source(SourceKind.Groups)),
            SourceKind.FitAnswer => Places(job, new JobDocument(Source(SourceKind.FitAnswer), Encoding.UTF8.GetString(text.Span))),
            SourceKind.FitCase when !FitCaseJson.Read(JsonInput.Of(file, root), []).Is(out _, out Refusal? unreadable) => unreadable,
            SourceKind.FitCase or SourceKind.SizeNeed =>
                GivensOfDocument.With(JobChanges.AddDocument(new JobDocument(Source(kind.Value), Encoding.UTF8.GetString(text.Span))), kind.Value, input),
            _ => IsGivens(input) ? Givens(input) : Unknown(file),
        };
    }

    /// <summary>Opens a document that a job holds.</summary>
    /// <param name="document">The document.</param>
    /// <returns>Its outermost object; refused when the job was damaged by hand.</returns>
    public static Outcome<JsonInput> Root(JobDocument document)
    {
        try
        {
            using JsonDocument text = JsonDocument.Parse(document.Text, Lenient);
            return text.RootElement.ValueKind == JsonValueKind.Object ? JsonInput.Of(document.Source.File, text.RootElement.Clone()) : Damaged(document);
        }
        catch (JsonException)
        {
            return Damaged(document);
        }
    }

    internal static readonly JsonDocumentOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    private static Refusal Damaged(JobDocument document) =>
        Refusal.Input("bad-document", document.Source.File, "what the job holds of it is not a JSON object", "Add the file again.");

    private const string Answers = "packplanner/";

    private static string SchemaOf(JsonInput input) => input.Raw("schema") is { ValueKind: JsonValueKind.String } named ? named.GetString()! : "";

    private static SourceKind? KindOf(JsonInput input)
    {
        string schema = SchemaOf(input);
        return schema switch
        {
            "packplanner/match" => SourceKind.Groups,
            "packplanner-fit-case" => SourceKind.FitCase,
            "packplanner/fit" => SourceKind.FitAnswer,
            "packplanner-size-case" => SourceKind.SizeNeed,
            _ when schema.StartsWith(Answers, StringComparison.Ordinal) => null,
            _ when input.Has("groups") && input.Raw("groups") is { ValueKind: JsonValueKind.Array } => SourceKind.Groups,
            _ when input.Has("need") || input.Has("electrics") => SourceKind.SizeNeed,
            _ when input.Has("cavity") && input.Has("cell") => SourceKind.FitCase,
            _ when input.Has("count") && input.Has("cells") => SourceKind.FitAnswer,
            _ => null,
        };
    }

    // Places without their space could be held against nothing.
    private static Outcome<JobChange> Places(Job job, JobDocument places) => job.FitCase is null
        ? Refusal.Input("no-cavity", places.Source.File, "these are places of a space that the job does not have", "Add its fit case first: job add JOB case.json fit.json. Nothing was added.")
        : JobFit.Find(job with { FitAnswer = places }, CancellationToken.None).Is(out _, out Refusal? why) ? JobChanges.AddDocument(places) : why;

    private static Outcome<JobChange> Grouping(JsonInput input, JobSource source)
    {
        List<IReadOnlyList<string>> groups = [];
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (JsonInput group in input.Parts("groups"))
        {
            string[] cells = group.Texts("cells") ?? [];
            if (cells.Length == 0)
                group.Refuse("cells", "is missing or empty", "Give the labels of the cells of each group, as match prints them.");
            foreach (string label in cells.Where(label => !seen.Add(label)))
                group.Refuse("cells", $"names {label}, which stands in a group before it", "Name each cell once.");
            groups.Add(cells);
        }

        return input.Wrong is { } wrong ? wrong
            : groups.Count == 0 ? Refusal.Input("no-groups", input.File, "it has no groups", "Add what packplanner match --json printed. Nothing was added.")
            : JobChanges.AddGrouping(new JobGrouping(groups, new Origin(source.File, Standing.Measured), source));
    }

    // The names that given.json of the diagnosis uses, beside our own keys.
    private static readonly Dictionary<string, string> OtherNames = new(StringComparer.OrdinalIgnoreCase)
    {
        ["fullVoltage"] = "fullV",
        ["emptyVoltage"] = "emptyV",
        ["nominalVoltage"] = "nominalV",
    };

    private static bool IsGivens(JsonInput input) =>
        input.Names.Any(name => GivenCatalogue.Find(OtherNames.GetValueOrDefault(name, name)) is not null) || input.Has("ratedGroupAh");

    private static Outcome<JobChange> Givens(JsonInput input)
    {
        Origin origin = new(Path.GetFileName(input.File), Standing.Measured);
        JobGivens told = JobGivens.None;
        foreach (string name in input.Names)
        {
            if (GivenCatalogue.Find(OtherNames.GetValueOrDefault(name, name)) is not { } entry || Value(input, name, entry) is not { } value)
                continue;
            told = told.With(entry.Key, new Given(value, origin));
        }

        // A group's rated charge is P cells'; kept as the cell's, because that is what the user can look up.
        if (input.Number("ratedGroupAh", 0) is { } groupAh && told.RatedAh is null)
            told = told.With("ratedAh", new Given(new JobValue.Number(groupAh / (told.Parallel ?? 1)), origin));
        return input.Wrong is { } wrong ? wrong : new JobChange($"take givens from {origin.From}", job =>
            job with { Givens = told.Known.Aggregate(job.Givens, (givens, pair) => givens.With(pair.Key, pair.Value)) });
    }

    private static JobValue? Value(JsonInput input, string name, GivenEntry entry)
    {
        switch (entry.Kind)
        {
            case GivenKind.YesNo:
                return input.Flag(name) is { } flag ? new JobValue.YesNo(flag) : null;
            case GivenKind.Words:
                return input.Text(name) is { Length: > 0 } words ? new JobValue.Word(words) : null;
            case GivenKind.Chemistry:
                if (input.Text(name) is not { } typed)
                    return null;
                if (Chemistries.Find(typed) is { } chemistry)
                    return new JobValue.Word(chemistry.Name);
                input.Refuse(name, $"is \"{typed}\"", $"Use one of {string.Join(", ", Chemistries.All.Select(known => known.Name))}.");
                return null;
            default:
                if (input.Number(name) is not { } number)
                    return null;
                if (TypedGiven.OutOfRange(entry.Kind, number) is not { } why)
                    return new JobValue.Number(number);
                input.Refuse(name, $"is {number.ToString("R", System.Globalization.CultureInfo.InvariantCulture)}, and {why}{(entry.Kind == GivenKind.Fraction ? ", written as 0 to 1" : "")}", "Correct the figure. Nothing was added.");
                return null;
        }
    }

    private static Refusal Unknown(string file) => Refusal.Input("no-place-in-a-job", file,
        "this JSON is none of: a match answer, a fit case, a fit answer, a size need, givens", "See docs/files.md for their fields. Nothing was added.");
}
