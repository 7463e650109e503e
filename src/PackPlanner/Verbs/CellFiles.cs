using PackPlanner.Core.Bench;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Verbs;

/// <summary>Reads the cells that a verb was given: tables of cells, and logs of one cell each.</summary>
internal static class CellFiles
{
    /// <summary>Reads all files; the log of a cell becomes a row with the file's name as its label.</summary>
    internal static Outcome<CellTableReading> Read(VerbCall call, IReadOnlyList<string> files, ScreeningRequest request)
    {
        ReadOptions options = call.ReadOptions() with { Chemistry = request.Chemistry, RatedAh = request.RatedAh };
        string[] logs = [.. files.Where(file => file != "-" && FileLooks.KindOf(file, options).Is(out string? kind, out _) && kind == "tester-log")];
        List<CellRow> rows = [];
        List<RowAccount> accounts = [];
        List<string> understood = [];
        IReadOnlyList<FileShape> shapes = [];
        if (logs.Length < files.Count)
        {
            if (!CellTables.Read([.. files.Except(logs)], options).Is(out CellTableReading? tables, out Refusal? why))
                return why;
            if (logs.Length == 0)
                return tables;
            rows.AddRange(tables.Rows);
            accounts.Add(tables.Account);
            understood.AddRange(tables.Understood);
            shapes = tables.Shapes;
        }

        foreach (string file in logs)
        {
            if (!TesterLogs.Read(file, options).Is(out TesterLogReading? log, out Refusal? why))
                return why;
            string label = Path.GetFileName(file).Split('.')[0];
            CurveReading reading = TestCurves.Read(log.Curve, new CurveRequest { Chemistry = request.Chemistry, CutOffV = request.EmptyV, IsStepTable = log.IsStepTable });
            rows.AddRange(CellsFromCurves.Rows(reading, label, request.Chemistry));
            accounts.Add(log.Account);
            understood.Add($"{file}: the log of one cell, labelled {label} after the file; {reading.Steps.Count} charges and discharges counted.");
        }

        return new CellTableReading { Rows = rows, Account = RowAccount.Together(accounts), Understood = understood, Shapes = shapes };
    }
}
