namespace PackPlanner.Formats.Tables;

/// <summary>Passes bytes on without the NUL bytes that a logger leaves behind when its power fails.</summary>
internal sealed class CleanStream(Stream inner) : ForwardStream
{
    /// <summary>NUL bytes taken out so far.</summary>
    internal long NulBytes { get; private set; }

    public override int Read(Span<byte> buffer)
    {
        while (true)
        {
            int read = inner.Read(buffer);
            if (read == 0)
                return 0;
            Span<byte> got = buffer[..read];
            int nul = got.IndexOf((byte)0);
            if (nul < 0)
                return read;
            int kept = nul;
            for (int i = nul; i < read; i++)
                if (got[i] != 0)
                    got[kept++] = got[i];
            NulBytes += read - kept;
            if (kept > 0)
                return kept;
        }
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
            inner.Dispose();
        base.Dispose(disposing);
    }
}
