using System.Globalization;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.Sheets;

/// <summary>What the pack takes besides its cells, and those too while none is measured, counted from the layout. Sizes of fuses and cables are left to the maker's data.</summary>
internal static class BuySheet
{
    internal static IReadOnlyList<SheetPage> Pages(SheetInput input)
    {
        bool grouped = input.Groups.Count > 0;
        int series = grouped ? input.Groups.Count : input.Layout!.Series!.Value;
        int cells = grouped ? input.Groups.Sum(group => group.Cells.Count) : input.Layout!.Used;
        bool round = input.Layout?.Cells.Any(cell => cell.RoundAlong is not null) ?? false;
        List<(string What, string Count, string Note)> rows = [];
        void Add(string what, int count, string note) => rows.Add((what, count.ToString(CultureInfo.InvariantCulture), note));
        if (!grouped)
            Add("cells", cells, $"{(input.Case is { CellName.Length: > 0 } known ? known.CellName : "of the size that was placed")}, {series} in series; used ones: more, because not all will do");
        if (round)
        {
            Add("insulating rings for positive ends", cells, "a few more, they tear");
            Add("places in cell holders", 2 * cells, "both ends; pitch as on the placement sheet");
        }

        Add("series links", series - 1, "conductor for the peak current: by the maker's data and a qualified person");
        Add("sense leads", series + 1, "with a fuse or resistor at the tap");
        Add("insulation over each side", 2, Over(input));
        rows.AddRange(Protection(input.Job.Givens));
        return
        [
            SheetPage.OfTall("To buy", Html.Table(
                ["what", "how many", "note", "have"],
                rows.Select(row => (IReadOnlyList<string>)[Html.Text(row.What), $"<b class=\"num\">{row.Count}</b>", Html.Text(row.Note), Html.Tick])),
                "caution-23"),
        ];
    }

    // From the cells as they are placed; what stands round them is left to the builder.
    private static string Over(SheetInput input) => input.Places.Count == 0 ? "fish paper or sheet, the size of the cells as they stand" : string.Create(
        CultureInfo.InvariantCulture,
        $"fish paper or sheet, at least {Math.Ceiling(input.Places.Max(place => place.Place.Centre.X + (place.Place.SizeMm.X / 2)) - input.Places.Min(place => place.Place.Centre.X - (place.Place.SizeMm.X / 2)))} x {Math.Ceiling(input.Places.Max(place => place.Place.Centre.Y + (place.Place.SizeMm.Y / 2)) - input.Places.Min(place => place.Place.Centre.Y - (place.Place.SizeMm.Y / 2)))} mm");

    private static IEnumerable<(string What, string Count, string Note)> Protection(JobGivens givens)
    {
        string volts = givens.Series * givens.FullV is { } full ? string.Create(CultureInfo.InvariantCulture, $"for {full:0.0} V DC or more") : "volts not known";
        foreach ((string key, string what) in new[] { ("fuse", "main fuse"), ("disconnect", "disconnect"), ("preCharge", "pre-charge"), ("bms", "BMS with a cut-off for each group") })
            yield return (what, "1", givens.TickOf(key) == true ? $"ticked in the job; {volts}" : $"not ticked in the job; {volts}");
    }
}
