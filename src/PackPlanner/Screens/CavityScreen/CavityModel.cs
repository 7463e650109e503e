using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>What this step is for and what it wants, until there is something to show.</summary>
internal sealed class CavityModel(Desk desk) : IStep
{
    private static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "how many cells fit, which way up, and which S x P nothing beats"),
        ("wants", "the inside size in mm, no-go parts, the way in, the cell; a case file holds them"),
        ("verb", "packplanner fit CASE.json answers the same"),
    ];

    public string Name => "Cavity";

    public bool IsFilled => desk.Job?.FitCase is not null;

    public StepPicture Picture => new("What goes into this space, and what choices are there?", "No cavity is described yet.", "1 Job: i takes a case file (case.json)");

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
