using System.Globalization;
using PackPlanner.Core.Balancing;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Plots;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.LogScreen;

/// <summary>Step 7: what a log says of the pack: findings with their grounds, groups, events, remedies.</summary>
internal sealed class LogModel : IStep
{
    private static readonly string[] Views = ["findings", "groups", "events", "remedies", "balance", "changes"];

    private readonly Desk desk;
    private readonly ListTable[] tables = [.. Views.Select(_ => new ListTable([new Column("", row => "")]))];
    private readonly LogPlots plots = new();
    private RideDiagnosis? shown;
    private RideDiagnosis? shownEarlier;
    private Look? shownWith;
    private double? shownBalanceA;
    private int view;
    private int? chosen;

    internal LogModel(Desk desk)
    {
        this.desk = desk;
        foreach (ListTable table in tables)
            table.Opened = () => desk.Press("Enter");
    }

    public string Name => "Log";

    public bool IsFilled => desk.Job is { Logs.IsEmpty: false };

    public StepPicture Picture => Diagnosis() is { } known
        ? LogPicture.Of(known, desk.Look)
        : LogPicture.Waiting(desk.Job, Which, desk.Answers.IsDiagnosing);

    public IReadOnlyList<KeyAction> Keys => Diagnosis() is { } known ? Known(known) : Unknown();

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

    // The latest log tells how the pack is now; the energy and the sheets ask it too.
    private int Which => Math.Clamp(chosen ?? int.MaxValue, 0, Math.Max(0, (desk.Job?.Logs.Count ?? 0) - 1));

    private RideLog? Log => desk.Job is { Logs.IsEmpty: false } job ? job.Logs[Which].Log : null;

    // Beside this log stands the next one, after the last the first.
    private int Other => (Which + 1) % Math.Max(1, desk.Job?.Logs.Count ?? 1);

    public void Paint(Area body)
    {
        if (Diagnosis() is not { } known || Log is not { } log)
        {
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
            PaintSettling(below, known);
            for (int y = 0; y < body.Height; y++)
                body.Write(left, y, "│");
            PaintTable(body.Part(left + 1, 0, body.Width - left - 1, body.Height), tables[view == 1 ? 0 : 1], focused: false);
            return;
        }

        int rows = body.Height >= 10 ? 6 : 0;
        if (rows > 0)
            PaintPlot(body.Part(0, 0, body.Width, rows), log, known);
        PaintTable(body.From(rows), Table, focused: !plots.Window.HasFocus);
    }

    public bool Move(string key) => Diagnosis() is not null && (plots.Window.HasFocus ? plots.Move(key) : Table.Move(key));

    public WhereFrom? WhereFrom()
    {
        if (Diagnosis() is not { } known)
            return null;
        LogGrounds grounds = new(known, Log!.Source, desk.Look);
        return (view, Table.Row) switch
        {
            (0, { } row) when LogFinding.All(known) is var findings && row < findings.Count => grounds.Finding(findings[row]),
            (1, { } row) => grounds.Group(known.Groups[row]),
            (2, { } row) => grounds.Event(known.Events[row]),
            (3, { } row) => grounds.Remedy(known.Remedies[row]),
            _ => grounds.All(),
        };
    }

    public string? CopyText() => Diagnosis() is not null && Table.Row is { } row
        ? string.Join("  ", Table.Columns.Select(column => $"{column.Heading} {column.Text(row)}"))
        : null;

    MainTable IStep.Table() => Diagnosis() is { } known
        ? new(
            ["group", "capacityAh", "capacityLowAh", "capacityHighAh", "stateOfChargeOffset", "resistanceMilliohm", "findings"],
            [.. known.Groups.Select(group => new object?[]
            {
                group.Group, group.CapacityAh?.Value, group.CapacityAh?.Low, group.CapacityAh?.High, group.StateOfChargeOffset?.Value,
                group.ResistanceMilliohm?.Value, string.Join(" ", group.Findings.Select(finding => LogFinding.Words(finding.Kind))),
            })])
        : MainTable.Empty;

