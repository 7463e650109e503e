using PackPlanner.Formats.Json;
using PackPlanner.Formats.Tables;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Reading;

/// <summary>How a file was read, before it becomes part of the job: each column, what was set aside, and accept.</summary>
internal sealed class ReadingOverlay : IOverlay
{
    private readonly Desk desk;
    private readonly FileChoices choices;
    private readonly FileInHand inHand;
    private readonly IReadOnlyList<Line> lines;
    private int cursor;
    private int top;
    private int pageRows = 1;

    internal ReadingOverlay(Desk desk, FileChoices choices, FileInHand inHand)
    {
        this.desk = desk;
        this.choices = choices;
        this.inHand = inHand;
        lines = [.. Lines()];
        cursor = lines.Count - 1;
    }

    public string Hint => "arrows look  Enter on accept takes it";

    public bool TakesText => false;

    public int Rows(int most) => most;

    public void Paint(Area area)
    {
        area.Write(1, 0, TextWidth.Cut(area.Look.Of(inHand.Question), 34), Ink.Bold);
        IReadOnlyList<string> answer = TextWidth.Wrap(area.Look.Of(inHand.Answer), area.Width - 5, 2);
        for (int i = 0; i < answer.Count; i++)
            area.Write(3, 1 + i, answer[i]);
        int head = 1 + answer.Count;
        area.Write(3, head, "column in file", Ink.Bold);
        area.Write(24, head, "read as", Ink.Bold);
        area.Write(46, head, "first values", Ink.Bold);
        area.Write(Math.Max(68, area.Width - 18), head, "set by", Ink.Bold);
        pageRows = Math.Max(1, area.Height - head - 1);
        top = Math.Clamp(top, Math.Max(0, cursor - pageRows + 1), cursor);
        for (int row = 0; row < pageRows && top + row < lines.Count; row++)
            PaintLine(area, head + 1 + row, top + row);
        if (lines.Count > pageRows)
            area.WriteRight(0, $"{top + 1}-{Math.Min(lines.Count, top + pageRows)} of {lines.Count} ");
    }

    public void Press(string key)
    {
        switch (key)
        {
            case "Up": cursor = Math.Max(0, cursor - 1); break;
            case "Down": cursor = Math.Min(lines.Count - 1, cursor + 1); break;
            case "PgUp": cursor = Math.Max(0, cursor - pageRows); break;
            case "PgDn": cursor = Math.Min(lines.Count - 1, cursor + pageRows); break;
            case "Home": cursor = 0; break;
            case "End": cursor = lines.Count - 1; break;
            case "Enter": lines[cursor].Run?.Invoke(); break;
            default: break;
        }
    }

    public void Paste(string text)
    {
    }

    private void PaintLine(Area area, int y, int index)
    {
        Line line = lines[index];
        bool here = index == cursor;
        if (here)
        {
            area.Write(1, y, ">", Ink.Accent | Ink.Bold);
            area.Cursor(1, y);
        }

        Ink ink = line.Run is not null ? Ink.Accent : Ink.Plain;
        if (line.Column is { } column)
        {
            int setBy = Math.Max(68, area.Width - 18);
            area.Write(3, y, TextWidth.CutMiddle(area.Look.Of(column.Name), 20), ink);
            area.Write(24, y, TextWidth.Cut(area.Look.Of(column.ReadAs + (column.Unit is { } unit ? $", {unit}" : "")), 21));
            area.Write(46, y, TextWidth.Cut(area.Look.Of(inHand.FirstValues.GetValueOrDefault(column.Name, "")), setBy - 47));
            area.Write(setBy, y, TextWidth.Cut(area.Look.Of(column.SetBy), area.Width - setBy));
        }
        else
        {
            area.Write(3, y, TextWidth.Cut(area.Look.Of(line.Words), area.Width - 4), ink);
        }

        area.OnClick(0, y, area.Width, () =>
        {
            cursor = index;
            line.Run?.Invoke();
        });
    }

    private IEnumerable<Line> Lines()
    {
        foreach (ColumnReading column in inHand.Columns)
            yield return new Line("", column, null);
        foreach (SetAsideCount aside in inHand.Account?.Counts ?? [])
            yield return new Line($"{aside.Count} set aside, first in line {aside.FirstLine}: {aside.Reason}", null, null);
        foreach (SamplesSetAside lost in inHand.Account?.Samples ?? [])
            yield return new Line($"{lost.Count} values of {lost.Column} left out, the rows used: {lost.Kind}, first in line {lost.FirstLine}", null, null);
        foreach (string sentence in inHand.Understood.SelectMany(sentence => TextWidth.Wrap(sentence, 74)))
            yield return new Line(sentence, null, null);
        if (inHand.Account is not null)
        {
            yield return new Line("read it again with a decimal point", null, () => Again(choices with { Decimal = "point" }));
            yield return new Line("read it again with a decimal comma", null, () => Again(choices with { Decimal = "comma" }));
        }

        yield return new Line("accept", null, Accept);
    }

    private void Again(FileChoices other)
    {
        desk.Close();
        ReadingStart.Read(desk, other);
    }

    private void Accept()
    {
        desk.CloseAll();
        desk.Do(inHand.Take(desk.Job!));
        desk.GoTo(inHand.Step);
        desk.Says ??= $"added: {choices.Shown}; u takes it out again";
    }

    private sealed record Line(string Words, ColumnReading? Column, Action? Run);
}
