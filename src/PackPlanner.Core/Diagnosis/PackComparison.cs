namespace PackPlanner.Core.Diagnosis;

/// <summary>What changed in a pack between two logs, at like temperature.</summary>
/// <param name="Groups">Change of each group.</param>
/// <param name="Causes">What the change in usable energy is put down to.</param>
/// <param name="ThenWh">Usable energy then, loaded, watt-hours.</param>
/// <param name="NowWh">Usable energy now, watt-hours.</param>
/// <param name="Rides">The rides behind the logs; null when the kilometres of one are not known.</param>
/// <param name="Notes">What was supposed.</param>
public sealed record PackComparison(
    IReadOnlyList<GroupChange> Groups, IReadOnlyList<LossCause> Causes, double? ThenWh, double? NowWh, ComparedRides? Rides, IReadOnlyList<string> Notes)
{
    /// <summary>Kilometres from full to empty then, at the use of the earlier ride; null when either is not known.</summary>
    public double? RangeKmThen { get; private init; }

    /// <summary>Kilometres from full to empty now, at the use of the later ride.</summary>
    public double? RangeKmNow { get; private init; }

    // Usable energy is told within some per cent; a log that delivers more than this times it holds more than one charge.
    private const double MostOfOneCharge = 1.1;

    // Resistance falls by about this share for each kelvin (common practice, no source); both logs are brought to the later one's temperature.
    private const double ResistancePerKelvin = 0.018;

    /// <summary>Compares two diagnoses of the same pack.</summary>
    /// <param name="then">The earlier log's.</param>
    /// <param name="now">The later log's.</param>
    /// <param name="kmThen">Kilometres of the earlier ride; null when not known.</param>
    /// <param name="kmNow">Kilometres of the later ride.</param>
    /// <exception cref="ArgumentException">The packs have different numbers of groups.</exception>
    public static PackComparison Of(RideDiagnosis then, RideDiagnosis now, double? kmThen, double? kmNow)
    {
        if (then.Groups.Count != now.Groups.Count)
            throw new ArgumentException("Two logs of one pack have equally many groups.");
        bool temperatures = then.Cold is not null && now.Cold is not null;
        double warmer = temperatures ? now.Cold!.MeanDegC - then.Cold!.MeanDegC : 0;
        double factor = Math.Exp(-ResistancePerKelvin * warmer);
        GroupChange[] groups =
        [
            .. then.Groups.Zip(now.Groups, (a, b) => new GroupChange(
                a.Group, Change(a.CapacityAh, b.CapacityAh, 1), Change(a.ResistanceMilliohm, b.ResistanceMilliohm, factor))),
        ];
        List<string> notes =
        [
            temperatures
                ? FormattableString.Invariant($"the earlier log's resistances are brought from {then.Cold!.MeanDegC:f0} °C to the later one's {now.Cold!.MeanDegC:f0} °C")
                : "a temperature is missing: resistances are compared as they are, and the cold cannot be told from age",
        ];
        if (temperatures && new[] { then, now }.Any(ride => Taken(ride) > 1 - (ride.Cold!.LossPercent / 100)))
            notes.Add("a ride took more of the pack than the rule of the cold leaves: the cold is counted by what was taken");
        if (!then.CapacityTold || !now.CapacityTold)
            notes.Add("capacities cannot be told from one of the logs, so their change is within its range only");
        ComparedRides? rides = kmThen is > 0 && kmNow is > 0 && then.DeliveredWh is > 0 && now.DeliveredWh is > 0
            ? new ComparedRides(kmThen.Value, kmNow.Value, then.DeliveredWh.Value, now.DeliveredWh.Value) : null;
        if (rides is null)
            notes.Add("without the kilometres of both rides, wear of the vehicle cannot be told from wear of the pack");
        return new PackComparison(groups, Divide(then, now, rides), then.Loaded?.UsableWhNow, now.Loaded?.UsableWhNow, rides, notes)
        {
            RangeKmThen = then.Loaded?.UsableWhNow * (temperatures ? Left(then, now)!.Value : 1) / rides?.WhPerKmThen,
            RangeKmNow = now.Loaded?.UsableWhNow * (temperatures ? Left(now, then)!.Value : 1) / rides?.WhPerKmNow,
        };
    }

    private static ChangedFigure? Change(Ranged? then, Ranged? now, double factor)
    {
        if (then is not { } a || now is not { } b)
            return null;
        Ranged before = new(a.Value * factor, a.Low * factor, a.High * factor);
        double low = b.Value - b.Low, high = b.High - b.Value, lowThen = before.Value - before.Low, highThen = before.High - before.Value;
        double change = b.Value - before.Value;
        // Errors of the two logs are independent, so their ranges add as squares.
        return new ChangedFigure(before, b, new Ranged(
            change, change - Math.Sqrt((low * low) + (highThen * highThen)), change + Math.Sqrt((high * high) + (lowThen * lowThen))));
    }

    // What the cold leaves of the charge, by its rule; but what a ride took from the pack the cold has not held back, nor would it have in a warmer ride.
    // A log of several charges takes more than one holds, and says nothing of it.
    private static double? Left(RideDiagnosis ride, RideDiagnosis other)
    {
        if (ride.Cold is not { } cold || other.Cold is not { } otherCold)
            return null;
        double byRule = 1 - (cold.LossPercent / 100);
        return Math.Max(byRule, Math.Max(Taken(ride) ?? 0, otherCold.MeanDegC <= cold.MeanDegC ? Taken(other) ?? 0 : 0));
    }

    private static double? Taken(RideDiagnosis ride) =>
        ride.DeliveredWh / ride.Loaded?.UsableWhNow is { } part && part <= MostOfOneCharge ? Math.Min(1, part) : null;

    /// <summary>Divides the lost range into pack, cold and vehicle, as shares of the earlier range; what is known adds up to the whole loss.</summary>
    /// <remarks>
    /// Range is energy of the pack, times what the cold leaves of it, over use. The three are changed one after the other, the pack first: it takes what it
    /// takes of the energy, whatever else is known, and each next one is counted on what those before it left.
    /// </remarks>
    private static LossCause[] Divide(RideDiagnosis then, RideDiagnosis now, ComparedRides? rides)
    {
        // Charge that the cold holds back is no charge lost: capacities come from resting voltages and already leave it out.
        double? pack = then.Loaded?.UsableWhNow is > 0 and { } before && now.Loaded?.UsableWhNow is > 0 and { } after ? after / before : null;
        double? cold = Left(now, then) / Left(then, now);
        double? vehicle = rides is null ? null : rides.WhPerKmThen / rides.WhPerKmNow;
        double afterPack = pack ?? 1, afterCold = afterPack * (cold ?? 1);
        return
        [
            new LossCause("pack", 1 - pack, "usable energy of the pack, from its groups"),
            new LossCause("cold", afterPack * (1 - cold), cold is null ? "a temperature is missing" : "the charge left below 25 °C: half a percent less for each kelvin, LFP 80 % at 0 °C"),
            new LossCause("vehicle", afterCold * (1 - vehicle), vehicle is null ? "give the kilometres of both rides to tell" : "energy for each kilometre, from the two logs"),
        ];
    }
}
