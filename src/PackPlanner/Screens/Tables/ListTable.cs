using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Tables;

/// <summary>
/// A table on screen: order, condition, cursor, marks, what is in view. Only rows in view are ever formatted, so ten
/// thousand rows cost no more to draw than ten.
/// </summary>
internal sealed class ListTable
{
    private Func<int, string> nameOf = row => "";
    private int[] order = [];
    private int top;
    private int pageRows = 1;
    private Func<int, bool>? holds;

    internal ListTable(IReadOnlyList<Column> columns)
    {
        Columns = columns;
        Seen = new ColumnsShown(columns);
    }

    internal IReadOnlyList<Column> Columns { get; private set; }

    /// <summary>Which columns are wanted, and which have room.</summary>
    internal ColumnsShown Seen { get; }

    /// <summary>Rows there are, shown or not.</summary>
    internal int Count { get; private set; }

    internal int Shown => order.Length;

    /// <summary>Marks on rows, by their names.</summary>
    internal RowMarks Marks { get; } = new();

    /// <summary>The cursor's place among the rows shown.</summary>
    internal int Cursor { get; private set; }

    /// <summary>The column that s sorts by.</summary>
    internal int ActiveColumn { get; private set; }

    internal int? SortColumn { get; private set; }

    internal bool IsDescending { get; private set; }

    internal string Condition { get; private set; } = "";

    internal string Sought { get; private set; } = "";

    /// <summary>The row under the cursor; null when no row is shown.</summary>
    internal int? Row => order.Length == 0 ? null : order[Cursor];

    /// <summary>The name of the row under the cursor.</summary>
    internal string? Name => Row is { } row ? nameOf(row) : null;

    /// <summary>Whether a caution stands on the row.</summary>
    internal Func<int, bool> HasCaution { get; set; } = _ => false;

    /// <summary>Called when a row is clicked that already has the cursor.</summary>
    internal Action? Opened { get; set; }

    internal void SetColumns(IReadOnlyList<Column> columns) => Columns = columns;

    /// <summary>Puts other rows in; the cursor stays on the row of the same name where there is one. No two rows have one name.</summary>
    internal void SetRows(int count, Func<int, string> names)
    {
        string? before = Name;
        int cursor = Cursor;
        Count = count;
        nameOf = names;
        Marks.KeepOnly(Enumerable.Range(0, count).Select(names));
        Arrange();
        if (before is null || !GoTo(before))
            Cursor = Math.Clamp(cursor, 0, Math.Max(0, order.Length - 1));
    }

    /// <summary>Moves the cursor to a row by its name.</summary>
    internal bool GoTo(string name)
    {
        int at = Array.FindIndex(order, row => nameOf(row) == name);
        if (at < 0)
            return false;
        Cursor = at;
        return true;
    }

    internal void Mark()
    {
        if (Name is { } name)
            Marks.Turn(name);
    }

    internal void MarkShown() => Marks.TurnAll([.. order.Select(nameOf)]);

    /// <summary>Sorts, stable; the same column again turns the order round, a third time takes it away.</summary>
    internal void Sort(int column, bool? descending = null)
    {
        ActiveColumn = column;
        if (descending is { } wanted)
            (SortColumn, IsDescending) = (column, wanted);
        else if (SortColumn != column)
            (SortColumn, IsDescending) = (column, false);
        else if (!IsDescending)
            IsDescending = true;
        else
            SortColumn = null;
        Keep(Arrange);
    }

    /// <summary>Shows only rows that meet a condition; empty shows all.</summary>
    /// <returns>What is wrong with the condition; null when it was taken.</returns>
    internal string? Filter(string typed)
    {
        if (RowCondition.Read(typed, Columns, out Func<int, bool>? test, Count) is { } wrong)
            return wrong;
        (Condition, holds) = (typed.Trim(), test);
        Keep(Arrange);
        return null;
    }

    /// <summary>Moves to the next row that contains the words, from the cursor on and round.</summary>
    internal bool Find(string words, int direction = 1, bool fromHere = false)
    {
        Sought = words;
        for (int step = fromHere ? 0 : 1; step <= order.Length && words.Length > 0; step++)
        {
            int at = ((Cursor + (step * direction)) % order.Length + order.Length) % order.Length;
            if (!Columns.Any(c => c.Text(order[at]).Contains(words, StringComparison.OrdinalIgnoreCase)))
                continue;
            Cursor = at;
            return true;
        }

        return false;
    }

    /// <summary>Takes the keys that move.</summary>
    internal bool Move(string key)
    {
        int last = Math.Max(0, order.Length - 1);
        switch (key)
        {
            case "Up": Cursor = Math.Max(0, Cursor - 1); return true;
            case "Down": Cursor = Math.Min(last, Cursor + 1); return true;
            case "PgUp": Cursor = Math.Max(0, Cursor - pageRows); return true;
            case "PgDn": Cursor = Math.Min(last, Cursor + pageRows); return true;
            case "Home": Cursor = 0; return true;
            case "End": Cursor = last; return true;
            case "Left": Step(-1); return true;
            case "Right": Step(1); return true;
            default: return false;
        }
    }