    private RideDiagnosis? Diagnosis()
    {
        RideDiagnosis? known = desk.Answers.Diagnosis(Which);
        RideDiagnosis? earlier = known is null ? null : Earlier(known);
        if (known is null || (ReferenceEquals(known, shown) && ReferenceEquals(earlier, shownEarlier) && desk.Look == shownWith && desk.Job?.Givens.NumberOf("balanceA") == shownBalanceA))
            return known;
        (shown, shownEarlier, shownWith, shownBalanceA) = (known, earlier, desk.Look, desk.Job!.Givens.NumberOf("balanceA"));
        IReadOnlyList<LogFinding> findings = LogFinding.All(known);
        Fill(0, LogTables.Findings(findings, desk.Look), findings.Count, row => $"{findings[row].Group} {findings[row].Name}");
        Fill(1, LogTables.Groups(known, desk.Look), known.Groups.Count, row => known.Groups[row].Group.ToString(CultureInfo.InvariantCulture));
        Fill(2, LogTables.Events(known, desk.Look), known.Events.Count, row => row.ToString(CultureInfo.InvariantCulture));
        Fill(3, LogTables.Remedies(known, desk.Look), known.Remedies.Count, row => row.ToString(CultureInfo.InvariantCulture));
        BalancingPlan balance = LogBalance.Plan(known, desk.Job.Givens);
        Fill(4, LogBalance.Columns(balance, desk.Job.Givens, desk.Look), balance.Groups.Count, row => balance.Groups[row].Number.ToString(CultureInfo.InvariantCulture));
        IReadOnlyList<GroupChange> changes = earlier is null ? [] : PackComparison.Of(earlier, known, null, null).Groups;
        Fill(5, LogChanges.Columns(changes, desk.Look), changes.Count, row => changes[row].Group.ToString(CultureInfo.InvariantCulture));
        if (wanted.Length > 0)
            Table.GoTo(wanted);
        wanted = "";
        return known;
    }

    // Changes are told from the log before this one; it is judged only when they are on the screen.
    private RideDiagnosis? Earlier(RideDiagnosis known) =>
        view == 5 && Which > 0 && desk.Answers.Diagnosis(Which - 1) is { } before && before.Groups.Count == known.Groups.Count ? before : null;

    private void Fill(int index, IReadOnlyList<Column> columns, int count, Func<int, string> names)
    {
        tables[index].SetColumns(columns);
        tables[index].SetRows(count, names);
    }

    private void PaintPlot(Area area, RideLog log, RideDiagnosis known)
    {
        int[] groups = [.. Chosen(known)];
        Area left = area;
        if (plots.IsBeside && Other != Which)
        {
            int half = area.Width / 2;
            left = area.Part(0, 0, half - 1, area.Height);
            for (int y = 0; y < area.Height; y++)
                area.Write(half - 1, y, "│");
            RideLog other = desk.Job!.Logs[Other].Log;
            plots.Paint(area.Part(half, 0, area.Width - half, area.Height), other, desk.Answers.Diagnosis(Other), Rated(other), groups, Named(Other));
        }

        plots.Paint(left, log, known, Rated(log), groups, Named(Which));
        if (plots.Window.HasFocus)
            area.Cursor(0, 0);
        area.OnClick(0, 0, area.Width, () => plots.Window.HasFocus = !plots.Window.HasFocus);
    }

    private string Named(int which) => desk.Job!.Logs.Count > 1 ? $"log {which + 1} of {desk.Job.Logs.Count}: " : "";

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

