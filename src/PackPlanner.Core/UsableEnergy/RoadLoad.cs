namespace PackPlanner.Core.UsableEnergy;

/// <summary>What the road and the air ask of a vehicle at steady speed.</summary>
/// <param name="MassKg">Vehicle, rider and load, kilograms.</param>
/// <param name="DragAreaM2">Drag coefficient times frontal area, square metres.</param>
/// <param name="RollingCoefficient">Rolling resistance coefficient.</param>
/// <param name="GradeFraction">Rise over run; 0.06 is 6 %.</param>
/// <param name="AirDensityKgM3">Kilograms per cubic metre.</param>
/// <param name="HeadWindMS">Head wind, metres per second; negative from behind.</param>
/// <remarks>
/// F = m g (Crr cos a + sin a) + ½ ρ CdA (v + w)|v + w|, a = atan(grade). Source: [Larminie2003] chapter on vehicle
/// modelling, from memory; checked against [RoadLoadExercise].
/// </remarks>
public sealed record RoadLoad(
    double MassKg,
    double DragAreaM2,
    double RollingCoefficient,
    double GradeFraction = 0,
    double AirDensityKgM3 = 1.225,
    double HeadWindMS = 0)
{
    /// <summary>Standard gravity, metres per second squared.</summary>
    public const double GravityMS2 = 9.80665;

    /// <summary>Force of the tyres, newtons.</summary>
    public double RollingN => MassKg * GravityMS2 * RollingCoefficient * Math.Cos(Math.Atan(GradeFraction));

    /// <summary>Force of the slope, newtons.</summary>
    public double GradeN => MassKg * GravityMS2 * Math.Sin(Math.Atan(GradeFraction));

    /// <summary>Force of the air.</summary>
    /// <param name="speedKmh">Speed over ground, kilometres per hour.</param>
    /// <returns>Newtons; negative when the wind pushes.</returns>
    public double AirN(double speedKmh)
    {
        double air = speedKmh / 3.6 + HeadWindMS;
        return AirDensityKgM3 / 2 * DragAreaM2 * air * Math.Abs(air);
    }

    /// <summary>Power at the wheel.</summary>
    /// <param name="speedKmh">Kilometres per hour.</param>
    /// <returns>Watts.</returns>
    public double WheelW(double speedKmh) => (RollingN + GradeN + AirN(speedKmh)) * speedKmh / 3.6;

    /// <summary>Energy from the battery for each kilometre.</summary>
    /// <param name="speedKmh">Kilometres per hour, above zero.</param>
    /// <param name="efficiencyFraction">Battery to wheel, 0..1.</param>
    /// <param name="accessoryW">Lamps and the like, watts.</param>
    /// <returns>Watt-hours per kilometre; where slope or wind push, the accessories alone, because what a brake gives back is not counted.</returns>
    public double WhPerKm(double speedKmh, double efficiencyFraction, double accessoryW) =>
        (Math.Max(0, WheelW(speedKmh)) / efficiencyFraction + accessoryW) / speedKmh;

    /// <summary>The speed at which the road takes a given power.</summary>
    /// <param name="wheelW">Power at the wheel, watts, above zero.</param>
    /// <returns>Kilometres per hour; null when even 1000 km/h does not use it up.</returns>
    public double? SpeedKmh(double wheelW)
    {
        // Downhill the power dips below zero first, so look for the last crossing from above.
        double high = 1000;
        if (WheelW(high) < wheelW)
            return null;
        double low = high;
        while (low > 1e-3 && WheelW(low) >= wheelW)
        {
            high = low;
            low *= 0.9;
        }

        return MathNet.Numerics.RootFinding.Brent.TryFindRoot(v => WheelW(v) - wheelW, low, high, 1e-10, 200, out double speed) ? speed : null;
    }
}
