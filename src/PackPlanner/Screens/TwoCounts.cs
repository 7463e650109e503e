using PackPlanner.Core.Diagnosis;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens;

/// <summary>Why 6 Energy and 7 Log give one pack two figures: said in the same words wherever both stand.</summary>
internal static class TwoCounts
{
    internal const string Why =
        "7 Log counts along the curve and with the slow sag that the log shows, at the mean current of its ride; 6 Energy along the usual curve of the chemistry, at the load that you said. Such figures differ by some per cent";

    /// <summary>The log's figure.</summary>
    internal static string OfLog(LoadedRecovery log, Look look) =>
        $"{look.Figure(log.UsableAhNow, 1)} Ah, {look.Figure(log.UsableWhNow, 0)} Wh at {look.Figure(log.CurrentA, 1)} A";
}
