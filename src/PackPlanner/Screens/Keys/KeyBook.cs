namespace PackPlanner.Screens.Keys;

/// <summary>Every key of the screens, once, with its one meaning.</summary>
internal static class KeyBook
{
    private const string Anywhere = "anywhere";
    private const string Tables = "tables and lists";
    private const string Drawings = "drawings and plots";

    internal static readonly KeyEntry Steps = new("1-8", "go to that step", Anywhere);
    internal static readonly KeyEntry Help = new("?", "the keys that work here, and what each will do", Anywhere);
    internal static readonly KeyEntry Commands = new(":", "all commands, narrowed by typing", Anywhere);
    internal static readonly KeyEntry Cautions = new("!", "the cautions of this job, gravest first", Anywhere);
    internal static readonly KeyEntry WhereFrom = new("=", "where the figure under the cursor comes from", Anywhere);
    internal static readonly KeyEntry Numbers = new("e", "change this screen's own numbers: limits, loads, joints, clearances", Anywhere);
    internal static readonly KeyEntry Undo = new("u", "take the last change back", Anywhere);
    internal static readonly KeyEntry Redo = new("U", "make it again", Anywhere);
    internal static readonly KeyEntry Write = new("w", "write this screen to a file", Anywhere);
    internal static readonly KeyEntry Copy = new("y", "copy the row or the answer", Anywhere);
    internal static readonly KeyEntry NextPane = new("Tab", "the next pane", Anywhere);
    internal static readonly KeyEntry Back = new("Esc", "back; or stop the work that runs and keep the best so far", Anywhere);
    internal static readonly KeyEntry Leave = new("q", "leave; everything is saved already", Anywhere);
    internal static readonly KeyEntry Move = new("arrows", "move the cursor; left and right choose the column or the value", Tables);
    internal static readonly KeyEntry LeftRight = new("left right", "choose the value on a line of several", Tables);
    internal static readonly KeyEntry Pages = new("PgUp PgDn", "a page up or down; another layer in a drawing", Tables);
    internal static readonly KeyEntry Ends = new("Home End", "the first or the last row", Tables);
    internal static readonly KeyEntry Open = new("Enter", "open the row, change the value, or accept", Tables);
    internal static readonly KeyEntry Find = new("/", "find a row", Tables);
    internal static readonly KeyEntry FindNext = new("n", "the next row found", Tables);
    internal static readonly KeyEntry FindBefore = new("N", "the row found before", Tables);
    internal static readonly KeyEntry Filter = new("f", "show only rows that meet a condition, such as Ah<4.1 verdict=hold", Tables);
    internal static readonly KeyEntry Sort = new("s", "sort by the chosen column", Tables);
    internal static readonly KeyEntry SortBack = new("S", "sort the other way round", Tables);
    internal static readonly KeyEntry Mark = new("Space", "mark the row (a caution: read; a sheet or a box: tick)", Tables);
    internal static readonly KeyEntry MarkAll = new("A", "mark all rows shown, or none", Tables);
    internal static readonly KeyEntry Columns = new("c", "choose what is shown", Tables);
    internal static readonly KeyEntry Add = new("a", "add one by hand", Tables);
    internal static readonly KeyEntry AddFile = new("i", "add a file", Tables);
    internal static readonly KeyEntry Delete = new("D", "remove what stands under the cursor from the job", Tables);
    internal static readonly KeyEntry Verdict = new("v", "give a verdict by hand, with a reason", "Cells");
    internal static readonly KeyEntry Repeatability = new("p", "say how well your tester repeats", "Cells");
    internal static readonly KeyEntry Better = new("b", "better: choose what the grouping should favour", "Groups");
    internal static readonly KeyEntry Exchange = new("m", "exchange two", "Groups, Place");
    internal static readonly KeyEntry Swap = new("x", "swap for the other one: a spare, the other end", "Groups, Place");
    internal static readonly KeyEntry Lock = new("l", "lock in place, or free again", "Groups");
    internal static readonly KeyEntry Join = new("j", "may these be joined now?", "Groups");
    internal static readonly KeyEntry ZoomIn = new("z", "nearer", Drawings);
    internal static readonly KeyEntry ZoomOut = new("Z", "farther", Drawings);
    internal static readonly KeyEntry OtherSide = new("o", "the other side: above, below", "Place");
    internal static readonly KeyEntry Turn = new("g", "turn: cells another way, a group over", "Cavity, Place");
    internal static readonly KeyEntry Remedy = new("r", "try a remedy", "Energy, Log");
    internal static readonly KeyEntry Conductor = new("k", "what a link, strip or cable loses, and the copper that would do the same", "Place, Energy");
    internal static readonly KeyEntry HowSure = new("h", "how sure is the figure: draw the readings ten thousand times", "Energy");
    internal static readonly KeyEntry NextView = new("t", "the next view", "Log, Sheets");
    internal static readonly KeyEntry SecondLog = new("d", "a second log beside this one", "Log");

    /// <summary>What keys do while a field is open, beside typing: as in a shell, and none is needed.</summary>
    internal const string InFields = "Home End or Ctrl+A Ctrl+E go to its ends; Ctrl+U clears what stands before the cursor, Ctrl+K what follows it, Ctrl+W the word before it";

    /// <summary>Whether it stands in the hints alone: the cursor moves by it, and no command does anything else.</summary>
    internal static bool OnlyMoves(KeyEntry entry) => entry == Move || entry == LeftRight || entry == Pages;

    /// <summary>In the order in which they are listed.</summary>
    internal static IReadOnlyList<KeyEntry> All { get; } =
    [
        Steps, Help, Commands, Cautions, WhereFrom, Numbers, Undo, Redo, Write, Copy, NextPane, Back, Leave,
        Move, LeftRight, Pages, Ends, Open, Find, FindNext, FindBefore, Filter, Sort, SortBack, Mark, MarkAll, Columns, Add, AddFile, Delete,
        Verdict, Repeatability, Better, Exchange, Swap, Lock, Join, ZoomIn, ZoomOut, OtherSide, Turn, Conductor, Remedy, HowSure, NextView, SecondLog,
    ];

    /// <summary>The list as a page of the documentation.</summary>
    internal static string Document()
    {
        System.Text.StringBuilder text = new();
        text.Append("# Keys of the text screens\n\n");
        text.Append("One key has one meaning on every screen where it has a use. The last two lines of each screen show\n");
        text.Append("which keys work there; `?` says what each will do; `:` lists every command and teaches its key. While a field\n");
        text.Append("is open, letters and digits type, and as in a shell:\n");
        text.Append($"{InFields}.\n");
        text.Append("This page is made from the program's own list.\n");
        foreach (IGrouping<string, KeyEntry> place in All.GroupBy(entry => entry.Where))
        {
            text.Append($"\n## {char.ToUpperInvariant(place.Key[0])}{place.Key[1..]}\n\n| key | meaning |\n| --- | --- |\n");
            foreach (KeyEntry entry in place)
                text.Append($"| `{entry.Key}` | {entry.Meaning} |\n");
        }

        return text.ToString();
    }
}
