using System.Globalization;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Sharing;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Sheets;

/// <summary>What is joined to what, in which order, with a reading before each step.</summary>
internal static class LinkSheet
{
    private const int RowsOnAPage = 12;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input) => [.. Parallel(input), .. Series(input)];

    private static IEnumerable<SheetPage> Parallel(SheetInput input)
    {
        if (input.Groups.All(group => group.Cells.Count < 2))
            return [];
        bool[] cautioned = [.. input.Joinings.Select(plan => plan.Cautions.Any(caution => caution.Code == "caution-07" && caution.Signal != Core.Cautions.SignalWord.Notice))];
        bool first = cautioned.Contains(true);
        return SheetPage.Rows(
            "First: the cells of each group, in parallel",
            "<p>Join one side of the group. Then, before the second side: red lead on each free end in turn, black on the joined side. All readings must have one sign and lie no further apart than stated; write down the lowest and the highest.</p>\n",
            ["group", "cells", "expect V", "apart at most V", .. first ? ["bring first, alone"] : Array.Empty<string>(), "lowest", "highest", "joined"],
            [
                .. input.Groups.Select((group, i) => (IReadOnlyList<string>)
                [
                    $"<b class=\"num\">{Number(i + 1)}</b>", $"<span class=\"num\">{Number(group.Cells.Count)}</span>", Html.Figure(group.RestV, 2),
                    Html.Figure(Apart(input.Joinings[i]), 2), .. first ? [Bring(input.Joinings[i])] : Array.Empty<string>(), Html.Box, Html.Box, Html.Tick,
                ]),
            ],
            first ? RowsOnAPage - 2 : RowsOnAPage + 1,
            ["caution-20a", .. first ? ["caution-07"] : Array.Empty<string>()]);
    }

    // Rounded down, since it is a limit.
    private static double? Apart(JoinPlan plan) => JobJoining.ApartV(plan) is { } volts ? Math.Floor(volts * 100) / 100 : null;

    // What its caution asks for: those cells that would take more than they may.
    private static string Bring(JoinPlan plan)
    {
        JoinStep[] far = [.. plan.Cells.Where(step => step.IsBroughtAlone).OrderByDescending(step => Math.Abs(step.BringByV!.Value))];
        string more = far.Length > 2 ? $" and {Number(far.Length - 2)} more" : "";
        return string.Join(", ", far.Take(2).Select(step => $"{Html.Text(step.Label)} to <b class=\"num\">{Figures.Fixed(step.BringToV, 2)} V</b>")) + more;
    }

    private static IEnumerable<SheetPage> Series(SheetInput input) => SheetPage.Rows(
        "Then: the series links, one after the other",
        "<p>Before each link measure between the two points that it will join: 0 V, steady. Any other reading: stop and find out why. After it, measure from pack minus to the plus of the group just added.</p>\n",
        ["link", "joins", "before: 0 V", "after: expect", "measured"],
        [
            .. Enumerable.Range(1, Math.Max(0, input.Groups.Count - 1)).Select(link => (IReadOnlyList<string>)
            [
                $"<b class=\"num\">{Number(link)}</b>", Html.Text(Joins(input, link)), Html.Box,
                Html.Figure(SheetVolts.Of(input.Groups)[link + 1].Volts, 2) + " V", Html.Box,
            ]),
        ],
        RowsOnAPage,
        "caution-20b");

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

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
