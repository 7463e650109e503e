using System.Buffers.Binary;
using System.Globalization;
using System.IO.Compression;

namespace PackPlanner.Formats.JobFiles;

/// <summary>A column of a log as a short text that gives back every figure bit for bit.</summary>
/// <remarks>
/// Loggers write decimals, so a column is nearly always whole multiples of 0.001 or the like: then the differences
/// between neighbours are small whole numbers, which pack well. A column that is not is kept as raw doubles.
/// "d3:" names the decimals kept, "r:" raw doubles; the rest is base64 of deflate.
/// </remarks>
internal static class PackedColumn
{
    private const int MostDecimals = 9;

    // Above this a double no longer holds every whole number.
    private const double Exact = 1L << 53;

    internal static string Pack(double[] column)
    {
        for (int decimals = 0; decimals <= MostDecimals; decimals++)
        {
            if (Differences(column, Math.Pow(10, decimals)) is { } differences)
                return string.Create(CultureInfo.InvariantCulture, $"d{decimals}:{Deflate(differences)}");
        }

        byte[] raw = new byte[column.Length * sizeof(double)];
        for (int i = 0; i < column.Length; i++)
            BinaryPrimitives.WriteDoubleLittleEndian(raw.AsSpan(i * sizeof(double)), column[i]);
        return "r:" + Deflate(raw);
    }

    /// <summary>Reads a column back.</summary>
    /// <param name="text">What <see cref="Pack"/> wrote.</param>
    /// <param name="rows">How many figures it must hold.</param>
    /// <returns>The column, or null when the text is damaged.</returns>
    internal static double[]? Unpack(string text, int rows)
    {
        int colon = text.IndexOf(':', StringComparison.Ordinal);
        if (colon < 1 || Inflate(text[(colon + 1)..], rows) is not { } bytes)
            return null;
        if (text[0] == 'r')
            return colon == 1 ? Raw(bytes, rows) : null;
        return text[0] == 'd' && colon == 2 && char.IsAsciiDigit(text[1]) ? Summed(bytes, rows, Math.Pow(10, text[1] - '0')) : null;
    }

    private static byte[]? Differences(double[] column, double scale)
    {
        using MemoryStream packed = new();
        long last = 0;
        foreach (double figure in column)
        {
            if (double.IsNaN(figure))
            {
                packed.WriteByte(0);
                continue;
            }

            double scaled = Math.Round(figure * scale);
            if (!(Math.Abs(scaled) < Exact))
                return null;
            // Compared as the reader will compute it; a negative zero is not a whole number.
            long whole = (long)scaled;
            if (BitConverter.DoubleToInt64Bits(whole / scale) != BitConverter.DoubleToInt64Bits(figure))
                return null;
            // Zigzag keeps small negative differences short; 0 is kept free for a lost value.
            long difference = whole - last;
            WriteVarint(packed, (ulong)((difference << 1) ^ (difference >> 63)) + 1);
            last = whole;
        }

        return packed.ToArray();
    }

    private static double[]? Summed(byte[] bytes, int rows, double scale)
    {
        double[] column = new double[rows];
        int at = 0;
        long last = 0;
        for (int i = 0; i < rows; i++)
        {
            if (ReadVarint(bytes, ref at) is not { } code)
                return null;
            if (code == 0)
            {
                column[i] = double.NaN;
                continue;
            }

            ulong zigzag = code - 1;
            last += (long)(zigzag >> 1) ^ -(long)(zigzag & 1);
            column[i] = last / scale;
        }

        return at == bytes.Length ? column : null;
    }

    private static double[]? Raw(byte[] bytes, int rows)
    {
        if (bytes.Length != rows * sizeof(double))
            return null;
        double[] column = new double[rows];
        for (int i = 0; i < rows; i++)
            column[i] = BinaryPrimitives.ReadDoubleLittleEndian(bytes.AsSpan(i * sizeof(double)));
        return column;
    }

    private static void WriteVarint(MemoryStream stream, ulong value)
    {
        for (; value >= 0x80; value >>= 7)
            stream.WriteByte((byte)(value | 0x80));
        stream.WriteByte((byte)value);
    }

    private static ulong? ReadVarint(byte[] bytes, ref int at)
    {
        ulong value = 0;
        for (int shift = 0; shift < 64 && at < bytes.Length; shift += 7)
        {
            byte next = bytes[at++];
            value |= (ulong)(next & 0x7F) << shift;
            if (next < 0x80)
                return value;
        }

        return null;
    }

    private static string Deflate(byte[] bytes)
    {
        using MemoryStream packed = new();
        using (DeflateStream deflate = new(packed, CompressionLevel.Optimal, leaveOpen: true))
            deflate.Write(bytes);
        return Convert.ToBase64String(packed.GetBuffer(), 0, (int)packed.Length);
    }

    // No column needs more than ten bytes a row, so a text that unpacks to more is damaged or hostile.
    private static byte[]? Inflate(string text, int rows)
    {
        byte[] packed = new byte[text.Length];
        if (!Convert.TryFromBase64String(text, packed, out int length))
            return null;
        try
        {
            using DeflateStream deflate = new(new MemoryStream(packed, 0, length), CompressionMode.Decompress);
            byte[] bytes = new byte[checked((rows * 10) + 1)];
            int read = deflate.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return read < bytes.Length ? bytes[..read] : null;
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }
}
