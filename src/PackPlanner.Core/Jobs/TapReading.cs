namespace PackPlanner.Core.Jobs;

/// <summary>What a meter showed at a sense tap.</summary>
/// <param name="Volts">From pack minus to the tap.</param>
/// <param name="From">Who read it and when.</param>
/// <param name="GroupsBelow">Which cells stood below the tap then, as <see cref="JobTaps.GroupsBelow"/> tells; null where nobody knew.</param>
public sealed record TapReading(double Volts, Origin From, string? GroupsBelow = null);
