namespace PackPlanner.Screens;

/// <summary>The eight steps, in the order of the work, each with the verb that gives what it answers: for scripts and for those who read no screen.</summary>
internal static class StepList
{
    private static readonly (Func<Desk, IStep> Made, string ByScript)[] Steps =
    [
        (desk => new JobScreen.JobModel(desk), "packplanner job show JOB"),
        (desk => new CellsScreen.CellsModel(desk), "packplanner cells FILE"),
        (desk => new GroupsScreen.GroupsModel(desk), "packplanner match FILE --series 13 --parallel 9"),
        (desk => new CavityScreen.CavityModel(desk), "packplanner fit CASE.json"),
        (desk => new PlaceScreen.PlaceModel(desk), "packplanner sheet JOB place links taps"),
        (desk => new EnergyScreen.EnergyModel(desk), "packplanner energy JOB"),
        (desk => new LogScreen.LogModel(desk), "packplanner diagnose LOG"),
        (desk => new SheetsScreen.SheetsModel(desk), "packplanner sheet JOB"),
    ];

    internal static IReadOnlyList<IStep> For(Desk desk) => [.. Steps.Select(step => step.Made(desk))];

    /// <summary>How the verb of a step is written.</summary>
    /// <param name="step">The step, counted from 0.</param>
    internal static string ByScript(int step) => Steps[step].ByScript;
}
