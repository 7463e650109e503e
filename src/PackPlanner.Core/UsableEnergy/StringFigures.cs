using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>All that is told of a string in use: the same for a verb, a job and a screen.</summary>
/// <param name="Request">What was asked.</param>
/// <param name="Protection">What is planned or fitted.</param>
/// <param name="Budget">From the label to usable.</param>
/// <param name="Shorted">Short-circuit currents.</param>
/// <param name="Start">Fuse, cable and pre-charge to start from.</param>
/// <param name="Raised">Cautions.</param>
/// <param name="Open">Cautions that could not be judged.</param>
public sealed record StringFigures(
    EnergyRequest Request,
    StringProtection Protection,
    EnergyBudget Budget,
    StringShortCircuit Shorted,
    StartingPoints Start,
    IReadOnlyList<Caution> Raised,
    IReadOnlyList<NotChecked> Open)
{
    /// <summary>Works them out.</summary>
    /// <param name="request">Pack, load and limits.</param>
    /// <param name="protection">What is planned or fitted.</param>
    /// <param name="stopped">Ends the work early.</param>
    /// <returns>The figures.</returns>
    /// <exception cref="ArgumentException">As for <see cref="EnergyBudgets.Of"/>.</exception>
    /// <exception cref="EndlessLoadException">The load profile never empties the pack.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static StringFigures Of(EnergyRequest request, StringProtection protection, CancellationToken stopped)
    {
        EnergyBudget budget = EnergyBudgets.Of(request, stopped);
        StringShortCircuit shorted = StringShortCircuit.Of(request, protection.OnlyFirstInstant);
        (IReadOnlyList<Caution> raised, IReadOnlyList<NotChecked> open) = EnergyCautions.Of(request, budget, shorted, protection);
        return new StringFigures(request, protection, budget, shorted, StartingPoints.Of(request, budget.EffectiveA, shorted, protection), raised, open);
    }
}
