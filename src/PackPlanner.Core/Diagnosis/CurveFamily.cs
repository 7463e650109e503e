namespace PackPlanner.Core.Diagnosis;

/// <summary>Kinds of open-circuit curve that a diagnosis tells apart.</summary>
internal enum CurveFamily
{
    /// <summary>Sloping layered oxides with manganese: NMC, and for want of better LCO and LMO.</summary>
    Nmc,

    /// <summary>NCA.</summary>
    Nca,

    /// <summary>LFP: flat between two knees.</summary>
    Lfp,
}
