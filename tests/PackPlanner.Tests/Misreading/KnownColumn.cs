namespace PackPlanner.Tests.Misreading;

/// <summary>One column whose meaning is known: how it is called, in what unit, and what stands in it.</summary>
/// <param name="Role">cell, capacity, resistance, rest, time, current, volts or other.</param>
/// <param name="Heading">As the file calls it, without its unit.</param>
/// <param name="Unit">Its unit; empty where there is none.</param>
/// <param name="Fields">One for each row: figures with a decimal point, or words.</param>
internal sealed record KnownColumn(string Role, string Heading, string Unit, string[] Fields)
{
    /// <summary>The unit stands in the heading; false leaves it out, which a reader must make up for or ask about.</summary>
    internal bool UnitIsSaid { get; init; } = true;

    internal bool IsFigures => Role is not ("cell" or "other" or "stamp");
}
