using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class PackComparisonTests
{
    private static RideDiagnosis Pack(double usableWh, double? degC, double deliveredWh, double ohm = 2) => new()
    {
        Groups =
        [
            .. Enumerable.Range(1, 3).Select(group => new GroupDiagnosis(
                group, new Ranged(usableWh / 40, (usableWh / 40) - 2, (usableWh / 40) + 2), new Ranged(0, -0.01, 0.01), new Ranged(ohm, ohm - 0.1, ohm + 0.1), new Ranged(1, 0.98, 1.02), 1, null, 0, [])),
        ],
        CapacityTold = true,
        Loaded = new LoadedRecovery(20, usableWh / 40, usableWh, usableWh / 40, usableWh / 40),
        Remedies = [],
        Events = [],
        Cold = degC is { } known ? ColdLoss.At(known, Chemistries.Find("NMC")!) : null,
        DeliveredWh = deliveredWh,
        Cautions = [],
        Notes = [],
    };

    private static Dictionary<string, double?> Causes(PackComparison comparison) => comparison.Causes.ToDictionary(c => c.Name, c => c.WhShare);

    // By hand: energy 1000 to 800 Wh, 25 to 15 degC (5 % held back), 30 to 36 Wh/km. Range goes to 0.8 x 0.95 x 30/36 = 0.6333 of what it was,
    // so 36.67 % is lost: 20 % to the pack, 0.8 x 5 % to the cold, 0.76 x (1 - 30/36) to the vehicle.
    [Fact]
    public void Pack_cold_and_vehicle_add_up_to_the_lost_range()
    {
        PackComparison comparison = PackComparison.Of(Pack(1000, 25, 900), Pack(800, 15, 720), 30, 20);
        Dictionary<string, double?> causes = Causes(comparison);

        Assert.Equal(0.2, causes["pack"]!.Value, 1e-12);
        Assert.Equal(0.04, causes["cold"]!.Value, 1e-12);
        Assert.Equal(0.76 / 6, causes["vehicle"]!.Value, 1e-12);
        Assert.Equal(1 - (0.8 * 0.95 * 30 / 36), causes.Values.Sum()!.Value, 1e-12);
        Assert.Equal(1000.0 / 30, comparison.RangeKmThen!.Value, 1e-9);
        Assert.Equal(800 * 0.95 / 36, comparison.RangeKmNow!.Value, 1e-9);
    }

    [Fact]
    public void Kilometres_do_not_change_what_the_pack_took()
    {
        double? without = Causes(PackComparison.Of(Pack(1000, 25, 900), Pack(800, 15, 720), null, null))["pack"];
        double? with = Causes(PackComparison.Of(Pack(1000, 25, 900), Pack(800, 15, 720), 30, 33))["pack"];

        Assert.Equal(0.2, without!.Value, 1e-12);
        Assert.Equal(without, with);
    }

    // The other way round the range grows by 1/0.6333 - 1, and every part has the other sign.
    [Fact]
    public void Logs_the_other_way_round_give_the_mirrored_answer()
    {
        RideDiagnosis may = Pack(1000, 25, 900), october = Pack(800, 15, 720, ohm: 3);
        PackComparison lost = PackComparison.Of(may, october, 30, 20), gained = PackComparison.Of(october, may, 20, 30);

        double loss = lost.Causes.Sum(c => c.WhShare!.Value), gain = gained.Causes.Sum(c => c.WhShare!.Value);
        Assert.Equal(1, (1 - loss) * (1 - gain), 1e-12);
        Assert.All(gained.Causes, c => Assert.True(c.WhShare < 0, c.Name));
        Assert.All(lost.Groups.Zip(gained.Groups), pair => Assert.Equal(pair.First.CapacityAh!.Change.Value, -pair.Second.CapacityAh!.Change.Value, 1e-9));
        // Resistances are compared at the later log's temperature, so their ratio mirrors and not their difference.
        Assert.All(lost.Groups.Zip(gained.Groups), pair => Assert.Equal(
            pair.First.ResistanceMilliohm!.Now.Value / pair.First.ResistanceMilliohm.Then.Value,
            pair.Second.ResistanceMilliohm!.Then.Value / pair.Second.ResistanceMilliohm.Now.Value, 1e-9));
    }

    // By hand: both rides emptied the pack, 1000 Wh over 45 km at 25 degC and 780 of 800 Wh over 36 km at 15 degC. The rule would leave 760 Wh there, but 780
    // were taken: the range fell by 1 - 36/45 = 20 %, of which the cold took 0.8 x 2.5 %.
    [Fact]
    public void Rides_to_empty_lose_what_their_kilometres_say()
    {
        PackComparison comparison = PackComparison.Of(Pack(1000, 25, 1000), Pack(800, 15, 780), 45, 36);

        Assert.Equal(0.2, comparison.Causes.Sum(cause => cause.WhShare)!.Value, 1e-12);
        Assert.Equal(0.02, Causes(comparison)["cold"]!.Value, 1e-12);
        Assert.Equal((45.0, 36.0), (Math.Round(comparison.RangeKmThen!.Value, 9), Math.Round(comparison.RangeKmNow!.Value, 9)));
        Assert.Contains(comparison.Notes, note => note.Contains("took more", StringComparison.Ordinal));
        // Two charges in one log took no more than the rule leaves of each.
        Assert.Equal(0.04, Causes(PackComparison.Of(Pack(1000, 25, 1000), Pack(800, 15, 1500), 45, 72))["cold"]!.Value, 1e-12);
    }

    [Fact]
    public void What_is_not_known_is_null_and_the_rest_still_adds_up()
    {
        Dictionary<string, double?> causes = Causes(PackComparison.Of(Pack(1000, null, 900), Pack(800, 15, 720), null, 20));

        Assert.Null(causes["cold"]);
        Assert.Null(causes["vehicle"]);
        Assert.Equal(0.2, causes["pack"]!.Value, 1e-12);
    }
}
