namespace PackPlanner.Core.Diagnosis;

/// <summary>Something that happened at a moment of a log.</summary>
/// <param name="AtTimeS">Seconds since the first row.</param>
/// <param name="What">ride-ended, charge-ended, below-limit, above-limit, charged-cold, hot, hot-on-charge, warming-at-rest, warmer-than-others, mirrored, gap-under-load.</param>
/// <param name="Group">The group it concerns, from 1; null for the whole pack.</param>
/// <param name="VoltageV">That group's volts then, or the lowest group's; null when lost.</param>
/// <param name="CurrentA">Pack current then, discharge positive.</param>
/// <param name="Says">In words, with figures.</param>
public sealed record RideEvent(double AtTimeS, string What, int? Group, double? VoltageV, double? CurrentA, string Says);
