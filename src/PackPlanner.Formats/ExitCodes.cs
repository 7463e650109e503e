namespace PackPlanner.Formats;

/// <summary>What the program returns to the shell.</summary>
public static class ExitCodes
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>A fault in the program.</summary>
    public const int Fault = 1;

    /// <summary>A command line that is wrong whatever the files hold.</summary>
    public const int CommandLine = 2;

    /// <summary>An input that could not be read, has no usable rows, can be read in two ways, or contradicts the rest.</summary>
    public const int Input = 3;

    /// <summary>No answer exists.</summary>
    public const int NoAnswer = 4;

    /// <summary>Done, but --strict was given and a DANGER or WARNING stands.</summary>
    public const int Strict = 5;

    /// <summary>Stopped by the user.</summary>
    public const int Stopped = 130;
}
