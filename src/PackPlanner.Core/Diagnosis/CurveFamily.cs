namespace PackPlanner.Core.Diagnosis;

/// <summary>Kinds of open-circuit curve that a diagnosis tells apart.</summary>
internal enum CurveFamily
{
    /// <summary>NMC.</summary>
    Nmc,

    /// <summary>NCA.</summary>
    Nca,

    /// <summary>LFP: flat between two knees.</summary>
    Lfp,

    /// <summary>Any other chemistry: its table, with a wide belief about it.</summary>
    Other,
}