    private void PaintTable(Area area, ListTable table, bool focused)
    {
        if (table.Count == 0)
        {
            area.Write(3, 1, TextWidth.Cut(ReferenceEquals(table, tables[5]) ? "changes are told from the log before: d shows a later log, i adds one" : "nothing of this kind in this log", area.Width - 4));
            if (focused)
                area.Cursor(1, 1);
            return;
        }

        table.Paint(area.Part(0, 0, area.Width, area.Height - 1), focused);
        area.WriteRight(area.Height - 1, table.Account() + " ");
    }

    // What the table has to cut stands in full where its rows leave room.
    private void PaintSettling(Area area, RideDiagnosis known)
    {
        if (view != 0 || Table.Row is not { } row)
            return;
        int free = area.Height - 3 - Table.Count;
        IReadOnlyList<string> lines = TextWidth.Wrap(area.Look.Of(LogFinding.All(known)[row].Detail.SettleBy), area.Width - 14);
        if (free < lines.Count)
            return;
        area.Write(3, Table.Count + 2, "settle by", Ink.Bold);
        for (int i = 0; i < lines.Count; i++)
            area.Write(13, Table.Count + 2 + i, lines[i]);
    }

    private List<KeyAction> Known(RideDiagnosis known)
    {
        PlotWindow focus = plots.Window;
        List<KeyAction> keys =
        [
            new(KeyBook.NextPane, focus.HasFocus ? "table" : "plot", "goes between plot and table; in the plot left and right move in time, or from rest to rest", () => focus.HasFocus = !focus.HasFocus),
            focus.HasFocus
                ? new(KeyBook.NextView, $"next plot: {plots.NextName}", "goes through volts, volts less the median, the drop of each group, and the groups at rest", plots.Next)
                : new(KeyBook.NextView, $"next view: {Views[(view + 1) % Views.Length]}", "goes through findings, groups, events, remedies, balance, and what changed since the log before", () => view = (view + 1) % Views.Length),
            new(KeyBook.Open, "open", "shows what the row under the cursor rests on", () => WhereFrom() is null ? "nothing is under the cursor" : null, Open),
            focus.HasFocus
                ? new(KeyBook.SecondLog, plots.IsBeside ? "one log" : "beside", "draws the next log of this job beside this one, or this one alone again", WhyOneLog, () => plots.IsBeside = !plots.IsBeside)
                : new(KeyBook.SecondLog, "other log", "shows the next log of this job; in the plot it draws it beside this one", WhyOneLog, () => chosen = Other),
            new(KeyBook.Remedy, "remedies", "shows what each remedy would give back", () => known.Remedies.Count == 0 ? "there is none to try" : null, () => view = 3),
            new(KeyBook.ZoomIn, "", "looks at half the time shown", () => focus.Zoom(0.5)),
            new(KeyBook.ZoomOut, "", "looks at twice the time shown", () => focus.Zoom(2)),
        ];
        keys.AddRange(Unknown());
        if (focus.HasFocus)
            keys.Add(new(KeyBook.Columns, "groups", "chooses the groups that are drawn", () => plots.Choose(desk, known.Groups.Count)));
        else
            keys.AddRange(TableKeys.Of(desk, Table));
        return keys;

        string? WhyOneLog() => desk.Job!.Logs.Count < 2 ? "the job has one log; i adds another" : null;
    }

    private List<KeyAction> Unknown() =>
    [
        new(KeyBook.AddFile, "add a log", "adds a log, after showing how it was read", () => desk.Job is null ? "no job is open; 1 Job opens one" : null, () => FileChooser.Ask(desk)),
        new(KeyBook.Numbers, "numbers", "changes chemistry, rated Ah, series, parallel and limits", () => desk.Job is null ? "no job is open; 1 Job opens one" : null,
            () => GivenField.Choose(desk, "numbers of this screen", ["chemistry", "ratedAh", "series", "parallel", "fullV", "emptyV", "balanceA"])),
    ];

    private void Open()
    {
        if (WhereFrom() is { } from)
            desk.Show(new TextOverlay($"{from.Title} rests on", from.Lines));
    }
}
