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
            return;
        FileUnit unit = probes[0].UnitIsChosen ? probes[0].Unit! : UnitOf(probes[0].Unit, middle);
        if (probes[0].Unit is null && unit != FileUnit.Celsius)
            said.Add($"The temperatures have no unit; figures about {middle:0.#} are read in {unit.Name}.");
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
                if (degC is >= -50 and <= 150 && values[i] is not (255 or 511))
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

    private static FileUnit UnitOf(FileUnit? given, double middle)
    {
        if (given is not null && given.Convert(middle) is > -60 and < 160)
            return given;
        return middle switch
        {
            > -50 and < 110 => FileUnit.Celsius,
            > 230 and < 380 when middle > 250 => FileUnit.Kelvin,
            > 2300 and < 3800 => FileUnit.DeciKelvin,
            > 380 and < 2300 => middle > 1000 ? FileUnit.CentiCelsius : FileUnit.DeciCelsius,
            > 110 and <= 250 => FileUnit.DeciCelsius,
            >= 3800 and < 11000 => FileUnit.CentiCelsius,
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
