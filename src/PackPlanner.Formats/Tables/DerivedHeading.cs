using System.Text.RegularExpressions;

namespace PackPlanner.Formats.Tables;

/// <summary>Headings that name a quantity and yet are no reading of it: what was lost of it, how far it is off, that of a wire.</summary>
internal static partial class DerivedHeading
{
    private static readonly string[] OfAnyFigure =
    [
        "loss", "losses", "lost", "drop", "drops", "dropped", "rise", "fade", "fading", "spread", "deviation", "difference", "diff", "delta", "dev", "std", "stdev", "stddev",
        "sigma", "uncertainty", "tolerance", "error", "errors", "err", "change", "drift", "dv", "dr", "dq",
        "verlust", "abfall", "differenz", "abweichung", "anstieg", "streuung", "toleranz", "fehler", "unsicherheit",
        "perte", "chute", "ecart", "erreur", "incertitude", "hausse", "perdida", "caida", "diferencia", "desviacion", "aumento", "incertidumbre",
        "perdita", "caduta", "scarto", "differenza", "deviazione", "errore", "verlies", "verschil", "afwijking", "daling", "spadek", "strata", "roznica", "odchylenie",
        "误差", "偏差", "损失", "压降",
    ];

    private static readonly string[] OfResistance =
    [
        "insulation", "isolation", "contact", "cable", "shunt", "busbar", "joint", "weld", "isolationswiderstand", "ubergangswiderstand",
    ];

    /// <summary>Whether a heading that reads like a quantity is none.</summary>
    /// <param name="heading">The heading.</param>
    /// <param name="role">What its name and unit would make of it.</param>
    // What stands in brackets beside a name ("Ah (error 1 %)") speaks of the reading and leaves it one.
    internal static bool Is(HeadingWords heading, ColumnRole role) => role switch
    {
        ColumnRole.Capacity or ColumnRole.DischargeCapacity or ColumnRole.ChargeCapacity or ColumnRole.Health or ColumnRole.Voltage or ColumnRole.RestVoltage
            or ColumnRole.Mass or ColumnRole.Temperature => Has(heading, OfAnyFigure),
        ColumnRole.Resistance or ColumnRole.DcResistance or ColumnRole.AcResistance => Has(heading, OfAnyFigure) || Has(heading, OfResistance),
        _ => false,
    };

    private static bool Has(HeadingWords heading, string[] names)
    {
        HeadingWords bare = new(Brackets().Replace(heading.Raw, " "));
        return names.Any(bare.Has);
    }

    [GeneratedRegex(@"[(\[{（【][^)\]}）】]*[)\]}）】]?")]
    private static partial Regex Brackets();
}
