namespace PackPlanner.Core.Jobs;

/// <summary>One value that a user can give. Closed: a number, words, a tick, or a moment.</summary>
public abstract record JobValue
{
    private JobValue()
    {
    }

    /// <summary>A figure in the unit that its key names.</summary>
    /// <param name="Value">Finite.</param>
    public sealed record Number(double Value) : JobValue;

    /// <summary>Words, or a name such as a chemistry.</summary>
    /// <param name="Value">Not empty.</param>
    public sealed record Word(string Value) : JobValue;

    /// <summary>A tick.</summary>
    /// <param name="Value">Ticked or, on purpose, not ticked.</param>
    public sealed record YesNo(bool Value) : JobValue;

    /// <summary>A day, perhaps with a time.</summary>
    /// <param name="Value">Local time as written.</param>
    public sealed record Moment(DateTime Value) : JobValue;
}
