using PackPlanner.Core.Cells;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Temperatures of a log in degrees Celsius: their unit, fillers, and bytes that carry an offset of 40.</summary>
internal static class ProbeTemperatures
{
    /// <summary>Converts all probes in place.</summary>
    internal static void Convert(LogColumn[] probes, LogColumn? hottest, List<string> said, int[] lines, RowCounter counter)
    {
        double middle = Robust.UpperMedian(probes.SelectMany(probe => SomeFigures.Of(probe.Values)).Where(figure => figure is not (255 or 511 or 65535)));
        if (double.IsNaN(middle))
        {
            // Nothing but fillers.
            foreach (LogColumn probe in probes)
                Array.Fill(probe.Values, double.NaN);
            return;
        }

        FileUnit unit = probes[0].UnitIsChosen ? probes[0].Unit! : UnitOf(probes[0].Unit, middle, AreWhole(probes));
        if (probes[0].Unit is null && unit != FileUnit.Celsius)
            said.Add($"The temperatures have no unit; figures about {middle:0.#} are read in {unit.Name}.");
        else if (probes[0].Unit is null && middle > WarmDegC)
            said.Add($"The temperatures have no unit; figures about {middle:0.#} are read in {unit.Name}. If they are °F, say so: --column \"{probes[0].Name}=temperature:F\".");
        double offset = Offset(middle, unit, hottest);
        if (offset != 0)
            said.Add("The probe temperatures stand 40 above the highest temperature that the log itself names: they are raw bytes with an offset of 40, which is taken off.");
        foreach (LogColumn probe in probes)
        {
            if (probe.Unit is null)
                probe.SetBy = "heading and values";
            probe.Unit = unit;
            double[] values = probe.Values;
            for (int i = 0; i < values.Length; i++)
            {
                double degC = unit.Convert(values[i]) - offset;
                if (degC is >= -50 and <= 150 && !(unit.Scale == 1 && values[i] is 255 or 511))
                {
                    values[i] = degC;
                    continue;
                }

                if (!double.IsNaN(values[i]))
                    counter.Sample(probe.Name, System.FormattableString.Invariant($"{values[i]:0.##}, no temperature"), lines.Length > i ? lines[i] : 0);
                values[i] = double.NaN;
            }
        }
    }

    // A pack that is warmer than this in the middle of its log is rare; one in °F is not.
    private const double WarmDegC = 55;

    // Kelvin are written with decimals; tenths of a degree are whole numbers.
    private static bool AreWhole(LogColumn[] probes) => probes.SelectMany(probe => SomeFigures.Of(probe.Values)).All(double.IsInteger);

    private static FileUnit UnitOf(FileUnit? given, double middle, bool whole)
    {
        if (given is not null && given.Convert(middle) is > -60 and < 160)
            return given;
        return middle switch
        {
            > -50 and < 110 => FileUnit.Celsius,
            > 250 and < 345 when !whole => FileUnit.Kelvin,
            > 110 and <= 1000 => FileUnit.DeciCelsius,
            > 2630 and < 3330 => FileUnit.DeciKelvin,
            > 1000 and < 11000 => FileUnit.CentiCelsius,
            _ => FileUnit.Celsius,
        };
    }

    private static double Offset(double middle, FileUnit unit, LogColumn? hottest)
    {
        if (hottest is null)
            return 0;
        double above = unit.Convert(middle) - Robust.UpperMedian(hottest.Sample.Where(double.IsFinite));
        return above is > 34 and < 44 ? 40 : 0;
    }
}
