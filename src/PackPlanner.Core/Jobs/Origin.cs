using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Jobs;

/// <summary>Who or what a figure of a job comes from, so that "where from" can always be answered.</summary>
/// <param name="From">you, data sheet, the chemistry's name, or a file with its line.</param>
/// <param name="Standing">Measured, from a data sheet, or assumed.</param>
/// <param name="On">The day on which it was given; null when nobody said.</param>
public sealed record Origin(string From, Standing Standing, DateOnly? On = null)
{
    /// <summary>Typed by the user.</summary>
    /// <param name="on">Today, told by the program; null when unknown.</param>
    /// <returns>The origin.</returns>
    public static Origin You(DateOnly? on) => new("you", Standing.Measured, on);
}
