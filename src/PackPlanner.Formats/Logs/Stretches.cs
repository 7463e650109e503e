namespace PackPlanner.Formats.Logs;

/// <summary>Columns that several readers filled from their own places on.</summary>
internal static class Stretches
{
    /// <summary>Moves the filled stretches together; the same array where none has room left.</summary>
    internal static T[] Join<T>(T[] column, ReadOnlySpan<(int From, int Used)> stretches)
    {
        int at = 0;
        foreach ((int from, int used) in stretches)
        {
            if (from != at)
                Array.Copy(column, from, column, at, used);
            at += used;
        }

        if (at < column.Length)
            Array.Resize(ref column, at);
        return column;
    }
}
