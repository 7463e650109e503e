using System.Globalization;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Tells the unit of a time without unit by charge: what flowed must be what a counter of the log counts, or what the volts and the rated capacity bear out.</summary>
/// <param name="current">As written; null where the log has none.</param>
/// <param name="charging">A second column of current that counts the other way; null where there is none.</param>
/// <param name="counter">Ampere-hours that the log itself counts; null where it does not.</param>
/// <param name="volts">Volts of cells, as written.</param>
/// <param name="ratedAh">What the user named, ampere-hours.</param>
internal sealed class ChargeAgainstClock(LogColumn? current, LogColumn? charging, LogColumn? counter, LogColumn[] volts, double? ratedAh)
{
    // A counter may leave out charge or rests, and begins anew: units lie 60 apart, so a factor of two and a half is near enough.
    private const double NearEnough = 2.5;

    // Ah and mAh lie as far apart as hours and thirds of milliseconds, so that a counter without unit is held to less.
    private const double NearWithoutUnit = 1.5;

    // Cells that fell by this at like current gave more than a sixtieth of what they hold; the knee of the curve alone is less.
    private const double TellingFallV = 0.4;
    private const double TooLittle = 1.3 / 60;
    private const double MostOfRated = 1.3;

    // No pack gives so many times what it holds without being charged meanwhile; an unsigned current counts both ways as one.
    private const double TooMuch = 2.5;

    private static readonly FileUnit[] Units = [FileUnit.Second, FileUnit.Minute, FileUnit.Hour, FileUnit.Millisecond];

    /// <summary>Another unit than the likely one, where charge speaks for it and against that one.</summary>
    /// <param name="moments">As written.</param>
    /// <param name="step">The usual step between rows.</param>
    /// <param name="likely">What the steps look like.</param>
    /// <returns>The unit and what speaks for it; null where nothing does.</returns>
    internal (FileUnit Unit, string Why)? Told(double[] moments, double step, FileUnit likely)
    {
        if (current is null || current.Values.Length != moments.Length || step <= 0 || AmpereUnit() is not { } ampere)
            return null;
        double flowed = 0, net = 0, least = 0, most = 0;
        for (int i = 1; i < moments.Length; i++)
        {
            double time = moments[i] - moments[i - 1], amperes = ampere.Convert(Net(i));
            // A long hole carries no charge that is known, and a clock that falls back none at all.
            if (!double.IsFinite(amperes) || time <= 0 || time > 20 * step)
                continue;
            flowed += Math.Abs(amperes) * time / 3600;
            net += amperes * time / 3600;
            (least, most) = (Math.Min(least, net), Math.Max(most, net));
        }

        // Whole steps, and those of half and more, are seconds or what a heading says; the last seconds of a ride can fall as far as hours of it.
        bool fine = step < 0.5 && !moments.Take(1000).All(moment => moment == Math.Floor(moment));
        return ByCounter(flowed, likely) ?? (fine ? ByVolts(most - least, likely) : null);
    }

    private double Net(int row) => current!.Values[row]
        - (charging is { } other && other.Values.Length > row && double.IsFinite(other.Values[row]) ? Math.Abs(other.Values[row]) : 0);

    // A copy of some figures is asked, so that the column itself is left as it is.
    private FileUnit? AmpereUnit() => current!.Unit is { Of: Dimension.Current } given ? given
        : CurrentColumn.UnitOf(new LogColumn(current.Index, current.Heading) { Values = [.. SomeFigures.Of(current.Values)] }, ratedAh, null, out _);

    private (FileUnit, string)? ByCounter(double flowed, FileUnit likely)
    {
        if (counter is null || counter.Values.Length != current!.Values.Length || flowed <= 0)
            return null;
        double[] shown = [.. counter.Values.Where(double.IsFinite)];
        // A counter that begins anew falls by nearly all it had.
        double moved = shown.Zip(shown.Skip(1), (one, next) => Math.Abs(next) < 0.1 * Math.Abs(one) ? 0 : Math.Abs(next - one)).Sum();
        FileUnit[] counts = counter.Unit is { Of: Dimension.Charge } given ? [given] : [FileUnit.AmpereHour, FileUnit.MilliampereHour];
        double near = counts.Length == 1 ? NearEnough : NearWithoutUnit;
        bool Fits(FileUnit unit) => counts.Any(count => count.Convert(moved) / (flowed * unit.Scale) is var ratio && ratio > 1 / near && ratio < near);
        if (moved <= 0 || Fits(likely) || Array.Find(Units, Fits) is not { } found)
            return null;
        return (found, string.Create(CultureInfo.InvariantCulture, $"the counter {counter.Name} moves by {moved:0.###}, and the current would carry {flowed * likely.Scale:0.####} Ah in {likely.Name}, {flowed * found.Scale:0.####} Ah in {found.Name}"));
    }

    private (FileUnit, string)? ByVolts(double swing, FileUnit likely)
    {
        if (ratedAh is not { } rated || swing <= 0)
            return null;
        double ah = swing * likely.Scale;
        FileUnit? found = Array.Find(Units, unit => swing * unit.Scale > TooLittle * rated && swing * unit.Scale < MostOfRated * rated);
        if (ah > TooMuch * rated && (found ?? Array.Find(Units, unit => swing * unit.Scale < MostOfRated * rated)) is { } finer)
            return (finer, string.Create(CultureInfo.InvariantCulture, $"in {likely.Name} the current would carry {ah:0.#} Ah one way, and {rated:0.##} Ah are in it"));
        return ah < TooLittle * rated && found is not null && FallV() is { } fallV && Math.Abs(fallV) > TellingFallV
            ? (found, string.Create(CultureInfo.InvariantCulture, $"the cells {(fallV > 0 ? "fell" : "rose")} by {Math.Abs(fallV):0.0} V at like current, and in {likely.Name} only {ah:0.####} of {rated:0.##} Ah would have flowed"))
            : null;
    }

    // Mean volts of the first tenth of rows less the last tenth, of rows whose current is like the middle one.
    private double? FallV()
    {
        if (volts.Length == 0 || CellVolts.UnitOf([.. volts.Select(column => new LogColumn(column.Index, column.Heading) { Values = [.. SomeFigures.Of(column.Values)], Unit = column.Unit })], []) is not { } unit)
            return null;
        double usual = Core.Cells.Robust.UpperMedian(SomeFigures.Of(current!.Values).Select(Math.Abs).Where(size => size > 0));
        List<double> like = [];
        // Some rows tell it as well as a season of them.
        int every = Math.Max(1, current.Values.Length / 20_000);
        for (int i = 0; i < current.Values.Length; i += every)
            if (Math.Abs(Math.Abs(current.Values[i]) - usual) < 0.2 * usual && volts.Average(column => column.Values[i]) is var mean && unit.Convert(mean) is > 0.5 and < 5)
                like.Add(unit.Convert(mean));
        int tenth = like.Count / 10;
        return tenth < 3 ? null : like.Take(tenth).Average() - like.TakeLast(tenth).Average();
    }
}
