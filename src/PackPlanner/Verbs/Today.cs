using System.Globalization;

namespace PackPlanner.Verbs;

/// <summary>The day that is written into jobs and on sheets.</summary>
internal static class Today
{
    /// <summary>SOURCE_DATE_EPOCH where it is set, so that a script can have the same bytes every day; else the machine's day.</summary>
    /// <remarks>Source: [SourceDateEpoch].</remarks>
    internal static DateOnly Date()
    {
        string? epoch = Environment.GetEnvironmentVariable("SOURCE_DATE_EPOCH");
        return long.TryParse(epoch, NumberStyles.None, CultureInfo.InvariantCulture, out long seconds) && seconds < 253402300800
            ? DateOnly.FromDateTime(DateTimeOffset.FromUnixTimeSeconds(seconds).UtcDateTime)
            : DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
    }
}
