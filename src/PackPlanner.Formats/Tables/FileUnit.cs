namespace PackPlanner.Formats.Tables;

/// <summary>A unit as files write it, and how to turn it into the unit that is used here.</summary>
/// <param name="Name">As it is shown.</param>
/// <param name="Of">The quantity.</param>
/// <param name="Scale">Factor to Ah, V, A, milliohm, degrees Celsius, Wh, W, s, g, fraction or mV a day.</param>
/// <param name="Offset">Added after the factor; temperatures alone need it.</param>
internal sealed record FileUnit(string Name, Dimension Of, double Scale, double Offset = 0)
{
    // A thousandth has no exact double: dividing by a thousand rounds once, multiplying by 0.001 twice. So 3281 mV gives
    // the very double that "3.281" gives.
    private readonly double _divisor = Scale < 1 && Math.Abs((1 / Scale) - Math.Round(1 / Scale)) < 1e-6 ? Math.Round(1 / Scale) : 0;

    /// <summary>The figure in our own unit.</summary>
    internal double Convert(double figure) => (_divisor > 0 ? figure / _divisor : figure * Scale) + Offset;

    /// <summary>Finds a unit by its spelling.</summary>
    /// <param name="spelling">Without brackets; outer blanks do not matter.</param>
    /// <returns>The unit, or null.</returns>
    internal static FileUnit? Find(string spelling)
    {
        string text = spelling.Trim().Trim('.', ':').Trim();
        if (text.Length is 0 or > 24)
            return null;
        return Exact.GetValueOrDefault(text) ?? AnyCase.GetValueOrDefault(Fold(text));
    }

    /// <summary>Finds a unit that may stand in brackets, as in a row of units below the names.</summary>
    internal static FileUnit? FindInBrackets(string spelling) => Find(WithoutBrackets(spelling));

    /// <summary>The text without brackets round it.</summary>
    internal static string WithoutBrackets(string text) => text.Trim('(', ')', '[', ']');

    /// <summary>Names of the units of a quantity.</summary>
    internal static IReadOnlyList<string> NamesOf(Dimension of) => of == Dimension.None ? [] :
        [.. AnyCase.Values.Concat(Exact.Values).Append(Usual(of)).Where(unit => unit.Of == of).Distinct().OrderByDescending(unit => unit == Usual(of)).ThenByDescending(unit => unit.Scale).Select(unit => unit.Name)];

    /// <summary>The unit in which a quantity is counted here.</summary>
    internal static FileUnit Usual(Dimension of) => of switch
    {
        Dimension.Charge => AmpereHour,
        Dimension.Voltage => Volt,
        Dimension.Current => Ampere,
        Dimension.Resistance => Milliohm,
        Dimension.Temperature => Celsius,
        Dimension.Energy => WattHour,
        Dimension.Power => Watt,
        Dimension.Time => Second,
        Dimension.Mass => Gram,
        Dimension.Share => Fraction,
        _ => MillivoltADay,
    };

