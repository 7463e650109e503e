using PackPlanner.Core.Bench;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>What was read from the log of a tester.</summary>
/// <param name="Curve">Current, volts and counters over time, discharge positive, lost values NaN.</param>
/// <param name="IsStepTable">The file has one row a step: the curve has each step's first and last moment only, so only the tester's own counter tells the charge of a step whose current tapers.</param>
/// <param name="SeriesGroups">Series groups whose volts stand in the file beside the string's; 1 for a cell.</param>
/// <param name="Account">What became of every row and of every lost value.</param>
/// <param name="Shape">How the file was read.</param>
/// <param name="Understood">What was understood and assumed, one sentence each.</param>
public sealed record TesterLogReading(
    TestCurve Curve, bool IsStepTable, int SeriesGroups, RowAccount Account, FileShape Shape, IReadOnlyList<string> Understood);
