namespace PackPlanner.Core.Diagnosis;

/// <summary>How sure a finding is.</summary>
public enum Sureness
{
    /// <summary>Far beyond its spread.</summary>
    High,

    /// <summary>Beyond its spread.</summary>
    Medium,

    /// <summary>Hardly beyond its spread.</summary>
    Low,
}
