namespace PackPlanner.Core.UsableEnergy;

/// <summary>What is drawn from the pack. Closed: these three cases are all there are.</summary>
public abstract record LoadPlan
{
    private LoadPlan()
    {
    }

    /// <summary>A steady current.</summary>
    /// <param name="LoadA">Amperes, above zero.</param>
    public sealed record ConstantCurrent(double LoadA) : LoadPlan;

    /// <summary>A steady power at the pack's terminals.</summary>
    /// <param name="LoadW">Watts, above zero.</param>
    public sealed record ConstantPower(double LoadW) : LoadPlan;

    /// <summary>A load that changes, repeated until the pack is empty.</summary>
    /// <param name="Steps">Its steps, at least one, with more charge drawn than given back.</param>
    public sealed record Profile(IReadOnlyList<LoadStep> Steps) : LoadPlan;
}

/// <summary>One step of a load profile.</summary>
/// <param name="Seconds">How long it lasts, above zero.</param>
/// <param name="Value">Amperes or watts; negative charges the pack.</param>
/// <param name="IsPower">Watts when true, amperes when false.</param>
public sealed record LoadStep(double Seconds, double Value, bool IsPower);
