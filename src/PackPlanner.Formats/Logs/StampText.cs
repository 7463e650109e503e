using System.Globalization;
using System.Text;

namespace PackPlanner.Formats.Logs;

/// <summary>How the stamps of one file are written.</summary>
internal enum StampKind
{
    /// <summary>A plain number.</summary>
    Number,

    /// <summary>Hours, minutes and seconds without a date.</summary>
    Clock,

    /// <summary>Year first, or without doubt.</summary>
    YearFirst,

    /// <summary>Day before month.</summary>
    DayFirst,

    /// <summary>Month before day.</summary>
    MonthFirst,
}

/// <summary>Reads a moment from text.</summary>
/// <remarks>Written by hand over bytes, because a season of stamps is read; months in words go to the framework.</remarks>
internal static class StampText
{
    private static readonly DateTime Zero = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);

    /// <summary>A moment as seconds since the year 2000.</summary>
    internal static double SecondsOf(DateTime moment) => (moment - Zero).Ticks / (double)TimeSpan.TicksPerSecond;

    /// <summary>Seconds since the year 2000 as a moment.</summary>
    internal static DateTime MomentOf(double seconds) =>
        Zero.AddTicks((long)Math.Round(Math.Clamp(seconds, -6e10, 2.5e11) * 1e6) * 10);

    /// <summary>Finds out how the stamps are written.</summary>
    /// <param name="fields">Some stamps from the front of the file.</param>
    /// <returns>The kind, null when they are none; and whether day and month could stand in either order.</returns>
    internal static (StampKind? Kind, bool OrderAssumed) KindOf(IReadOnlyList<string> fields)
    {
        string[] filled = [.. fields.Where(text => text.Length > 0)];
        if (filled.Length == 0)
            return (null, false);
        if (Most(filled, StampKind.Clock))
            return (StampKind.Clock, false);
        if (Most(filled, StampKind.YearFirst))
            return (StampKind.YearFirst, false);
        int day = Count(filled, StampKind.DayFirst);
        int month = Count(filled, StampKind.MonthFirst);
        if (Math.Max(day, month) * 2 < filled.Length)
            return (null, false);
        bool halfDays = filled[0].Contains("AM", StringComparison.OrdinalIgnoreCase) || filled[0].Contains("PM", StringComparison.OrdinalIgnoreCase);
        return day == month
            ? (halfDays ? StampKind.MonthFirst : StampKind.DayFirst, !halfDays && filled.Any(text => !SameInBothOrders(text)))
            : (day > month ? StampKind.DayFirst : StampKind.MonthFirst, false);
    }

    /// <summary>Year, month, day and clock in one run of 12 or 14 digits, which is no count of seconds.</summary>
    internal static bool AreCompact(IReadOnlyList<string> fields)
    {
        string[] filled = [.. fields.Where(text => text.Length > 0)];
        return filled.Length > 0 && filled.All(text => text.Length is 12 or 14 && text.All(char.IsAsciiDigit)) && Count(filled, StampKind.YearFirst) == filled.Length;
    }

    /// <summary>Reads one stamp.</summary>
    /// <param name="text">UTF-8 bytes of the field.</param>
    /// <param name="kind">How stamps are written in this file.</param>
    /// <param name="seconds">Seconds since 2000, or since midnight for a clock.</param>
    internal static bool TryRead(ReadOnlySpan<byte> text, StampKind kind, out double seconds)
    {
        ReadOnlySpan<byte> rest = text.Trim(" \t\"'"u8);
        seconds = 0;
        if (rest.IsEmpty)
            return false;
        if (kind == StampKind.YearFirst && rest.Length is 12 or 14 && rest.IndexOfAnyExceptInRange((byte)'0', (byte)'9') < 0)
            return TryCompact(rest, out seconds);
        if (kind == StampKind.Clock)
            return TryClock(rest, out seconds, out ReadOnlySpan<byte> left) && left.IsEmpty;
        return TryDate(ref rest, kind, out double day) ? TryTimeOfDay(rest, day, out seconds) : TryWords(text, out seconds);
    }

    private static bool TryCompact(ReadOnlySpan<byte> digits, out double seconds)
    {
        seconds = 0;
        ReadOnlySpan<byte> date = digits[..8];
        ReadOnlySpan<byte> rest = digits[8..];
        if (!TryDate(ref date, StampKind.YearFirst, out double day) || !TryWhole(ref rest, out int clock, out int length))
            return false;
        clock = length == 4 ? clock * 100 : clock;
        seconds = day + (clock / 10000 * 3600.0) + (clock / 100 % 100 * 60) + (clock % 100);
        return clock / 10000 < 24 && clock / 100 % 100 < 60 && clock % 100 < 61;
    }

    private static bool TryTimeOfDay(ReadOnlySpan<byte> rest, double day, out double seconds)
    {
        seconds = day;
        rest = rest.TrimStart(" T_,;"u8);
        if (rest.IsEmpty)
            return true;
        if (!TryClock(rest, out double clock, out rest))
            return false;
        seconds = day + clock;
        return rest.IsEmpty || TryZone(rest, ref seconds);
    }

    // Three numbers with like marks between them, or eight digits.
    private static bool TryDate(ref ReadOnlySpan<byte> rest, StampKind kind, out double day)
    {
        day = 0;
        ReadOnlySpan<byte> at = rest;
        if (!TryWhole(ref at, out int first, out int digits))
            return false;
        int year;
        int month;
        int dayOfMonth;
        if (digits == 8)
        {
            (year, month, dayOfMonth) = (first / 10000, first / 100 % 100, first % 100);
        }
        else
        {
            if (at.IsEmpty || at[0] is not ((byte)'-' or (byte)'/' or (byte)'.'))
                return false;
            byte mark = at[0];
            at = at[1..].TrimStart((byte)' ');
            if (!TryWhole(ref at, out int second, out _) || at.IsEmpty || at[0] != mark)
                return false;
            at = at[1..].TrimStart((byte)' ');
            if (!TryWhole(ref at, out int third, out int lastDigits))
                return false;
            (year, month, dayOfMonth) = digits == 4 ? (first, second, third)
                : kind == StampKind.MonthFirst ? (third, first, second) : (third, second, first);
            if (digits != 4 && lastDigits == 2)
                year += 2000;
            if (digits != 4 && kind == StampKind.YearFirst)
                return false;
        }

        if (year is < 1900 or > 2200 || month is < 1 or > 12 || dayOfMonth < 1 || dayOfMonth > DateTime.DaysInMonth(year, month))
            return false;
        day = SecondsOf(new DateTime(year, month, dayOfMonth, 0, 0, 0, DateTimeKind.Unspecified));
        rest = at;
        return true;
    }

    // h:m, h:m:s, h:m:s.fff, h:m:s:ms, hhmmss, "1d 02:03:04" and "1.02:03:04"; AM and PM behind it.
    private static bool TryClock(ReadOnlySpan<byte> text, out double seconds, out ReadOnlySpan<byte> left)
    {
        seconds = 0;
        left = text;
        double days = 0;
        if (!TryWhole(ref left, out int first, out int digits))
            return false;
        if (digits == 6 && (left.IsEmpty || left[0] is (byte)'Z' or (byte)'.'))
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

    private static bool TryWhole(ref ReadOnlySpan<byte> text, out int value, out int digits)
    {
        value = 0;
        digits = 0;
        while (digits < text.Length && text[digits] is >= (byte)'0' and <= (byte)'9' && digits < 9)
            value = (value * 10) + text[digits++] - '0';
        text = text[digits..];
        return digits > 0;
    }

    private static readonly string[] InWords = ["d-MMM-yyyy H:m:s", "d MMM yyyy H:m:s", "d-MMM-yy H:m:s", "MMM d yyyy H:m:s", "d-MMM-yyyy", "d MMM yyyy", "ddd MMM d H:m:s yyyy", "MMM d, yyyy h:m:s tt", "MMM d, yyyy H:m:s", "MMM d yyyy h:m:s tt", "d MMM yyyy h:m:s tt", "d-MMM-yyyy h:m:s tt", "d-MMM-yyyy H:m", "d MMM yyyy H:m"];

    private static bool TryWords(ReadOnlySpan<byte> text, out double seconds)
    {
        seconds = 0;
        if (text.Length > 40 || !DateTime.TryParseExact(Encoding.UTF8.GetString(text).Trim(), InWords, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out DateTime moment))
            return false;
        seconds = SecondsOf(moment);
        return true;
    }

    private static bool Most(string[] fields, StampKind kind) => Count(fields, kind) * 10 >= fields.Length * 7;

    private static int Count(string[] fields, StampKind kind) => fields.Count(text => TryRead(Encoding.UTF8.GetBytes(text), kind, out _));

    private static bool SameInBothOrders(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        return TryRead(bytes, StampKind.DayFirst, out double one) && TryRead(bytes, StampKind.MonthFirst, out double other) && one == other;
    }
}
