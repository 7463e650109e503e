using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>What can be done on the Cavity step.</summary>
internal static class CavityKeys
{
    internal static IReadOnlyList<KeyAction> Of(Desk desk) =>
    [
        new(KeyBook.Add, desk.Job?.FitCase is null ? "type the space" : "add a no-go", desk.Job?.FitCase is null
                ? "asks the inside size, the cell and the clearances in mm"
                : "adds a box that must stay free, by its corner and size in mm",
            () => desk.Job is null ? "no job is open; 1 Job opens one" : null,
            () => AskAdd(desk)),
        new(KeyBook.AddFile, "add a case file", "adds a case.json, after showing what it holds",
            () => desk.Job is null ? "no job is open; 1 Job opens one" : null, () => FileChooser.Ask(desk)),
        new(KeyBook.Open, "choices of S and P", "shows the choices of series, parallel and cell that no other beats, with what binds each",
            () => desk.Job?.SizeNeed is null ? "what the vehicle needs is not known; i adds a need.json" : null, () => desk.Show(ChoicesOverlay.Of(desk))),
        new(KeyBook.Numbers, "numbers", "changes series, parallel and the weight that cells may have",
            () => desk.Job is null ? "no job is open; 1 Job opens one" : null,
            () => GivenField.Choose(desk, "numbers of this screen", ["series", "parallel", "cellMassLimitKg", "clamping", "vents"])),
    ];

    private static void AskAdd(Desk desk)
    {
        if (desk.Job!.FitCase is null)
            Field(desk, "inside, mm", "Length x width x height of the space, such as 310 x 190 x 95.", "", [3], inside =>
            Field(desk, "cell, mm", "Round: diameter x length, such as 21.2 x 70.2. Flat: length x thickness x height.", "", [2, 3], cell =>
            Field(desk, "clearances, mm", "To the walls, at the ends or terminals, between cells, such as 2 x 3 x 0.8.", "2 x 3 x 0.8", [3], clearances =>
                desk.Do(TypedCase.Change(desk.Job!, TypedCase.New(inside, cell, clearances, desk.Job!.Givens), "describe the space")))));
        else
            Field(desk, "corner, mm", "The lower left front corner of what must stay free: x y z from the space's own corner.", "", [3], corner =>
            Field(desk, "size, mm", "Its length x width x height.", "", [3], size =>
                desk.Do(TypedCase.Change(desk.Job!, TypedCase.WithKeepOut(desk.Job!.FitCase!.Text, corner, size), "add a no-go"))));
    }

    private static void Field(Desk desk, string what, string tells, string initial, int[] counts, Action<double[]> then) => desk.Show(new FieldOverlay(
        desk, what, tells, initial, text => TypedCase.Sizes(text, counts, out _), text =>
        {
            TypedCase.Sizes(text, counts, out double[] mm);
            then(mm);
        }));
}
