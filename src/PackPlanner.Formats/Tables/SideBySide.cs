using System.Runtime.ExceptionServices;

namespace PackPlanner.Formats.Tables;

/// <summary>Parts of one work done at the same time; the answer never depends on how many are.</summary>
internal static class SideBySide
{
    /// <summary>Does the same for each part of a work, as many at a time as there are cores.</summary>
    /// <exception cref="OperationCanceledException">The user stopped.</exception>
    /// <remarks>What the first part threw is thrown, so that a fault is told alike on every machine.</remarks>
    internal static void ForEach(int parts, Action<int> act, CancellationToken stopped)
    {
        Exception?[] faults = new Exception?[parts];
        Parallel.For(0, parts, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, (i, state) =>
        {
            try
            {
                act(i);
            }
            catch (Exception fault)
            {
                faults[i] = fault;
                // Parts before this one still run, because theirs is the fault to be told.
                state.Break();
            }
        });
        stopped.ThrowIfCancellationRequested();
        if (Array.Find(faults, fault => fault is not null) is { } first)
            ExceptionDispatchInfo.Throw(first);
    }
}
