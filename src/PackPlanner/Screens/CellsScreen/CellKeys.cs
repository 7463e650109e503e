using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>What can be done on the Cells step.</summary>
internal static class CellKeys
{
    internal static IReadOnlyList<KeyAction> WithoutCells(Desk desk) => [AddFile(desk), AddByHand(desk)];

    internal static IReadOnlyList<KeyAction> Of(Desk desk, ListTable table, ScreenedLot lot, ScreenedCell? cell)
    {
        string heading = table.Columns[table.ActiveColumn].Heading;
        return
        [
            new(KeyBook.Open, CellColumns.Fields.ContainsKey(heading) ? $"change {heading}" : "open",
                CellColumns.Fields.ContainsKey(heading) ? $"changes {heading} of the cell; what was read is kept" : "shows the reasons and every test of the cell",
                () => cell is null ? "no cell is shown" : null, () => CellEdits.Open(desk, table, cell!, heading)),
            new(KeyBook.Verdict, "verdict", "gives the cell, or the marked ones, a verdict by hand",
                () => cell is null ? "no cell is shown" : null, () => AskVerdict(desk, table, cell!)),
            new(KeyBook.Repeatability, "repeatability", "says how well your tester repeats one capacity", () => GivenField.Ask(desk, "repeatability")),
            new(KeyBook.Numbers, "limits", "changes the limits and the rated figure", () => GivenField.Choose(desk, "limits of this screen", ["ratedAh", "minShareOfRated", "maxMilliohm", "fullV", "emptyV", "repeatability", "chemistry"])),
            .. TableKeys.Of(desk, table),
            AddFile(desk),
            AddByHand(desk),
        ];
    }

    private static KeyAction AddFile(Desk desk) => new(KeyBook.AddFile, "add a file", "adds a table of cells, after showing how it was read",
        JobCommands.InJob(desk, KeyBook.AddFile, () => FileChooser.Ask(desk)));

    private static KeyAction AddByHand(Desk desk) => new(KeyBook.Add, "add a cell", "adds a cell, or one more test of one, by hand",
        JobCommands.InJob(desk, KeyBook.Add, () => desk.Show(new FieldOverlay(desk, "a cell", "Label, then figures with units: T151 4.1Ah 32mohm 3.61V", "",
            text => TypedCell.Read(text, out _), text =>
            {
                TypedCell.Read(text, out Core.Cells.CellRow? row);
                desk.Do(JobChanges.AddRow(row!));
            }))));

    private static void AskVerdict(Desk desk, ListTable table, ScreenedCell cell)
    {
        string[] labels = table.Marks.Count > 0 ? [.. table.Marks.InOrder] : [cell.Label];
        string whom = labels.Length == 1 ? labels[0] : $"{labels.Length} marked cells";
        desk.Show(new ListOverlay(desk, $"verdict on {whom}", () =>
        [
            new("use     may go into a group", "", () => AskReason(desk, labels, Verdict.Use)),
            new("hold    not yet", "", () => AskReason(desk, labels, Verdict.Hold)),
            new("reject  does not go into this pack", "", () => AskReason(desk, labels, Verdict.Reject)),
            new("by the limits again", "", () => Give(desk, labels, null)),
        ]));
    }

    private static void AskReason(Desk desk, string[] labels, Verdict verdict) => desk.Show(new FieldOverlay(
        desk, "your reason", "It stands beside the verdict. A verdict by hand never lifts a reason of safety.", "",
        text => string.IsNullOrWhiteSpace(text) ? "A verdict by hand needs a reason, or nobody knows later why." : null,
        text => Give(desk, labels, new VerdictOverride(verdict, text.Trim(), Origin.You(desk.Today)))));

    private static void Give(Desk desk, string[] labels, VerdictOverride? verdict)
    {
        JobChange[] changes = [.. labels.Select(label => JobChanges.SetVerdict(label, verdict))];
        desk.Do(labels.Length == 1
            ? changes[0]
            : new JobChange($"verdict on {labels.Length} cells", job => changes.Aggregate(job, (done, change) => change.Apply(done))));
    }
}
