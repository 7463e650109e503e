using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Packs;
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
        return Asked(givens, chemistry, MissingResistances.Filled([.. groups.Select(Of)], [.. groups.Select(group => (IReadOnlyList<(string, double?)>)[.. group.Cells.Select(cell => (cell.Label, cell.ResistanceMilliohm))])]), parallel) with
        {
            TestCurrentA = Alike(tests.Select(row => row.TestCurrentA)) * parallel,
            // A column of cut-offs can hold those of charging; the end of no discharge lies there.
            TestCutoffV = Alike(tests.Select(row => row.TestCutoffV)) is { } cutoffV && chemistry.Curve.Spans(chemistry.FullV, cutoffV) ? cutoffV : null,
            RepeatabilityFraction = givens.RepeatabilityFraction ?? EnergyRequest.DefaultRepeatabilityFraction,
        };
    }

    /// <summary>What the job says about its string: its groups of cells or, where there are none to be made, the groups as its last log shows them.</summary>
    /// <param name="job">The job.</param>
    /// <param name="groups">Its groups of cells; empty while there are none.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>The request; null while the chemistry or a group's capacity is unknown, or the log does not tell capacities.</returns>
    public static EnergyRequest? Request(Job job, IReadOnlyList<JobGroup> groups, CancellationToken stopped)
    {
        if (groups.Count > 0 || JobGroups.AreOfCells(job) || job.Logs.IsEmpty)
            return Request(job, groups);
        RideLog log = job.Logs[^1].Log;
        return JobLogs.Diagnosed(job.Givens, log, stopped) is { CapacityTold: true } told
            ? Request(job.Givens, told)
            : null;
    }

    /// <summary>What the job says about its use, with the groups as a log shows them.</summary>
    /// <param name="givens">Chemistry, load, limits, temperature.</param>
    /// <param name="diagnosis">What the log says of the groups.</param>
    /// <returns>The request; null while the chemistry or a group's capacity is unknown.</returns>
    /// <remarks>A log tells only how the groups stand against one another: the fullest is taken as full.</remarks>
    public static EnergyRequest? Request(JobGivens givens, RideDiagnosis diagnosis)
    {
        IReadOnlyList<GroupDiagnosis> told = diagnosis.Groups;
        if (givens.Chemistry is not { } chemistry || told.Count == 0 || told.Any(group => group.CapacityAh is null))
            return null;
        bool known = told.All(group => group.StateOfChargeOffset is not null);
        double most = told.Max(group => group.StateOfChargeOffset?.Value ?? 0);
        SeriesGroup[] groups =
        [
            .. told.Select(group => new SeriesGroup(
                group.Group, group.CapacityAh!.Value.Value, group.ResistanceMilliohm?.Value,
                known ? 1 + group.StateOfChargeOffset!.Value.Value - most : null, givens.Parallel)
            {
                CapacitySigmaAh = group.CapacityAh!.Value.Sigma,
                ResistanceSigmaMilliohm = group.ResistanceMilliohm?.Sigma,
                StateOfChargeSigma = known ? group.StateOfChargeOffset!.Value.Sigma : null,
            }),
        ];
        return Asked(givens, chemistry, groups, givens.Parallel ?? 1);
    }

    /// <summary>Budget, short-circuit currents and cautions of a job's groups, or of those of its log where none are to be made of cells.</summary>
    /// <param name="job">The job.</param>
    /// <param name="groups">Its groups; empty while there are none.</param>
    /// <param name="diagnosis">What its log says; null without a log.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>The figures; null while the chemistry or a capacity is unknown, or the volts given are not limits of that chemistry.</returns>
    public static StringFigures? Figures(Job job, IReadOnlyList<JobGroup> groups, RideDiagnosis? diagnosis, CancellationToken stopped)
    {
        EnergyRequest? request = groups.Count > 0 || JobGroups.AreOfCells(job) ? Request(job, groups, stopped)
            : diagnosis is { CapacityTold: true } ? Request(job.Givens, diagnosis) : null;
        if (request is null)
            return null;
        return request.HasLimitsOfItsChemistry ? StringFigures.Of(request, Protection(job.Givens, groups), stopped) : null;
    }

    private static EnergyRequest Asked(JobGivens givens, Chemistry chemistry, IReadOnlyList<SeriesGroup> groups, int parallel) => new()
    {
        Groups = groups,
        Chemistry = chemistry,
        FullV = givens.NumberOf("fullV"),
        EmptyV = givens.NumberOf("emptyV"),
        PackEmptyV = givens.NumberOf("controllerLowV"),
        ControllerMaxV = givens.NumberOf("controllerHighV"),
        Load = givens.SteadyA is > 0 ? new LoadPlan.ConstantCurrent(givens.SteadyA.Value) : null,
        TemperatureDegC = givens.NumberOf("temperatureDegC"),
        ReserveFraction = givens.NumberOf("reserve") ?? 0,
        LinkMilliohm = givens.LinkMilliohm,
        LeadsMilliohm = givens.NumberOf("leadsMilliohm"),
        JointMilliohm = givens.NumberOf("jointMilliohm"),
        PeakA = givens.PeakA is > 0 and { } peakA ? peakA : null,
        PeakS = givens.NumberOf("peakS") is > 0 and { } peakS ? peakS : null,
        CellMassKg = givens.NumberOf("cellMassKg") is > 0 and { } kg ? kg : null,
        RatedAh = givens.RatedAh * parallel,
        NominalV = givens.NumberOf("nominalV"),
    };

    /// <summary>What the job says about protection and ratings.</summary>
    /// <param name="givens">The givens; what is not ticked counts as not there.</param>
    /// <param name="groups">Its groups of cells, which know which resistances they have; empty where it has none.</param>
    /// <returns>The protection.</returns>
    public static StringProtection Protection(JobGivens givens, IReadOnlyList<JobGroup> groups) => new()
    {
        OnlyFirstInstant = ResistanceKinds.TellOnlyFirstInstant(groups.SelectMany(group => group.Cells).Select(cell => (cell.ResistanceMilliohm, cell.ResistanceKind))),
        Fuse = givens.TickOf("fuse") == true,
        Disconnect = givens.TickOf("disconnect") == true,
        PreCharge = givens.TickOf("preCharge") == true,
        Monitor = givens.TickOf("bms") == true,
        CellFuses = givens.TickOf("cellFuse") == true,
        CellRatingA = givens.NumberOf("cellDischargeA"),
        ChargeDegC = givens.NumberOf("chargeTemperatureDegC"),
        ChargerA = givens.NumberOf("chargerA"),
        ChargerV = givens.NumberOf("chargerV"),
        CellChargeA = givens.NumberOf("cellChargeA"),
        InsulationOhm = givens.NumberOf("insulationOhm"),
        CableM = givens.NumberOf("cableM") is > 0 and { } metres ? metres : null,
        CapacitanceF = givens.NumberOf("capacitanceMillifarad") is > 0 and { } millifarad ? millifarad / 1000 : null,
    };

    private static SeriesGroup Of(JobGroup group)
    {
        double? milliohm = group.ResistanceMilliohm;
        double? largest = milliohm is { } known ? group.Cells.Max(cell => known / cell.ResistanceMilliohm!.Value) * group.Cells.Count : null;
        double? firstInstant = ParallelResistance.Of(group.Cells, cell => cell.AcResistanceMilliohm);
        return new SeriesGroup(group.Number, group.CapacityAh!.Value, milliohm, null, group.Cells.Count, firstInstant, largest);
    }

    // A figure that all tests share; different ones cannot stand for the lot.
    private static double? Alike(IEnumerable<double?> figures)
    {
        double[] known = [.. figures.OfType<double>().Distinct()];
        return known.Length == 1 ? known[0] : null;
    }
}
