using PackPlanner.Core.Cells;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>The usable energy of many strings whose readings differ as tests repeat: the slow way to a spread, without its assumptions.</summary>
/// <param name="LowWh">5 % of the draws lie below.</param>
/// <param name="MedianWh">The middle draw.</param>
/// <param name="HighWh">5 % of the draws lie above.</param>
/// <param name="Draws">Draws done.</param>
/// <param name="WasStopped">True when it was stopped before all were done.</param>
public sealed record EnergyDraws(double LowWh, double MedianWh, double HighWh, int Draws, bool WasStopped)
{
    // Coarser than the budget's own run: the error of the step is far below the spread sought.
    private const int Steps = 400;
    private const int Block = 100;

    /// <summary>Draws and discharges.</summary>
    /// <param name="request">The string and its load.</param>
    /// <param name="draws">How many, at least <see cref="Block"/>.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <param name="progress">Told after each hundred how many are done; null when nobody listens.</param>
    /// <param name="stopped">Ends the work early with what is done.</param>
    /// <returns>The draws so far; null when it was stopped before the first hundred.</returns>
    public static EnergyDraws? Of(EnergyRequest request, int draws, int seed, IProgress<int>? progress, CancellationToken stopped)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, Block);
        Random random = new(seed);
        OpenCircuitCurve curve = new StringModel(request).Curve;
        List<double> drawnWh = new(draws);
        while (drawnWh.Count < draws && !stopped.IsCancellationRequested)
        {
            drawnWh.Add(Ride(Drawn(request, random), curve));
            if (drawnWh.Count % Block == 0)
                progress?.Report(drawnWh.Count);
        }

        if (drawnWh.Count < Block)
            return null;
        drawnWh.Sort();
        double At(double part) => drawnWh[(int)(part * drawnWh.Count)];
        return new EnergyDraws(At(0.05), At(0.5), At(0.95), drawnWh.Count, drawnWh.Count < draws);
    }

    private static EnergyRequest Drawn(EnergyRequest request, Random random) => request with
    {
        Groups =
        [
            .. request.Groups.Select(group => group with
            {
                CapacityAh = group.CapacityAh * Math.Max(0.01, 1 + EnergySpread.CapacityFractionOf(request, group) * Normal(random)),
                ResistanceMilliohm = group.ResistanceMilliohm * Math.Max(0.01, 1 + EnergySpread.ResistanceFractionOf(group) * Normal(random)),
                StateOfChargeFraction = group.StateOfChargeSigma is { } sigma ? group.StateOfChargeFraction + sigma * Normal(random) : group.StateOfChargeFraction,
            }),
        ],
    };

    // No cancellation inside a single ride: it takes a fraction of a second, and a half ride is no draw.
    private static double Ride(EnergyRequest request, OpenCircuitCurve curve)
    {
        StringModel model = new(request, curve);
        return new LossList(request, model, CancellationToken.None, Steps).Ride(model.Now()).Kept.DeliveredWh;
    }

    /// <summary>A draw of a normal figure of mean 0 and deviation 1, by Box and Muller.</summary>
    // 1 - u keeps the logarithm finite.
    internal static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
