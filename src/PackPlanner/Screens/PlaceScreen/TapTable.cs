using System.Globalization;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>The sense taps with the volts to expect, and the readings that the user types back.</summary>
internal sealed class TapTable(Desk desk)
{
    private int top;

    /// <summary>The tap under the cursor, from 0 at pack minus.</summary>
    internal int At { get; set; }

    internal void Keep(PlacedPack pack) => At = Math.Clamp(At, 0, pack.Series);

    internal bool Move(string key, PlacedPack pack)
    {
        switch (key)
        {
            case "Up": At = Math.Max(0, At - 1); return true;
            case "Down": At = Math.Min(pack.Series, At + 1); return true;
            case "PgUp": At = Math.Max(0, At - 10); return true;
            case "PgDn": At = Math.Min(pack.Series, At + 10); return true;
            case "Home": At = 0; return true;
            case "End": At = pack.Series; return true;
            default: return false;
        }
    }

    internal void Paint(Area area, PlacedPack pack, bool focused, Action clicked)
    {
        string volts = pack.IsNominal ? "nominal V" : "resting V";
        string wide = $"taps: where a sense wire meets the pack; {volts} from pack minus";
        string heading = area.Look.Of(area.Width - 2 >= TextWidth.Of(area.Look.Of(wide)) ? wide : $"sense taps, {volts} from pack minus");
        area.Write(1, 0, TextWidth.Cut(heading, area.Width - 2), Ink.Bold);
        area.Write(3, 1, "tap     volts    step  where", Ink.Bold);
        area.Write(Math.Clamp(area.Width - 14, 40, 47), 1, "measured", Ink.Bold);
        int page = Math.Max(1, area.Height - 2);
        top = Math.Clamp(top, Math.Max(0, At - page + 1), Math.Max(0, Math.Min(At, pack.Series + 1 - page)));
        IReadOnlyDictionary<int, double> readings = Readings(pack);
        for (int y = 0; y < page && top + y <= pack.Series; y++)
        {
            int number = top + y;
            PaintTap(area, y + 2, number, pack, readings, focused);
            area.OnClick(0, y + 2, area.Width, () =>
            {
                At = number;
                clicked();
            });
        }

        if (pack.Series + 1 > page)
            area.WriteRight(0, $"{top + 1}-{top + page} of {pack.Series + 1} ");
    }

    internal WhereFrom WhereFrom(PlacedPack pack) => new($"{desk.Look.Figure(pack.ExpectedV[At], 2)} V at tap B{At}",
    [
        ("sum", $"the {(pack.IsNominal ? "nominal" : "resting")} volts of the groups below it, from pack minus"),
        ("right", $"each step within {desk.Look.Figure(TapCheck.ToleranceV, 1)} V of its group's own volts and of the right sign; from pack minus within {desk.Look.Figure(TapCheck.ToleranceV, 1)} V or {desk.Look.Percent(TapCheck.ToleranceFraction, 1)}, whichever is more"),
        .. Readings(pack) is var readings && readings.TryGetValue(At, out double read)
            ? [("read", $"{desk.Look.Figure(read, 2)} V{(JobTaps.Why(At, pack.Spans, readings) is { } why ? ": " + desk.Look.Prose(why) : "")}")]
            : Array.Empty<(string, string)>(),
        ("one outside", "stop, do not plug in"),
    ]);

    /// <summary>How many readings are of cells that no longer stand there.</summary>
    internal int OfOthers(PlacedPack pack) => desk.Job!.TapReadings.Count - Readings(pack).Count;

    /// <summary>How many readings are outside what is expected.</summary>
    internal int Wrong(PlacedPack pack)
    {
        IReadOnlyDictionary<int, double> readings = Readings(pack);
        return Enumerable.Range(0, pack.Series + 1).Count(number => TapCheck.IsRight(number, pack.Spans, readings) == false);
    }

    /// <summary>Asks what the meter shows at the tap under the cursor; it is judged at once.</summary>
    internal void Type(PlacedPack pack)
    {
        int number = At;
        desk.Show(new FieldOverlay(
            desk, $"volts at B{number}", $"From pack minus; {desk.Look.Figure(pack.ExpectedV[number], 2)} V expected. Empty takes the reading out.",
            desk.Job!.TapReadings.TryGetValue(number, out TapReading? before) ? desk.Look.AsTyped(before.Volts, "0.###") : "",
            text => WhyNot(text, pack),
            text =>
            {
                desk.Do(JobChanges.ReadTap(number, Volts(text) is { } volts ? new TapReading(volts, Origin.You(desk.Today), JobTaps.GroupsBelow(pack.InSeries).ElementAtOrDefault(number)) : null));
                if (JobTaps.Why(number, pack.Spans, Readings(pack)) is { } why)
                    desk.Says = desk.Look.Prose($"B{number} is wrong: {why}. Stop, do not plug in; find out why first.");
                else
                    At = Math.Min(pack.Series, number + 1);
            }));
    }

    private void PaintTap(Area area, int y, int number, PlacedPack pack, IReadOnlyDictionary<int, double> readings, bool focused)
    {
        if (number == At && focused)
        {
            area.Write(1, y, ">", Ink.Accent | Ink.Bold);
            area.Cursor(1, y);
        }

        area.Write(3, y, $"B{number}");
        area.Write(8, y, TextWidth.Fit(area.Look.Figure(pack.ExpectedV[number], 2), 8, right: true));
        // Between the figures as they are shown, so that a calculator agrees; what is judged has all its digits.
        if (number > 0)
            area.Write(17, y, TextWidth.Fit(area.Look.Figure(Math.Round(pack.ExpectedV[number], 2) - Math.Round(pack.ExpectedV[number - 1], 2), 2), 7, right: true));
        string where = number == 0 ? "pack minus" : number == pack.Series ? "pack plus" : $"link {number:00}={number + 1:00}";
        // In the narrower pane the verdict on a reading stays whole.
        int measuredAt = Math.Clamp(area.Width - 14, 40, 47);
        area.Write(26, y, TextWidth.Cut(where, measuredAt - 27));
        bool? right = TapCheck.IsRight(number, pack.Spans, readings);
        string measured = readings.TryGetValue(number, out double volts) ? $"{area.Look.Figure(volts, 2)} {(right switch { true => "ok", false => "WRONG", null => "?" })}"
            : desk.Job!.TapReadings.TryGetValue(number, out TapReading? before) ? $"{area.Look.Figure(before.Volts, 2)} AGAIN" : "________";
        area.Write(measuredAt, y, measured, right == false ? Ink.Bold | Ink.Underline : Ink.Plain);
    }

    private Dictionary<int, double> Readings(PlacedPack pack) => JobTaps.Readings(desk.Job!, pack.InSeries);

    private static string? WhyNot(string text, PlacedPack pack)
    {
        if (text.Trim().Length == 0)
            return null;
        if (Volts(text) is not { } volts)
            return "A number of volts is wanted.";
        // No fault in the wiring gives more than the whole pack; a meter that stands on millivolts does.
        return Math.Abs(volts) > (2 * pack.ExpectedV[^1]) + 10 ? "That is far more than the whole pack has: does the meter show millivolts? Write volts, or 3620mV." : null;
    }

    private static double? Volts(string text) => text.Trim().EndsWith("mV", StringComparison.Ordinal) ? VoltsOf(text.Trim()[..^2]) / 1000 : VoltsOf(text);

    private static double? VoltsOf(string text) =>
        double.TryParse(text.Trim().TrimEnd('V', 'v', ' ').Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out double volts) && double.IsFinite(volts) ? volts : null;
}
