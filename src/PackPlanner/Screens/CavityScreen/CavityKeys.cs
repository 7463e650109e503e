using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>What can be done on the Cavity step.</summary>
internal static class CavityKeys
{
    internal static IReadOnlyList<KeyAction> Of(Desk desk, CavityModel model) =>
    [
        new(KeyBook.Add, desk.Job?.FitCase is null ? "type the space" : "add a part", desk.Job?.FitCase is null
                ? "asks the inside size, the cell and the clearances in mm; drawn as typed"
                : "adds a keep-out (a box, outline or tube that must stay free), more space, an opening or a weighed part; drawn as typed",
            JobCommands.InJob(desk, KeyBook.Add, () => new CaseAsk(desk, model.Draft).Add())),
        new(KeyBook.AddFile, "add a case file", "adds a case.json, after showing what it holds", JobCommands.InJob(desk, KeyBook.AddFile, () => FileChooser.Ask(desk))),
        model.Under is { } part
            ? new KeyAction(KeyBook.Open, $"change the {part.Word}", "asks its figures anew", () =>
            {
                model.Hold();
                new CaseAsk(desk, model.Draft).Change(part);
            })
            : model.LargerUnder is { } parallel
            ? new KeyAction(KeyBook.Open, $"take {parallel} in parallel", "asks for the larger groups that the full search found; 5 Place and the sheets then use its places",
                () => desk.Do(JobChanges.Set("parallel", new Given(new JobValue.Number(parallel), Origin.You(desk.Today)))))
            : new KeyAction(KeyBook.Open, "choices of S and P", "shows the choices of series, parallel and cell that no other beats, with what binds each",
                () => desk.Job?.SizeNeed is null ? "what the vehicle needs is not known; i adds a need.json" : null, () => desk.Show(ChoicesOverlay.Of(desk))),
        .. Drawn(desk, model),
        new(KeyBook.Numbers, "numbers", "changes series, parallel and the weight that cells may have", () => NoJob(desk),
            () => GivenField.Choose(desk, "numbers of this screen", ["series", "parallel", "cellMassLimitKg", "cellMassKg", "clamping", "vents"], CaseNumbers.Of)),
    ];

    private static IEnumerable<KeyAction> Drawn(Desk desk, CavityModel model)
    {
        if (desk.Job?.FitCase is null)
            yield break;
        yield return new(KeyBook.NextPane, model.IsOnDrawing ? "list" : "drawing", "goes between the drawing, where arrows move the view, and the list", model.NextPane);
        if (model.LayerCount > 1)
            yield return new(KeyBook.Pages, "layer", "shows the layer above, or the one below", () => { });
        yield return new(KeyBook.ZoomIn, "nearer", "shows half as much, twice as large",
            () => model.View.Zoom == FloorView.Nearest ? "it is as near as it gets" : null, () => model.Zoom(nearer: true));
        yield return new(KeyBook.ZoomOut, "farther", "shows twice as much, half as large",
            () => model.View.Zoom == 0 ? "all of it is shown" : null, () => model.Zoom(nearer: false));
        yield return new(KeyBook.Turn, "turn cells", "lets the cells lie another way: upright, along x, along y, or whichever holds most", () => CaseTurn.Ask(desk));
        yield return new(KeyBook.Delete, "take out", "takes the keep-out, opening, weighed part or piece of space under the cursor out of the case",
            () => WhyNotOut(desk, model.Under), () => desk.Do(TypedCase.Change(desk.Job!, model.Under!.Out(TypedCase.Of(desk.Job!)!), $"take out a {model.Under.Word}")));
    }

    private static string? WhyNotOut(Desk desk, CasePart? part) => part?.Kind switch
    {
        null => "put the cursor on a part of the case first; Down goes there",
        CasePartKind.Cell or CasePartKind.Clearances => "a case cannot be without it; Enter changes it",
        CasePartKind.Space when CasePart.Of(TypedCase.Of(desk.Job!)!).Count(other => other.Kind == CasePartKind.Space) == 1 => "the last piece of the space stays; Enter changes it",
        _ => null,
    };

    private static string? NoJob(Desk desk) => desk.Job is null ? "no job is open; 1 Job opens one" : null;
}
