using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>The lines beside the drawing: what the search found, then each part of the case, with the cursor on one of them.</summary>
internal sealed class CavityList(Desk desk)
{
    private const int WordWidth = 12;

    private int top;
    private readonly RowCursor cursor = new();

    /// <summary>Where the cursor stands, for a later start.</summary>
    internal string Place
    {
        get => cursor.Place;
        set => cursor.Place = value;
    }

    /// <summary>The line under the cursor; empty when there is none.</summary>
    internal (string Word, string Says, CasePart? Part) Under(IReadOnlyList<CasePart> parts)
    {
        List<(string Word, string Says, CasePart? Part)> lines = Lines(parts, desk.Look);
        cursor.Keep(Names(lines));
        return cursor.Row < lines.Count ? lines[cursor.Row] : default;
    }

    // PgUp and PgDn are another layer here.
    internal bool Move(string key, IReadOnlyList<CasePart> parts) => key is not ("PgUp" or "PgDn") && cursor.Move(key, Names(Lines(parts, desk.Look)), 1);

    internal void Paint(Area area, IReadOnlyList<CasePart> parts, bool focused, Action clicked)
    {
        List<(string Word, string Says, CasePart? Part)> lines = Lines(parts, area.Look);
        cursor.Keep(Names(lines));
        int row = cursor.Row;
        List<(int Line, string Word, string Text)> shown = [.. lines.SelectMany((line, i) =>
            TextWidth.Wrap(area.Look.Of(line.Says), Math.Max(10, area.Width - WordWidth - 3)).Select((text, part) => (i, part == 0 ? line.Word : "", text)))];
        (int firstOf, int lastOf) = (shown.FindIndex(line => line.Line == row), shown.FindLastIndex(line => line.Line == row));
        top = Math.Clamp(top, Math.Max(0, lastOf - area.Height + 1), Math.Max(0, Math.Min(firstOf, shown.Count - area.Height)));
        for (int y = 0; y < area.Height && top + y < shown.Count; y++)
        {
            (int line, string word, string text) = shown[top + y];
            if (line == row && word.Length > 0 && focused)
            {
                area.Write(0, y, ">", Ink.Accent | Ink.Bold);
                area.Cursor(0, y);
            }

            area.Write(2, y, word, Ink.Bold);
            area.Write(WordWidth + 2, y, text);
            area.OnClick(0, y, area.Width, () =>
            {
                cursor.GoTo(line, Names(lines));
                clicked();
            });
        }

        if (top > 0)
            area.Write(area.Width - 1, 0, "▴");
        if (top + area.Height < shown.Count)
            area.Write(area.Width - 1, area.Height - 1, "▾");
    }

    /// <summary>Stays on the part under the cursor, which the user is about to change.</summary>
    internal void Hold(IReadOnlyList<CasePart> parts) => cursor.Hold(Names(Lines(parts, desk.Look)));

    // What the search found comes and goes above the parts; who changes a part again and again stays on it.
    private static IEnumerable<string> Names(List<(string Word, string Says, CasePart? Part)> lines) =>
        lines.Select(line => line.Part is { } part ? $"{part.Kind} {part.Index}" : line.Word);

    private List<(string Word, string Says, CasePart? Part)> Lines(IReadOnlyList<CasePart> parts, Look look)
    {
        List<(string, string, CasePart?)> lines = [];
        if (desk.Answers.Fit is { Case: { } fitCase, Answer: { } answer })
            lines.AddRange(CavityFacts.Of(desk, fitCase, answer, desk.Answers.MostPlaces).Select(fact => (fact.Word, fact.Says, (CasePart?)null)));
        lines.AddRange(parts.Select(part => (part.Word, part.Says(look), (CasePart?)part)));
        return lines;
    }
}
