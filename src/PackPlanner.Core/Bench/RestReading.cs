namespace PackPlanner.Core.Bench;

/// <summary>A long rest in a log.</summary>
/// <param name="FromTimeS">Its first row, seconds.</param>
/// <param name="ToTimeS">Its last row, seconds.</param>
/// <param name="StartV">Volts at its beginning.</param>
/// <param name="EndV">Volts at its end.</param>
/// <param name="Loss">What its second half tells; the first half is settling.</param>
public sealed record RestReading(double FromTimeS, double ToTimeS, double StartV, double EndV, SelfDischarge Loss);
