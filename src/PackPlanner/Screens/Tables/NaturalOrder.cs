namespace PackPlanner.Screens.Tables;

/// <summary>Labels as people count them: T9 before T10, whatever the case of the letters.</summary>
internal sealed class NaturalOrder : IComparer<string>
{
    internal static NaturalOrder Instance { get; } = new();

    public int Compare(string? x, string? y)
    {
        ReadOnlySpan<char> a = x;
        ReadOnlySpan<char> b = y;
        while (a.Length > 0 && b.Length > 0)
        {
            int digitsA = Digits(a);
            int digitsB = Digits(b);
            if (digitsA > 0 && digitsB > 0)
            {
                ReadOnlySpan<char> numberA = a[..digitsA].TrimStart('0');
                ReadOnlySpan<char> numberB = b[..digitsB].TrimStart('0');
                int order = numberA.Length != numberB.Length
                    ? numberA.Length.CompareTo(numberB.Length)
                    : numberA.SequenceCompareTo(numberB);
                if (order != 0)
                    return order;
                a = a[digitsA..];
                b = b[digitsB..];
                continue;
            }

            int letters = char.ToUpperInvariant(a[0]).CompareTo(char.ToUpperInvariant(b[0]));
            if (letters != 0)
                return letters;
            a = a[1..];
            b = b[1..];
        }

        int lengths = a.Length.CompareTo(b.Length);
        return lengths != 0 ? lengths : string.CompareOrdinal(x, y);
    }

    private static int Digits(ReadOnlySpan<char> text)
    {
        int end = text.IndexOfAnyExceptInRange('0', '9');
        return end < 0 ? text.Length : end;
    }
}
