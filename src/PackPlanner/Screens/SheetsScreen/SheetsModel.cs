using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens.SheetsScreen;

/// <summary>What this step is for and what it wants, until there is something to show.</summary>
internal sealed class SheetsModel(Desk desk) : IStep
{
    private static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "paper for the bench: pick list, placement, taps, links, rejects, first charge"),
        ("wants", "whatever the sheet shows; what is unknown stays an empty box"),
        ("verb", "packplanner sheet JOB writes the same"),
    ];

    public string Name => "Sheets";

    public bool IsFilled => false;

    public StepPicture Picture => new("What do I take to the bench?", "No sheet can be made yet.", "1 Job: begin a job first");

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
