namespace PackPlanner.Core.Jobs;

/// <summary>What a meter showed at a sense tap.</summary>
/// <param name="Volts">From pack minus to the tap.</param>
/// <param name="From">Who read it and when.</param>
public sealed record TapReading(double Volts, Origin From);
