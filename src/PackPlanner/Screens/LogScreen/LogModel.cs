using System.Globalization;
using PackPlanner.Core.Balancing;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.LogScreen;

/// <summary>Step 7: what a log says of the pack: findings with their grounds, groups, events, remedies.</summary>
internal sealed class LogModel : IStep
{
    private const int RowsOfBoth = 10;

    private static readonly string[] Views = ["findings", "groups", "events", "remedies", "balance", "changes"];

    private readonly Desk desk;
    private readonly ListTable[] tables = [.. Views.Select(_ => new ListTable([new Column("", row => "")]))];
    private readonly LogPlots plots = new();
    private readonly LogChoice logs;
    private RideDiagnosis? shown;
    private RideDiagnosis? shownEarlier;
    private Look? shownWith;
    private JobGivens? shownGivens;
    private PackComparison? comparison;
    private int view;

    internal LogModel(Desk desk)
    {
        (this.desk, logs) = (desk, new LogChoice(desk));
        foreach (ListTable table in tables)
            table.Opened = () => desk.Press("Enter");
    }

    public string Name => "Log";

    public bool IsFilled => desk.Job is { Logs.IsEmpty: false };

    public StepPicture Picture => Diagnosis() is not { } known ? LogPicture.Waiting(desk, logs.Which)
        : LogPicture.Of(known, desk.Job!.Logs.Count, desk.Look) with { Cautions = logs.Warns(known) } is var picture && view == 5 && comparison is { } changes ? LogChanges.Picture(picture, changes, desk.Look)
        : picture;

    public IReadOnlyList<KeyAction> Keys => Diagnosis() is { } known ? LogKeys.Of(desk, this, known) : LogKeys.WithoutDiagnosis(desk);

    /// <summary>The plots above the tables.</summary>
    internal LogPlots Plots => plots;

    /// <summary>The table that has the keys.</summary>
    internal ListTable Shown => Table;

    /// <summary>The word for the view after this one.</summary>
    internal string NextView => Views[(view + 1) % Views.Length];

    public string Place
    {
        get => string.Create(CultureInfo.InvariantCulture, $"{view} {tables[view].Name}");
        set
        {
            string[] halves = value.Split(' ', 2);
            view = int.TryParse(halves[0], CultureInfo.InvariantCulture, out int stored) ? Math.Clamp(stored, 0, Views.Length - 1) : 0;
            wanted = halves.Length > 1 ? halves[1] : "";
        }
    }

    private string wanted = "";

    private ListTable Table => tables[view];

    public void Paint(Area body)
    {
        if (Diagnosis() is not { } known || logs.Log is not { } log)
        {
            // The volts are there at once, whatever can be said of them, and also where nothing can.
            if (logs.Log is { Rows: > 1 } unjudged)
                plots.PaintVolts(body, unjudged, logs.Named(logs.Which));
            else
                Teach.Paint(body, LogPicture.Teaching);
            return;
        }

        if (body.Width >= 110)
        {
            int left = Math.Clamp(body.Width * 5 / 8, 72, 110);
            int plot = body.Height / 2;
            PaintPlot(body.Part(0, 0, left - 1, plot), log, known);
            Area below = body.Part(0, plot, left - 1, body.Height - plot);
            PaintTable(below, Table, focused: !plots.Window.HasFocus);
            PaintFoot(below, known);
            body.Divide(left);
            PaintTable(body.Part(left + 1, 0, body.Width - left - 1, body.Height), tables[view == 1 ? 0 : 1], focused: false);
            return;
        }

        // Where there is no room for both, that which has the keys is shown.
        if (body.Height < RowsOfBoth && plots.Window.HasFocus)
        {
            PaintPlot(body, log, known);
            return;
        }

        int rows = body.Height >= RowsOfBoth ? 6 : 0;
        if (rows > 0)
            PaintPlot(body.Part(0, 0, body.Width, rows), log, known);
        PaintTable(body.From(rows), Table, focused: !plots.Window.HasFocus);
    }

    public bool Move(string key)
    {
        if (Diagnosis() is null)
            return false;
        if (!plots.Window.HasFocus)
            return Table.Move(key);
        if (!plots.Move(key))
            return false;
        desk.Says = plots.WhyNotMoved;
        return true;
    }

    public WhereFrom? WhereFrom()
    {
        if (Diagnosis() is not { } known)
            return null;
        LogGrounds grounds = new(known, logs.Log!.Source, desk.Look);
        return (view, Table.Row) switch
        {
            (0, { } row) when LogFinding.All(known) is var findings && row < findings.Count => grounds.Finding(findings[row]),
            (1, { } row) => grounds.Group(known.Groups[row]),
            (2, { } row) => grounds.Event(known.Events[row]),
            (3, { } row) => grounds.Remedy(known.Remedies[row]),
            (4, { } row) => LogBalance.WhereFrom(known, desk.Job!.Givens, row, desk.Look),
            (5, _) when comparison is { } changes => new WhereFrom("what changed", LogChanges.Causes(changes, desk.Look)),
            _ => grounds.All(),
        };
    }

    public string? CopyText() => Diagnosis() is not null && Table.Row is { } row
        ? string.Join("  ", Table.Columns.Select(column => $"{column.Heading} {column.Text(row)}"))
        : null;

    MainTable IStep.Table() => Diagnosis() is { } known ? LogTables.OfGroups(known) : MainTable.Empty;

