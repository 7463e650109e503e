using PackPlanner.Core.Grouping;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.GroupsScreen;

/// <summary>The pane beside the groups: the cells of the group under the cursor, then the spares.</summary>
internal static class GroupPane
{
    internal static void Paint(Area area, GroupsView view, MatchedGroup group)
    {
        Look look = area.Look;
        area.Write(0, 0, $"group {group.Number}", Ink.Bold);
        area.Write(0, 1, look.Of("label             Ah      mΩ  resting V  share"), Ink.Bold);
        int y = 2;
        int room = Math.Max(4, area.Height - 8);
        foreach (GroupingCell cell in group.Cells.Take(room))
        {
            double? timesEqual = group.PartOf(cell) * group.Cells.Count;
            Line(area, y++, cell, view, look, timesEqual is { } times ? look.Figure(times, 2) + "x" : "-");
        }

        if (group.Cells.Count > room)
            area.Write(0, y++, $"and {group.Cells.Count - room} more; Enter shows all");
        y++;
        area.Write(0, y++, $"spare: {view.Pack.LeftOut.Count}", Ink.Bold);
        foreach (GroupingCell cell in view.Pack.LeftOut)
        {
            if (y >= area.Height)
                break;
            Line(area, y++, cell, view, look, "");
        }
    }

    private static void Line(Area area, int y, GroupingCell cell, GroupsView view, Look look, string share)
    {
        bool locked = view.Question.Locks.ContainsKey(cell.Label);
        area.Write(0, y, TextWidth.CutMiddle(look.Of(cell.Label), 12));
        area.Write(13, y, TextWidth.Fit(look.Figure(cell.CapacityAh, view.AhDecimals), 7, right: true));
        area.Write(21, y, TextWidth.Fit(look.Figure(cell.ResistanceMilliohm, 1), 7, right: true));
        area.Write(30, y, TextWidth.Fit(look.Figure(cell.RestV, 3), 9, right: true));
        area.Write(40, y, share);
        if (view.ToReplace.Contains(cell.Label))
            area.Write(46, y, $"! {view.Word(cell.Label)}");
        else if (locked)
            area.Write(46, y, "lock");
    }
}
