using PackPlanner.Core.Cells;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Core.Jobs;

/// <summary>What a job's groups deliver: the same question from every screen, sheet and verb.</summary>
public static class JobEnergy
{
    /// <summary>What the job says about its string and its use.</summary>
    /// <param name="job">The job.</param>
    /// <param name="groups">Its groups.</param>
    /// <returns>The request; null while the chemistry or a group's capacity is unknown.</returns>
    public static EnergyRequest? Request(Job job, IReadOnlyList<JobGroup> groups)
    {
        JobGivens givens = job.Givens;
        if (givens.Chemistry is not { } chemistry || groups.Count == 0 || groups.Any(group => group.CapacityAh is not > 0))
            return null;
        int parallel = groups[0].Cells.Count;
        CellRow[] tests = [.. groups.SelectMany(group => group.Cells).SelectMany(cell => cell.Rows)];
        return new EnergyRequest
        {
            Groups = [.. groups.Select(Of)],
            Chemistry = chemistry,
            FullV = givens.NumberOf("fullV"),
            EmptyV = givens.NumberOf("emptyV"),
            PackEmptyV = givens.NumberOf("controllerLowV"),
            ControllerMaxV = givens.NumberOf("controllerHighV"),
            Load = givens.SteadyA is > 0 ? new LoadPlan.ConstantCurrent(givens.SteadyA.Value) : null,
            TemperatureDegC = givens.NumberOf("temperatureDegC"),
            ReserveFraction = givens.NumberOf("reserve") ?? 0,
            LinkMilliohm = givens.LinkMilliohm,
            RatedAh = givens.RatedAh * parallel,
            NominalV = givens.NumberOf("nominalV"),
            TestCurrentA = Alike(tests.Select(row => row.TestCurrentA)) * parallel,
            TestCutoffV = Alike(tests.Select(row => row.TestCutoffV)),
            RepeatabilityFraction = givens.RepeatabilityFraction ?? EnergyRequest.DefaultRepeatabilityFraction,
        };
    }

    /// <summary>What the job says about protection and ratings.</summary>
    /// <param name="givens">The givens; what is not ticked counts as not there.</param>
    /// <returns>The protection.</returns>
    public static StringProtection Protection(JobGivens givens) => new()
    {
        Fuse = givens.TickOf("fuse") == true,
        Disconnect = givens.TickOf("disconnect") == true,
        PreCharge = givens.TickOf("preCharge") == true,
        Monitor = givens.TickOf("bms") == true,
        CellFuses = givens.TickOf("cellFuse") == true,
        CellRatingA = givens.NumberOf("cellDischargeA"),
        ChargeDegC = givens.NumberOf("chargeTemperatureDegC"),
        ChargerA = givens.NumberOf("chargerA"),
    };

    private static SeriesGroup Of(JobGroup group)
    {
        double? milliohm = group.ResistanceMilliohm;
        double? largest = milliohm is { } known ? group.Cells.Max(cell => known / cell.ResistanceMilliohm!.Value) * group.Cells.Count : null;
        double? firstInstant = group.Cells.All(cell => cell.AcResistanceMilliohm > 0)
            ? 1 / group.Cells.Sum(cell => 1 / cell.AcResistanceMilliohm!.Value)
            : null;
        return new SeriesGroup(group.Number, group.CapacityAh!.Value, milliohm, null, group.Cells.Count, firstInstant, largest);
    }

    // A figure that all tests share; different ones cannot stand for the lot.
    private static double? Alike(IEnumerable<double?> figures)
    {
        double[] known = [.. figures.OfType<double>().Distinct()];
        return known.Length == 1 ? known[0] : null;
    }
}
