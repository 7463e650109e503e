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

    public string Hint => desk.AllCautions.Count == 0 ? "" : "arrows choose  Space read";

    public bool OnlyTells => true;

    public int Rows(int most) => most;

    public void Paint(Area area)
    {
        IReadOnlyList<Caution> all = desk.AllCautions;
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
        if (key != " ")
            return cursor.Move(key, desk.AllCautions.Select(NameOf), 5);
        MarkRead();
        return true;
    }

    public void Paste(string text)
    {
    }

    private static string Account(IReadOnlyList<Caution> all) => all.Count == 0
        ? "in this job: no cautions"
        : "in this job: " + string.Join("  ", all.GroupBy(c => c.Signal).Select(g => $"{g.Key.ToString().ToUpperInvariant()} {g.Count()}"))
            + "   Space: read";

    private static string NameOf(Caution caution) => $"{caution.Code} {caution.Where}";

    // The caution in full takes more rows than the others, so the view begins late enough for it to end in view.
    private int FirstInView(IReadOnlyList<Caution> all, Area area)
    {
        int first = Math.Min(top, cursor.Row);
        int needs = Lines(all[cursor.Row], area).Count + 1;
        return Math.Max(first, cursor.Row - Math.Max(0, area.Height - 1 - needs));
    }

    private int PaintOne(Area area, int y, int index, IReadOnlyList<Caution> all)
    {
        Caution caution = all[index];
        bool here = index == cursor.Row;
        bool read = desk.Job?.CautionsRead.Contains(NameOf(caution)) == true;
        area.Write(1, y, here ? ">" : " ", Ink.Accent | Ink.Bold);
        int x = area.Write(3, y, caution.Signal.ToString().ToUpperInvariant(), Ink.Underline);
        string words = $"{(read ? "(read) " : "")}{caution.Where}: {caution.Saw}";
        area.Write(Math.Max(x + 1, 12), y, TextWidth.Cut(area.Look.Prose(words), area.Width - 13));
        area.OnClick(0, y, area.Width, () => cursor.GoTo(index, all.Select(NameOf)));
        if (!here)
            return y + 1;
        area.Cursor(1, y);
        foreach ((string word, string says) in Lines(caution, area))
        {
            y++;
            area.Write(5, y, word, Ink.Accent);
            area.Write(12, y, says);
        }

        return y + 1;
    }

    // Where not all has room, what to do and not to do comes before what was seen and why.
    private static List<(string Word, string Says)> Lines(Caution caution, Area area)
    {
        (string, string)[] seen = [("saw", caution.Saw), ("why", caution.Entry.Why)], done = [("do", caution.Do), ("do not", caution.Entry.DoNot)];
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

    private void MarkRead()
    {
        IReadOnlyList<Caution> all = desk.AllCautions;
        if (desk.Job is not { } job || all.Count == 0)
            return;
        cursor.Hold(all.Select(NameOf));
        string name = NameOf(all[cursor.Row]);
        desk.Do(JobChanges.MarkCaution(name, !job.CautionsRead.Contains(name)));
    }
}
