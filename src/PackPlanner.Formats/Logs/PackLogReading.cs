using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>What was read from the log of a pack.</summary>
/// <param name="Log">The log as columns, discharge positive, lost values NaN.</param>
/// <param name="Account">What became of every row and of every lost value.</param>
/// <param name="Shape">How the file was read.</param>
/// <param name="Understood">What was understood and assumed, one sentence each.</param>
public sealed record PackLogReading(RideLog Log, RowAccount Account, FileShape Shape, IReadOnlyList<string> Understood);
