using System.Globalization;
using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Sheets;

/// <summary>What each group was like when the pack was built, with room for next year's figures.</summary>
internal static class BaseLineSheet
{
    internal static IReadOnlyList<SheetPage> Pages(SheetInput input) =>
    [
        .. SheetPage.Rows(
            "Base line",
            $"<p>Measure again after a year as it was measured when new, or let the log of a full ride tell. Sums of the cells as they were tested{Tested(input)}.</p>\n"
                + $"<p>Later, on {Html.Box} at {Html.Box} °C and {Html.Box} A</p>\n",
            ["group", "Ah", "mΩ", "rest V", "Ah later", "mΩ later"],
            [
                .. input.Groups.Select((group, i) => (IReadOnlyList<string>)
                [
                    $"<b class=\"num\">{(i + 1).ToString(CultureInfo.InvariantCulture)}</b>",
                    Html.Figure(group.CapacityAh, 2), Html.Figure(group.ResistanceMilliohm, 2), Html.Figure(group.RestV, 3), Html.Box, Html.Box,
                ]),
            ],
            14),
        .. SheetPictures.Page(input, "The pack when it was new", [], "groups", "losses"),
    ];

    // The conditions of the tests where all agree; what nobody noted is not made up.
    private static string Tested(SheetInput input)
    {
        CellRow[] tests = [.. input.Groups.SelectMany(group => group.Cells).SelectMany(cell => cell.Rows).Where(row => row.CapacityAh is not null)];
        string[] known =
        [
            .. new[] { Alike(tests.Select(row => row.TestCurrentA), "A"), Alike(tests.Select(row => row.TestCutoffV), "V cut-off"), Alike(tests.Select(row => row.TemperatureDegC), "°C") }
                .OfType<string>(),
        ];
        return known.Length > 0 ? $": {string.Join(", ", known)}" : "; current and temperature were not noted";
    }

    private static string? Alike(IEnumerable<double?> figures, string unit) =>
        figures.Distinct().ToArray() is [{ } one] ? string.Create(CultureInfo.InvariantCulture, $"{one:0.##} {unit}") : null;
}
