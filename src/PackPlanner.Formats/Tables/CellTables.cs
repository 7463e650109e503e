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
        List<CellFile> read = [];
        foreach (string file in files)
        {
            if (!SourceFile.Open(file, options.StandardInput, options.StandardInputName).Is(out SourceFile? source, out Refusal? why))
                return why;
            using (source)
            {
                if (!ReadOne(source, options).Is(out CellFile? one, out why))
                    return why;
                read.Add(files.Count > 1 ? one with { Understood = [.. one.Understood.Select(sentence => $"{file}: {sentence}")] } : one);
            }
        }

        return Together(read);
    }

    /// <summary>Reads a table that is open already; whoever opened it closes it.</summary>
    internal static Outcome<CellTableReading> Read(SourceFile source, ReadOptions options) =>
        ReadOne(source, options).Is(out CellFile? one, out Refusal? why) ? Together([one]) : why;

    internal static Outcome<CellFile> ReadOne(SourceFile source, ReadOptions options) => FileFaults.ToItsEnd<CellFile>(source, () =>
        TextTable.Read(source, options.Stopped).Is(out TextTable? table, out Refusal? why) ? CellTableReader.Read(source, table, options) : why);

    internal static CellTableReading Together(IReadOnlyList<CellFile> files)
    {
        CellRow[] rows = [.. files.SelectMany(file => file.Rows)];
        string[][] clashes = LabelClashes.Among(rows);
        return new CellTableReading
        {
            Rows = rows,
            Account = RowAccount.Together(files.Select(file => file.Account)),
            Understood =
            [
                .. files.SelectMany(file => file.Understood),
                .. clashes.Take(20).Select(clash =>
                    $"{string.Join(" and ", clash)} differ only in zeros, case or blanks; they are kept apart as different cells. If they are one cell, write its label alike in all rows."),
            ],
            Shapes = [.. files.Select(file => file.Shape)],
            LabelClashes = clashes,
        };
    }
}
