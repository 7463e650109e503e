using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.Json;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>The files that were added, in a job file: what they were, their checksum, and what they held.</summary>
internal static class SourceText
{
    // A log may have millions of rows and is written again with every change, so its text is made once.
    private static readonly ConditionalWeakTable<RideLog, IReadOnlyList<KeyValuePair<string, string>>> Packed = [];

    private static readonly (SourceKind Kind, string Name)[] Kinds =
    [
        (SourceKind.Cells, "cells"),
        (SourceKind.PackLog, "pack-log"),
        (SourceKind.Groups, "groups"),
        (SourceKind.FitCase, "fit-case"),
        (SourceKind.FitAnswer, "fit-answer"),
        (SourceKind.SizeNeed, "size-need"),
    ];

    /// <summary>The name of a kind in files.</summary>
    internal static string Name(SourceKind kind) => Kinds.First(known => known.Kind == kind).Name;

    internal static JobSource SourceOf(object held) => held switch
    {
        JobTable table => table.Source,
        JobLog log => log.Source,
        JobDocument document => document.Source,
        _ => throw new UnreachableException(),
    };

    internal static void Write(Utf8JsonWriter writer, object held, UnknownFields unknown)
    {
        JobSource source = SourceOf(held);
        writer.WriteStartObject(source.Id);
        writer.WriteString("file", source.File);
        writer.WriteString("sha256", source.Sha256);
        writer.WriteString("kind", Name(source.Kind));
        writer.WriteStartArray("understood");
        foreach (string sentence in source.Understood)
            writer.WriteStringValue(sentence);
        writer.WriteEndArray();
        switch (held)
        {
            case JobTable table:
                writer.WriteNumber("rowsSetAside", table.RowsSetAside);
                WriteRows(writer, table);
                break;
            case JobLog log:
                writer.WriteNumber("rowsSetAside", log.RowsSetAside);
                WriteLog(writer, log.Log);
                break;
            case JobDocument document:
                writer.WriteString("text", document.Text);
                break;
        }

        foreach ((string name, System.Text.Json.Nodes.JsonNode? value) in unknown.Fields)
        {
            writer.WritePropertyName(name);
            if (value is null)
                writer.WriteNullValue();
            else
                value.WriteTo(writer);
        }

        writer.WriteEndObject();
    }

    /// <summary>What a source holds: a <see cref="JobTable"/>, a <see cref="JobLog"/> or a <see cref="JobDocument"/>; null when it is damaged.</summary>
    internal static object? Read(string id, JsonInput input)
    {
        if (ReadSource(id, input) is not { } source)
            return null;
        int aside = input.Whole("rowsSetAside", 0) ?? 0;
        return source.Kind switch
        {
            SourceKind.Cells => new JobTable(source, [.. input.Parts("rows").Select(CellRowText.Read)], aside),
            SourceKind.PackLog => ReadLog(input) is { } log ? new JobLog(source, log, aside) : null,
            _ => new JobDocument(source, input.Text("text") ?? ""),
        };
    }

    internal static JobSource? ReadSource(string id, JsonInput input)
    {
        string? named = input.Text("kind");
        if (Kinds.All(known => known.Name != named))
        {
            input.Refuse("kind", $"is \"{named}\", which is not known here", "Open the job with the version that wrote it.");
            return null;
        }

        return new JobSource(
            id, input.Text("file") ?? "", input.Text("sha256") ?? "", Kinds.First(known => known.Name == named).Kind, input.Texts("understood") ?? []);
    }

    // A row a line: still readable, and a tenth of the length of indented objects.
    private static void WriteRows(Utf8JsonWriter writer, JobTable table)
    {
        writer.WriteStartArray("rows");
        using MemoryStream line = new();
        using Utf8JsonWriter compact = new(line, new JsonWriterOptions { Encoder = JsonDocumentText.Options.Encoder });
        foreach (Core.Cells.CellRow row in table.Rows)
        {
            line.SetLength(0);
            compact.Reset();
            CellRowText.Write(compact, row);
            compact.Flush();
            writer.WriteRawValue(line.GetBuffer().AsSpan(0, (int)line.Length), skipInputValidation: true);
        }

        writer.WriteEndArray();
    }

