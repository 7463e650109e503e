namespace PackPlanner.Core.UsableEnergy;

/// <summary>Watt-hours that a ride would bring more or less if it ended sooner or later: near its end the volts fall, so one figure of volts is not enough.</summary>
internal sealed class EndEnergy
{
    private const int Steps = 256;
    private const double Reach = 0.2;
    private readonly double[] moreWh = new double[2 * Steps + 1];
    private readonly double stepAh;

    internal EndEnergy(SeriesString ridden, DischargeRun full)
    {
        stepAh = Reach * full.TakenAh / Steps;
        StringState state = new(ridden);
        double PackV(int step)
        {
            state.MoveTo(full.TakenAh + (step - Steps) * stepAh);
            return state.OpenV - full.EffectiveA * (state.CellOhm + ridden.LinkOhm);
        }

        double here = PackV(Steps);
        for ((int step, double last) = (Steps + 1, here); step <= 2 * Steps; step++)
            moreWh[step] = moreWh[step - 1] + stepAh * (last + (last = PackV(step))) / 2;
        for ((int step, double last) = (Steps - 1, here); step >= 0; step--)
            moreWh[step] = moreWh[step + 1] - stepAh * (last + (last = PackV(step))) / 2;
    }

    /// <summary>Watt-hours for some ampere-hours more; both below zero for less.</summary>
    internal double MoreWh(double moreAh)
    {
        double place = stepAh > 0 ? Math.Clamp(moreAh / stepAh + Steps, -Steps, 3 * Steps) : Steps;
        int i = Math.Clamp((int)place, 0, 2 * Steps - 1);
        return moreWh[i] + (place - i) * (moreWh[i + 1] - moreWh[i]);
    }
}
