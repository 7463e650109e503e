namespace PackPlanner.Core.UsableEnergy;

/// <summary>A load profile that never empties the pack: it gives back as much as it draws, or draws almost nothing.</summary>
public sealed class EndlessLoadException : Exception
{
    /// <summary>Creates it.</summary>
    public EndlessLoadException()
        : base("The profile never empties the pack.")
    {
    }

    /// <summary>Creates it with other words.</summary>
    /// <param name="message">What happened.</param>
    public EndlessLoadException(string message)
        : base(message)
    {
    }

    /// <summary>Creates it with other words and a cause.</summary>
    /// <param name="message">What happened.</param>
    /// <param name="innerException">The cause.</param>
    public EndlessLoadException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
