using System.Globalization;
using System.Text;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Files;

namespace PackPlanner.Formats.Groups;

/// <summary>Reads a load profile: a table of time and current or power.</summary>
/// <remarks>Each value holds until the next row's time; the last one holds as long as the one before.</remarks>
public static class LoadProfiles
{
    private static readonly NumberFormatInfo Point = new() { NumberDecimalSeparator = ".", NumberGroupSeparator = "\u0001" };
    private static readonly NumberFormatInfo Comma = new() { NumberDecimalSeparator = ",", NumberGroupSeparator = "\u0001" };

    /// <summary>Reads the file.</summary>
    /// <param name="file">Path, or - for standard input.</param>
    /// <param name="chargeIsPositive">The file counts charging as positive.</param>
    /// <param name="standardInput">Opens standard input.</param>
    /// <returns>The profile, or which line is wrong.</returns>
    public static Outcome<LoadPlan.Profile> Read(string file, bool chargeIsPositive, Func<Stream>? standardInput)
    {
        if (!InputBytes.ReadUnpacked(file, standardInput).Is(out byte[]? bytes, out Refusal? why))
            return why;
        string[] lines = Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF').Split('\n');
        char separator = lines[0].Contains(';') ? ';' : lines[0].Contains('\t') ? '\t' : ',';
        string[] names = [.. lines[0].Trim().Split(separator).Select(name => name.Trim().Trim('"'))];
        if (Column(names, "time", "seconds", "duration", "t") is not { } time || (Column(names, "power", "watt", "w") ?? Column(names, "current", "ampere", "amp", "a", "i")) is not { } load)
            return Refusal.Input("profile-columns", $"{file}, line 1", "the headings time_s and current_A or power_W were expected",
                "Write them into the first line, for example: time_s,current_A");
        bool isPower = Column(names, "power", "watt", "w") is not null;
        double timeFactor = Unit(names[time]) switch { "min" => 60, "h" => 3600, "ms" => 0.001, _ => 1 };
        double loadFactor = (Unit(names[load]) is "kw" or "ka" ? 1000 : Unit(names[load]) is "ma" or "mw" ? 0.001 : 1) * (chargeIsPositive ? -1 : 1);
        bool durations = names[time].StartsWith("duration", StringComparison.OrdinalIgnoreCase);
        NumberFormatInfo marks = separator == ';' && lines.Skip(1).Any(line => line.Contains(',')) ? Comma : Point;
        List<(double S, double Value)> rows = [];
        for (int i = 1; i < lines.Length; i++)
        {
            if (lines[i].Trim().Length == 0)
                continue;
            string[] fields = lines[i].Trim().Split(separator);
            if (fields.Length <= Math.Max(time, load) || Number(fields[time], marks) is not { } s || Number(fields[load], marks) is not { } value)
                return Refusal.Input("profile-row", $"{file}, line {i + 1}", $"\"{Short(lines[i].Trim())}\" has no number for {names[time]} and {names[load]}", "Correct or remove the line.");
            if (durations ? s <= 0 : rows.Count > 0 && s * timeFactor <= rows[^1].S)
                return Refusal.Input("profile-time", $"{file}, line {i + 1}", durations ? "a duration above 0 was expected" : "its time does not rise", "Put the rows in order of time.");
            rows.Add((s * timeFactor, value * loadFactor));
        }

        if (rows.Count < (durations ? 1 : 2))
            return Refusal.Input("profile-short", file, $"it has {rows.Count} rows of load", "Give at least two rows: each value holds until the next time.");
        return new LoadPlan.Profile([.. rows.Select((row, i) => new LoadStep(durations ? row.S : Lasts(rows, i), row.Value, isPower))]);
    }

    private static double Lasts(List<(double S, double Value)> rows, int i) => i + 1 < rows.Count ? rows[i + 1].S - rows[i].S : rows[i].S - rows[i - 1].S;

    // The name without its unit: time_s, "time (s)" and "Time [s]" are all time.
    private static int? Column(string[] names, params string[] known)
    {
        int at = Array.FindIndex(names, name => known.Contains(Split(name).Name));
        return at < 0 ? null : at;
    }

    private static string Unit(string name) => Split(name).Unit;

    private static (string Name, string Unit) Split(string heading)
    {
        string[] words = heading.ToLowerInvariant().Split(['_', ' ', '(', ')', '[', ']', '/'], StringSplitOptions.RemoveEmptyEntries);
        return words.Length == 0 ? ("", "") : (words[0], words.Length > 1 ? words[^1] : words[0] is "w" or "a" ? words[0] : "");
    }

    private static double? Number(string field, NumberFormatInfo marks) =>
        double.TryParse(field.Trim().Trim('"'), NumberStyles.Float, marks, out double number) && double.IsFinite(number) ? number : null;

    private static string Short(string line) => line.Length <= 40 ? line : line[..40] + "…";
}
