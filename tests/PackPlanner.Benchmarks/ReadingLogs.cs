using System.Globalization;

namespace PackPlanner.Benchmarks;

/// <summary>Invented logs of any size: a bike ridden and charged by turns, the same bytes each time.</summary>
internal static class ReadingLogs
{
    private const int Groups = 16;

    /// <summary>A row each second: time, current, sixteen groups, two probes.</summary>
    internal static void Wide(string file, int megabytes)
    {
        using StreamWriter writer = new(file, false, new System.Text.UTF8Encoding(false), 1 << 20);
        writer.Write("time (s),current (A)");
        for (int group = 1; group <= Groups; group++)
            writer.Write(string.Create(CultureInfo.InvariantCulture, $",cell {group} (V)"));
        writer.Write(",T1 (C),T2 (C)\n");
        long most = megabytes * 1_000_000L;
        Pack pack = new(7);
        Span<char> text = stackalloc char[512];
        for (long written = 300, row = 0; written < most; row++)
        {
            pack.Step();
            int at = 0;
            Put(text, ref at, row, "0");
            Put(text, ref at, pack.CurrentA, "0.00");
            for (int group = 0; group < Groups; group++)
                Put(text, ref at, pack.Volts(group), "0.0000");
            Put(text, ref at, 21 + (0.05 * pack.CurrentA), "0.0");
            Put(text, ref at, 22 + (0.04 * pack.CurrentA), "0.0");
            text[at - 1] = '\n';
            writer.Write(text[..at]);
            written += at;
        }
    }

    /// <summary>One row a value: time, name, value; the current, a probe and sixteen groups each ten seconds.</summary>
    internal static void Long(string file, int rows)
    {
        using StreamWriter writer = new(file, false, new System.Text.UTF8Encoding(false), 1 << 20);
        writer.Write("time (s),signal,value\n");
        Pack pack = new(8);
        Span<char> text = stackalloc char[64];
        for (int row = 0; row < rows; row++)
        {
            int signal = row % (Groups + 2);
            if (signal == 0)
                pack.Step();
            int at = 0;
            Put(text, ref at, row / (Groups + 2) * 10, "0");
            writer.Write(text[..at]);
            writer.Write(signal == 0 ? "current," : signal == 1 ? "temperature," : string.Create(CultureInfo.InvariantCulture, $"cell {signal - 1},"));
            at = 0;
            Put(text, ref at, signal == 0 ? pack.CurrentA : signal == 1 ? 21 + (0.05 * pack.CurrentA) : pack.Volts(signal - 2), "0.000");
            text[at - 1] = '\n';
            writer.Write(text[..at]);
        }
    }

    private static void Put(Span<char> text, ref int at, double figure, string format)
    {
        figure.TryFormat(text[at..], out int length, format, CultureInfo.InvariantCulture);
        at += length;
        text[at++] = ',';
    }

    // Rides down and charges up between two limits; every group has its own resistance and offset.
    private sealed class Pack(int seed)
    {
        private readonly Random _random = new(seed);
        private double _charge = 0.95;
        private bool _charging;

        internal double CurrentA { get; private set; }

        internal void Step()
        {
            _charging = _charging ? _charge < 0.95 : _charge < 0.15;
            if (_charging)
                CurrentA = -8;
            else if (_random.NextDouble() < 0.2)
                CurrentA = Math.Round(_random.NextDouble() * 60, 2);
            _charge -= CurrentA / 60 / 3600;
        }

        internal double Volts(int group) => 3.2 + _charge - (0.002 * (1 + (0.05 * group)) * CurrentA) + (0.001 * group) + (0.0005 * _random.NextDouble());
    }
}
