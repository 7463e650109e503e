namespace PackPlanner.Core.UsableEnergy;

/// <summary>Discharges a series string until something ends it.</summary>
/// <remarks>
/// Trapezoids over the charge taken: second order, one look at the curve for each group and step. A discharge that
/// ends inside a step is halved until the end is known to a millionth of the step.
/// </remarks>
internal static class Discharge
{
    /// <summary>Steps into which the charge of the smallest group is divided.</summary>
    internal const int Steps = 2000;

    private const int Halvings = 40;

    /// <summary>Most steps of a profile: some hours of single seconds a thousand times over.</summary>
    private const long MostProfileSteps = 20_000_000;

    internal static DischargeRun Run(
        SeriesString pack, LoadPlan? load, DischargeEnd end, CancellationToken stopped, int steps = Steps) => load switch
        {
            LoadPlan.Profile profile => new ProfileDischarge(pack, end, steps).Run(profile.Steps, MostProfileSteps, stopped),
            _ => Steady(pack, load, end, steps, stopped),
        };

    private static DischargeRun Steady(SeriesString pack, LoadPlan? load, DischargeEnd end, int steps, CancellationToken stopped)
    {
        double stepAh = pack.CapacityAh.Min() / steps;
        StringState state = new(pack);
        Moment Look(double takenAh) => At(pack, state, load, end, takenAh);
        Moment before = Look(0);
        double wattHours = 0;
        double hours = 0;
        double squareAH = 0;
        int lowest = LowestGroup(state, before, end);
        while (before.MarginV > 0 && !IsPast(end, wattHours))
        {
            stopped.ThrowIfCancellationRequested();
            Moment after = Look(before.TakenAh + stepAh);
            bool ends = after.MarginV <= 0 || IsPast(end, wattHours + WattHours(before, after));
            if (ends)
                (after, lowest) = EndWithin(state, Look, end, before, after, wattHours);
            wattHours += WattHours(before, after);
            double takenAh = after.TakenAh - before.TakenAh;
            if (load is not null)
            {
                hours += takenAh * (1 / before.LoadA + 1 / after.LoadA) / 2;
                squareAH += takenAh * (before.LoadA + after.LoadA) / 2;
            }

            before = after;
            if (ends)
                break;
        }

        return new DischargeRun(before.TakenAh, wattHours, hours, squareAH, before.PackV, lowest, before.ByController);
    }

    private static (Moment End, int LowestGroup) EndWithin(
        StringState state, Func<double, Moment> look, DischargeEnd end, Moment before, Moment after, double wattHours)
    {
        Moment done = before;
        double low = before.TakenAh;
        double high = after.TakenAh;
        for (int i = 0; i < Halvings && high - low > 1e-12; i++)
        {
            Moment middle = look((low + high) / 2);
            if (middle.MarginV > 0 && !IsPast(end, wattHours + WattHours(before, middle)))
            {
                low = middle.TakenAh;
                done = middle;
            }
            else
            {
                high = middle.TakenAh;
            }
        }

        // The reason is what stands just past the end.
        Moment past = look(high);
        return (done with { ByController = past.ByController }, LowestGroup(state, past, end));
    }

    private static bool IsPast(DischargeEnd end, double wattHours) => end.AfterWh is { } after && wattHours >= after;

    private static double WattHours(Moment before, Moment after) => (after.TakenAh - before.TakenAh) * (before.PackV + after.PackV) / 2;

    private static Moment At(SeriesString pack, StringState state, LoadPlan? load, DischargeEnd end, double takenAh)
    {
        state.MoveTo(takenAh);
        return Judge(pack, state, end, Amperes(load, state.OpenV, state.CellOhm + pack.LinkOhm));
    }

    /// <summary>What a current does to the string as it stands.</summary>
    internal static Moment Judge(SeriesString pack, StringState state, DischargeEnd end, double loadA)
    {
        double packV = state.OpenV - loadA * (state.CellOhm + pack.LinkOhm);
        double marginV = state.LowestV(end.UnderLoad ? loadA : 0) - end.EmptyV;
        bool byController = end.PackEmptyV is { } limitV && packV - limitV <= 0 && marginV > 0;
        return new Moment(state.TakenAh, loadA, packV, byController ? packV - end.PackEmptyV!.Value : marginV, byController);
    }

    /// <summary>Index of the group that stands lowest at a moment of the string as it stands.</summary>
    internal static int LowestGroup(StringState state, Moment moment, DischargeEnd end) =>
        state.LowestGroup(end.UnderLoad ? moment.LoadA : 0);

    private static double Amperes(LoadPlan? load, double openV, double ohms) => load switch
    {
        null => 0,
        LoadPlan.ConstantCurrent current => current.LoadA,
        LoadPlan.ConstantPower power => AmperesFor(power.LoadW, openV, ohms),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>The current that delivers a power; where the pack cannot, the current of the most that it can.</summary>
    internal static double AmperesFor(double watts, double openV, double ohms)
    {
        if (ohms <= 0)
            return watts / openV;
        double root = openV * openV - 4 * ohms * watts;
        return root <= 0 ? openV / (2 * ohms) : 2 * watts / (openV + Math.Sqrt(root));
    }

    /// <summary>The string at one moment.</summary>
    /// <param name="TakenAh">Charge taken.</param>
    /// <param name="LoadA">Current.</param>
    /// <param name="PackV">Loaded volts.</param>
    /// <param name="MarginV">Volts above what ends it; zero or below: ended.</param>
    /// <param name="ByController">The controller's limit is what was met.</param>
    internal readonly record struct Moment(double TakenAh, double LoadA, double PackV, double MarginV, bool ByController);
}
