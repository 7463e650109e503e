using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Unicode;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>A job as the text of its file, and back.</summary>
/// <remarks>
/// The file holds the state as it stands, the added files' content once each, and for every change the patch that
/// takes it back (or makes it again): a thousand changes of a word cost a thousand short lines.
/// </remarks>
internal static class JobText
{
    internal const string Schema = "packplanner/job";

    internal const int Version = 1;

    private static readonly string[] KnownFields = ["schema", "version", "revision", "state", "sources", "history"];

    // A step never changes, and all steps are written with every change.
    private static readonly ConditionalWeakTable<JobStep, string[]> Patches = [];

    internal static byte[] Write(JobHistory history, UnknownFields unknown)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter writer = new(bytes, JsonDocumentText.Options))
        {
            writer.WriteStartObject();
            writer.WriteString("schema", Schema);
            writer.WriteNumber("version", Version);
            writer.WriteNumber("revision", history.Revision);
            JsonObject state = JobParts.Write(history.Now);
            unknown.Below("state").PutBack(state);
            WriteNode(writer, "state", state);
            writer.WriteStartObject("sources");
            foreach (object held in Held(history))
                SourceText.Write(writer, held, unknown.Below("sources").Below(SourceText.SourceOf(held).Id));
            writer.WriteEndObject();
            WriteHistory(writer, history);
            foreach ((string name, JsonNode? value) in unknown.Fields)
                WriteNode(writer, name, value);
            writer.WriteEndObject();
        }

        bytes.WriteByte((byte)'\n');
        return bytes.ToArray();
    }

    /// <summary>Reads a job from the text of its file.</summary>
    /// <param name="file">What to call it in messages.</param>
    /// <param name="text">The file, UTF-8.</param>
    internal static Outcome<(JobHistory History, UnknownFields Unknown)> Read(string file, ReadOnlyMemory<byte> text)
    {
        if (!Utf8.IsValid(text.Span))
            return NotAJob(file, "it holds bytes that are not UTF-8 text");
        JsonElement root;
        try
        {
            using JsonDocument document = JsonDocument.Parse(text, new JsonDocumentOptions { AllowDuplicateProperties = false });
            root = document.RootElement.Clone();
        }
        catch (JsonException fault)
        {
            return Refusal.Input("job-not-json", $"{file}, line {fault.LineNumber + 1}", "this is not a job file: it is not JSON from there on",
                "Name the job's own file, NAME.job.json, or take a copy that is whole. Nothing was changed.");
        }

        if (root.ValueKind != JsonValueKind.Object)
            return NotAJob(file, "its outermost value is not an object");
        JsonInput input = JsonInput.Of(file, root);
        if (input.Text("schema") is var schema && schema != Schema)
            return NotAJob(file, schema is null ? "it has no field schema" : $"its schema is {schema}");
        if (input.Whole("version", 1) is not { } version)
            return NotAJob(file, "it has no version");
        if (version > Version)
            return Refusal.Input("job-too-new", file, $"it was written by a newer version of this program (file version {version}, known here: {Version})",
                "Update the program. Nothing was changed.");
        if (input.Part("state") is null)
            return NotAJob(file, "it has no state; what job show prints is an answer, not a job");
        return Build(input, root);
    }

    private static Outcome<(JobHistory History, UnknownFields Unknown)> Build(JsonInput input, JsonElement root)
    {
        Dictionary<string, object> byId = [];
        foreach ((string id, JsonInput part) in JobParts.PartsOf(input, "sources"))
        {
            if (SourceText.Read(id, part) is { } held)
                byId[id] = held;
        }

        JobSources sources = new(byId);
        JsonInput state = input.Part("state")!;
        Job now = JobParts.All.Aggregate(new Job { Title = "" }, (job, part) => part.Read(job, state, sources));
        if (input.Wrong is { } wrong)
            return wrong;
        if (!ReadHistory(input, root, now, sources).Is(out JobHistory? history, out Refusal? why))
            return why;
        history = history with { Revision = input.Whole("revision", 0) ?? 0 };
        return (history, Unknown(root, history));
    }

    private static Outcome<JobHistory> ReadHistory(JsonInput input, JsonElement root, Job now, JobSources sources)
    {
        if (input.Part("history") is not { } part)
            return JobHistory.Of(now);
        JobHistory history = JobHistory.Of(now);
        Job at = now;
        JsonObject state = JsonObject.Create(root.GetProperty("state"))!;
        foreach (JsonInput step in part.Parts("done").Reverse())
        {
            Job before = Patched(input.File, state, step, "undo", at, sources);
            history = history with { Done = history.Done.Insert(0, new JobStep(step.Text("name") ?? "change", before, at)) };
            at = before;
        }

        at = now;
        state = JsonObject.Create(root.GetProperty("state"))!;
        foreach (JsonInput step in part.Parts("undone"))
        {
            Job after = Patched(input.File, state, step, "redo", at, sources);
            history = history with { Undone = history.Undone.Add(new JobStep(step.Text("name") ?? "change", at, after)) };
            at = after;
        }

        return input.Wrong is { } wrong ? wrong : history;
    }

    // Only the fields that the patch touches are read again; all others are shared with the job beside.
    private static Job Patched(string file, JsonObject state, JsonInput step, string field, Job beside, JobSources sources)
    {
        if (step.Raw(field) is not { ValueKind: JsonValueKind.Object } element)
        {
            step.Refuse(field, "is missing", "Take the file from a copy that is whole.");
            return beside;
        }

        JsonObject patch = JsonObject.Create(element)!;
        MergePatch.Apply(state, patch);
        JsonObject touched = [];
        foreach ((string name, _) in patch)
            touched[name] = state[name]?.DeepClone();
        using JsonDocument document = JsonDocument.Parse(touched.ToJsonString());
        JsonInput input = JsonInput.Of($"{file}, history", document.RootElement.Clone());
        Job job = JobParts.All.Where(part => patch.ContainsKey(part.Name)).Aggregate(beside, (at, part) => part.Read(at, input, sources));
        foreach (Core.Problem problem in input.Problems)
            step.Refuse(field, problem.Why, problem.Remedy);
        return job;
    }

    private static UnknownFields Unknown(JsonElement root, JobHistory history)
    {
        JsonObject known = new() { ["state"] = JobParts.Write(history.Now) };
        foreach (string field in KnownFields)
            known.TryAdd(field, true);
        // Rows and columns are not looked at twice: a source has few fields of its own.
        JsonObject sources = [];
        JsonObject read = JsonObject.Create(root)!;
        foreach ((string id, JsonNode? _) in read["sources"] as JsonObject ?? [])
            sources[id] = new JsonObject { ["file"] = true, ["sha256"] = true, ["kind"] = true, ["understood"] = true, ["rowsSetAside"] = true, ["rows"] = true, ["log"] = true, ["text"] = true };
        known["sources"] = sources;
        return UnknownFields.Of(read, known);
    }

    private static void WriteHistory(Utf8JsonWriter writer, JobHistory history)
    {
        writer.WriteStartObject("history");
        WriteSteps("done", "undo", 0, history.Done);
        WriteSteps("undone", "redo", 1, history.Undone);
        writer.WriteEndObject();

        void WriteSteps(string list, string field, int side, IReadOnlyList<JobStep> steps)
        {
            writer.WriteStartArray(list);
            foreach (JobStep step in steps)
            {
                writer.WriteStartObject();
                writer.WriteString("name", step.Name);
                writer.WritePropertyName(field);
                writer.WriteRawValue(Patches.GetValue(step, PatchesOf)[side], skipInputValidation: true);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
        }
    }

    private static string[] PatchesOf(JobStep step) =>
        [Compact(JobParts.Patch(step.After, step.Before)), Compact(JobParts.Patch(step.Before, step.After))];

    private static string Compact(JsonObject node)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter writer = new(bytes, new JsonWriterOptions { Encoder = JsonDocumentText.Options.Encoder }))
            node.WriteTo(writer);
        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length);
    }

    /// <summary>Content of the added files, once each, also of those that only an undo would bring back.</summary>
    private static SortedDictionary<string, object>.ValueCollection Held(JobHistory history)
    {
        SortedDictionary<string, object> held = new(Comparer<string>.Create((one, other) =>
            one.Length != other.Length ? one.Length - other.Length : string.CompareOrdinal(one, other)));
        foreach (Job job in history.Done.Select(step => step.Before).Concat(history.Undone.Select(step => step.After)).Append(history.Now))
        {
            foreach (object item in job.Tables.Cast<object>().Concat(job.Logs).Concat(new[] { job.FitCase, job.FitAnswer, job.SizeNeed }.OfType<object>()))
                held[SourceText.SourceOf(item).Id] = item;
        }

        return held.Values;
    }

    private static void WriteNode(Utf8JsonWriter writer, string name, JsonNode? node)
    {
        writer.WritePropertyName(name);
        if (node is null)
            writer.WriteNullValue();
        else
            node.WriteTo(writer);
    }

    private static Refusal NotAJob(string file, string why) =>
        Refusal.Input("not-a-job", file, $"this is not a job file: {why}", "Name the job's own file, NAME.job.json. Nothing was changed.");
}
