using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>Opening a cell and changing a value of it; what was read is always kept.</summary>
internal static class CellEdits
{
    private static readonly string[] Damage = ["swollen", "dented", "leaking", "smell", "rust", "torn wrap"];

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
        lines.AddRange(cell.Rows.Select((row, i) => ($"test {i + 1}", TestWords(desk, row))));
        if (cell.AbortedAh is { } aborted)
            lines.Add(("broken off", $"{desk.Look.Figure(aborted, 3)} Ah counted in a test that was broken off: it is not a capacity"));
        if (cell.SelfDischarge is { } leak)
            lines.Add(("at rest", $"{desk.Look.Figure(leak.MillivoltPerDay, 2)} mV a day" + (leak.PercentPerMonth is { } month ? $", {desk.Look.Figure(month, 1)} % a month" : "; what that is in charge cannot be told")));
        desk.Show(new TextOverlay(cell.Label, lines));
    }

    private static string TestWords(Desk desk, CellRow row) =>
        $"{desk.Look.Figure(row.CapacityAh, 3)} Ah, {desk.Look.Figure(row.ResistanceMilliohm, 1)} mΩ, {desk.Look.Figure(row.RestV, 3)} V; "
        + (row.File is { } file ? $"{file} line {row.Line}" : "by hand")
        + (row.Slot is { } slot ? $", slot {slot}" : "");

    private static void AskTest(Desk desk, ListTable table, ScreenedCell cell, CellField field, string heading) => desk.Show(new ListOverlay(
        desk, $"{cell.Label} has {cell.Rows.Count} tests: {heading} of which?",
        () => [.. cell.Rows.Select((row, i) => new ListItem(TestWords(desk, row), $"test {i + 1}", () => AskValue(desk, table, cell, i + 1, field, heading)))]));

    private static void AskValue(Desk desk, ListTable table, ScreenedCell cell, int test, CellField field, string heading)
    {
        CellKey key = new(cell.Label, test, field);
        bool words = field is CellField.Slot or CellField.Tray or CellField.Model or CellField.Batch;
        desk.Show(new FieldOverlay(
            desk, $"{heading} of {cell.Label}", "What was read is kept and shown by =. Empty makes it unknown; read brings back what was read.",
            Initial(cell.Rows[test - 1], field), text => WhyNot(text, words), text => Take(desk, table, key, text.Trim(), words)));
    }

    private static void Take(Desk desk, ListTable table, CellKey key, string text, bool words)
    {
        if (text.Equals("read", StringComparison.OrdinalIgnoreCase))
        {
            desk.Do(JobChanges.Edit(key, null));
            return;
        }

        JobValue? value = text.Length is 0 || text == "-" ? null : words ? new JobValue.Word(text) : new JobValue.Number(Number(text)!.Value);
        Origin you = Origin.You(desk.Today);
        JobChange change = JobChanges.Edit(key, new CellEdit(value, you));
        if (key.Field == CellField.LaterRestV && value is not null)
        {
            // A fresh reading is worth nothing without its day: the two together tell self-discharge.
            JobChange day = JobChanges.Edit(key with { Field = CellField.LaterDate }, new CellEdit(new JobValue.Moment(desk.Today.ToDateTime(TimeOnly.MinValue)), you));
            change = new JobChange($"fresh V of {key.Label}", job => day.Apply(JobChanges.Edit(key, new CellEdit(value, you)).Apply(job)));
        }

        desk.Do(change);
        // Typed down a list, as on assembly day.
        if (key.Field == CellField.LaterRestV)
            table.Move("Down");
    }

    private static string? WhyNot(string text, bool words)
    {
        string trimmed = text.Trim();
        if (words || trimmed.Length == 0 || trimmed == "-" || trimmed.Equals("read", StringComparison.OrdinalIgnoreCase))
            return null;
        return Number(trimmed) is null ? $"\"{trimmed}\" is not a number in the unit of the heading." : null;
    }

    private static double? Number(string text) =>
        double.TryParse(text.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? number : null;

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
        CellKey key = new(label, 1, CellField.Condition);
        string Written() => desk.Job?.Rows.FirstOrDefault(row => row.Label == label)?.Condition ?? "";
        desk.Show(new ListOverlay(desk, $"looks of {label}", () =>
        [
            .. Damage.Select(kind => new ListItem($"[{(Written().Contains(kind, StringComparison.OrdinalIgnoreCase) ? "x" : " ")}] {kind}", "", () =>
            {
                List<string> kinds = [.. Damage.Where(known => Written().Contains(known, StringComparison.OrdinalIgnoreCase))];
                if (!kinds.Remove(kind))
                    kinds.Add(kind);
                JobValue value = new JobValue.Word(kinds.Count == 0 ? "none" : string.Join(", ", kinds));
                desk.Do(JobChanges.Edit(key, new CellEdit(value, Origin.You(desk.Today))));
            })),
            new ListItem("none of these", "", () => desk.Do(JobChanges.Edit(key, new CellEdit(new JobValue.Word("none"), Origin.You(desk.Today))))),
        ], staysOpen: true));
    }
}
