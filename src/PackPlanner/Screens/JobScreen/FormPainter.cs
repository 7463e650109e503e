using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.JobScreen;

/// <summary>Draws the lines of the givens form.</summary>
internal static class FormPainter
{
    private const int Boxes = 15;

    internal static void Headings(Area body)
    {
        (int value, int from, int without) = Columns(body);
        body.Write(3, 0, "what", Ink.Bold);
        body.Write(value, 0, "value", Ink.Bold);
        body.Write(from, 0, "from", Ink.Bold);
        if (HasWithout(body))
            body.Write(without, 0, "without it", Ink.Bold);
    }

    // Where there is room every name is whole; a narrow form keeps the values and who said them.
    private static (int Value, int From, int Without) Columns(Area body) => body.Width >= 110 ? (45, 61, 77) : (31, 43, 55);

    /// <summary>One line; <paramref name="column"/> is the value under the cursor, null when the cursor is elsewhere.</summary>
    internal static void Line(Area body, int y, GivenRow line, JobGivens givens, int? column)
    {
        (int valueAt, int from, int without) = Columns(body);
        if (column is not null)
            body.Write(1, y, ">", Ink.Accent | Ink.Bold);
        // Under the cursor a name is whole, and what stands beside it gives way.
        string what = body.Look.Of(line.What);
        int end = body.Write(3, y, column is null ? TextWidth.Cut(what, valueAt - 4) : what);
        valueAt = Math.Max(valueAt, end + 1);
        int? under = column is { } at ? Math.Min(at, line.Keys.Count - 1) : null;
        string[] values = [.. line.Entries.Select(entry => body.Look.Of(GivenWords.Value(entry, givens, body.Look)).TrimEnd())];
        if (line.Keys.Count > 1 && line.Entries.All(entry => entry.Kind == GivenKind.YesNo))
        {
            Ticks(body, y, values, under);
            return;
        }

        int x = valueAt;
        for (int i = 0; i < values.Length; i++)
        {
            if (i > 0)
                x = body.Write(x, y, line.Between);
            x = body.Write(x, y, TextWidth.Cut(values[i], Math.Max(3, (valueAt + 11 > from ? without : from) - x - 1)), InkOf(i == under));
        }

        if (x < from)
            body.Write(from, y, TextWidth.Cut(body.Look.Of(GivenWords.From(line, givens, under)), without - from - 1));
        if (HasWithout(body) && x < without)
            body.Write(without, y, TextWidth.Cut(body.Look.Of(line.Entries.First().Without), body.Width - without - 1));
    }

    // Three signs of a sentence tell nothing.
    private static bool HasWithout(Area body) => body.Width >= 75;

    // Boxes that do not all fit begin late enough for the one under the cursor to be seen.
    private static void Ticks(Area body, int y, string[] values, int? under)
    {
        int Width(int first, int last) => values[first..(last + 1)].Sum(value => TextWidth.Of(value) + 2) - 2;
        int first = 0;
        while (under is { } at && first < at && Boxes + Width(first, at) > body.Width)
            first++;
        int x = Boxes;
        for (int i = first; i < values.Length && x + TextWidth.Of(values[i]) <= body.Width; i++)
            x = body.Write(x, y, values[i], InkOf(i == under)) + 2;
    }

    private static Ink InkOf(bool isHere) => isHere ? Ink.Accent | Ink.Bold | Ink.Underline : Ink.Plain;

    internal static void Source(Area body, int y, JobSource file, bool here)
    {
        (int value, int _, int without) = Columns(body);
        if (here)
            body.Write(1, y, ">", Ink.Accent | Ink.Bold);
        body.Write(3, y, TextWidth.CutMiddle(file.File, value - 4), InkOf(here));
        body.Write(value, y, Kind(file.Kind));
        body.Write(without, y, "in this job, whole");
    }

    internal static string Kind(SourceKind kind) => kind switch
    {
        SourceKind.Cells => "cell table",
        SourceKind.PackLog => "pack log",
        SourceKind.Groups => "grouping",
        SourceKind.FitCase => "cavity",
        SourceKind.FitAnswer => "positions",
        SourceKind.SizeNeed => "vehicle's need",
        _ => "file",
    };
}
