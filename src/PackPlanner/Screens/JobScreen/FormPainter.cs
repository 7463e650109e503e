using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.JobScreen;

/// <summary>Draws the lines of the givens form.</summary>
internal static class FormPainter
{
    private const int ValueAt = 31;
    private const int FromAt = 43;
    private const int WithoutAt = 54;

    internal static void Headings(Area body)
    {
        body.Write(3, 0, "what", Ink.Bold);
        body.Write(ValueAt, 0, "value", Ink.Bold);
        body.Write(FromAt, 0, "from", Ink.Bold);
        body.Write(WithoutAt, 0, "without it", Ink.Bold);
    }

    /// <summary>One line; <paramref name="column"/> is the value under the cursor, null when the cursor is elsewhere.</summary>
    internal static void Line(Area body, int y, GivenRow line, JobGivens givens, int? column)
    {
        if (column is not null)
            body.Write(1, y, ">", Ink.Accent | Ink.Bold);
        body.Write(3, y, TextWidth.Cut(body.Look.Of(line.What), ValueAt - 4));
        bool boxes = line.Keys.Count > 1 && line.Entries.All(entry => entry.Kind == GivenKind.YesNo);
        int x = boxes ? 15 : ValueAt;
        int i = 0;
        foreach (GivenEntry entry in line.Entries)
        {
            if (i > 0)
                x = body.Write(x, y, boxes ? "  " : line.Between);
            string value = body.Look.Of(GivenWords.Value(entry, givens, body.Look)).TrimEnd();
            bool here = column is { } at && Math.Min(at, line.Keys.Count - 1) == i;
            int room = boxes ? 40 : Math.Max(3, FromAt - x - 1);
            x = body.Write(x, y, TextWidth.Cut(value, room), here ? Ink.Accent | Ink.Bold : Ink.Plain);
            i++;
        }

        if (boxes)
            return;
        body.Write(FromAt, y, TextWidth.Cut(body.Look.Of(GivenWords.From(line, givens)), WithoutAt - FromAt - 1));
        body.Write(WithoutAt, y, TextWidth.Cut(body.Look.Of(line.Entries.First().Without), body.Width - WithoutAt - 1));
    }

    internal static void Source(Area body, int y, JobSource file, bool here)
    {
        if (here)
            body.Write(1, y, ">", Ink.Accent | Ink.Bold);
        body.Write(3, y, TextWidth.CutMiddle(file.File, ValueAt - 4), here ? Ink.Accent | Ink.Bold : Ink.Plain);
        body.Write(ValueAt, y, Kind(file.Kind));
        body.Write(WithoutAt, y, "in this job, whole");
    }

    private static string Kind(SourceKind kind) => kind switch
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
