using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>Step 2: a verdict for each cell, with the reading, the limit and whose limit it is.</summary>
internal sealed class CellsModel(Desk desk) : IStep
{
    // Reasons in full, the plot and the repeats stand beside the table from this width on.
    private const int TwoPanes = 110;

    private readonly ListTable table = new(CellColumns.Of([], desk.Look));
    private IReadOnlyList<ScreenedCell> cells = [];
    private ScreenedLot? shown;
    private Look? shownWith;
    private string waitingFor = "";

    public string Name => "Cells";

    public bool IsFilled => CellsQuestion.Of(desk.Job) is not null;

    public StepPicture Picture => CellsPicture.Of(desk, Lot(), isFormer: Shown() is not null);

    public IReadOnlyList<KeyAction> Keys => Lot() is { } lot ? CellKeys.Of(desk, table, lot, Current) : CellKeys.WithoutCells(desk);

    public string Place
    {
        get => table.Name ?? waitingFor;
        set
        {
            waitingFor = value;
            table.GoTo(value);
        }
    }

    /// <summary>The cell under the cursor.</summary>
    internal ScreenedCell? Current => table.Row is { } row && row < cells.Count ? cells[row] : null;

    public void Paint(Area body)
    {
        if (Shown() is not { } lot)
        {
            Teach.Paint(body, desk.Answers.IsJudging ? [("", "Judging the cells.")] : CellsPicture.Teaching);
            return;
        }

        if (body.Width >= TwoPanes)
        {
            int left = Math.Clamp(body.Width * 5 / 8, 72, 100);
            PaintTable(body.Part(0, 0, left - 1, body.Height));
            body.Divide(left);
            CellPane.Paint(body.Part(left + 2, 0, body.Width - left - 2, body.Height), lot, Current);
            return;
        }

        int plot = body.Height >= 11 ? 6 : 0;
        PaintTable(body.Part(0, 0, body.Width, body.Height - plot));
        if (plot > 0)
            LotPlot.Paint(body.From(body.Height - plot), lot);
    }

    public bool Move(string key) => Shown() is not null && table.Move(key);

    public WhereFrom? WhereFrom() => Lot() is { } lot && Current is { } cell
        ? CellWhereFrom.Of(cell, lot, desk.Job!, table.Columns[table.ActiveColumn].Heading, desk.Look)
        : null;

    public string? CopyText() => Lot() is not null && table.Row is { } row
        ? string.Join("  ", table.Columns.Where(c => !table.Seen.IsHidden(c)).Select(c => $"{c.Heading} {c.Text(row)}"))
        : null;

    public MainTable Table() => Lot() is { } lot
        ? new(
            ["cell", "verdict", "capacityAh", "capacitySpreadAh", "resistanceMilliohm", "restV", "selfDischargeMillivoltPerDay", "why"],
            [.. lot.Cells.Select(cell => new object?[]
            {
                cell.Label, CellColumns.Word(cell.Verdict), cell.CapacityAh, cell.CapacitySpreadAh, cell.ResistanceMilliohm, cell.RestV,
                cell.SelfDischarge?.MillivoltPerDay, string.Join("; ", cell.Reasons.Select(reason => ReasonWords.Of(reason, new Look()))),
            })])
        : MainTable.Empty;

    // Verdicts from before stay on the screen while the cells are judged anew.
    private ScreenedLot? Shown() => Lot() ?? (desk.Answers.IsJudging ? shown : null);

    // The table is filled anew when the verdicts or the look have changed; the cursor stays on its cell.
    private ScreenedLot? Lot()
    {
        ScreenedLot? lot = desk.Answers.Lot;
        if (lot is null || (ReferenceEquals(lot, shown) && desk.Look == shownWith))
            return lot;
        bool first = shown is null;
        (shown, shownWith) = (lot, desk.Look);
        // What needs a decision stands on top: held cells, then rejected, then the rest, each as the file has them.
        IReadOnlyList<ScreenedCell> sorted = [.. lot.Cells.OrderBy(cell => cell.Verdict switch { Verdict.Hold => 0, Verdict.Reject => 1, _ => 2 })];
        cells = sorted;
        table.SetColumns(CellColumns.Of(sorted, desk.Look));
        // Names go with their rows: asked of the rows from before, they must still tell those.
        table.SetRows(sorted.Count, row => sorted[row].Label);
        table.HasCaution = row => sorted[row].HeldForSafety;
        table.Opened = () => desk.Press("Enter");
        if (first && waitingFor.Length > 0)
            table.GoTo(waitingFor);
        return lot;
    }

    private void PaintTable(Area area)
    {
        table.Paint(area.Part(0, 0, area.Width, area.Height - 1));
        string account = table.Account() + " ";
        string legend = area.Look.Of(desk.Answers.IsJudging ? "the verdicts from before: being judged anew" : "x reject  o hold (within twice its spread of a limit)  · use");
        if (!desk.Answers.IsJudging && TextWidth.Of(legend) > area.Width - 5 - TextWidth.Of(account))
            legend = area.Look.Of("x reject  o hold  · use");
        area.Write(3, area.Height - 1, TextWidth.Cut(legend, area.Width - 5 - TextWidth.Of(account)));
        area.WriteRight(area.Height - 1, account);
    }
}
