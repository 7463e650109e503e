using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using ScottPlot;

namespace PackPlanner.Formats.Pictures;

/// <summary>Millivolts that each group loses under load: its resistance times the current.</summary>
internal static class DropPicture
{
    /// <summary>One group's drop, millivolts, with its range where a log told it.</summary>
    internal sealed record Drop(int Group, double Millivolt, double? LowMillivolt, double? HighMillivolt);

    internal static string? WhyNot(SheetInput input)
    {
        if (input.Groups.Count > 0)
            return input.Job.Givens.SteadyA is not > 0 ? "the steady amperes are not known"
                : input.Groups.Any(group => group.ResistanceMilliohm is null) ? "a cell of a group has no resistance" : null;
        return input.Diagnosis is not { } told ? input.WhyNoGroups
            : told.Loaded is not { CurrentA: > 0 } || told.Groups.All(group => group.ResistanceMilliohm is null) ? "the log shows no steps of current" : null;
    }

    internal static (double CurrentA, IReadOnlyList<Drop> Drops) Of(SheetInput input)
    {
        if (input.Groups.Count > 0)
        {
            double steadyA = input.Job.Givens.SteadyA!.Value;
            return (steadyA, [.. input.Groups.Select((group, i) => new Drop(i + 1, group.ResistanceMilliohm!.Value * steadyA, null, null))]);
        }

        double currentA = input.Diagnosis!.Loaded!.CurrentA;
        return (currentA, [.. input.Diagnosis.Groups.Where(group => group.ResistanceMilliohm is not null).Select(group => Told(group, currentA))]);
    }

    internal static IReadOnlyList<Chart> Draw(SheetInput input)
    {
        (double currentA, IReadOnlyList<Drop> drops) = Of(input);
        string from = input.Groups.Count > 0 ? "from the cells' tests" : "from the log";
        Chart chart = new(input, $"Drop of each group at {Figures.Digits(currentA, 3)} A, {from}", "group, from pack minus", "drop, mV");
        double most = drops.Max(drop => drop.Millivolt);
        chart.Bars(drops.Select(drop => new Bar { Position = drop.Group, Value = drop.Millivolt, FillColor = drop.Millivolt == most ? Chart.Dark : Chart.Light, Size = 0.7 }));
        Drop[] ranged = [.. drops.Where(drop => drop.LowMillivolt is not null)];
        if (ranged.Length > 0)
        {
            ScottPlot.Plottables.ErrorBar range = new(
                [.. ranged.Select(drop => (double)drop.Group)], [.. ranged.Select(drop => drop.Millivolt)], null, null,
                [.. ranged.Select(drop => drop.Millivolt - drop.LowMillivolt!.Value)], [.. ranged.Select(drop => drop.HighMillivolt!.Value - drop.Millivolt)])
            { LineColor = Chart.Ink, LineWidth = 2, CapSize = 5 };
            chart.Plot.Add.Plottable(range);
        }

        double top = Math.Max(most, ranged.Select(drop => drop.HighMillivolt!.Value).DefaultIfEmpty(0).Max());
        Drop largest = drops.First(drop => drop.Millivolt == most);
        chart.Words($"{Figures.Digits(most, 3)} mV", largest.Group, Math.Max(most, largest.HighMillivolt ?? 0) + (top * 0.02), Alignment.LowerCenter, bold: true);
        chart.Numbers(Math.Max(drops.Max(drop => drop.Group), input.Groups.Count));
        chart.Plot.Axes.SetLimits(0.3, drops.Max(drop => drop.Group) + 0.7, 0, top * 1.15);
        return [chart];
    }

    private static Drop Told(GroupDiagnosis group, double currentA)
    {
        Ranged milliohm = group.ResistanceMilliohm!.Value;
        return new Drop(group.Group, milliohm.Value * currentA, milliohm.Low * currentA, milliohm.High * currentA);
    }
}
