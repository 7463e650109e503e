using System.Text;

namespace PackPlanner.Tests.Fuzz;

/// <summary>Spoils an input on purpose: the same seed spoils it the same way.</summary>
internal sealed class Mutator(int seed)
{
    // What people and instruments really write where a figure is expected, and what no parser likes.
    private static readonly byte[][] Words =
    [
        .. new[]
        {
            "NaN", "Infinity", "-1", "1e400", "1e-400", "-0", "0", "65535", "66.535", "2,850", "2.850,5", "n/a", "dead", "?", "-", "", " ",
            ";", ",", "\t", "|", "\"", "'", "\r", "\n", "\r\n", "\0", "\uFEFF", "=1+1", "@A1", "<b>", "\u001b[31m", "\u202E", "\uD7FF",
            "999999999999999999999999", "0x10", "1970-01-01", "2024-02-30 25:61:00", "31.12.2024 23:59", "mAh", "Ah", "mV", "Cell 1", "Zelle 2",
            "{", "}", "[", "]", ":", "null", "true", "1.0.0", "١٢٣", "１２",
        }.Select(Encoding.UTF8.GetBytes),
        [0xFF, 0xFE], [0xFE, 0xFF], [0x80], [0x1F, 0x8B, 0x08],
    ];

    private readonly Random random = new(seed);

    /// <summary>One to eight changes of a copy of the input.</summary>
    internal byte[] Spoil(byte[] input)
    {
        List<byte> bytes = [.. input];
        for (int change = random.Next(1, 9); change > 0 && bytes.Count > 0; change--)
            Change(bytes);
        return [.. bytes];
    }

    private void Change(List<byte> bytes)
    {
        int at = random.Next(bytes.Count);
        int length = Math.Min(random.Next(1, 60), bytes.Count - at);
        switch (random.Next(9))
        {
            case 0: bytes[at] = (byte)random.Next(256); break;
            case 1: bytes.RemoveRange(at, length); break;
            case 2: bytes.InsertRange(at, bytes.GetRange(at, length)); break;
            case 3: bytes.InsertRange(at, Words[random.Next(Words.Length)]); break;
            case 4: bytes.RemoveRange(at, bytes.Count - at); break;
            case 5: ReplaceField(bytes, at); break;
            case 6: SwapLines(bytes); break;
            case 7: bytes.InsertRange(at, Enumerable.Repeat(bytes[at], random.Next(1, 2000))); break;
            default: bytes[at] ^= (byte)(1 << random.Next(8)); break;
        }
    }

    private void ReplaceField(List<byte> bytes, int at)
    {
        int from = at;
        int to = at;
        while (from > 0 && !IsEdge(bytes[from - 1]))
            from--;
        while (to < bytes.Count && !IsEdge(bytes[to]))
            to++;
        bytes.RemoveRange(from, to - from);
        bytes.InsertRange(from, Words[random.Next(Words.Length)]);
    }

    private void SwapLines(List<byte> bytes)
    {
        List<byte[]> lines = [];
        List<byte> line = [];
        foreach (byte b in bytes)
        {
            line.Add(b);
            if (b == '\n')
            {
                lines.Add([.. line]);
                line.Clear();
            }
        }

        lines.Add([.. line]);
        int one = random.Next(lines.Count);
        int other = random.Next(lines.Count);
        (lines[one], lines[other]) = (lines[other], lines[one]);
        bytes.Clear();
        bytes.AddRange(lines.SelectMany(part => part));
    }

    private static bool IsEdge(byte b) => b is (byte)',' or (byte)';' or (byte)'\t' or (byte)'|' or (byte)'\n' or (byte)'\r' or (byte)':' or (byte)'}';
}
