namespace PackPlanner.Core.Cautions;

/// <summary>The signal words of ANSI Z535, gravest first.</summary>
public enum SignalWord
{
    /// <summary>Will kill or maim if it is not heeded.</summary>
    Danger,

    /// <summary>Could kill or maim.</summary>
    Warning,

    /// <summary>Could injure slightly.</summary>
    Caution,

    /// <summary>Concerns property, or says that a check could not be made.</summary>
    Notice,
}
