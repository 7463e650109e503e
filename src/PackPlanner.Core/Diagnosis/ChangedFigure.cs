namespace PackPlanner.Core.Diagnosis;

/// <summary>A figure at two times.</summary>
/// <param name="Then">Earlier.</param>
/// <param name="Now">Later.</param>
/// <param name="Change">Later less earlier.</param>
public sealed record ChangedFigure(Ranged Then, Ranged Now, Ranged Change);
