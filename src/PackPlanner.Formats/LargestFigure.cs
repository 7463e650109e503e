namespace PackPlanner.Formats;

/// <summary>How large a figure that somebody writes can be: squares and products of larger ones leave the range of a double.</summary>
internal static class LargestFigure
{
    private const double Largest = 1e15;

    /// <summary>Whether the figure is finite and no larger than anything in a pack, a file or an insulation test.</summary>
    /// <param name="figure">In whatever unit it is written.</param>
    internal static bool Allows(double figure) => Math.Abs(figure) <= Largest;
}
