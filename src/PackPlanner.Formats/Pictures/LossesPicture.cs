using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using ScottPlot;

namespace PackPlanner.Formats.Pictures;

/// <summary>From the label to usable energy as a fall of steps: each bar hangs where the one before it ended.</summary>
internal static class LossesPicture
{
    /// <summary>One row: a sum when it starts at zero, else a step.</summary>
    internal sealed record Row(string Name, double FromWh, double ToWh, bool IsSum, bool IsKnown);

    internal static string? WhyNot(SheetInput input) => input.Energy is null
        ? input.Groups.Count == 0 && input.Diagnosis is null ? input.WhyNoGroups : "the chemistry, its limits and the capacities of all groups are not all known"
        : null;

    internal static IReadOnlyList<Row> Rows(EnergyBudget budget)
    {
        List<Row> rows = [new("new, as on the label", 0, budget.NominalWh, IsSum: true, IsKnown: true)];
        double reached = budget.NominalWh;
        foreach (LossStep step in budget.Losses)
        {
            double next = reached + (step.Wh ?? 0);
            rows.Add(new Row(step.Name, reached, next, IsSum: false, step.Wh is not null));
            reached = next;
        }

        rows.Add(new Row("usable", 0, budget.UsableWh, IsSum: true, IsKnown: true));
        return rows;
    }

    internal static IReadOnlyList<Chart> Draw(SheetInput input)
    {
        EnergyBudget budget = input.Energy!;
        IReadOnlyList<Row> rows = Rows(budget);
        double most = rows.Max(row => Math.Max(row.FromWh, row.ToWh));
        Chart chart = new(input, "From the label to usable energy", "Wh", "");
        chart.Bars(rows.Select((row, i) => Bar(row, -(i + 1))), lying: true);
        for (int i = 0; i < rows.Count; i++)
        {
            Row row = rows[i];
            double at = Math.Max(row.FromWh, row.ToWh) + (most * 0.01);
            chart.Words(Says(row), at, -(i + 1), Alignment.MiddleLeft, bold: row.IsSum);
            if (i > 0)
                Joint(chart, row, i);
        }

        chart.Names([.. rows.Select(row => row.Name)]);
        chart.Plot.Axes.SetLimits(0, most * 1.2, -rows.Count - 0.7, -0.3);
        return [chart];
    }

    private static Bar Bar(Row row, double position) => new()
    {
        Position = position,
        ValueBase = row.FromWh,
        Value = row.ToWh,
        Size = 0.62,
        FillColor = row.IsSum ? Chart.Dark : row.ToWh > row.FromWh ? Chart.Paper : Chart.Middle,
    };

    private static void Joint(Chart chart, Row row, int number)
    {
        double at = row.IsSum ? row.ToWh : row.FromWh;
        ScottPlot.Plottables.LinePlot line = chart.Plot.Add.Line(at, -number - 0.31, at, -number - 0.69);
        line.LineColor = Chart.Ink;
        line.LineWidth = 1;
        line.MarkerSize = 0;
    }

    private static string Says(Row row)
    {
        if (!row.IsKnown)
            return "not known";
        if (row.IsSum)
            return $"{Figures.Fixed(row.ToWh, 0)} Wh";
        return Chart.Signed(row.ToWh - row.FromWh);
    }
}
