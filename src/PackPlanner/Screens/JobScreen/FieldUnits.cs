using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.JobScreen;

/// <summary>The unit in which a field is filled in: that of the table around it, so that a bare figure means what its neighbours mean.</summary>
internal static class FieldUnits
{
    private static readonly Dictionary<GivenKind, (string Symbol, Func<double, double> Shown)> Us = new()
    {
        [GivenKind.DegC] = ("degF", degC => (degC * 9 / 5) + 32),
        [GivenKind.Kilograms] = ("lb", kg => kg / 0.45359237),
        [GivenKind.Kilometres] = ("mi", km => km / 1.609344),
        [GivenKind.Metres] = ("ft", m => m / 0.3048),
        [GivenKind.Millimetres] = ("in", mm => mm / 25.4),
        [GivenKind.WattHoursPerKm] = ("Wh/mile", whPerKm => whPerKm * 1.609344),
    };

    /// <summary>The symbol; empty where there is none.</summary>
    internal static string Symbol(GivenKind kind, Look look) => OfUs(kind, look) is { } us ? us.Symbol : TypedGiven.UnitOf(kind);

    /// <summary>A value as it stands in the field.</summary>
    internal static double Shown(GivenKind kind, double value, Look look) => OfUs(kind, look) is { } us ? us.Shown(value) : value;

    /// <summary>What was typed, with the field's unit where it is a bare figure.</summary>
    internal static string Typed(GivenKind kind, string text, Look look) =>
        OfUs(kind, look) is { } us && TypedQuantity.Split(text.Trim(), out _, out string unit) && unit.Length == 0 ? text.Trim() + us.Symbol : text;

    /// <summary>Whether fields of a kind have another unit than the one it is kept in.</summary>
    internal static bool AreOthers(GivenKind kind, Look look) => OfUs(kind, look) is not null;

    private static (string Symbol, Func<double, double> Shown)? OfUs(GivenKind kind, Look look) => look.UsUnits && Us.TryGetValue(kind, out var us) ? us : null;
}
