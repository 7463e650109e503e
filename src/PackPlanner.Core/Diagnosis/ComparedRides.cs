namespace PackPlanner.Core.Diagnosis;

/// <summary>The two rides behind two logs, as their owner knows them.</summary>
/// <param name="KmThen">Kilometres of the earlier ride.</param>
/// <param name="KmNow">Kilometres of the later ride.</param>
/// <param name="DeliveredWhThen">Energy that left the pack on the earlier one, what came back by braking taken off, watt-hours.</param>
/// <param name="DeliveredWhNow">That of the later one.</param>
public sealed record ComparedRides(double KmThen, double KmNow, double DeliveredWhThen, double DeliveredWhNow)
{
    /// <summary>Energy for each kilometre of the earlier ride, Wh/km.</summary>
    public double WhPerKmThen => DeliveredWhThen / KmThen;

    /// <summary>Energy for each kilometre of the later ride, Wh/km.</summary>
    public double WhPerKmNow => DeliveredWhNow / KmNow;
}
