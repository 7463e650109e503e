using System.Globalization;
using System.Text;

namespace PackPlanner.Formats.Logs;

/// <summary>Reads the date at the front of a stamp.</summary>
internal static class StampDate
{
    private static readonly string[] InWords = ["d-MMM-yyyy H:m:s", "d MMM yyyy H:m:s", "d-MMM-yy H:m:s", "MMM d yyyy H:m:s", "d-MMM-yyyy", "d MMM yyyy", "ddd MMM d H:m:s yyyy", "MMM d, yyyy h:m:s tt", "MMM d, yyyy H:m:s", "MMM d yyyy h:m:s tt", "d MMM yyyy h:m:s tt", "d-MMM-yyyy h:m:s tt", "d-MMM-yyyy H:m", "d MMM yyyy H:m"];

    /// <summary>Three numbers with like marks between them, or eight digits.</summary>
    /// <param name="rest">The stamp; what stands behind the date afterwards.</param>
    /// <param name="kind">Which of day and month stands first.</param>
    /// <param name="day">Seconds since 2000 of its midnight.</param>
    internal static bool TryRead(ref ReadOnlySpan<byte> rest, StampKind kind, out double day)
    {
        day = 0;
        ReadOnlySpan<byte> at = rest;
        if (!StampClock.TryWhole(ref at, out int first, out int digits))
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
            if (at.IsEmpty || at[0] is not ((byte)'-' or (byte)'/' or (byte)'.') && !(at[0] == ':' && digits == 4))
                return false;
            byte mark = at[0];
            at = at[1..].TrimStart((byte)' ');
            if (!StampClock.TryWhole(ref at, out int second, out _) || at.IsEmpty || at[0] != mark)
                return false;
            at = at[1..].TrimStart((byte)' ');
            if (!StampClock.TryWhole(ref at, out int third, out int lastDigits))
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
        day = StampText.SecondsOf(new DateTime(year, month, dayOfMonth, 0, 0, 0, DateTimeKind.Unspecified));
        rest = at;
        return true;
    }

    /// <summary>A stamp with an English month in letters.</summary>
    internal static bool TryWords(ReadOnlySpan<byte> text, out double seconds)
    {
        seconds = 0;
        if (text.Length > 40 || !DateTime.TryParseExact(Encoding.UTF8.GetString(text).Trim(), InWords, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out DateTime moment))
            return false;
        seconds = StampText.SecondsOf(moment);
        return true;
    }
}