    private static void WriteLog(Utf8JsonWriter writer, RideLog log)
    {
        writer.WriteStartObject("log");
        writer.WriteString("source", log.Source);
        writer.WriteNumber("rows", log.Rows);
        writer.WriteNumber("groups", log.Groups);
        writer.WriteNumber("probes", log.TemperatureDegC.Length);
        writer.WriteBoolean("currentIsUnsigned", log.CurrentIsUnsigned);
        writer.WriteBoolean("rowsAreAverages", log.RowsAreAverages);
        writer.WriteNumber("usualStepS", log.UsualStepS);
        if (log.Start is { } start)
            writer.WriteString("start", start.ToString(CellRowText.MomentFormat, CultureInfo.InvariantCulture));
        foreach ((string name, string column) in Packed.GetValue(log, Pack))
            writer.WriteString(name, column);
        writer.WriteEndObject();
    }

    private static IReadOnlyList<KeyValuePair<string, string>> Pack(RideLog log)
    {
        List<KeyValuePair<string, string>> columns = [new("timeS", PackedColumn.Pack(log.TimeS))];
        if (log.CurrentA is { } current)
            columns.Add(new("currentA", PackedColumn.Pack(current)));
        if (log.PackV is { } pack)
            columns.Add(new("packV", PackedColumn.Pack(pack)));
        if (log.ShownStateOfCharge is { } shown)
            columns.Add(new("shownStateOfCharge", PackedColumn.Pack(shown)));
        if (log.Line is { } line)
            columns.Add(new("line", PackedColumn.Pack([.. line.Select(number => (double)number)])));
        for (int group = 0; group < log.Groups; group++)
            columns.Add(new($"groupV{group + 1}", PackedColumn.Pack(log.GroupV[group])));
        for (int probe = 0; probe < log.TemperatureDegC.Length; probe++)
            columns.Add(new($"temperatureDegC{probe + 1}", PackedColumn.Pack(log.TemperatureDegC[probe])));
        return columns;
    }

    private static RideLog? ReadLog(JsonInput source)
    {
        if (source.Part("log") is not { } input || input.Whole("rows", 0) is not { } rows)
        {
            source.Refuse("log", "is missing or has no rows", "Take the file from a copy that is whole.");
            return null;
        }

        double[]? Column(string name)
        {
            if (input.Text(name) is not { } text)
                return null;
            if (PackedColumn.Unpack(text, rows) is { } column)
                return column;
            input.Refuse(name, $"is damaged: it does not unpack to {rows} figures", "Take the file from a copy that is whole.");
            return null;
        }

        double[][] Columns(string name, int count) => [.. Enumerable.Range(1, count).Select(i => Column($"{name}{i}") ?? [])];

        double[]? line = Column("line");
        return new RideLog
        {
            Source = input.Text("source") ?? "",
            TimeS = Column("timeS") ?? [],
            CurrentA = Column("currentA"),
            PackV = Column("packV"),
            ShownStateOfCharge = Column("shownStateOfCharge"),
            Line = line is null ? null : [.. line.Select(number => (int)number)],
            GroupV = Columns("groupV", input.Whole("groups", 0) ?? 0),
            TemperatureDegC = Columns("temperatureDegC", input.Whole("probes", 0) ?? 0),
            CurrentIsUnsigned = input.Flag("currentIsUnsigned") ?? false,
            RowsAreAverages = input.Flag("rowsAreAverages") ?? false,
            UsualStepS = input.Number("usualStepS") ?? 0,
            Start = JobValueText.ReadMoment(input, "start"),
        };
    }
}
