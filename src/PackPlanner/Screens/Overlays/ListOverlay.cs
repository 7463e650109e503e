using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.Overlays;

/// <summary>Lines to choose from, narrowed by typing where that helps.</summary>
/// <param name="desk">Where it lies.</param>
/// <param name="title">What is chosen.</param>
/// <param name="items">The lines; asked for again at each drawing, so that ticks show at once.</param>
/// <param name="narrows">Whether typing narrows the list.</param>
/// <param name="staysOpen">Whether it stays after a choice.</param>
internal sealed class ListOverlay(
    Desk desk, string title, Func<IReadOnlyList<ListItem>> items, bool narrows = false, bool staysOpen = false) : IOverlay
{
    private readonly TypedLine line = new("");
    private readonly RowCursor cursor = Begin(items());
    private int top;
    private int pageRows = 1;

    /// <summary>What Enter does with a line.</summary>
    internal string Runs { get; init; } = "choose";

    /// <summary>What the field asks for, on a row of its own; null for a short one beside the title.</summary>
    internal string? Asks { get; init; }

    /// <summary>Lines that stand instead of the narrowed ones when what is typed is no part of a line, such as a path; null when it is one.</summary>
    internal Func<string, IReadOnlyList<ListItem>?> Instead { get; init; } = _ => null;

    public string Hint => narrows ? $"type to narrow  Enter {Runs}" : "Enter choose";

    private IReadOnlyList<ListItem> Shown => Instead(line.Text) ?? Narrowed;

    // What begins with the words comes before what only holds them.
    private ListItem[] Narrowed => [.. items().Where(item => line.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries)
        .All(word => item.Text.Contains(word, StringComparison.OrdinalIgnoreCase) || item.Aside.Equals(word, StringComparison.Ordinal)))
        .OrderBy(item => line.Text.Length == 0 || item.Text.StartsWith(line.Text.Trim(), StringComparison.OrdinalIgnoreCase) ? 0 : 1)];

    public int Rows(int most) => most;

    // What only tells stands above what can be done; the cursor begins where Enter does something, and first on what holds now.
    private static RowCursor Begin(IReadOnlyList<ListItem> items)
    {
        RowCursor cursor = new();
        cursor.GoTo(items.ToList().FindIndex(item => item.IsNow) is >= 0 and { } now ? now : items.ToList().FindIndex(item => item.Run is not null), Names(items));
        return cursor;
    }

    private static IEnumerable<string> Names(IEnumerable<ListItem> items) => items.Select(item => item.Name);

    public void Paint(Area area)
    {
        IReadOnlyList<ListItem> shown = Shown;
        int head = PaintHead(area, shown.Count);
        cursor.Keep(Names(shown));
        int row = cursor.Row;
        IReadOnlyList<string> tells = shown.Count > 0 && shown[row].Tells is { } more ? TextWidth.Wrap(area.Look.Prose(more()), area.Width - 2, 2) : [];
        pageRows = Math.Max(1, area.Height - head - tells.Count);
        top = Math.Clamp(top, Math.Max(0, row - pageRows + 1), row);
        if (shown.Count == 0)
            area.Write(3, head, "nothing like this; Backspace widens again");
        for (int y = 0; y < pageRows && top + y < shown.Count; y++)
            PaintItem(area, y + head, top + y, shown[top + y]);
        for (int i = 0; i < tells.Count; i++)
            area.Write(1, area.Height - tells.Count + i, tells[i], Ink.Bold);
    }

    public bool Press(string key)
    {
        if (key == "Enter" || (key == " " && !narrows))
        {
            cursor.Keep(Names(Shown));
            Choose(cursor.Row);
            return true;
        }

        // In a field Home and End go to its ends.
        if ((!narrows || key is not ("Home" or "End")) && cursor.Move(key, Names(Shown), pageRows))
            return true;
        string typed = line.Text;
        if (!narrows)
            return GoToLetter(key);
        if (!line.Press(key))
            return false;
        if (line.Text != typed)
            cursor.GoTo(0, Names(Shown));
        return true;
    }

    // In a short list a letter goes to the next line that begins with it.
    private bool GoToLetter(string key)
    {
        IReadOnlyList<ListItem> shown = Shown;
        if (key.Length != 1 || !char.IsLetter(key[0]))
            return false;
        cursor.Keep(Names(shown));
        int next = Enumerable.Range(1, shown.Count).Select(step => (cursor.Row + step) % shown.Count)
            .FirstOrDefault(at => shown[at].Name.TrimStart().StartsWith(key, StringComparison.OrdinalIgnoreCase), -1);
        if (next >= 0)
            cursor.GoTo(next, Names(shown));
        return next >= 0;
    }

    public void Paste(string text)
    {
        if (narrows)
            line.Insert(text);
    }

    // The row of the title, and of the field where it has one; how many they are.
    private int PaintHead(Area area, int shown)
    {
        string count = Instead(line.Text) is null ? $"{shown} of {items().Count} " : "";
        int room = area.Width - 2 - TextWidth.Of(count);
        int x = area.Write(1, 0, TextWidth.CutMiddle(area.Look.Of(title), room), Ink.Bold);
        area.WriteRight(0, count);
        if (Asks is null)
        {
            if (narrows)
                line.Paint(area, x + 2, 0, 24);
            return 1;
        }

        int from = area.Write(1, 1, Asks) + 1;
        line.Paint(area, from, 1, area.Width - from - 1);
        return 2;
    }

    private void PaintItem(Area area, int y, int index, ListItem item)
    {
        bool here = index == cursor.Row;
        if (here)
            area.Write(1, y, ">", Ink.Accent | Ink.Bold);
        string aside = area.Look.Of(item.Aside);
        int room = area.Width - 4 - (aside.Length > 0 ? TextWidth.Of(aside) + 2 : 0);
        area.Write(3, y, TextWidth.Cut(area.Look.Of(item.Text), room), item.Run is null ? Ink.Plain : here ? Ink.Bold : Ink.Plain);
        if (aside.Length > 0)
            area.WriteRight(y, aside + " ", Ink.Accent);
        // A list that narrows keeps the terminal's cursor in its field; the line is told by its mark.
        if (here && !narrows)
            area.Cursor(1, y);
        area.OnClick(0, y, area.Width, () => Choose(index));
    }

    private void Choose(int index)
    {
        IReadOnlyList<ListItem> shown = Shown;
        cursor.GoTo(index, Names(shown));
        if (index >= shown.Count)
            return;
        if (shown[index].Run is not { } run)
        {
            desk.Says = shown[index].Text.Trim();
            return;
        }

        if (!staysOpen)
            desk.Close();
        run();
    }
}
