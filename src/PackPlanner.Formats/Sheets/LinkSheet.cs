using System.Globalization;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.Sheets;

/// <summary>What is joined to what, in which order, with a reading before each step.</summary>
internal static class LinkSheet
{
    private const int RowsOnAPage = 12;
    private const int GroupsOnAPage = 15;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input) => [.. Parallel(input), .. Series(input)];

    private static IEnumerable<SheetPage> Parallel(SheetInput input)
    {
        if (input.Groups.All(group => group.Cells.Count < 2))
            yield break;
        foreach (int[] groups in Enumerable.Range(1, input.Groups.Count).Chunk(GroupsOnAPage))
        {
            yield return new SheetPage(
                "First: the cells of each group, in parallel",
                "<p>Join one side of the group. Then, before the second side: red lead on each free end in turn, black on the joined side. All readings must have one sign and lie together; write down the lowest and the highest.</p>\n"
                    + Html.Table(
                        ["group", "cells", "expect V", "lowest", "highest", "joined"],
                        groups.Select(group => (IReadOnlyList<string>)
                        [
                            $"<b class=\"num\">{group.ToString(CultureInfo.InvariantCulture)}</b>",
                            input.Groups[group - 1].Cells.Count.ToString(CultureInfo.InvariantCulture),
                            Html.Figure(input.Groups[group - 1].RestV, 2), Html.Box, Html.Box, Html.Tick,
                        ])),
                ["caution-20a"]);
        }
    }

    private static IEnumerable<SheetPage> Series(SheetInput input)
    {
        foreach (int[] links in Enumerable.Range(1, Math.Max(0, input.Groups.Count - 1)).Chunk(RowsOnAPage))
        {
            yield return new SheetPage(
                "Then: the series links, one after the other",
                "<p>Before each link measure between the two points that it will join: 0 V, steady. Any other reading: stop and find out why. After it, measure from pack minus to the plus of the group just added.</p>\n"
                    + Html.Table(
                        ["link", "joins", "before: 0 V", "after: expect", "measured"],
                        links.Select(link => (IReadOnlyList<string>)
                        [
                            $"<b class=\"num\">{link.ToString(CultureInfo.InvariantCulture)}</b>",
                            Html.Text(Joins(input, link)), Html.Box,
                            Html.Figure(SheetVolts.Of(input.Groups)[link + 1].Volts, 2) + " V", Html.Box,
                        ])),
                ["caution-20b"]);
        }
    }

    private static string Joins(SheetInput input, int link)
    {
        string? plus = TapSheet.SideOf(input, link);
        PlacedLabel? next = input.Places.FirstOrDefault(place => place.Position == link + 1);
        string? minus = next?.PlusUp switch { true => "below", false => "above", null => null };
        string sides = (plus, minus) switch
        {
            (null, _) or (_, null) => "",
            _ when plus == minus => $", {plus}",
            _ => $", from {plus} to {minus}",
        };
        string cable = input.Layout?.Jumpers.Contains(link) == true ? ", by cable" : "";
        return string.Create(CultureInfo.InvariantCulture, $"+ of {link} to − of {link + 1}{sides}{cable}");
    }
}
