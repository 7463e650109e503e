using System.Globalization;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Screens.Reading;

/// <summary>The first values that were used of the columns of a log, in our own units, by their headings.</summary>
internal static class FirstValuesOfLog
{
    internal static Dictionary<string, string> Of(PackLogReading reading)
    {
        Dictionary<string, string> first = [];
        int probe = 0;
        foreach (ColumnReading column in reading.Shape.Columns)
        {
            (double[]? values, string unit) = column.ReadAs switch
            {
                "time" => (reading.Log.TimeS, "s"),
                "current" => (reading.Log.CurrentA, "A"),
                "packVoltage" => (reading.Log.PackV, "V"),
                "temperature" => (reading.Log.TemperatureDegC.ElementAtOrDefault(probe++), "°C"),
                ['g', 'r', 'o', 'u', 'p', ' ', .. var rest] when int.TryParse(rest.Split(' ')[0], CultureInfo.InvariantCulture, out int group) && group <= reading.Log.Groups
                    => (reading.Log.GroupV[group - 1], "V"),
                _ => (null, ""),
            };
            if (values is not null)
                first.TryAdd(column.Name, string.Join(" ", values.Where(double.IsFinite).Take(3).Select(value => value.ToString("0.####", CultureInfo.InvariantCulture) + unit).DefaultIfEmpty("-")));
        }

        return first;
    }
}
