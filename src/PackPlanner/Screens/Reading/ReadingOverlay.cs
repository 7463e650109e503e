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
        cursor = choices.Cursor < 0 ? lines.Count - 1 : Math.Min(choices.Cursor, lines.Count - 1);
    }

    public string Hint => "Enter on a column corrects it, on accept takes the file";

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
        area.Write(45, head, "first values", Ink.Bold);
        area.Write(SetByAt(area), head, "set by", Ink.Bold);
        // The last line, accept, is always in view; the others scroll above it.
        pageRows = Math.Max(1, area.Height - head - 2);
        int rest = lines.Count - 1;
        if (cursor < rest)
            top = Math.Clamp(top, Math.Max(0, cursor - pageRows + 1), cursor);
        for (int row = 0; row < pageRows && top + row < rest; row++)
            PaintLine(area, head + 1 + row, top + row);
        PaintLine(area, Math.Min(area.Height - 1, head + 1 + Math.Min(rest, pageRows)), rest);
        if (rest > pageRows)
            area.WriteRight(0, $"{top + 1}-{Math.Min(rest, top + pageRows)} of {rest} ");
    }

    private static int SetByAt(Area area) => Math.Max(61, area.Width - 19);

    public bool Press(string key)
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
            default: return false;
        }

        return true;
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
            int setBy = SetByAt(area);
            area.Write(3, y, TextWidth.CutMiddle(area.Look.Of(column.Name), 20), ink);
            area.Write(24, y, TextWidth.Cut(area.Look.Of(ColumnWords.Of(column.ReadAs) + (column.Unit is { } unit ? $", {unit}" : "")), 20));
            area.Write(45, y, TextWidth.Cut(area.Look.Of(inHand.FirstValues.GetValueOrDefault(column.Name, "")), setBy - 46));
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
        for (int i = 0; i < inHand.Columns.Count; i++)
        {
            int at = i;
            yield return new Line("", inHand.Columns[at], () => ColumnQuestion.Ask(desk, choices with { Cursor = at }, inHand.Columns, at, inHand.Kind, Again));
        }

        foreach (SetAsideCount aside in inHand.Account?.Counts ?? [])
            yield return new Line($"{aside.Count} set aside, first in line {aside.FirstLine}: {aside.Reason}", null, null);
        foreach (SamplesSetAside lost in inHand.Account?.Samples ?? [])
            yield return new Line($"{lost.Count} value{(lost.Count == 1 ? "" : "s")} of {lost.Column} left out, the row{(lost.Count == 1 ? "" : "s")} used: {lost.Kind}, first in line {lost.FirstLine}", null, null);
        if (choices.Remembered)
            yield return new Line("Read as you corrected a file of the same shape before.", null, null);
        foreach (string line in inHand.Understood.Concat(OptionsHere.Told(inHand.Understood)).SelectMany(sentence => TextWidth.Wrap(sentence, 74)))
            yield return new Line(line, null, null);
        foreach ((string words, FileChoices other) in OtherReadings())
            yield return new Line(words, null, () => Again(other));
        yield return new Line("accept", null, Accept);
    }

    // What is not chosen yet, of the decimal mark and of the current's sign.
    private IEnumerable<(string Words, FileChoices Choices)> OtherReadings()
    {
        if (inHand.Account is null)
            yield break;
        FileChoices own = choices with { Remembered = false, Seen = true, Cursor = -1 };
        if (inHand.Spelt > 0)
            yield return (choices.AsInJob ? "keep labels of another spelling apart" : "take labels of another spelling as those of the job", own with { AsInJob = !choices.AsInJob });
        if (choices.Decimal != "point")
            yield return ("read it again with a decimal point", own with { Decimal = "point" });
        if (choices.Decimal != "comma")
            yield return ("read it again with a decimal comma", own with { Decimal = "comma" });
        if (inHand.Kind == "pack-log" && choices.CurrentSign != "discharge")
            yield return ("read it again with discharge as the positive current", own with { CurrentSign = "discharge" });
        if (inHand.Kind == "pack-log" && choices.CurrentSign != "charge")
            yield return ("read it again with charge as the positive current", own with { CurrentSign = "charge" });
        if (choices.Any)
            yield return ("read it again as the program would by itself", new FileChoices(choices.Path, choices.Shown) { Seen = true });
    }

    private void Again(FileChoices other)
    {
        desk.Close();
        ReadingStart.Read(desk, other);
    }

    private void Accept()
    {
        desk.CloseAll();
        ReadingStart.Remember(desk, choices);
        desk.Do(inHand.Take(desk.Job!));
        desk.GoTo(inHand.Step);
        desk.Says ??= $"added: {choices.Shown}; u takes it out again";
    }

    private sealed record Line(string Words, ColumnReading? Column, Action? Run);
}
