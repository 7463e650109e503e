using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens.LogScreen;

/// <summary>What this step is for and what it wants, until there is something to show.</summary>
internal sealed class LogModel(Desk desk) : IStep
{
    private static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "which group or joint ends the ride, how sure that is, and what a remedy brings back"),
        ("wants", "one log of a ride or charge with volts per cell; best with amperes and temperature"),
        ("verb", "packplanner diagnose LOG answers the same"),
    ];

    public string Name => "Log";

    public bool IsFilled => desk.Job is { Logs.IsEmpty: false };

    public StepPicture Picture => new("What limits this pack?", "No log is in this job yet.", "1 Job: i adds a log of a ride or a charge");

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
