namespace PackPlanner.Formats;

/// <summary>Either what was asked for, or why it cannot be given. Closed: these two cases are all there are.</summary>
/// <typeparam name="T">What was asked for.</typeparam>
public abstract record Outcome<T>
{
    private Outcome()
    {
    }

    /// <summary>It worked.</summary>
    /// <param name="Value">What was asked for.</param>
    public sealed record Given(T Value) : Outcome<T>;

    /// <summary>It cannot be given.</summary>
    /// <param name="Why">Where, why and what to do.</param>
    public sealed record Refused(Refusal Why) : Outcome<T>;

    /// <summary>Lets a door return the value itself.</summary>
    /// <param name="value">What was asked for.</param>
    public static implicit operator Outcome<T>(T value) => new Given(value);

    /// <summary>Lets a door return the refusal itself.</summary>
    /// <param name="why">Why it cannot be given.</param>
    public static implicit operator Outcome<T>(Refusal why) => new Refused(why);

    /// <summary>Splits the two cases.</summary>
    /// <param name="value">The value when given.</param>
    /// <param name="why">The refusal when refused.</param>
    /// <returns>True when given.</returns>
    public bool Is([System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out T? value, [System.Diagnostics.CodeAnalysis.NotNullWhen(false)] out Refusal? why)
    {
        value = this is Given given ? given.Value : default;
        why = this is Refused refused ? refused.Why : null;
        return why is null;
    }
}
