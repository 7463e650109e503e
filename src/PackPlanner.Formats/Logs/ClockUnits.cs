using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>In which unit plain numbers count the time.</summary>
internal static class ClockUnits
{
    /// <summary>Seconds, milliseconds, microseconds or nanoseconds since 1970.</summary>
    internal static bool AreEpoch(double[] moments) => moments.Length > 0 && moments[0] is (> 9e8 and < 5e9) or (> 9e11 and < 5e12) or (> 9e14 and < 5e15) or (> 9e17 and < 5e18);

    /// <summary>The unit by the first figure and the usual step, and the moment of nought where there is one.</summary>
    internal static (FileUnit Unit, DateTime? Zero) Of(double[] moments, double step)
    {
        DateTime epoch = new(1970, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);
        double first = moments.Length > 0 ? moments[0] : 0;
        if (first is > 9e8 and < 5e9)
            return (FileUnit.Second, epoch);
        if (first is > 9e11 and < 5e12)
            return (FileUnit.Millisecond, epoch);
        if (first is > 9e14 and < 5e15)
            return (FileUnit.Microsecond, epoch);
        if (first is > 9e17 and < 5e18)
            return (FileUnit.Nanosecond, epoch);
        // Spreadsheet days since 1900.
        if (first is > 30000 and < 70000 && step < 0.1)
            return (FileUnit.Day, new DateTime(1899, 12, 30, 0, 0, 0, DateTimeKind.Unspecified));
        bool whole = moments.Take(1000).All(moment => moment == Math.Floor(moment));
        // Loggers write a row each 0.1 to 60 s, or each whole minutes; steps of hundreds that are no whole minute, and whole thousands, are milliseconds.
        if (step >= 90 && whole && (step >= 7200 || step % 60 != 0 || step % 1000 == 0))
            return (FileUnit.Millisecond, null);
        if (step < 0.03 && !whole && step > 0)
            return (step < 0.0006 ? FileUnit.Hour : FileUnit.Minute, null);
        // Thirds of hundredths, such as 0.0333 and 0.0833, are whole seconds in minutes.
        if (step is > 0 and < 0.5 && !whole && Math.Abs((step * 100) - Math.Round(step * 100)) > 0.1 && moments.Take(1000).All(AreWholeSecondsInMinutes))
            return (FileUnit.Minute, null);
        return (FileUnit.Second, null);
    }

    private static bool AreWholeSecondsInMinutes(double minutes) => Math.Abs((minutes * 60) - Math.Round(minutes * 60)) < 0.02;
}
