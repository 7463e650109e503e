namespace PackPlanner.Formats.Tables;

/// <summary>Counts the lines of a text piece by piece; a line ends by LF, CR or both together.</summary>
internal struct LineEnds
{
    private bool _lastWasReturn;
    private bool _lastEnded;

    /// <summary>Line ends so far.</summary>
    internal long Ends { get; private set; }

    /// <summary>Lines so far, also one that nothing ends yet.</summary>
    internal readonly long Lines => Ends + (_lastEnded ? 0 : 1);

    /// <summary>Goes on counting.</summary>
    /// <param name="piece">The next bytes, in UTF-8 or any other encoding that keeps ASCII.</param>
    internal void Count(ReadOnlySpan<byte> piece)
    {
        if (piece.IsEmpty)
            return;
        int feeds = piece.Count((byte)'\n');
        int returns = piece.Count((byte)'\r');
        Ends += feeds;
        if (returns > 0)
            Ends += returns - piece.Count("\r\n"u8);
        if (_lastWasReturn && piece[0] == '\n')
            Ends--;
        _lastWasReturn = piece[^1] == '\r';
        _lastEnded = piece[^1] is (byte)'\n' or (byte)'\r';
    }
}
