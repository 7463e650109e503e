namespace PackPlanner.Screens;

/// <summary>What the terminal says that it cannot show, by the names in the environment.</summary>
internal static class TerminalAbilities
{
    private static readonly string[] Locales = ["LC_ALL", "LC_CTYPE", "LANG"];

    /// <summary>Whether its characters are not those of Unicode, so that signs beyond ASCII would come out as rubbish.</summary>
    /// <param name="variable">Reads a variable of the environment.</param>
    /// <returns>False where nothing is said: most terminals of today show them.</returns>
    /// <remarks>The first of the three that is not blank counts, as POSIX orders them (from memory).</remarks>
    internal static bool IsPlain(Func<string, string?> variable)
    {
        string? locale = Locales.Select(variable).FirstOrDefault(value => !string.IsNullOrEmpty(value));
        if (locale is null)
            return false;
        int dot = locale.IndexOf('.', StringComparison.Ordinal);
        if (dot < 0)
            return locale is "C" or "POSIX";
        string characters = locale[(dot + 1)..].Split('@')[0].Replace("-", "", StringComparison.Ordinal);
        return !characters.Equals("utf8", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Whether the terminal's name is one of those without 256 colours.</summary>
    /// <param name="variable">Reads a variable of the environment.</param>
    /// <returns>False where COLORTERM says more than the name does.</returns>
    internal static bool HasFewColours(Func<string, string?> variable)
    {
        if (!string.IsNullOrEmpty(variable("COLORTERM")))
            return false;
        string name = variable("TERM") ?? "";
        return name.StartsWith("vt", StringComparison.Ordinal)
            || name.Contains("-16color", StringComparison.Ordinal) || name.Contains("-88color", StringComparison.Ordinal) || name.Contains("-8color", StringComparison.Ordinal)
            || name.EndsWith("-mono", StringComparison.Ordinal) || name is "ansi" or "xterm-color";
    }
}