    /// <summary>One line on what is in view.</summary>
    internal string Account()
    {
        string rows = order.Length == 0 ? "no rows" : $"rows {top + 1}-{Math.Min(order.Length, top + pageRows)} of {order.Length}";
        string all = order.Length == Count ? "" : $", {Count} in all";
        string marked = Marks.Count == 0 ? "" : $", {Marks.Count} marked";
        string condition = Condition.Length == 0 ? "" : $", only {Condition}";
        return rows + all + marked + condition;
    }

    /// <summary>Draws headings and rows; the account of rows is the caller's to place.</summary>
    /// <param name="area">Where; its first row takes the headings.</param>
    /// <param name="focused">Whether it has the keys: then the mark of the row and the terminal's cursor stand here, else elsewhere.</param>
    internal void Paint(Area area, bool focused = true)
    {
        pageRows = Math.Max(1, area.Height - 1);
        top = Math.Clamp(top, Math.Max(0, Cursor - pageRows + 1), Math.Max(0, Math.Min(Cursor, Math.Max(0, order.Length - pageRows))));
        int[] rows = order.AsSpan(top, Math.Min(pageRows, order.Length - top)).ToArray();
        (int across, Look look) = (area.Width, area.Look);
        IReadOnlyList<(int Index, int X, int Width)> LayOut() => ColumnLayout.Of(this, across, rows, look);
        IReadOnlyList<(int Index, int X, int Width)> layout = LayOut();
        Seen.DrawnAre(layout.Select(drawn => Columns[drawn.Index]), Columns, () => LayOut().Select(drawn => Columns[drawn.Index]));
        foreach ((int index, int x, int width) in layout)
            PaintHeading(area, index, x, width);
        for (int line = 0; line < pageRows && top + line < order.Length; line++)
            PaintRow(area, line + 1, top + line, layout, focused);
    }

    private void PaintHeading(Area area, int index, int x, int width)
    {
        Column column = Columns[index];
        string arrow = SortColumn == index ? (IsDescending ? "▾" : "▴") : "";
        string heading = TextWidth.Fit(area.Look.Of(column.Heading + arrow), width, column.IsRight);
        area.Write(x, 0, heading, index == ActiveColumn ? Ink.Accent | Ink.Bold | Ink.Underline : Ink.Bold);
        area.OnClick(x, 0, width, () => Sort(index));
    }

    private void PaintRow(Area area, int y, int at, IReadOnlyList<(int Index, int X, int Width)> layout, bool focused)
    {
        int row = order[at];
        if (at == Cursor && focused)
        {
            area.Write(1, y, ">", Ink.Accent | Ink.Bold);
            area.Cursor(1, y);
        }

        if (Marks.Has(nameOf(row)))
            area.Write(2, y, "*", Ink.Accent);
        if (HasCaution(row))
            area.Write(3, y, "!", Ink.Underline);
        foreach ((int index, int x, int width) in layout)
        {
            Column column = Columns[index];
            string text = area.Look.Of((column.Drawn ?? column.Text)(row));
            text = column.CutsMiddle ? TextWidth.CutMiddle(text, width) : column.CutsAtWords ? TextWidth.CutAtWord(text, width) : TextWidth.Cut(text, width);
            int indent = column.IsRight ? width - TextWidth.Of(text) : 0;
            area.Write(x + indent, y, text, column.InkOf(row));
        }

        area.OnClick(0, y, area.Width, () =>
        {
            if (Cursor == at)
                Opened?.Invoke();
            Cursor = at;
        });
    }

    private void Step(int by)
    {
        int next = ActiveColumn + by;
        // What is not in view cannot be chosen unseen.
        while (next >= 0 && next < Columns.Count && (Seen.IsHidden(Columns[next]) || Seen.LacksRoom(Columns[next])))
            next += by;
        if (next >= 0 && next < Columns.Count)
            ActiveColumn = next;
    }

    private void Keep(Action change)
    {
        string? name = Name;
        change();
        if (name is null || !GoTo(name))
            Cursor = 0;
    }

    private void Arrange()
    {
        IEnumerable<int> rows = Enumerable.Range(0, Count);
        if (holds is not null)
            rows = rows.Where(holds);
        if (SortColumn is { } index && index < Columns.Count)
            rows = RowOrder.By(rows, Columns[index], IsDescending);
        order = [.. rows];
        Cursor = Math.Clamp(Cursor, 0, Math.Max(0, order.Length - 1));
    }
}
