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

    // A voltage under load, or while it is charged or discharged, is no resting one.
    private static readonly string[] OfLoad =
    [
        "load", "loaded", "underload", "last", "lastspannung", "belastet", "belastung", "encharge", "souscharge", "concarga", "bajocarga", "sottocarico", "belast", "belasting",
        "obciazeniem", "obciazona", "obc", "ladespannung", "entladespannung", "charging", "discharging",
    ];

    private static readonly string[] Without = ["no", "ohne", "sans", "sin", "bez", "senza", "zonder", "unloaded", "unbelastet", "onbelast", "off"];

    // "Last voltage" is English for the latest one.
    private static readonly string[] English = ["voltage", "volts", "reading", "measured", "rest", "ocv"];

    /// <summary>Whether a heading that reads like a quantity is none.</summary>
    /// <param name="heading">The heading.</param>
    /// <param name="role">What its name and unit would make of it.</param>
    // What stands in brackets beside a name ("Ah (error 1 %)") speaks of the reading and leaves it one.
    internal static bool Is(HeadingWords heading, ColumnRole role) => role switch
    {
        ColumnRole.Voltage or ColumnRole.RestVoltage when IsUnderLoad(heading) => true,
        // "V con carga", "U charge": the symbol of volts before a word that charge goes by too.
        ColumnRole.DischargeCapacity or ColumnRole.ChargeCapacity when heading.Unit is null && (heading.Words.StartsWith("v ", StringComparison.Ordinal) || heading.Words.StartsWith("u ", StringComparison.Ordinal)) => true,
        ColumnRole.Capacity or ColumnRole.DischargeCapacity or ColumnRole.ChargeCapacity or ColumnRole.Health or ColumnRole.Voltage or ColumnRole.RestVoltage
            or ColumnRole.Mass or ColumnRole.Temperature => Has(heading, OfAnyFigure),
        ColumnRole.Resistance or ColumnRole.DcResistance or ColumnRole.AcResistance => Has(heading, OfAnyFigure) || Has(heading, OfResistance),
        _ => false,
    };

    private static bool IsUnderLoad(HeadingWords heading) =>
        Array.Exists(OfLoad, heading.Has) && !Array.Exists(Without, heading.Has)
        && !(heading.Has("last") && Array.Exists(English, heading.Has));

    private static bool Has(HeadingWords heading, string[] names)
    {
        HeadingWords bare = new(Brackets().Replace(heading.Raw, " "));
        return names.Any(bare.Has);
    }

    [GeneratedRegex(@"[(\[{（【][^)\]}）】]*[)\]}）】]?")]
    private static partial Regex Brackets();
}
