using PackPlanner.Core.Screening;
using PackPlanner.Formats;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Verbs;

/// <summary>Reads the cells that a verb was given: tables of cells, and logs of one cell each.</summary>
internal static class CellFiles
{
    /// <summary>Reads all files with the options of this call.</summary>
    internal static Outcome<CellTableReading> Read(VerbCall call, IReadOnlyList<string> files, ScreeningRequest request) =>
        CellSources.Read(files, call.ReadOptions() with { Chemistry = request.Chemistry, RatedAh = request.RatedAh }, request.EmptyV);
}
