namespace PackPlanner.Formats.Tables;

/// <summary>Makes one blank of many, and none at the start of a line: for texts whose columns stand apart by blanks alone.</summary>
internal sealed class BlankRunStream(Stream inner) : ForwardStream
{
    private byte _last = (byte)'\n';

    public override int Read(Span<byte> buffer)
    {
        while (true)
        {
            int read = inner.Read(buffer);
            int kept = 0;
            foreach (byte next in buffer[..read])
            {
                if (next == ' ' && _last is (byte)' ' or (byte)'\n' or (byte)'\r')
                    continue;
                buffer[kept++] = _last = next;
            }

            if (kept > 0 || read == 0)
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
