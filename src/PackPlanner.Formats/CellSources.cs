using PackPlanner.Core.Bench;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats;

/// <summary>The door for cells, in whatever they come: tables of cells, and tester logs of one cell each.</summary>
public static class CellSources
{
    private const int LongestEnding = 4;

    /// <summary>Reads all files; the log of a cell gives its tests, with the file's name as its label.</summary>
    /// <param name="files">Paths as typed; - is standard input. At least one.</param>
    /// <param name="options">What the user said.</param>
    /// <param name="emptyV">Volts of a cell at which it is empty; null when not stated.</param>
    /// <returns>All rows with the account of every one; or where, why and what to do.</returns>
    /// <exception cref="OperationCanceledException">The user stopped.</exception>
    public static Outcome<CellTableReading> Read(IReadOnlyList<string> files, ReadOptions options, double? emptyV)
    {
        List<CellFile> read = [];
        foreach (string file in files)
        {
            if (!SourceFile.Open(file, options.StandardInput, options.StandardInputName).Is(out SourceFile? source, out Refusal? why))
                return why;
            using (source)
            {
                bool isLog = FileLooks.KindOf(source, options) == "tester-log";
                if (!(isLog ? OfLog(source, options, emptyV) : CellTables.ReadOne(source, options)).Is(out CellFile? one, out why))
                    return why;
                read.Add(files.Count > 1 && !isLog ? one with { Understood = [.. one.Understood.Select(sentence => $"{file}: {sentence}")] } : one);
            }
        }

        return CellTables.Together(read);
    }

    private static Outcome<CellFile> OfLog(SourceFile source, ReadOptions options, double? emptyV)
    {
        if (!TesterLogs.Read(source, options).Is(out TesterLogReading? log, out Refusal? why))
            return why;
        string label = LabelOf(source.Name);
        CurveReading reading = TestCurves.Read(log.Curve, new CurveRequest { Chemistry = options.Chemistry, CutOffV = emptyV, IsStepTable = log.IsStepTable });
        return new CellFile(
            CellsFromCurves.Rows(reading, label, options.Chemistry), log.Account,
            [$"{source.Name}: the log of one cell, labelled {label} after the file; {reading.Steps.Count} charges and discharges counted.", .. CapacityWords.Holes(reading)], log.Shape);
    }

    // Dots are common in dates and numbers: 03.11.2026_K01.csv is K01 of that day, and K1.2 ends in no kind of file.
    private static string LabelOf(string file)
    {
        string name = Path.GetFileName(file);
        if (name.EndsWith(".gz", StringComparison.OrdinalIgnoreCase) && name.Length > 3)
            name = name[..^3];
        string ending = Path.GetExtension(name).TrimStart('.');
        return ending.Length is > 0 and <= LongestEnding && ending.All(char.IsAsciiLetter) && ending.Length + 1 < name.Length ? name[..^(ending.Length + 1)] : name;
    }
}
