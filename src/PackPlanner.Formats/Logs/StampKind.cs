namespace PackPlanner.Formats.Logs;

/// <summary>How the stamps of one file are written.</summary>
internal enum StampKind
{
    /// <summary>A plain number.</summary>
    Number,

    /// <summary>Hours, minutes and seconds without a date.</summary>
    Clock,

    /// <summary>Two numbers that are minutes and seconds.</summary>
    MinuteClock,

    /// <summary>Year first, or without doubt.</summary>
    YearFirst,

    /// <summary>Day before month.</summary>
    DayFirst,

    /// <summary>Month before day.</summary>
    MonthFirst,
}
