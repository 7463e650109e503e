using PackPlanner.Core.Screening;
using PackPlanner.Formats;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Verbs;

/// <summary>Reads the cells that a verb was given.</summary>
internal static class CellFiles
{
    /// <summary>Reads tables of cells with the options of this call.</summary>
    internal static Outcome<CellTableReading> Read(VerbCall call, IReadOnlyList<string> files, ScreeningRequest request) =>
        CellTables.Read(files, new ReadOptions
        {
            Decimal = call.Decimal,
            CurrentSign = call.CurrentSign,
            Chemistry = request.Chemistry,
            RatedAh = request.RatedAh,
            StandardInput = call.StandardInput,
            Stopped = call.Stopped,
        });
}
