using System.Globalization;

namespace PackPlanner.Screens.Tables;

/// <summary>
/// A cursor on lines that come and go: it stays on its line by the line's name, whatever its number is. While that line is gone it stands where the
/// line was, and it goes back when the line comes again, unless it was moved meanwhile.
/// </summary>
internal sealed class RowCursor
{
    private IReadOnlyList<string> before = [];
    private string? on;

    /// <summary>The line under the cursor, from 0.</summary>
    internal int Row { get; private set; }

    /// <summary>Number and name of the line, for a later start.</summary>
    internal string Place
    {
        get => Row.ToString(CultureInfo.InvariantCulture) + (on is null ? "" : $" {on}");
        set
        {
            string[] halves = value.Split(' ', 2);
            Row = int.TryParse(halves[0], CultureInfo.InvariantCulture, out int stored) ? Math.Max(0, stored) : 0;
            (on, before) = (halves.Length > 1 ? halves[1] : null, []);
        }
    }

    /// <summary>Finds the line again among those that there are now. A cursor that nobody has moved yet stays at its number.</summary>
    internal void Keep(IEnumerable<string> names) => Find(ToldApart(names));

    /// <summary>As <see cref="Keep"/>, and stays on that line from now on: it is being read, or about to be changed.</summary>
    internal void Hold(IEnumerable<string> names)
    {
        string[] now = ToldApart(names);
        Find(now);
        GoTo(Row, now);
    }

    /// <summary>Puts the cursor on a line by its number.</summary>
    internal void GoTo(int row, IEnumerable<string> names) => GoTo(row, ToldApart(names));

    /// <summary>Takes the keys that move among lines.</summary>
    /// <param name="key">The key.</param>
    /// <param name="names">Of the lines there are now.</param>
    /// <param name="page">Lines of a page.</param>
    /// <returns>False when the key is not one of them.</returns>
    internal bool Move(string key, IEnumerable<string> names, int page)
    {
        string[] now = ToldApart(names);
        Find(now);
        int? row = key switch
        {
            "Up" => Row - 1,
            "Down" => Row + 1,
            "PgUp" => Row - page,
            "PgDn" => Row + page,
            "Home" => 0,
            "End" => now.Length - 1,
            _ => null,
        };
        if (row is { } wanted)
            GoTo(wanted, now);
        return row is not null;
    }

    private void GoTo(int row, string[] now)
    {
        Row = Clamped(row, now);
        // Without lines there is nothing to stay on; what it stood on before may still come back.
        if (now.Length > 0)
            (on, before) = (now[Row], now);
    }

    private void Find(string[] now)
    {
        int at = on is null ? -1 : Array.IndexOf(now, on);
        if (at >= 0)
            (Row, before) = (at, now);
        else if (on is null || before.Count == 0)
            Row = Clamped(Row, now);
        else
            Row = Clamped(Array.IndexOf(now, before.TakeWhile(name => name != on).LastOrDefault(name => now.Contains(name)) ?? "") + 1, now);
    }

    private static int Clamped(int row, string[] now) => Math.Clamp(row, 0, Math.Max(0, now.Length - 1));

    /// <summary>Names of which none is twice: a second of the same name says that it is the second.</summary>
    internal static string[] ToldApart(IEnumerable<string> names)
    {
        Dictionary<string, int> seen = new(StringComparer.Ordinal);
        return [.. names.Select(name => (seen[name] = seen.GetValueOrDefault(name) + 1) is > 1 and { } times ? $"{name} #{times.ToString(CultureInfo.InvariantCulture)}" : name)];
    }
}
