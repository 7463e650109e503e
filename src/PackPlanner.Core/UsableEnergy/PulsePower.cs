namespace PackPlanner.Core.UsableEnergy;

/// <summary>The most that a string gives, and takes back, before a group meets a limit of volts.</summary>
/// <param name="LeftFraction">Part of the ride's charge that is left then, 0..1.</param>
/// <param name="GivesA">Amperes, by the first group at its cut-off or the controller's lowest volts.</param>
/// <param name="GivesW">Watts at the pack's terminals at that current.</param>
/// <param name="TakesA">Amperes of charge at which the first group meets its charge limit.</param>
/// <param name="TakesW">Watts at the pack's terminals then.</param>
/// <remarks>
/// V (U - V) / R of one cell, carried to groups in series: the first limit sets the current for all. By volts alone: what
/// the cells are rated for may be less. Source: [Iso12405] for the pulse test that this figure comes from.
/// </remarks>
public sealed record PulsePower(double LeftFraction, double GivesA, double GivesW, double TakesA, double TakesW)
{
    private static readonly double[] Left = [0.9, 0.5, 0.1];

    internal static IReadOnlyList<PulsePower> Of(EnergyRequest request, SeriesString ridden, double takenAh)
    {
        if (ridden.CellOhm.All(ohm => ohm <= 0))
            return [];
        StringState state = new(ridden);
        List<PulsePower> powers = [];
        foreach (double left in Left)
        {
            state.MoveTo((1 - left) * takenAh);
            (double givesA, double givesW) = Gives(state.GroupOpenV, state.GroupOhm, ridden.LinkOhm, request.EndsAtV, request.PackEmptyV);
            (double takesA, double takesW) = Takes(state.GroupOpenV, state.GroupOhm, ridden.LinkOhm, request.ChargedToV);
            powers.Add(new PulsePower(left, givesA, givesW, takesA, takesW));
        }

        return powers;
    }

    internal static (double LoadA, double Watts) Gives(
        ReadOnlySpan<double> openV, ReadOnlySpan<double> ohm, double linkOhm, double cutoffV, double? packCutoffV)
    {
        (double volts, double ohms, double loadA) = (0, linkOhm, double.PositiveInfinity);
        for (int g = 0; g < openV.Length; g++)
        {
            volts += openV[g];
            ohms += ohm[g];
            if (ohm[g] > 0)
                loadA = Math.Min(loadA, (openV[g] - cutoffV) / ohm[g]);
        }

        if (packCutoffV is { } limitV)
            loadA = Math.Min(loadA, (volts - limitV) / ohms);
        loadA = Math.Max(0, loadA);
        return (loadA, loadA * (volts - loadA * ohms));
    }

    internal static (double LoadA, double Watts) Takes(ReadOnlySpan<double> openV, ReadOnlySpan<double> ohm, double linkOhm, double fullV)
    {
        (double volts, double ohms, double chargeA) = (0, linkOhm, double.PositiveInfinity);
        for (int g = 0; g < openV.Length; g++)
        {
            volts += openV[g];
            ohms += ohm[g];
            if (ohm[g] > 0)
                chargeA = Math.Min(chargeA, (fullV - openV[g]) / ohm[g]);
        }

        chargeA = Math.Max(0, chargeA);
        return (chargeA, chargeA * (volts + chargeA * ohms));
    }
}
