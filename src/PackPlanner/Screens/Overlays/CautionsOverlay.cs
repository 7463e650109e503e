using PackPlanner.Core.Cautions;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.Overlays;

/// <summary>The cautions of the job, gravest first; the one under the cursor in full. Space marks it read; none can be switched off.</summary>
internal sealed class CautionsOverlay(Desk desk) : IOverlay
{
    private readonly RowCursor cursor = new();
    private int top;

    public string Hint => desk.AllCautions.Count == 0 ? "" : Lines().Any(line => line.All.Count > 1) ? "arrows choose  Enter all of a line  Space read" : "arrows choose  Space read";

    public bool OnlyTells => true;

    public int Rows(int most) => most;

    public void Paint(Area area)
    {
        IReadOnlyList<AlikeCautions> all = Lines();
        // One that is being read stays under the cursor when a graver one arrives.
        cursor.Hold(all.Select(NameOf));
        area.Write(1, 0, TextWidth.Cut(area.Look.Of(Account(all)), area.Width - 2), Ink.Bold);
        if (all.Count == 0)
        {
            area.Write(3, 2, "Nothing that this program checks stands out in what it has been told so far.");
            area.Write(3, 3, "What is unknown was not checked; local rules and trained people come first.");
            return;
        }

        top = FirstInView(all, area);
        int y = 1;
        for (int i = top; i < all.Count && y < area.Height; i++)
            y = PaintOne(area, y, i, all);
    }

    public bool Press(string key)
    {
        switch (key)
        {
            case " ":
                MarkRead();
                return true;
            case "Enter" or "=":
                ShowAll();
                return true;
            default:
                return cursor.Move(key, Lines().Select(NameOf), 5);
        }
    }

    public void Paste(string text)
    {
    }

    private static string Account(IReadOnlyList<AlikeCautions> all) => all.Count == 0
        ? "in this job: no cautions"
        : "in this job: " + string.Join("  ", all.GroupBy(line => line.First.Signal).Select(g => $"{g.Key.ToString().ToUpperInvariant()} {g.Count()}"))
            + "   Space: read";

    private IReadOnlyList<AlikeCautions> Lines() => AlikeCautions.Of(desk.AllCautions);

    private static string NameOf(Caution caution) => $"{caution.Code} {caution.Where}";

    // How many groups there are changes while one reads.
    private static string NameOf(AlikeCautions line) => line.All.Count == 1 ? NameOf(line.First) : $"{line.First.Code} groups";

    // The caution in full takes more rows than the others, so the view begins late enough for it to end in view.
    private int FirstInView(IReadOnlyList<AlikeCautions> all, Area area)
    {
        int first = Math.Min(top, cursor.Row);
        int needs = Lines(all[cursor.Row], area).Count + 1;
        return Math.Max(first, cursor.Row - Math.Max(0, area.Height - 1 - needs));
    }

    private int PaintOne(Area area, int y, int index, IReadOnlyList<AlikeCautions> all)
    {
        AlikeCautions line = all[index];
        bool here = index == cursor.Row;
        area.Write(1, y, here ? ">" : " ", Ink.Accent | Ink.Bold);
        int x = area.Write(3, y, line.First.Signal.ToString().ToUpperInvariant(), Ink.Underline);
        string words = $"{(IsRead(line) ? "(read) " : "")}{line.Where}: {line.Saw}";
        area.Write(Math.Max(x + 1, 12), y, TextWidth.Cut(area.Look.Prose(words), area.Width - 13));
        area.OnClick(0, y, area.Width, () => cursor.GoTo(index, all.Select(NameOf)));
        if (!here)
            return y + 1;
        area.Cursor(1, y);
        foreach ((string word, string says) in Lines(line, area))
        {
            y++;
            area.Write(5, y, word, Ink.Accent);
            area.Write(12, y, says);
        }

        return y + 1;
    }

    // Where not all has room, what to do and not to do comes before what was seen and why.
    private static List<(string Word, string Says)> Lines(AlikeCautions line, Area area)
    {
        string all = line.All.Count == 1 ? "" : $"; Enter shows all {line.All.Count}";
        (string, string)[] seen = [("saw", line.Saw + all), ("why", line.First.Entry.Why)], done = [("do", line.First.Do), ("do not", line.First.Entry.DoNot)];
        List<(string, string)> lines = Wrapped([.. seen, .. done], area);
        return lines.Count <= area.Height - 2 ? lines : Wrapped([.. done, .. seen], area);
    }

    private static List<(string Word, string Says)> Wrapped((string Word, string Says)[] parts, Area area)
    {
        List<(string, string)> lines = [];
        foreach ((string word, string says) in parts)
        {
            IReadOnlyList<string> rows = TextWidth.Wrap(area.Look.Prose(says), Math.Min(100, area.Width - 13));
            lines.AddRange(rows.Select((part, i) => (i == 0 ? word : "", part)));
        }

        return lines;
    }

    private bool IsRead(AlikeCautions line) => desk.Job is { } job && line.All.All(caution => job.CautionsRead.Contains(NameOf(caution)));

    private void ShowAll()
    {
        IReadOnlyList<AlikeCautions> all = Lines();
        if (all.Count == 0)
            return;
        cursor.Hold(all.Select(NameOf));
        AlikeCautions line = all[cursor.Row];
        desk.Show(new TextOverlay($"{line.First.Signal.ToString().ToUpperInvariant()} {line.Where}", [.. line.All.Select(caution => (caution.Where, caution.Saw))]));
    }

    private void MarkRead()
    {
        IReadOnlyList<AlikeCautions> all = Lines();
        if (desk.Job is null || all.Count == 0)
            return;
        cursor.Hold(all.Select(NameOf));
        AlikeCautions line = all[cursor.Row];
        desk.Do(JobChanges.MarkCautions(line.All.Count == 1 ? NameOf(line.First) : $"{line.First.Code} {line.Where}", [.. line.All.Select(NameOf)], !IsRead(line)));
    }
}
