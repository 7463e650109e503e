namespace PackPlanner.Core.UsableEnergy;

/// <summary>Repeats a load profile until something ends it.</summary>
internal sealed class ProfileDischarge(SeriesString pack, DischargeEnd end, int steps)
{
    private const double MostStepS = 60;
    private StringState state = new(pack);
    private StringState ahead = new(pack);
    private (double OpenV, double CellOhm) slope;
    private double takenAh;
    private double wattHours;
    private double hours;
    private double squareAH;

    internal DischargeRun Run(IReadOnlyList<LoadStep> profile, long mostSteps, CancellationToken stopped)
    {
        double stepAh = pack.CapacityAh.Min() / steps;
        long done = 0;
        state.MoveTo(0);
        while (true)
        {
            double cycleStartAh = takenAh;
            foreach (LoadStep step in profile)
            {
                double leftS = step.Seconds;
                while (leftS > 0)
                {
                    if (++done > mostSteps)
                        throw new EndlessLoadException();
                    if ((done & 0xFFF) == 0)
                        stopped.ThrowIfCancellationRequested();
                    Discharge.Moment now = Discharge.Judge(pack, state, end, Amperes(step, state));
                    if (now.MarginV <= 0 && now.LoadA >= 0)
                        return Ended(now);
                    double seconds = Math.Min(leftS, Math.Min(MostStepS, 3600 * stepAh / Math.Max(1e-9, Math.Abs(now.LoadA))));
                    if (!Advance(step, now, seconds, out Discharge.Moment last))
                        return Ended(last);
                    leftS -= seconds;
                }
            }

            if (takenAh <= cycleStartAh)
                throw new EndlessLoadException();
        }
    }

    // Heun's rule for the charge, trapezoids for the energy. False when the discharge ends inside the step.
    private bool Advance(LoadStep step, Discharge.Moment now, double seconds, out Discharge.Moment last)
    {
        Discharge.Moment after = After(step, now, seconds);
        if ((after.MarginV <= 0 && after.LoadA >= 0) || IsPast(Delivered(now, after, seconds)))
        {
            double low = 0;
            double high = seconds;
            for (int i = 0; i < 40; i++)
            {
                double middle = (low + high) / 2;
                Discharge.Moment there = After(step, now, middle);
                if (there.MarginV <= 0 || IsPast(Delivered(now, there, middle)))
                    high = middle;
                else
                    low = middle;
            }

            last = After(step, now, high);
            Take(now, last, high);
            (state, ahead) = (ahead, state);
            return false;
        }

        Take(now, after, seconds);
        (state, ahead) = (ahead, state);
        slope = state.SlopeSince(ahead);
        last = after;
        return true;
    }

    private void Take(Discharge.Moment now, Discharge.Moment after, double seconds)
    {
        wattHours += Delivered(now, after, seconds);
        hours += seconds / 3600;
        squareAH += (now.LoadA * now.LoadA + after.LoadA * after.LoadA) / 2 * seconds / 3600;
        takenAh = after.TakenAh;
    }

    private bool IsPast(double moreWh) => end.AfterWh is { } after && wattHours + moreWh >= after;

    private static double Delivered(Discharge.Moment now, Discharge.Moment after, double seconds) =>
        (now.LoadA * now.PackV + after.LoadA * after.PackV) / 2 * seconds / 3600;

    // Leaves the string as it stands then in ahead. A current that is given needs no guess; for a power the string is
    // taken to go on as in the step before, which keeps the second order without a second look at every group.
    private Discharge.Moment After(LoadStep step, Discharge.Moment now, double seconds)
    {
        double guessA = step.Value;
        if (step.IsPower)
        {
            double aheadAh = now.LoadA * seconds / 3600;
            guessA = Discharge.AmperesFor(
                step.Value, state.OpenV + slope.OpenV * aheadAh, state.CellOhm + slope.CellOhm * aheadAh + pack.LinkOhm);
        }

        ahead.MoveTo(now.TakenAh + (now.LoadA + guessA) / 2 * seconds / 3600);
        return Discharge.Judge(pack, ahead, end, Amperes(step, ahead));
    }

    private double Amperes(LoadStep step, StringState at) =>
        step.IsPower ? Discharge.AmperesFor(step.Value, at.OpenV, at.CellOhm + pack.LinkOhm) : step.Value;

    // The state is the one that the moment was judged from.
    private DischargeRun Ended(Discharge.Moment at) =>
        new(takenAh, wattHours, hours, squareAH, at.PackV, Discharge.LowestGroup(state, at, end), at.ByController);
}
