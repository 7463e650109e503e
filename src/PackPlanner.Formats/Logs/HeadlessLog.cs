using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Names the columns of a log without a heading from how they behave: time grows, volts of a cell stay between their limits and move smoothly, the current is what is left.</summary>
internal static class HeadlessLog
{
    internal static void Name(LogColumns columns)
    {
        foreach (LogColumn column in columns.All)
            column.SetBy = "values";
        LogColumn? time = Array.Find(columns.All, column => Grows(column.Sample));
        if (time is not null)
            time.Role = ColumnRole.Time;
        LogColumn[] volts = [.. columns.All.Where(column => column != time && IsVoltage(column.Sample)).OrderBy(column => Roughness(column.Sample))];
        if (volts.Length > 2)
        {
            LogColumn[] inOrder = [.. volts.OrderBy(column => column.Index)];
            for (int i = 0; i < inOrder.Length; i++)
                (inOrder[i].Role, inOrder[i].Number) = (ColumnRole.CellVoltage, i + 1);
            if (Array.Find(columns.All, column => column.Role == ColumnRole.Unknown && IsSum(column, inOrder)) is { } pack)
                pack.Role = ColumnRole.PackVoltage;
        }
        else if (volts.Length > 0)
        {
            volts[0].Role = ColumnRole.Voltage;
        }

        LogColumn? warm = Array.Find(columns.All, column => column.Role == ColumnRole.Unknown && IsWarmth(column.Sample));
        LogColumn? current = columns.All
            .Where(column => column.Role == ColumnRole.Unknown && column != warm && Most(column.Sample) > 0.02)
            .OrderByDescending(column => column.Sample.Any(value => value < 0) ? 1 : 0)
            .ThenBy(column => volts.Length == 0 ? column.Index : Math.Abs(column.Index - volts[0].Index))
            .FirstOrDefault();
        if (current is not null)
            current.Role = ColumnRole.Current;
        if (warm is not null)
            warm.Role = ColumnRole.Temperature;
    }

    // The first row with all of them tells, in whatever unit either is written.
    private static bool IsSum(LogColumn column, LogColumn[] cells)
    {
        for (int i = 0; i < column.Sample.Length; i++)
        {
            double sum = cells.Sum(cell => cell.Sample[i]);
            if (!double.IsFinite(sum) || sum == 0 || !double.IsFinite(column.Sample[i]))
                continue;
            return new[] { 1, 0.1, 0.01, 0.001, 1000, 100 }.Any(scale => Math.Abs((column.Sample[i] * scale / sum) - 1) < 0.02);
        }

        return false;
    }

    private static bool Grows(double[] sample)
    {
        int up = 0;
        for (int i = 1; i < sample.Length; i++)
        {
            if (!(sample[i] >= sample[i - 1]))
                return false;
            up += sample[i] > sample[i - 1] ? 1 : 0;
        }

        return sample.Length > 2 && up * 2 > sample.Length;
    }

    private static bool IsVoltage(double[] sample)
    {
        double[] known = [.. sample.Where(double.IsFinite)];
        return known.Length * 2 > sample.Length && ((known.Min() > 0.5 && known.Max() < 5) || (known.Min() > 500 && known.Max() < 5000));
    }

    // How far a column travels for the range it covers: 1 for a steady fall, large for noise about a constant current.
    private static double Roughness(double[] sample)
    {
        double way = 0;
        for (int i = 1; i < sample.Length; i++)
            way += double.IsFinite(sample[i] - sample[i - 1]) ? Math.Abs(sample[i] - sample[i - 1]) : 0;
        double range = sample.Where(double.IsFinite).Max() - sample.Where(double.IsFinite).Min();
        return range > 0 ? way / range : double.MaxValue;
    }

    private static bool IsWarmth(double[] sample)
    {
        double[] known = [.. sample.Where(double.IsFinite)];
        return known.Length * 2 > sample.Length && known.Min() > 5 && known.Max() < 90 && known.Max() - known.Min() < 60;
    }

    private static double Most(double[] sample) => sample.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max();
}
