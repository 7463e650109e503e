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

    private static readonly string[] Or = ["or", "nor", "oder", "noch", "ou", "ni", "o", "of"];

    private static readonly string[] Praise = ["ok", "okay", "good", "fine", "clean", "new", "normal", "intact", "gut", "neu", "bon", "bonne", "bien", "bueno", "buena", "buono", "goed", "bom", "boa"];

    private static readonly string[] Contrast = ["but", "only", "aber", "nur", "mais", "seulement", "pero", "solo", "ma", "maar", "mas"];

    // Between a negation and what it denies these count for nothing: "no visible sign of swelling".
    private static readonly string[] Fillers = ["any", "visible", "obvious", "sign", "signs", "of", "trace", "traces", "evidence", "sichtbare", "sichtbaren", "anzeichen", "von", "signe", "signes", "de", "d", "trazas", "signos", "segni", "di", "sinais"];

    /// <summary>The kinds of damage that are known, the usual ones first.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [.. Damage.Select(known => known.Kind)];

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
        SortedSet<string> found = new(StringComparer.Ordinal);
        bool anyDenied = false, allFine = true;
        foreach (string clause in plain.Replace("/", " or ", StringComparison.Ordinal).Split([';', '.', '(', ')', ':', '!', '?', '\n'], StringSplitOptions.RemoveEmptyEntries))
        {
            // "no dents, swelling or leaks" is one list; without its last "or" a comma begins something new.
            bool list = Words(clause).Any(Or.Contains);
            foreach (string part in list ? [clause] : clause.Split(','))
                Read(Words(part), found, ref anyDenied, ref allFine);
        }

        return ([.. found], found.Count > 0 || anyDenied || allFine);
    }

    /// <summary>The words of a text in lower case, without accents and stops.</summary>
    internal static string[] PlainWords(string text) => Words(Plain(text).Replace('.', ' ').Replace(';', ' ').Replace(':', ' ').Replace('(', ' ').Replace(')', ' ').Replace('!', ' '));

    /// <summary>Whether a plain word denies what follows it.</summary>
    internal static bool Denies(string word) => Negations.Contains(word);

    private static string[] Words(string text) => text.Split([' ', ',', '+', '&', '-', '_', '\t'], StringSplitOptions.RemoveEmptyEntries);

    // A negation reaches one word past itself, a list on along its "or"; words of praise or contrast take it up: "not good, leaking" leaks.
    private static void Read(string[] words, SortedSet<string> found, ref bool anyDenied, ref bool allFine)
    {
        int reach = 0;
        bool lastDenied = false;
        for (int i = 0; i < words.Length; i++)
        {
            string word = words[i];
            string? kind = i + 1 < words.Length && word == "heat" && words[i + 1].StartsWith("shrink", StringComparison.Ordinal) ? null : Kind(word);
            allFine &= kind is null && Fine.Contains(word);
            if (Negations.Contains(word))
                reach = 2;
            else if (Or.Contains(word))
                reach = lastDenied ? 2 : reach;
            else if (kind is not null)
            {
                anyDenied |= lastDenied = reach > 0;
                if (reach == 0)
                    found.Add(kind);
                // The next one is denied only along an "or", or along the commas of a list that has one.
                reach = lastDenied && words.Skip(i + 1).Any(Or.Contains) ? 2 : 0;
            }
            else if (Praise.Contains(word) || Contrast.Contains(word))
                (reach, lastDenied) = (0, false);
            else if (!Fillers.Contains(word))
                reach = Math.Max(0, reach - 1);
        }
    }

    private static string? Kind(string word)
    {
        foreach ((string kind, string[] stems) in Damage)
            if (stems.Any(stem => word.StartsWith(stem, StringComparison.Ordinal)) && !word.StartsWith("heatshrink", StringComparison.Ordinal))
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