    private RideDiagnosis? Diagnosis()
    {
        RideDiagnosis? known = desk.Answers.Diagnosis(logs.Which);
        RideDiagnosis? earlier = known is null ? null : Earlier(known);
        if (known is null || (ReferenceEquals(known, shown) && ReferenceEquals(earlier, shownEarlier) && desk.Look == shownWith && ReferenceEquals(desk.Job?.Givens, shownGivens)))
            return known;
        (shown, shownEarlier, shownWith, shownGivens) = (known, earlier, desk.Look, desk.Job!.Givens);
        IReadOnlyList<LogFinding> findings = LogFinding.All(known);
        Fill(0, LogTables.Findings(findings, desk.Look), findings.Count, row => $"{findings[row].Group} {findings[row].Name}");
        Fill(1, LogTables.Groups(known, desk.Look), known.Groups.Count, row => known.Groups[row].Group.ToString(CultureInfo.InvariantCulture));
        Fill(2, LogTables.Events(known, desk.Look), known.Events.Count, row => string.Create(CultureInfo.InvariantCulture, $"{known.Events[row].What} {known.Events[row].Group} {known.Events[row].AtTimeS}"));
        Fill(3, LogTables.Remedies(known, desk.Look), known.Remedies.Count, row => known.Remedies[row].Do);
        BalancingPlan balance = LogBalance.Plan(known, desk.Job.Givens);
        Fill(4, LogBalance.Columns(balance, desk.Job.Givens, desk.Look), balance.Groups.Count, row => balance.Groups[row].Number.ToString(CultureInfo.InvariantCulture));
        // The job holds the kilometres of its last two rides; for a pair before them nobody gave any.
        bool last = logs.Which == desk.Job.Logs.Count - 1;
        comparison = earlier is null ? null : PackComparison.Of(earlier, known, last ? shownGivens.NumberOf("kmBefore") : null, last ? shownGivens.NumberOf("kmNow") : null);
        IReadOnlyList<GroupChange> changes = comparison?.Groups ?? [];
        Fill(5, LogChanges.Columns(changes, desk.Look), changes.Count, row => changes[row].Group.ToString(CultureInfo.InvariantCulture));
        if (wanted.Length > 0)
            Table.GoTo(wanted);
        wanted = "";
        return known;
    }

    // Changes are told from the log before this one; it is judged only when they are on the screen.
    private RideDiagnosis? Earlier(RideDiagnosis known) =>
        view == 5 && logs.Which > 0 && desk.Answers.Diagnosis(logs.Which - 1) is { } before && before.Groups.Count == known.Groups.Count ? before : null;

    private void Fill(int index, IReadOnlyList<Column> columns, int count, Func<int, string> names)
    {
        tables[index].SetColumns(columns);
        string[] told = RowCursor.ToldApart(Enumerable.Range(0, count).Select(names));
        tables[index].SetRows(count, row => told[row]);
    }

    private void PaintPlot(Area area, RideLog log, RideDiagnosis known)
    {
        int[] groups = [.. Chosen(known)];
        Area left = area;
        if (plots.IsBeside && logs.Other != logs.Which)
        {
            int half = area.Width / 2;
            left = area.Part(0, 0, half - 1, area.Height);
            area.Divide(half - 1);
            RideLog other = desk.Job!.Logs[logs.Other].Log;
            plots.Paint(area.Part(half, 0, area.Width - half, area.Height), other, desk.Answers.Diagnosis(logs.Other), Rated(other), groups, logs.Named(logs.Other));
        }

        plots.Paint(left, log, known, Rated(log), groups, logs.Named(logs.Which));
        if (plots.Window.HasFocus)
            area.Cursor(0, 0);
        area.OnClick(0, 0, area.Width, () => plots.Window.HasFocus = !plots.Window.HasFocus);
    }

    private double? Rated(RideLog log) => JobLogs.Given(desk.Job!.Givens, log)?.RatedGroupAh;

    // The group under the cursor, else those of the first findings: one or two, or the plot is a tangle.
    private IEnumerable<int> Chosen(RideDiagnosis known)
    {
        if (view == 1 && tables[1].Row is { } row)
            return [known.Groups[row].Group];
        IReadOnlyList<LogFinding> findings = LogFinding.All(known);
        if (view == 0 && tables[0].Row is { } at && at < findings.Count)
            return [findings[at].Group];
        return findings.Take(1).Select(finding => finding.Group);
    }

    private string WhyNoChanges => logs.Which == 0 ? "changes are told from the log before: d shows a later log, i adds one"
        : desk.Answers.Diagnosis(logs.Which - 1) is null ? "the log before this one is being judged" : "the log before this one has another number of groups";

    private void PaintTable(Area area, ListTable table, bool focused)
    {
        if (table.Count == 0)
        {
            area.Write(3, 1, TextWidth.Cut(ReferenceEquals(table, tables[5]) ? WhyNoChanges : "nothing of this kind in this log", area.Width - 4));
            if (focused)
                area.Cursor(1, 1);
            return;
        }

        table.Paint(area.Part(0, 0, area.Width, area.Height - 1), focused);
        area.WriteRight(area.Height - 1, table.Account() + " ");
    }

    // What the table has to cut, or what it does not say, stands below it where its rows leave room.
    private void PaintFoot(Area area, RideDiagnosis known)
    {
        if (view == 0 && Table.Row is { } row)
            LogFoot.Paint(area, Table.Count, [("settle by", LogFinding.All(known)[row].Detail.SettleBy)]);
        else if (view == 5 && comparison is { } changes)
            LogFoot.Paint(area, Table.Count, LogChanges.Causes(changes, desk.Look));
    }

    internal void GoToNextView() => view = (view + 1) % Views.Length;

    internal void ShowRemedies() => view = 3;

    internal void ShowOtherLog() => logs.ShowOther();

    internal void Open()
    {
        if (WhereFrom() is { } from)
            desk.Show(new TextOverlay($"{from.Title} rests on", from.Lines));
    }
}