    internal static readonly FileUnit AmpereHour = new("Ah", Dimension.Charge, 1);
    internal static readonly FileUnit MilliampereHour = new("mAh", Dimension.Charge, 0.001);
    internal static readonly FileUnit DeciAmpereSecond = new("0.1 As", Dimension.Charge, 1 / 36000.0);
    internal static readonly FileUnit Volt = new("V", Dimension.Voltage, 1);
    internal static readonly FileUnit Centivolt = new("10 mV", Dimension.Voltage, 0.01);
    internal static readonly FileUnit Decivolt = new("0.1 V", Dimension.Voltage, 0.1);
    internal static readonly FileUnit Millivolt = new("mV", Dimension.Voltage, 0.001);
    internal static readonly FileUnit TenthMillivolt = new("0.1 mV", Dimension.Voltage, 0.0001);
    internal static readonly FileUnit Ampere = new("A", Dimension.Current, 1);
    internal static readonly FileUnit Deciampere = new("0.1 A", Dimension.Current, 0.1);
    internal static readonly FileUnit Centiampere = new("10 mA", Dimension.Current, 0.01);
    internal static readonly FileUnit Milliampere = new("mA", Dimension.Current, 0.001);
    internal static readonly FileUnit Milliohm = new("mOhm", Dimension.Resistance, 1);
    internal static readonly FileUnit Ohm = new("Ohm", Dimension.Resistance, 1000);
    internal static readonly FileUnit Microohm = new("uOhm", Dimension.Resistance, 0.001);
    internal static readonly FileUnit Celsius = new("degC", Dimension.Temperature, 1);
    internal static readonly FileUnit Kelvin = new("K", Dimension.Temperature, 1, -273.15);
    internal static readonly FileUnit DeciKelvin = new("0.1 K", Dimension.Temperature, 0.1, -273.15);
    internal static readonly FileUnit DeciCelsius = new("0.1 degC", Dimension.Temperature, 0.1);
    internal static readonly FileUnit CentiCelsius = new("0.01 degC", Dimension.Temperature, 0.01);
    internal static readonly FileUnit Fahrenheit = new("degF", Dimension.Temperature, 5 / 9.0, -160 / 9.0);
    internal static readonly FileUnit WattHour = new("Wh", Dimension.Energy, 1);
    internal static readonly FileUnit Watt = new("W", Dimension.Power, 1);
    internal static readonly FileUnit Second = new("s", Dimension.Time, 1);
    internal static readonly FileUnit Millisecond = new("ms", Dimension.Time, 0.001);
    internal static readonly FileUnit Microsecond = new("us", Dimension.Time, 0.000001);
    internal static readonly FileUnit Nanosecond = new("ns", Dimension.Time, 0.000000001);
    internal static readonly FileUnit Minute = new("min", Dimension.Time, 60);
    internal static readonly FileUnit Hour = new("h", Dimension.Time, 3600);
    internal static readonly FileUnit Day = new("d", Dimension.Time, 86400);
    internal static readonly FileUnit Gram = new("g", Dimension.Mass, 1);
    internal static readonly FileUnit Fraction = new("1", Dimension.Share, 1);
    internal static readonly FileUnit Percent = new("%", Dimension.Share, 0.01);
    internal static readonly FileUnit Permille = new("0.1 %", Dimension.Share, 0.001);
    internal static readonly FileUnit MillivoltADay = new("mV/day", Dimension.VoltageRate, 1);

    // Case tells milli from mega and ampere from a stray letter only in the short ones.
    private static readonly Dictionary<string, FileUnit> Exact = new(StringComparer.Ordinal)
    {
        ["A"] = Ampere,
        ["V"] = Volt,
        ["W"] = Watt,
        ["g"] = Gram,
        ["h"] = Hour,
        ["s"] = Second,
        ["C"] = Celsius,
        ["F"] = Fahrenheit,
        ["K"] = Kelvin,
        ["d"] = Day,
        ["R"] = Ohm,
    };

