namespace PackPlanner.Core.Diagnosis;

/// <summary>A stretch without rows.</summary>
/// <param name="Row">First row after it.</param>
/// <param name="AtTimeS">Seconds at the last row before it.</param>
/// <param name="Seconds">How long it lasted.</param>
/// <param name="UnderLoad">Current flowed on both sides, so that charge passed unseen.</param>
internal sealed record LogGap(int Row, double AtTimeS, double Seconds, bool UnderLoad);
