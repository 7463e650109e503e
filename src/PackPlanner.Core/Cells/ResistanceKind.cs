namespace PackPlanner.Core.Cells;

/// <summary>Which of two different quantities a resistance is.</summary>
public enum ResistanceKind
{
    /// <summary>The table does not say.</summary>
    Unknown,

    /// <summary>Pulse resistance: a voltage step over a current step after a stated time.</summary>
    Dc,

    /// <summary>Impedance at 1 kHz, which leaves out charge transfer and diffusion.</summary>
    Ac1Khz,
}
