using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Tables;

/// <summary>The door for tables of cells, whatever their spelling.</summary>
public static class CellTables
{
    /// <summary>Reads one or more tables. Rows stay rows: repeats of a cell are kept, labels are never merged.</summary>
    /// <param name="files">Paths as typed; - is standard input. At least one.</param>
    /// <param name="options">What the user said.</param>
    /// <returns>All rows with the account of every one; or where, why and what to do.</returns>
    /// <exception cref="OperationCanceledException">The user stopped.</exception>
    public static Outcome<CellTableReading> Read(IReadOnlyList<string> files, ReadOptions options)
    {
        List<CellRow> rows = [];
        List<RowAccount> accounts = [];
        List<string> understood = [];
        List<FileShape> shapes = [];
        foreach (string file in files)
        {
            if (!ReadOne(file, options).Is(out CellFile? read, out Refusal? why))
                return why;
            rows.AddRange(read.Rows);
            accounts.Add(read.Account);
            shapes.Add(read.Shape);
            understood.AddRange(files.Count > 1 ? read.Understood.Select(sentence => $"{file}: {sentence}") : read.Understood);
        }

        string[][] clashes = LabelClashes.Among(rows);
        understood.AddRange(clashes.Take(20).Select(clash =>
            $"{string.Join(" and ", clash)} differ only in zeros, case or blanks; they are kept apart as different cells. If they are one cell, write its label alike in all rows."));
        return new CellTableReading
        {
            Rows = rows,
            Account = RowAccount.Together(accounts),
            Understood = understood,
            Shapes = shapes,
            LabelClashes = clashes,
        };
    }

    private static Outcome<CellFile> ReadOne(string file, ReadOptions options)
    {
        if (!SourceFile.Open(file, options.StandardInput, options.StandardInputName).Is(out SourceFile? source, out Refusal? why))
            return why;
        using (source)
        {
            return TextTable.Read(source, options.Stopped).Is(out TextTable? table, out why)
                ? CellTableReader.Read(source, table, options)
                : why;
        }
    }
}
