namespace PackPlanner.Formats.Tables;

/// <summary>Words that stand in tables where no cell or no figure stands.</summary>
internal static class RowWords
{
    private static readonly HashSet<string> Totals = new(StringComparer.Ordinal)
    {
        "total", "totals", "sum", "sums", "mean", "average", "avg", "min", "minimum", "max", "maximum", "median", "stdev", "stddev", "std", "sd", "deviation", "count",
        "range", "spread", "subtotal", "grand total", "statistics", "summary", "statistik", "zusammenfassung", "statistiques", "statistique", "estadistica", "estadisticas", "resumen", "statistica", "statistiche", "riepilogo", "statistiek", "samenvatting", "statystyka", "podsumowanie", "统计",
        "summe", "gesamt", "gesamtsumme", "mittel", "mittelwert", "durchschnitt", "anzahl", "standardabweichung", "streuung", "zwischensumme",
        "somme", "moyenne", "mediane", "ecart type", "nombre", "totale", "totaux",
        "suma", "promedio", "media", "mediana", "desviacion", "totales",
        "somma", "totali", "media aritmetica", "deviazione",
        "totaal", "som", "gemiddelde", "gemiddeld", "aantal", "mediaan",
        "razem", "srednia", "lacznie", "ogolem", "odchylenie", "liczba", "mediana",
        "合计", "总计", "平均", "平均值", "总和", "最大", "最小", "最大值", "最小值", "小计", "标准差",
    };

    // Ways to write that there is no figure; they tell nothing more and are no remark.
    private static readonly HashSet<string> NoFigure = new(StringComparer.OrdinalIgnoreCase)
    {
        "n/a", "na", "n.a.", "n.a", "-", "--", "---", "?", "??", "x", "nan", "null", "none", "nil", "k.a.", "k. a.", "ka", "n.v.t.", "nvt", "nd", "n.d.", "s/d", "bd", "b.d.", "无", "/", "#n/a", "#nv", "#div/0!", "#value!", "#wert!", "inf", "—", "–",
    };

    /// <summary>The entry names a sum or a statistic and no cell.</summary>
    internal static bool IsTotal(string entry)
    {
        string text = entry.TrimEnd(':', '.', ' ', '=');
        if (text.Length is 0 or > 40)
            return false;
        HeadingWords words = new(text);
        if (text.Any(char.IsAsciiDigit) && !text.Contains(' '))
            return false;
        string first = HeadingWords.Plain(text.Split(' ', ':', '(', '[')[0]);
        return Totals.Contains(words.Joined) || Totals.Contains(HeadingWords.Plain(text)) || Totals.Contains(first) || text is "Σ" or "∑" or "Ø";
    }

    /// <summary>The entry only says that there is no figure.</summary>
    internal static bool IsNoFigure(string entry) => NoFigure.Contains(entry);
}
