namespace PackPlanner.Screens;

/// <summary>The verb that gives what a screen answers, for scripts and for those who read no screen.</summary>
internal static class ByScript
{
    private static readonly string[] Verbs =
    [
        "packplanner job show JOB",
        "packplanner cells FILE",
        "packplanner match FILE --series 13 --parallel 9",
        "packplanner fit CASE.json",
        "packplanner sheet JOB place links taps",
        "packplanner energy JOB",
        "packplanner diagnose LOG",
        "packplanner sheet JOB",
    ];

    /// <summary>How the verb is written.</summary>
    /// <param name="step">The step, counted from 0.</param>
    internal static string Of(int step) => Verbs[step];
}
