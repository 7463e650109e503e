using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>What this step is for and what it wants, until there is something to show.</summary>
internal sealed class PlaceModel(Desk desk) : IStep
{
    private static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "a drawing to build from: group and sign of each cell, links, sense taps with their volts"),
        ("wants", "groups (3) and a cavity (4); without a cavity a plain block of rows and columns"),
    ];

    public string Name => "Place";

    public bool IsFilled => false;

    public StepPicture Picture => new("Where does each cell go, which way up, and how are the groups linked?", "Nothing is placed yet.", "3 Groups first: cells and a shape");

    public IReadOnlyList<KeyAction> Keys =>
    [
        new(KeyBook.AddFile, "add a file", "adds a file to this job",
            () => desk.Job is null ? "no job is open; 1 Job opens one" : null, () => FileChooser.Ask(desk)),
    ];

    public string Place { get; set; } = "";

    public void Paint(Area body) => Teach.Paint(body, Teaching);

    public bool Move(string key) => false;

    public WhereFrom? WhereFrom() => null;

    public string? CopyText() => null;

    public MainTable Table() => MainTable.Empty;
}
