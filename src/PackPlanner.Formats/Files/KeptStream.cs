namespace PackPlanner.Formats.Files;

/// <summary>One of several readers over one temporary file, each from its start; closing one leaves the file open for the next.</summary>
internal sealed class KeptStream(FileStream kept) : Stream
{
    private long _at;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => kept.Length;

    public override long Position
    {
        get => _at;
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        int read = RandomAccess.Read(kept.SafeFileHandle, buffer, _at);
        _at += read;
        return read;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
