namespace PackPlanner.Core.Diagnosis;

/// <summary>One thing that could be done to the pack, and what it would give back.</summary>
/// <param name="Do">In the imperative.</param>
/// <param name="UsableAh">Usable charge afterwards, at the log's mean current down to the loaded cut-off.</param>
/// <param name="UsableWh">Energy of that.</param>
/// <param name="GainPercent">Gain in usable charge, percent of now.</param>
/// <param name="NextBottleneck">The group that ends the ride then, from 1.</param>
public sealed record Remedy(string Do, double UsableAh, double UsableWh, double GainPercent, int NextBottleneck);