    private static readonly Dictionary<string, FileUnit> AnyCase = Table(
        (AmpereHour, "а·ч|а.ч|ач|а*ч|ah|a h|amp hours|amphours|ampere hours|amperehour|amp-hours|a·h|a.h|安时"),
        (MilliampereHour, "ма·ч|ма.ч|мач|ма*ч|маг|mah|ma h|milliamp hours|ma·h|ma.h|毫安时"),
        (DeciAmpereSecond, "das|0.1as|0.1 as|deciamperesecond|deci-ampere-seconds|deciamp seconds"),
        (new("As", Dimension.Charge, 1 / 3600.0), "as|amp seconds|coulomb"),
        (Volt, "в|v|volt|volts|伏|voltios|voltow"),
        (Millivolt, "мв|mv|millivolt|millivolts|毫伏"),
        (TenthMillivolt, "0.1mv|0.1 mv|100uv|100 uv"),
        (Centivolt, "10mv|10 mv|0.01v|0.01 v|cv"),
        (Decivolt, "0.1v|0.1 v|100mv|100 mv|dv"),
        (new("uV", Dimension.Voltage, 0.000001), "uv"),
        (new("kV", Dimension.Voltage, 1000), "kv"),
        (new("uA", Dimension.Current, 0.000001), "ua|microamp|microamps|µa"),
        (new("kA", Dimension.Current, 1000), "ka"),
        (Ampere, "а|a|amp|amps|ampere|amperes|安"),
        (Milliampere, "ма|ma|milliamp|milliamps|毫安"),
        (Centiampere, "10ma|10 ma|0.01a|0.01 a|ca"),
        (Deciampere, "0.1a|0.1 a|100ma|100 ma|da"),
        (Milliohm, "мом|mohm|mohms|milliohm|milliohms|mω|m ohm|m ω|毫欧|mr"),
        (Ohm, "ом|ohm|ohms|ω|欧姆|欧"),
        (Microohm, "uohm|uω|microohm|u ohm|微欧"),
        (Celsius, "°с|degc|°c|deg c|celsius|ºc|℃|grad c|degrees c|oc"),
        (Fahrenheit, "degf|°f|deg f|fahrenheit|ºf|℉"),
        (Kelvin, "kelvin|degk"),
        (DeciKelvin, "0.1k|0.1 k|dk"),
        (DeciCelsius, "0.1degc|0.1 degc|0.1°c|0.1 °c|0.1c|0.1 c|dc°"),
        (CentiCelsius, "0.01degc|0.01 degc|0.01°c|0.01 °c|0.01c|cdegc|centi-degree|centidegree"),
        (WattHour, "wh|watt hours|w h|watt-hours|瓦时"),
        (new("mWh", Dimension.Energy, 0.001), "mwh|毫瓦时"),
        (new("kWh", Dimension.Energy, 1000), "kwh"),
        (Watt, "w|watt|watts"),
        (new("mW", Dimension.Power, 0.001), "mw"),
        (new("kW", Dimension.Power, 1000), "kw"),
        (new("10 ms", Dimension.Time, 0.01), "10ms|10 ms|0.01s|0.01 s|centiseconds"),
        (new("0.1 s", Dimension.Time, 0.1), "100ms|100 ms|0.1s|0.1 s|deciseconds"),
        (Second, "с|сек|sn|s|sec|secs|second|seconds|sek|sekunden|秒|secondes|segundos|secondi|seconden|sekundy"),
        (Millisecond, "мс|ms|msec|millisecond|milliseconds|毫秒|millisekunden"),
        (Microsecond, "us|usec|microseconds|micros"),
        (Nanosecond, "ns|nsec|nanoseconds"),
        (Minute, "min|mins|minute|minutes|minuten|分|分钟|minuti|minutos|minuty"),
        (Hour, "hr|hrs|hour|hours|std|stunden|小时|heures|horas|ore|uren|godziny"),
        (Day, "day|days|tage|天"),
        (Gram, "gram|grams|gr|克"),
        (new("kg", Dimension.Mass, 1000), "kg"),
        (Percent, "%|percent|pct|prozent|proz"),
        (Permille, "0.1%|0.1 %|‰|permille"),
        (MillivoltADay, "mv/day|mv/d|mv/tag|mv per day|mv/jour|mv/dia|mv/24h|mv/天"),
        (new("mV/week", Dimension.VoltageRate, 1 / 7.0), "mv/week|mv/woche|mv per week|mv/周"),
        (new("mV/month", Dimension.VoltageRate, 1 / 30.0), "mv/month|mv/monat|mv/mois|mv/mes|mv/mese|mv/maand|mv per month|mv/30d|mv/30 d|mv/30 days|mv/月"),
        (new("mV/h", Dimension.VoltageRate, 24), "mv/h|mv/hr|mv/hour|mv/std|mv per hour|mv/小时"),
        (new("uV/h", Dimension.VoltageRate, 0.024), "uv/h|uv/hr|uv/hour"),
        (new("V/day", Dimension.VoltageRate, 1000), "v/day|v/d|v/tag"));

    private static string Fold(string text) => text
        .Replace('\u2126', '\u03A9').Replace('\u00B5', 'u').Replace('\u03BC', 'u').Replace('\u00A0', ' ').Replace(',', '.')
        .ToLowerInvariant();

    private static Dictionary<string, FileUnit> Table(params (FileUnit Unit, string Spellings)[] lines)
    {
        Dictionary<string, FileUnit> table = new(StringComparer.Ordinal);
        foreach ((FileUnit unit, string spellings) in lines)
            foreach (string spelling in spellings.Split('|'))
                table[spelling] = unit;
        return table;
    }
}
