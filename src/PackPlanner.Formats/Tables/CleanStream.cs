namespace PackPlanner.Formats.Tables;

/// <summary>Passes bytes on without the NUL bytes that a logger leaves behind when its power fails.</summary>
internal sealed class CleanStream(Stream inner) : Stream
{
    /// <summary>NUL bytes taken out so far.</summary>
    internal long NulBytes { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => inner.Length;

    public override long Position
    {
        get => inner.Position;
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

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

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
            inner.Dispose();
        base.Dispose(disposing);
    }
}
