using System.Globalization;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Sheets;

/// <summary>Sense taps: volts to expect, and a box for the reading.</summary>
internal static class TapSheet
{
    private const int RowsOnAPage = 14;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input)
    {
        IReadOnlyList<SheetVolts.Tap> taps = SheetVolts.Of(input.Groups);
        string unknown = taps.Any(tap => tap.Volts is null)
            ? "<p><b>A resting voltage is missing, so that from its group on no volts can be told: measure that group alone first.</b></p>\n"
            : "";
        return
        [
            .. SheetPage.Rows(
                "Sense taps, measured before anything is plugged in",
                "<p>Black lead on pack minus. Volts are those of the cells at their last resting reading; charging since then raises all steps alike.</p>\n" + unknown,
                ["tap", "volts", "+/-", "step", "where", "measured"],
                [
                    .. taps.Select(tap => (IReadOnlyList<string>)
                    [
                        $"<b class=\"num\">B{tap.Number.ToString(CultureInfo.InvariantCulture)}</b>", Html.Figure(tap.Volts, 2), Html.Figure(tap.ToleranceV, 2),
                        tap.Number == 0 ? "" : Html.Figure(StepShown(taps, tap), 2), Html.Text(Where(input, tap.Number)), Html.Box,
                    ]),
                ],
                RowsOnAPage,
                "caution-19"),
        ];
    }

    // Between the volts as they are printed, so that a calculator agrees.
    private static double? StepShown(IReadOnlyList<SheetVolts.Tap> taps, SheetVolts.Tap tap) =>
        tap.Volts is { } volts && taps[tap.Number - 1].Volts is { } before ? Math.Round(volts, 2) - Math.Round(before, 2) : tap.StepV;

    internal static MainTable Csv(SheetInput input) => new(
        ["tap", "expectedV", "toleranceV", "stepV", "where", "measuredV", "judged", "job", "revision"],
        [.. SheetVolts.Of(input.Groups).Select(tap => new object?[]
        {
            $"B{tap.Number.ToString(CultureInfo.InvariantCulture)}", tap.Volts, tap.ToleranceV, tap.StepV, Where(input, tap.Number),
            input.Job.TapReadings.GetValueOrDefault(tap.Number)?.Volts, Judged(input, tap.Number), input.Job.Title, input.Revision,
        })]);

    // Nothing where nothing was read; a reading that is outside says stop in the file too.
    private static string? Judged(SheetInput input, int tap)
    {
        VoltSpan[] expected = JobTaps.Expected(input.Job.Givens, input.Groups);
        Dictionary<int, double> readings = JobTaps.Readings(input.Job, input.Groups);
        if (input.Job.TapReadings.ContainsKey(tap) && !readings.ContainsKey(tap))
            return "of other cells: measure again";
        return TapCheck.Fault(tap, expected, readings) switch { null => null, TapFault.None => "ok", _ => "outside: do not plug in" };
    }

    /// <summary>Where a tap sits: on which side, and between which groups.</summary>
    internal static string Where(SheetInput input, int tap)
    {
        int series = input.Groups.Count;
        string side = SideOf(input, tap) is { } known ? known + " " : "";
        return tap == 0 ? $"pack minus, {side}group 1"
            : tap == series ? string.Create(CultureInfo.InvariantCulture, $"pack plus, {side}group {series}")
            : string.Create(CultureInfo.InvariantCulture, $"{side}link {tap} to {tap + 1}");
    }

    /// <summary>above or below: the side where tap k, the plus of group k, lies; null without a layout of upright round cells.</summary>
    internal static string? SideOf(SheetInput input, int tap)
    {
        PlacedLabel? cell = input.Places.FirstOrDefault(place => place.Position == Math.Max(1, tap));
        bool? plusUp = cell?.PlusUp ^ (tap == 0);
        return plusUp switch { true => "above", false => "below", null => null };
    }
}
