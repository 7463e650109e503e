using System.Text;

namespace PackPlanner.Formats.Logs;

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
        if (kind is StampKind.Clock or StampKind.MinuteClock)
            return TryClock(rest, kind, out seconds);
        ReadOnlySpan<byte> behind = rest;
        if (StampDate.TryRead(ref behind, kind, out double day) && StampClock.TryTimeOfDay(behind, day, out seconds))
            return true;
        return StampDate.TryWords(rest, out seconds) || TrySpelling(rest, kind, out seconds);
    }

    private static bool TryClock(ReadOnlySpan<byte> text, StampKind kind, out double seconds)
    {
        if (!StampClock.TryRead(text, out seconds, out ReadOnlySpan<byte> left) || !left.IsEmpty)
            return text.Length < 40 && text[^1] > '9' && StampSpelling.TryDuration(Encoding.UTF8.GetString(text), out seconds);
        if (kind == StampKind.MinuteClock && IsTwoNumbers(text))
            seconds /= 60;
        return true;
    }

    /// <summary>Two numbers with a colon between them and nothing else: hours and minutes, or minutes and seconds.</summary>
    internal static bool IsTwoNumbers(ReadOnlySpan<byte> text) =>
        text.Count((byte)':') == 1 && text.IndexOfAnyExceptInRange((byte)'0', (byte)':') < 0;

    // What few programs write is first written as most do.
    private static bool TrySpelling(ReadOnlySpan<byte> text, StampKind kind, out double seconds)
    {
        seconds = 0;
        if (text.Length > 60 || StampSpelling.Usual(Encoding.UTF8.GetString(text)) is not { } usual)
            return false;
        ReadOnlySpan<byte> rest = Encoding.UTF8.GetBytes(usual);
        return StampDate.TryRead(ref rest, kind, out double day) && StampClock.TryTimeOfDay(rest, day, out seconds);
    }

    private static bool TryCompact(ReadOnlySpan<byte> digits, out double seconds)
    {
        seconds = 0;
        ReadOnlySpan<byte> date = digits[..8];
        ReadOnlySpan<byte> rest = digits[8..];
        if (!StampDate.TryRead(ref date, StampKind.YearFirst, out double day) || !StampClock.TryWhole(ref rest, out int clock, out int length))
            return false;
        clock = length == 4 ? clock * 100 : clock;
        seconds = day + (clock / 10000 * 3600.0) + (clock / 100 % 100 * 60) + (clock % 100);
        return clock / 10000 < 24 && clock / 100 % 100 < 60 && clock % 100 < 61;
    }

    private static bool Most(string[] fields, StampKind kind) => Count(fields, kind) * 10 >= fields.Length * 7;

    private static int Count(string[] fields, StampKind kind) => fields.Count(text => TryRead(Encoding.UTF8.GetBytes(text), kind, out _));

    private static bool SameInBothOrders(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        return TryRead(bytes, StampKind.DayFirst, out double one) && TryRead(bytes, StampKind.MonthFirst, out double other) && one == other;
    }
}
