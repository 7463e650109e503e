namespace PackPlanner.Core.Jobs;

/// <summary>What is wrong with a reading at a sense tap.</summary>
public enum TapFault
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The volts from pack minus.</summary>
    FromMinus,

    /// <summary>The step from the tap before, both readings being possible from pack minus.</summary>
    Step,
}
