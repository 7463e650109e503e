namespace PackPlanner.Formats.Logs;

/// <summary>Reads the time of day in a stamp, and a clock without a date.</summary>
internal static class StampClock
{
    /// <summary>h:m, h:m:s, h:m:s.fff, h:m:s:ms, m:s.f, hhmmss, "1d 02:03:04" and "1.02:03:04"; AM and PM behind it.</summary>
    /// <param name="text">The clock.</param>
    /// <param name="seconds">Since midnight.</param>
    /// <param name="left">What stands behind it.</param>
    internal static bool TryRead(ReadOnlySpan<byte> text, out double seconds, out ReadOnlySpan<byte> left)
    {
        seconds = 0;
        left = text;
        double days = 0;
        if (!TryWhole(ref left, out int first, out int digits))
            return false;
        if (digits == 6 && first / 100 % 100 < 60 && first % 100 < 61 && (left.IsEmpty || left[0] is (byte)'Z' or (byte)'.'))
        {
            seconds = (first / 10000 * 3600.0) + (first / 100 % 100 * 60) + (first % 100) + Fraction(ref left);
            return true;
        }

        if (!left.IsEmpty && left[0] is (byte)'d' or (byte)'.')
        {
            days = first;
            left = left[1..].TrimStart(" d"u8);
            if (!TryWhole(ref left, out first, out _))
                return false;
        }

        if (left.IsEmpty || left[0] != ':')
            return false;
        left = left[1..];
        if (!TryWhole(ref left, out int minutes, out _) || minutes > 59)
            return false;
        // 01:05.2 has a part of its second number, so that counts seconds.
        if (left.Length > 1 && left[0] is (byte)'.' or (byte)',')
        {
            seconds = (days * 86400) + (first * 60) + minutes + Fraction(ref left);
            return true;
        }

        double exact = 0;
        if (!left.IsEmpty && left[0] == ':')
        {
            left = left[1..];
            if (!TryWhole(ref left, out int whole, out _) || whole > 60)
                return false;
            exact = whole + Fraction(ref left);
        }

        seconds = (days * 86400) + (first * 3600.0) + (minutes * 60) + exact;
        left = left.TrimStart((byte)' ');
        return TryHalfDay(ref left, first, ref seconds);
    }

    /// <summary>What stands behind a date: nothing, or a clock and a zone.</summary>
    internal static bool TryTimeOfDay(ReadOnlySpan<byte> rest, double day, out double seconds)
    {
        seconds = day;
        rest = rest.TrimStart(" T_,;"u8);
        if (rest.IsEmpty)
            return true;
        // Behind a date two numbers are hours and minutes, and a part of a minute is no clock.
        if ((rest.Count((byte)':') == 1 && rest.IndexOfAny((byte)'.', (byte)',') > 0) || !TryRead(rest, out double clock, out rest))
            return false;
        seconds = day + clock;
        return rest.IsEmpty || TryZone(rest, ref seconds);
    }

    /// <summary>The digits at the front as a whole number.</summary>
    internal static bool TryWhole(ref ReadOnlySpan<byte> text, out int value, out int digits)
    {
        value = 0;
        digits = 0;
        while (digits < text.Length && text[digits] is >= (byte)'0' and <= (byte)'9' && digits < 9)
            value = (value * 10) + text[digits++] - '0';
        text = text[digits..];
        return digits > 0;
    }

    private static bool TryHalfDay(ref ReadOnlySpan<byte> left, int hour, ref double seconds)
    {
        if (left.Length < 2 || (left[1] | 0x20) != 'm' || (left[0] | 0x20) is not ('a' or 'p'))
            return true;
        bool afternoon = (left[0] | 0x20) == 'p';
        if (hour is < 1 or > 12)
            return false;
        seconds += afternoon && hour < 12 ? 43200 : !afternoon && hour == 12 ? -43200 : 0;
        left = left[2..];
        return true;
    }

    private static double Fraction(ref ReadOnlySpan<byte> left)
    {
        if (left.Length < 2 || left[0] is not ((byte)'.' or (byte)',' or (byte)':'))
            return 0;
        ReadOnlySpan<byte> at = left[1..];
        if (!TryWhole(ref at, out int figure, out int digits))
            return 0;
        left = at;
        return figure / Math.Pow(10, digits);
    }

    private static bool TryZone(ReadOnlySpan<byte> rest, ref double seconds)
    {
        rest = rest.TrimStart((byte)' ');
        if (rest.IsEmpty || rest.SequenceEqual("Z"u8) || rest.SequenceEqual("UTC"u8))
            return true;
        if (rest[0] is not ((byte)'+' or (byte)'-'))
            return false;
        int sign = rest[0] == '+' ? 1 : -1;
        rest = rest[1..];
        if (!TryWhole(ref rest, out int hours, out int digits))
            return false;
        int minutes = digits == 4 ? hours % 100 : 0;
        hours = digits == 4 ? hours / 100 : hours;
        if (!rest.IsEmpty && rest[0] == ':')
        {
            rest = rest[1..];
            if (!TryWhole(ref rest, out minutes, out _))
                return false;
        }

        seconds -= sign * ((hours * 3600) + (minutes * 60));
        return rest.IsEmpty;
    }
}
