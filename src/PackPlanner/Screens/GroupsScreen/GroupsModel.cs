using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.GroupsScreen;

/// <summary>Step 3: the groups, how equal they are, how equal they could be, and what the tester's noise leaves of that.</summary>
internal sealed class GroupsModel : IStep
{
    private const int TwoPanes = 110;

    private readonly Desk desk;
    private readonly ListTable table = new([new Column("group", _ => "")]);
    private GroupsView? view;
    private Look? shownWith;
    private string waitingFor = "";
    private bool isFormer;

    internal GroupsModel(Desk desk)
    {
        this.desk = desk;
        table.Opened = () => desk.Press("Enter");
    }

    public string Name => "Groups";

    public bool IsFilled => desk.Answers.HasGroups;

    public StepPicture Picture => View() is { ToReplace.Count: 0 } shown ? GroupsPicture.Of(shown, desk)
        : desk.Answers.Groups is { } outcome ? GroupsPicture.Refused(outcome, desk)
        : GroupsPicture.Waiting(desk, desk.Answers.Lot, view);

    public IReadOnlyList<KeyAction> Keys => View() is { } shown
        ? GroupKeys.Of(desk, table, shown, Current)
        : GroupKeys.WithoutGroups(desk);

    public string Place
    {
        get => table.Name ?? waitingFor;
        set
        {
            waitingFor = value;
            table.GoTo(value);
        }
    }

    private MatchedGroup? Current => view is not null && table.Row is { } row ? view.Pack.Groups[row] : null;

    public void Paint(Area body)
    {
        if ((View() ?? view) is not { } shown)
        {
            // What the step is for was learnt before the groups were asked for.
            if (desk.Answers.GroupsAsked is null || desk.Answers.WasStopped)
                Teach.Paint(body, GroupsPicture.Teaching);
            return;
        }

        if (body.Width >= TwoPanes)
        {
            int left = Math.Clamp(body.Width * 4 / 7, 66, 110);
            PaintTable(body.Part(0, 0, left - 1, body.Height));
            body.Divide(left);
            if (Current is { } group)
                GroupPane.Paint(body.Part(left + 2, 0, body.Width - left - 2, body.Height), shown, group);
            return;
        }

        PaintTable(body);
    }

    public bool Move(string key) => (View() ?? view) is not null && table.Move(key);

    public WhereFrom? WhereFrom() => View() is { } shown && Current is { } group ? GroupWhereFrom.Of(shown, group, desk.Look) : null;

    public string? CopyText() => View() is not null && Current is { } group
        ? $"group {group.Number}: {desk.Look.Figure(group.CapacityAh, 3)} Ah: {string.Join(" ", group.Cells.Select(cell => view!.Told(cell.Label)))}"
        : null;

    public MainTable Table() => View() is { } shown
        ? new(
            ["group", "capacityAh", "resistanceMilliohm", "hardestWorked", "timesEqual", "cells"],
            [.. shown.Pack.Groups.Select(group => new object?[]
            {
                group.Number, group.CapacityAh, group.ResistanceMilliohm, group.LargestShare?.Cell, group.LargestShare?.TimesEqual,
                string.Join(" ", group.Cells.Select(cell => shown.Told(cell.Label))),
            })])
        : MainTable.Empty;

    private GroupsView? View()
    {
        GroupingOutcome? outcome = desk.Answers.Groups;
        ScreenedLot? lot = desk.Answers.Lot;
        (MatchedPack? pack, IReadOnlySet<string> toReplace) = outcome switch
        {
            GroupingOutcome.Matched matched => (matched.Pack, new HashSet<string>()),
            GroupingOutcome.Contradicts { AsArranged: { } arranged } wrong => (arranged, wrong.ToReplace),
            _ => (null, (IReadOnlySet<string>)new HashSet<string>()),
        };
        isFormer = pack is null || lot is null;
        if (pack is null || lot is null)
        {
            // The groups from before stay on the screen while others are made; where no others come they are nobody's answer.
            if (outcome is not null || desk.Job is not { } job || !JobGroups.AreOfCells(job))
                view = null;
            return null;
        }

        if (ReferenceEquals(view?.Pack, pack) && desk.Look == shownWith)
            return view;
        view = new GroupsView(pack, lot, desk.Answers.GroupsAsked!) { ToReplace = toReplace };
        shownWith = desk.Look;
        table.SetColumns(GroupColumns.Of(view, desk.Look));
        table.SetRows(pack.Groups.Count, row => pack.Groups[row].Number.ToString(System.Globalization.CultureInfo.InvariantCulture));
        if (waitingFor.Length > 0 && table.GoTo(waitingFor))
            waitingFor = "";
        return view;
    }

    private void PaintTable(Area area)
    {
        table.Paint(area.Part(0, 0, area.Width, area.Height - 1));
        string account = table.Account() + " ";
        area.Write(3, area.Height - 1, TextWidth.Cut(area.Look.Of(isFormer ? "the groups from before: others are being made" : "Ah: sum of cells as typed, ±: 90 %"), area.Width - 5 - TextWidth.Of(account)));
        area.WriteRight(area.Height - 1, account);
    }
}
