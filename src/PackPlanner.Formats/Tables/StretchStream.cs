using Microsoft.Win32.SafeHandles;

namespace PackPlanner.Formats.Tables;

/// <summary>Reads a stretch of an open file from its own place, so that several can read one file side by side.</summary>
/// <param name="file">The file.</param>
/// <param name="from">First byte.</param>
/// <param name="to">Byte after the last; null for the end of the file.</param>
/// <param name="owned">Closed with this stream; null when others go on using the file.</param>
internal sealed class StretchStream(SafeFileHandle file, long from, long? to, SafeFileHandle? owned) : ForwardStream
{
    private long _at = from;

    public override int Read(Span<byte> buffer)
    {
        if (to is { } end && end - _at < buffer.Length)
            buffer = buffer[..(int)Math.Max(0, end - _at)];
        int read = buffer.IsEmpty ? 0 : RandomAccess.Read(file, buffer, _at);
        _at += read;
        return read;
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
            owned?.Dispose();
        base.Dispose(disposing);
    }
}
