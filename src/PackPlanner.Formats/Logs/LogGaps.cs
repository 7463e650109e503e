using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Finds the times without rows.</summary>
internal static class LogGaps
{
    /// <summary>Steps longer than five usual ones and than ten seconds.</summary>
    internal static IReadOnlyList<LogGap> Of(double[] timeS, double usualStepS)
    {
        List<LogGap> gaps = [];
        double limit = Math.Max(10, 5 * usualStepS);
        for (int i = 1; i < timeS.Length; i++)
            if (timeS[i] - timeS[i - 1] > limit)
                gaps.Add(new LogGap(timeS[i - 1], Math.Round(timeS[i] - timeS[i - 1], 6)));
        return gaps;
    }
}
