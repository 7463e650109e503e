using CsCheck;
using PackPlanner.Core.Sizing;

namespace PackPlanner.Tests.Core.Sizing;

/// <summary>What holds for every cell, need and controller.</summary>
public class SizingPropertiesTests
{
    private const double RoundingFraction = 1e-10;

    private static readonly Gen<SizingRequest> Requests =
        from nominal in Gen.Double[2.3, 3.8]
        from ah in Gen.Double[2, 100]
        from milliohm in Gen.Double[0.3, 30]
        from whPerKm in Gen.Double[8, 180]
        from km in Gen.Double[5, 150]
        from kmh in Gen.Double[10, 90]
        from reserve in Gen.Double[0, 0.3]
        from ageing in Gen.Double[0.7, 1]
        from link in Gen.Double[0, 20]
        from min in Gen.Double[20, 60]
        from max in Gen.Double[60, 130]
        from charger in Gen.Double[25, 120]
        select new SizingRequest(
            [new SizingCell { Name = "invented", NominalV = nominal, FullV = nominal + 0.5, CutoffV = nominal - 0.7, CapacityAh = ah, ResistanceMilliohm = milliohm }],
            null, null, null,
            new VehicleNeed { WhPerKm = whPerKm, RangeKm = km, SpeedKmh = kmh, ReserveFraction = reserve, AgeingFraction = ageing },
            new Electrics { LinkResistanceMilliohm = link, ControllerMinV = min, ControllerMaxV = max, ChargerV = charger }, null, null);

    // Counted up from one: the first number of cells in parallel whose energy is enough.
    [Fact]
    public void The_fewest_cells_in_parallel_are_those_that_counting_up_finds()
    {
        Gen.Select(Requests, Gen.Int[7, 28]).Sample((request, series) =>
        {
            SizingCell cell = request.Cells[0];
            double wanted = request.Need.WhPerKm!.Value * request.Need.RangeKm!.Value;
            int? found = SizingFigures.ParallelForEnergy(request, cell, series);
            int counted = 1;
            while (counted < 5000 && UsableWh(request, cell, series, counted) < wanted * (1 - 1e-9))
                counted++;
            Assert.Equal(counted == 5000 ? null : counted, found > 4999 ? null : found);
        }, seed: "0000KIcCwDG2", iter: 500);
    }

    [Fact]
    public void The_window_of_a_controller_holds_each_number_in_series_that_keeps_its_limits_and_no_other()
    {
        Requests.Sample(request =>
        {
            SizingCell cell = request.Cells[0];
            SeriesWindow window = SizingFigures.Window(cell, request.Electrics);
            for (int series = 1; series <= 80; series++)
            {
                IsAtLeast(series * cell.CutoffV!.Value, request.Electrics.ControllerMinV!.Value, series >= window.Min);
                IsAtLeast(request.Electrics.ControllerMaxV!.Value, series * cell.FullV!.Value, series <= window.Max);
                double ratio = request.Electrics.ChargerV!.Value / (series * cell.FullV!.Value);
                if (Math.Abs(ratio - 0.97) > RoundingFraction && Math.Abs(ratio - 1.005) > RoundingFraction)
                    Assert.Equal(ratio is >= 0.97 and <= 1.005, window.MatchingCharger!.Contains(series));
            }
        }, seed: "0000KIcCwDG2", iter: 500);
    }

    // A limit that is met to the last bits counts as met, whichever way a product of decimals was rounded.
    private static void IsAtLeast(double value, double limit, bool told)
    {
        bool isMet = Math.Abs(value - limit) <= RoundingFraction * limit || value > limit;
        Assert.True(isMet == told, $"{value:R} against {limit:R}: told {told}");
    }

    // Rated energy, what is kept of it, less the heat at the mean power of the ride, each typed anew.
    private static double UsableWh(SizingRequest request, SizingCell cell, int series, int parallel)
    {
        double volts = series * cell.NominalV!.Value;
        double ohm = (series * cell.ResistanceMilliohm!.Value / parallel + request.Electrics.LinkResistanceMilliohm!.Value) / 1000;
        double amps = request.Need.WhPerKm!.Value * request.Need.SpeedKmh!.Value / volts;
        double kept = (1 - request.Need.ReserveFraction!.Value) * request.Need.AgeingFraction!.Value;
        return volts * parallel * cell.CapacityAh!.Value * kept * (volts - amps * ohm) / volts;
    }
}
