using System.Text;

namespace PackPlanner.Core.Screening;

/// <summary>Reads what somebody noted about a cell's looks.</summary>
public static class ConditionWords
{
    // Beginnings of words, without accents, lower case: English, German, French, Spanish, Italian, Dutch, Portuguese.
    private static readonly (string Kind, string[] Stems)[] Damage =
    [
        ("swollen", ["swoll", "swell", "bulg", "puff", "bloat", "geblah", "aufgeblah", "gewolb", "gonfl", "hinch", "gonfi", "opgezwoll", "gezwoll", "inchad"]),
        ("dented", ["dent", "crush", "deform", "delle", "beule", "eingedruckt", "verbeult", "bossel", "cabos", "abolla", "ammacc", "deuk", "amass"]),
        ("leaking", ["leak", "wet", "electrolyt", "elektrolyt", "vented", "undicht", "auslauf", "ausgelauf", "leck", "fuit", "fuga", "perdit", "perde", "lek", "vazament", "vazand"]),
        ("smell", ["smell", "odor", "odour", "stink", "riech", "geruch", "odeur", "olor", "huele", "odore", "geur", "ruikt", "cheir"]),
        ("rust", ["rust", "corro", "korro", "rost", "verrost", "rouill", "oxid", "ruggin", "roest", "ferrug"]),
        ("torn wrap", ["torn", "tear", "ripp", "pierc", "punctur", "gerissen", "zerrissen", "dechir", "rasgad", "roto", "rota", "strapp", "gescheurd"]),
        ("damage", ["damag", "beschad", "endommag", "danad", "danneg", "danific"]),
        ("warm", ["warm", "hot", "heiss", "heat", "chaud", "calient", "cald", "quent"]),
    ];

    private static readonly string[] Fine =
        ["", "-", "ok", "okay", "good", "fine", "clean", "none", "no", "nil", "new", "normal", "intact", "0", "n/a", "na", "gut", "keine", "bon", "rien", "bien", "bueno", "buono", "goed", "geen", "nein", "no damage"];

    private static readonly string[] Negations = ["no", "not", "non", "without", "ohne", "kein", "keine", "nicht", "sans", "pas", "sin", "senza", "geen", "sem"];

    /// <summary>Whether words name damage of a cell.</summary>
    /// <param name="noted">What was written.</param>
    /// <returns>True for words such as swollen, dented or leaking in one of the languages that are known.</returns>
    public static bool NameDamage(string noted) => Read(noted).Damage.Count > 0;

    /// <summary>Finds the damage that is named.</summary>
    /// <param name="noted">What was written; null when nothing was.</param>
    /// <returns>The kinds of damage, and whether the words were understood at all.</returns>
    internal static (IReadOnlyList<string> Damage, bool Understood) Read(string? noted)
    {
        string plain = Plain(noted ?? "");
        if (Fine.Contains(plain.Trim()))
            return ([], true);
        string[] words = plain.Split([' ', ',', ';', '.', '/', '(', ')', '+', '&', '-', '_', ':', '!', '?'], StringSplitOptions.RemoveEmptyEntries);
        SortedSet<string> found = new(StringComparer.Ordinal);
        bool anyDenied = false;
        for (int i = 0; i < words.Length; i++)
        {
            string? kind = Kind(words[i]);
            bool denied = Enumerable.Range(Math.Max(0, i - 2), i - Math.Max(0, i - 2)).Any(j => Negations.Contains(words[j]));
            anyDenied |= kind is not null && denied;
            if (kind is not null && !denied)
                found.Add(kind);
        }

        return ([.. found], found.Count > 0 || anyDenied || words.All(word => Fine.Contains(word)));
    }

    private static string? Kind(string word)
    {
        foreach ((string kind, string[] stems) in Damage)
            if (stems.Any(stem => word.StartsWith(stem, StringComparison.Ordinal)))
                return kind;
        return null;
    }

    // With invariant globalisation the runtime does not take accents off letters, so the few that matter stand here.
    private static string Plain(string text)
    {
        StringBuilder plain = new();
        foreach (char letter in text.ToLowerInvariant())
        {
            int at = Accented.IndexOf(letter);
            plain.Append(at < 0 ? letter : Bare[at]);
        }

        return plain.Replace("ß", "ss").ToString();
    }

    private const string Accented = "àáâäãåèéêëìíîïòóôöõøùúûüçñý";
    private const string Bare = "aaaaaaeeeeiiiioooooouuuucny";
}
