namespace PackPlanner.Screens;

/// <summary>The words that may stand after the program's name when the screens are wanted.</summary>
internal sealed record ScreenOptions
{
    internal string? Job { get; private init; }

    internal string Color { get; private init; } = "auto";

    internal bool Ascii { get; private init; }

    internal bool DecimalComma { get; private init; }

    internal bool UsUnits { get; private init; }

    /// <summary>Reads them.</summary>
    /// <returns>The options; null when a word is none of them.</returns>
    internal static ScreenOptions? Read(string[] args)
    {
        ScreenOptions read = new();
        for (int i = 0; i < args.Length; i++)
        {
            string[] halves = args[i].Split('=', 2);
            string? value = halves.Length == 2 ? halves[1] : i + 1 < args.Length ? args[i + 1] : null;
            bool taken = halves.Length == 1;
            switch (halves[0], value)
            {
                case ("--ascii", _):
                    read = read with { Ascii = true };
                    taken = false;
                    break;
                case ("--color", "auto" or "always" or "never"): read = read with { Color = value }; break;
                case ("--decimal-out", "point" or "comma"): read = read with { DecimalComma = value == "comma" }; break;
                case ("--units", "metric" or "us"): read = read with { UsUnits = value == "us" }; break;
                case var (word, _) when !word.StartsWith('-') && read.Job is null:
                    read = read with { Job = args[i] };
                    taken = false;
                    break;
                default: return null;
            }

            if (taken)
                i++;
        }

        return read;
    }
}
