using System.Globalization;

namespace PackPlanner.Formats.Logs;

/// <summary>Tells rows that are averages since the row before from momentary readings.</summary>
internal static class RowAverages
{
    /// <summary>Averages show one value between two steady levels where a momentary reading would jump.</summary>
    internal static bool Are(double[] current, double usualStepS, List<string> said)
    {
        double most = current.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max();
        int between = 0;
        int jumps = 0;
        for (int i = 2; i + 2 < current.Length; i++)
        {
            double step = Math.Abs(current[i + 1] - current[i - 1]);
            double calm = 0.1 * step;
            if (!(step > 0.15 * most) || !(Math.Abs(current[i - 1] - current[i - 2]) < calm) || !(Math.Abs(current[i + 2] - current[i + 1]) < calm))
                continue;
            double share = (current[i] - current[i - 1]) / (current[i + 1] - current[i - 1]);
            between += share is > 0.1 and < 0.9 ? 1 : 0;
            jumps += share is <= 0.1 or >= 0.9 ? 1 : 0;
        }

        // One jump in two falls so that its middle row looks like either level.
        bool averages = between * 4 >= jumps;
        said.Add(averages
            ? string.Create(CultureInfo.InvariantCulture, $"A row each {usualStepS:0.##} s is taken as the average since the row before.")
            : string.Create(CultureInfo.InvariantCulture, $"A row each {usualStepS:0.##} s is taken as a momentary reading, because the current jumps without values between."));
        return averages;
    }
}
