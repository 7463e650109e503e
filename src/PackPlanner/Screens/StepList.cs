namespace PackPlanner.Screens;

/// <summary>The eight steps, in the order of the work.</summary>
internal static class StepList
{
    internal static IReadOnlyList<IStep> For(Desk desk) =>
    [
        new JobScreen.JobModel(desk),
        new CellsScreen.CellsModel(desk),
        new GroupsScreen.GroupsModel(desk),
        new CavityScreen.CavityModel(desk),
        new PlaceScreen.PlaceModel(desk),
        new EnergyScreen.EnergyModel(desk),
        new LogScreen.LogModel(desk),
        new SheetsScreen.SheetsModel(desk),
    ];
}
