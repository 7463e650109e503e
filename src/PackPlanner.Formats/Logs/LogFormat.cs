using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>One layout of a log.</summary>
/// <typeparam name="T">What is read from it.</typeparam>
/// <param name="NeedsTime">It has a column of moments; a table of steps has none that goes on from row to row.</param>
/// <param name="Suits">Whether a log with these columns is laid out so.</param>
/// <param name="Read">Reads it.</param>
internal sealed record LogFormat<T>(
    bool NeedsTime, Func<LogHead, LogColumns, bool> Suits, Func<SourceFile, LogHead, LogColumns, ReadOptions, Outcome<T>> Read)
    where T : class;

/// <summary>The layouts that are known, one line each; the first that suits takes the log.</summary>
internal static class LogFormats
{
    internal static IReadOnlyList<LogFormat<TesterLogReading>> OfTesters { get; } =
    [
        StepTable.Format,
        CurveLog.Format,
    ];

    internal static IReadOnlyList<LogFormat<PackLogReading>> OfPacks { get; } =
    [
        WideLog.Format,
        LongLog.Format,
    ];
}
