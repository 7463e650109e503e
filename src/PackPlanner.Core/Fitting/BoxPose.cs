namespace PackPlanner.Core.Fitting;

/// <summary>How a box cell may stand. The data sheet decides; many large LFP cells may not lie down.</summary>
public enum BoxPose
{
    /// <summary>Terminals up.</summary>
    Upright,

    /// <summary>Terminals down.</summary>
    Inverted,

    /// <summary>Terminals sideways, the large faces upright.</summary>
    OnEdge,

    /// <summary>Terminals sideways, the large faces level.</summary>
    OnFace,
}
