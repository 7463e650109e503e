using System.Runtime.CompilerServices;
using System.Text;

namespace PackPlanner.Formats.Logs;

/// <summary>The names of cells and signals in one part of a long log, numbered as they come.</summary>
internal sealed class LongNames
{
    private const int LongestName = 80;
    private readonly List<byte[]> _names = [];
    private readonly Dictionary<string, int> _known = new(StringComparer.Ordinal);
    private readonly List<int> _after = [];
    private readonly List<int> _lines = [];
    private readonly List<int> _counts = [];
    private int _last = -1;

    /// <summary>The names in the order of their numbers, with how often and on which line first each came.</summary>
    internal IEnumerable<(string Name, int Times, int FirstLine)> All => _names.Select((name, i) => (Encoding.UTF8.GetString(name), _counts[i], _lines[i]));

    /// <summary>The number of the name in a row.</summary>
    /// <param name="field">The name as UTF-8.</param>
    /// <param name="line">Line of the row.</param>
    /// <remarks>Compiled in full at once: a log is read before the compiler would have found it worth while.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal int NumberOf(ReadOnlySpan<byte> field, int line)
    {
        ReadOnlySpan<byte> entry = field.Trim(" \t"u8);
        // The names come in the same turn again and again, so the one that followed last time is tried first.
        if (_last >= 0 && _after[_last] is >= 0 and int next && entry.SequenceEqual(_names[next]))
        {
            _counts[next]++;
            return _last = next;
        }

        byte[] bytes = entry[..Math.Min(entry.Length, LongestName)].ToArray();
        string name = Encoding.UTF8.GetString(bytes);
        if (!_known.TryGetValue(name, out int number))
        {
            number = _names.Count;
            _known[name] = number;
            _names.Add(bytes);
            _after.Add(-1);
            _lines.Add(line);
            _counts.Add(0);
        }

        if (_last >= 0)
            _after[_last] = number;
        _counts[number]++;
        return _last = number;
    }
}
