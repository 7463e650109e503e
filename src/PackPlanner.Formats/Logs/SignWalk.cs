using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Logs;

/// <summary>Follows a current without a sign from level to level: where it turns from discharge to charge without a rest, the volts step by the sum of both and not by their difference.</summary>
internal static class SignWalk
{
    private const double SameLevel = 0.03;
    private const double LongestStepS = 120;
    private const int ShortestRows = 3;

    // A resistance differs so much over a log, with charge and warmth.
    private const double ResistanceSpread = 0.08;
    private const double Fits = 2;
    private const double FitsNot = 3;

    /// <summary>Whether some stretch is entered and left as only a charge can be.</summary>
    /// <param name="timeS">Seconds.</param>
    /// <param name="currentA">Never clearly negative.</param>
    /// <param name="volts">Of a cell, or the mean of the groups.</param>
    /// <param name="most">The largest current.</param>
    internal static bool BothWays(double[] timeS, double[] currentA, double[] volts, double most)
    {
        List<Step> steps = Steps(timeS, currentA, volts, most);
        double resistance = Robust.UpperMedian(steps.Where(step => Math.Abs(step.After - step.Before) > 0.1 * most).Select(step => -step.Volts / (step.After - step.Before)));
        double noise = SteadyNoise.Of(currentA, volts, most, leastV: 0.0005);
        if (steps.Count < 4 || !(resistance > 0) || !(resistance * most > 10 * noise))
            return false;
        for (int from = 0; from + 1 < steps.Count; from++)
            if (IsEntered(steps[from], resistance, noise) && IsLeft(steps, from, resistance, noise))
                return true;
        return false;
    }

    private static bool IsEntered(Step step, double resistance, double noise) => step.After > 0 && step.Volts > 0
        && step.Off(resistance, noise, 1, -1) < Fits && step.Off(resistance, noise, 1, 1) > FitsNot;

    // On from level to level of charge, until one is left for discharge or rest.
    private static bool IsLeft(List<Step> steps, int entered, double resistance, double noise)
    {
        for (int at = entered + 1; at < steps.Count; at++)
        {
            Step step = steps[at];
            double stays = step.Off(resistance, noise, -1, -1);
            double leaves = step.Off(resistance, noise, -1, 1);
            if (leaves < Fits && leaves < stays && step.Volts < 0 && step.Off(resistance, noise, 1, 1) > FitsNot)
                return step.Row - steps[entered].Row >= ShortestRows;
            if (!(stays < Fits))
                return false;
        }

        return false;
    }

    private static List<Step> Steps(double[] timeS, double[] currentA, double[] volts, double most)
    {
        List<Step> steps = [];
        for (int i = 1; i < currentA.Length; i++)
            if (Math.Abs(currentA[i] - currentA[i - 1]) > SameLevel * most && double.IsFinite(volts[i] - volts[i - 1]) && timeS[i] - timeS[i - 1] <= LongestStepS)
                steps.Add(new Step(i, Math.Abs(currentA[i - 1]), Math.Abs(currentA[i]), volts[i] - volts[i - 1]));
        return steps;
    }

    // From one level of current to the next: the sizes, amperes, and how far the volts moved.
    private readonly record struct Step(int Row, double Before, double After, double Volts)
    {
        // In multiples of what noise and the spread of the resistance explain.
        internal double Off(double resistance, double noise, int signBefore, int signAfter) =>
            Math.Abs(Volts + (resistance * ((signAfter * After) - (signBefore * Before)))) / ((2 * noise) + (ResistanceSpread * resistance * Math.Max(Before, After)));
    }
}
