using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens.EnergyScreen;

/// <summary>What this step is for and what it wants, until there is something to show.</summary>
internal sealed class EnergyModel(Desk desk) : IStep
{
    private static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "a list of losses from the label to what reaches the controller, that adds up"),
        ("wants", "groups (3), the load, the controller's lowest volts, temperature, Wh per km"),
        ("verb", "packplanner energy JOB answers the same"),
    ];

    public string Name => "Energy";

    public bool IsFilled => false;

    public StepPicture Picture => new("How much energy can I use, and how far is that?", "Nothing to count yet: there are no groups.", "3 Groups first; then the load and Wh/km in 1 Job");

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
