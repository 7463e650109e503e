using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>Opening a cell and changing a value of it; what was read is always kept.</summary>
internal static class CellEdits
{
    private const string Read = "read";

    internal static void Open(Desk desk, ListTable table, ScreenedCell cell, string heading)
    {
        if (!CellColumns.Fields.TryGetValue(heading, out CellField field))
            Show(desk, cell);
        else if (field == CellField.Condition)
            AskLooks(desk, cell.Label);
        else if (cell.Rows.Count > 1 && field != CellField.LaterRestV)
            AskTest(desk, table, cell, field, heading);
        else
            AskValue(desk, table, cell, cell.Rows.Count, field, heading);
    }

    private static void Show(Desk desk, ScreenedCell cell)
    {
        List<(string, string)> lines = [("verdict", CellColumns.Word(cell.Verdict))];
        lines.AddRange(cell.Reasons.Select(reason => ("because", $"{ReasonWords.Of(reason, desk.Look)} {ReasonWords.From(reason.LimitFrom)}".TrimEnd())));
        lines.AddRange(cell.Rows.Select((row, i) => ($"test {i + 1}", TestWords(desk, row) + Changed(desk, cell.Label, i + 1))));
        lines.AddRange(cell.Rows.Select(row => row.Remark).OfType<string>().Distinct(StringComparer.Ordinal).Select(remark => ("remark", OneLine.Of(remark))));
        if (cell.AbortedAh is { } aborted)
            lines.Add(("broken off", $"{desk.Look.Figure(aborted, 3)} Ah counted in a test that was broken off: it is not a capacity"));
        if (cell.SelfDischarge is { } leak)
            lines.Add(("at rest", desk.Look.Prose(LeakWords.Of(leak))));
        desk.Show(new TextOverlay(cell.Label, lines));
    }

    private static string TestWords(Desk desk, CellRow row) =>
        $"{desk.Look.Figure(row.CapacityAh, 3)} Ah, {desk.Look.Figure(row.ResistanceMilliohm, 1)} mΩ, {desk.Look.Figure(row.RestV, 3)} V{(row.LaterRestV is { } later ? $", later {desk.Look.Figure(later, 3)} V" : "")}; "
        + (row.File is { } file ? $"{file} line {row.Line}" : "by hand")
        + (row.Slot is { } slot ? $", slot {slot}" : "");

    // What was changed by hand does not stand in the file that the test came from.
    private static string Changed(Desk desk, string label, int test)
    {
        string[] changed = [.. CellColumns.Fields.Where(field => desk.Job!.Edits.ContainsKey(new CellKey(label, test, field.Value))).Select(field => field.Key)];
        return changed.Length == 0 ? "" : $"; by hand: {string.Join(", ", changed)} (= on the column tells what was read)";
    }

    private static void AskTest(Desk desk, ListTable table, ScreenedCell cell, CellField field, string heading) => desk.Show(new ListOverlay(
        desk, $"{cell.Label} has {cell.Rows.Count} tests: {heading} of which?",
        () => [.. cell.Rows.Select((row, i) => new ListItem(TestWords(desk, row), $"test {i + 1}", () => AskValue(desk, table, cell, i + 1, field, heading)))]));

    private static void AskValue(Desk desk, ListTable table, ScreenedCell cell, int test, CellField field, string heading)
    {
        CellKey key = new(cell.Label, test, field);
        desk.Show(new FieldOverlay(
            desk, $"{heading} of {cell.Label}", "What was read is kept and shown by =. Empty makes it unknown; read brings back what was read.",
            Initial(cell.Rows[test - 1], field), text => WhyNot(text, field), text => Take(desk, table, cell.Rows[test - 1], key, text.Trim())));
    }

    private static void Take(Desk desk, ListTable table, CellRow row, CellKey key, string text)
    {
        bool fresh = key.Field == CellField.LaterRestV;
        if (text.Equals(Read, StringComparison.OrdinalIgnoreCase))
        {
            desk.Do(fresh ? FreshVolts.Restore(key.Label, key.Test) : JobChanges.Edit(key, null));
            return;
        }

        Typed(key.Field, text, out JobValue? value);
        CellEdit edit = new(value, Origin.You(desk.Today));
        desk.Do(fresh ? FreshVolts.Write(row, key.Test, edit, desk.Today) : JobChanges.Edit(key, edit));
        // Typed down a list, as on assembly day.
        if (fresh)
            table.Move("Down");
    }

    private static string? WhyNot(string text, CellField field) =>
        text.Trim().Equals(Read, StringComparison.OrdinalIgnoreCase) ? null : Typed(field, text, out _) is { } why ? $"{char.ToUpperInvariant(why[0])}{why[1..]}." : null;

    // A comma is a decimal mark in a figure, and itself in a word.
    private static string? Typed(CellField field, string text, out JobValue? value) =>
        TypedCellValue.Read(field, field is CellField.Slot or CellField.Tray or CellField.Model or CellField.Batch ? text : text.Replace(',', '.'), out value);

    private static string Initial(CellRow row, CellField field)
    {
        double? number = field switch
        {
            CellField.CapacityAh => row.CapacityAh,
            CellField.ResistanceMilliohm => row.ResistanceMilliohm,
            CellField.RestV => row.RestV,
            CellField.LaterRestV => row.LaterRestV,
            _ => null,
        };
        string? word = field switch
        {
            CellField.Slot => row.Slot,
            CellField.Tray => row.Tray,
            CellField.Model => row.Model,
            CellField.Batch => row.Batch,
            _ => null,
        };
        return word ?? number?.ToString("0.######", CultureInfo.InvariantCulture) ?? "";
    }

    private static void AskLooks(Desk desk, string label)
    {
        void Tick(string? kind)
        {
            if (desk.Job is { } job)
                desk.Do(CellLooks.Tick(job, label, kind, Origin.You(desk.Today)));
        }

        desk.Show(new ListOverlay(desk, $"looks of {label}", () =>
        {
            IReadOnlyList<string> noted = desk.Job is { } job ? CellLooks.Noted(job, label) : [];
            return
            [
                .. ConditionWords.Kinds.Select(kind => new ListItem($"[{(noted.Contains(kind) ? "x" : " ")}] {kind}", "", () => Tick(kind))),
                new ListItem("none of these", "", () => Tick(null)),
            ];
        }, staysOpen: true));
    }
}
