namespace PackPlanner.Formats.Words;

/// <summary>Answers a misspelt name with the nearest known one.</summary>
public static class NearestName
{
    /// <summary>The known name that takes the fewest letters changed, added, dropped or swapped with a neighbour.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="known">Names to choose from, at least one.</param>
    /// <returns>The nearest; the first of equals.</returns>
    public static string Of(string typed, IEnumerable<string> known) =>
        known.MinBy(name => Distance(typed.ToUpperInvariant(), name.ToUpperInvariant()))!;

    /// <summary>Two names are so near that one is likely meant for the other: at most a third of the letters, and no more than four, differ.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="known">The known name.</param>
    /// <returns>Whether they are.</returns>
    public static bool IsNear(string typed, string known) =>
        Math.Abs(typed.Length - known.Length) <= 4 && Distance(typed.ToUpperInvariant(), known.ToUpperInvariant()) is var apart && apart <= 4 && apart * 3 <= known.Length;

    private static int Distance(string a, string b)
    {
        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
            d[i, 0] = i;
        for (int j = 0; j <= b.Length; j++)
            d[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int change = a[i - 1] == b[j - 1] ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }
        }

        return d[a.Length, b.Length];
    }
}
