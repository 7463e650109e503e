using System.Globalization;

namespace PackPlanner.Formats.Sheets;

/// <summary>What each group was like when the pack was built, with room for next year's figures.</summary>
internal static class BaseLineSheet
{
    private const int GroupsOnAPage = 16;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input) =>
    [
        .. Enumerable.Range(1, input.Groups.Count).Chunk(GroupsOnAPage).Select(groups => new SheetPage(
            "Base line",
            "<p>Measure again after a year at the same temperature and current, or let the log of a full ride tell. Sums of the cells as they were tested.</p>\n" + Html.Table(
                ["group", "Ah", "mΩ", "rest V", "Ah later", "mΩ later"],
                groups.Select(group => (IReadOnlyList<string>)
                [
                    $"<b class=\"num\">{group.ToString(CultureInfo.InvariantCulture)}</b>",
                    Html.Figure(input.Groups[group - 1].CapacityAh, 2), Html.Figure(input.Groups[group - 1].ResistanceMilliohm, 2),
                    Html.Figure(input.Groups[group - 1].RestV, 3), Html.Box, Html.Box,
                ])),
            [])),
        .. SheetPictures.Page(input, "The pack when it was new", [], "groups", "losses"),
    ];
}
