using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using ScottPlot;

namespace PackPlanner.Formats.Pictures;

/// <summary>Usable energy as the pack stands and after each remedy.</summary>
internal static class RemediesPicture
{
    /// <summary>One bar.</summary>
    internal sealed record Row(string Name, double Wh, double GainWh, int? NextBottleneck);

    internal static string? WhyNot(SheetInput input) => FromLog(input) || input.Energy is not null ? null
        : input.Groups.Count == 0 && input.Diagnosis is null ? input.WhyNoGroups
        : "the chemistry, its limits and the capacities of all groups are not all known";

    internal static IReadOnlyList<Row> Rows(SheetInput input)
    {
        if (FromLog(input))
        {
            RideDiagnosis told = input.Diagnosis!;
            double now = told.Loaded!.UsableWhNow;
            return [new("as it is", now, 0, null), .. told.Remedies.Select(remedy => new Row(remedy.Do.TrimEnd('.'), remedy.UsableWh, remedy.UsableWh - now, remedy.NextBottleneck))];
        }

        EnergyBudget budget = input.Energy!;
        Row Of(string name, UsableAfter after) => new(name, after.UsableWh, after.UsableWh - budget.UsableWh, after.NextBottleneck);
        return
        [
            new("as it is", budget.UsableWh, 0, budget.EndedByController ? null : budget.EndsAtGroup),
            Of("balance all to full", budget.AfterBalance),
            .. budget.AfterReplacement.Select(after => Of($"{(after.Groups.Count > 1 ? "groups" : "group")} {string.Join(", ", after.Groups)} as good as the median", after)),
        ];
    }

    internal static IReadOnlyList<Chart> Draw(SheetInput input)
    {
        IReadOnlyList<Row> rows = Rows(input);
        double most = rows.Max(row => row.Wh);
        Chart chart = new(input, "What each remedy would give back", "usable Wh", "");
        chart.Bars(rows.Select((row, i) => new Bar { Position = -(i + 1), Value = row.Wh, Size = 0.62, FillColor = i == 0 ? Chart.Dark : Chart.Light }), lying: true);
        for (int i = 0; i < rows.Count; i++)
            chart.Words(Says(rows[i], isNow: i == 0), rows[i].Wh + (most * 0.01), -(i + 1), Alignment.MiddleLeft, bold: i == 0);
        chart.Names([.. rows.Select(row => row.Name)]);
        chart.Plot.Axes.SetLimits(0, most * 1.75, -rows.Count - 0.7, -0.3);
        return [chart];
    }

    // Cells that were tested are a pack to come: its remedies are those of its energy. A pack that was ridden tells by its log.
    private static bool FromLog(SheetInput input) => input.Groups.Count == 0 && input.Diagnosis is { Loaded: not null, Remedies.Count: > 0 };

    private static string Says(Row row, bool isNow)
    {
        string ends = row.NextBottleneck is { } group ? $",{(isNow ? " " : "\nthen ")}group {Figures.Fixed(group, 0)} limits" : "";
        return isNow ? $"{Figures.Fixed(row.Wh, 0)} Wh{ends}" : $"{Chart.Signed(row.GainWh)} Wh{ends}";
    }
}
