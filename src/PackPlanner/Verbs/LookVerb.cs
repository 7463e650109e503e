using System.CommandLine;
using System.Globalization;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Tables;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>look FILE…: how a table or log is read, and what becomes of every row.</summary>
internal static class LookVerb
{
    private static readonly Argument<string[]> Files = new("FILE") { Description = "any table of cells, tester log or pack log; - is standard input", Arity = ArgumentArity.OneOrMore };

    private static readonly Option<string?> RatedAh = new("--rated-ah") { Description = "capacity when new of a cell, or of a group of a pack, such as 3.0Ah: tells A from mA where no unit is written" };

    internal static Verb Definition { get; } = new(
        "look",
        "how a table or log is read: columns, units, sign, and every row set aside",
        [
            ("packplanner look cells.csv", "says what each column was read as and why"),
            ("packplanner look ride.csv.gz --json", "the same for a packed log as one JSON document"),
        ],
        [Files],
        [RatedAh],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        double? rated = call.Quantity<ElectricCharge>(RatedAh, "a charge", "3.0Ah")?.AmpereHours;
        if (rated <= 0)
            call.Refuse("--rated-ah", $"{rated} Ah is no capacity", "Give the Ah of one cell, or of one group, when new.");
        ReadOptions options = call.ReadOptions() with { RatedAh = rated };
        if (call.Wrong is { } wrong)
            return wrong;
        List<FileLook> looks = [];
        foreach (string file in call.Value(Files)!)
        {
            if (!FileLooks.Look(file, options).Is(out FileLook? look, out Refusal? why))
                return why;
            looks.Add(look);
        }

        LookAnswer answer = LookAnswer.From(looks);
        MainTable table = new(
            ["file", "column", "readAs", "unit", "setBy"],
            [.. answer.Files.SelectMany(file => file.Columns.Select(column => new object?[] { file.File, column.Name, column.ReadAs, column.Unit, column.SetBy }))]);
        return Reply.Of(answer, LookAnswerContext.Default.LookAnswer, [.. answer.Files.SelectMany(Words)], table);
    }

    private static IEnumerable<string> Words(LookFile file)
    {
        string kind = file.Kind switch { "cells" => "a table of cells", "tester-log" => "the log of a tester", "pack-log" => "the log of a pack", _ => "neither cells nor a log, as far as its headings tell" };
        yield return $"{file.File}: {kind}, {file.Rows} rows used, layout {file.Layout}";
        string heading = file.HeadingLine is { } line ? string.Create(CultureInfo.InvariantCulture, $"heading in line {line}") : "no heading";
        yield return $"  fields apart by {file.Delimiter}, decimal {file.DecimalMark}, {file.Encoding}, {heading}";
        if (file.Groups is { } groups)
            yield return string.Create(CultureInfo.InvariantCulture, $"  {groups} series groups, current {file.CurrentSign ?? "not told"}, {file.Gaps.Count} gaps");
        else if (file.Kind == "tester-log")
            yield return $"  current {file.CurrentSign ?? "not told"}";
        int width = Math.Min(32, file.Columns.Select(column => column.Name.Length).DefaultIfEmpty(0).Max());
        foreach (LookColumn column in file.Columns)
            yield return $"  {column.Name.PadRight(width)}  {column.ReadAs}{(column.Unit is null ? "" : $" in {column.Unit}")} ({column.SetBy})";
    }
}
