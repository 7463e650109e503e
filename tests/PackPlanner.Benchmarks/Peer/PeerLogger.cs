using System.Globalization;
using System.Text;

namespace PackPlanner.Benchmarks.Peer;

/// <summary>A logger with its own errors and its own way of writing a file.</summary>
internal sealed class PeerLogger(Random random, int groups, double ratedAh, double stepS)
{
    private readonly List<(double TimeS, double Amps, double[] Volts, double DegC)> rows = [];
    private readonly double[] offsetV = [.. Enumerable.Range(0, groups).Select(_ => 0.0007 * PeerCurves.Normal(random))];
    private readonly double[] gain = [.. Enumerable.Range(0, groups).Select(_ => 1 + (0.0002 * PeerCurves.Normal(random)))];
    private readonly double currentGain = 1 + (0.007 * PeerCurves.Normal(random)), currentZeroA = 0.0012 * ratedAh * PeerCurves.Normal(random);
    private readonly double noiseV = 0.0002 + (0.0012 * random.NextDouble()), noiseA = 0.0015 * ratedAh;
    private readonly bool averages = stepS >= 5 && random.Next(2) == 0;
    private readonly double[] sumV = new double[groups];
    private double clockS, nextS, sumA, sumS, degrees;

    /// <summary>Smallest step of a voltage.</summary>
    internal double GrainV { get; } = random.Next(6) switch { 0 => 0.005, 1 => stepS <= 1 ? 0.01 : 0.005, 2 => 0.0001, _ => 0.001 };

    internal double StepS => stepS;

    internal bool HasDegrees { get; } = random.Next(3) > 0;

    internal double MeanDegC => degrees / Math.Max(1, rows.Count);

    internal bool Asleep { get; set; }

    internal void See(double seconds, double amps, double[] volts, PeerGroup[] packGroups, double degC)
    {
        clockS += seconds;
        sumA += amps * seconds;
        sumS += seconds;
        for (int k = 0; k < groups; k++)
            sumV[k] += volts[k] * seconds;
        if (clockS + 1e-9 < nextS)
            return;
        nextS = Math.Max(nextS + stepS, clockS + (stepS / 2));
        if (!Asleep && random.Next(400) > 0)
        {
            double a = ((averages ? sumA / sumS : amps) * currentGain) + currentZeroA + (noiseA * PeerCurves.Normal(random));
            double[] seen = new double[groups];
            for (int k = 0; k < groups; k++)
            {
                double v = ((averages ? sumV[k] / sumS : volts[k]) * gain[k]) + offsetV[k] + packGroups[k].TapV + (noiseV * PeerCurves.Normal(random));
                seen[k] = Math.Round(v / GrainV) * GrainV;
            }
            rows.Add((clockS, a, seen, degC));
            degrees += degC;
        }
        Array.Clear(sumV);
        (sumA, sumS) = (0, 0);
    }

    /// <summary>Writes the file in one of seven ways.</summary>
    internal void Write(string file, int style, double chargeSign)
    {
        StringBuilder text = new();
        string F(double v, string format) => v.ToString(format, CultureInfo.InvariantCulture);
        string Comma(double v, string format) => F(v, format).Replace('.', ',');
        DateTime at = new(2025, 3, 9, 8, 14, 3);
        text.Append(style switch
        {
            0 => "Time [s],Pack Current [A]," + Join(",", k => $"Cell {k + 1} [V]") + ",Temp [C]\n",
            1 => "Datum;Strom A;" + Join(";", k => $"Zelle{k + 1:00} mV") + ";Temperatur\n",
            2 => "ms\tcurrent_mA\t" + Join("\t", k => $"cell_{k}") + "\ttemp\n",
            3 => "# ride recorder export\n# pack " + groups + "s\ntime,amps," + Join(",", k => $"v{k + 1}") + ",t1\ns,A," + Join(",", _ => "V") + ",degC\n",
            4 => "elapsed_s,cell,voltage_v,current_a\n",
            5 => "epoch,ibat," + Join(",", k => $"B{groups - k}") + ",ntc\n",
            _ => "Zeit;Strom;" + Join(";", k => $"U{k + 1}") + ";T1\n",
        });
        foreach ((double t, double a, double[] v, double degC) in rows)
        {
            double amps = chargeSign * a;
            string temperature = HasDegrees ? F(degC, "0.0") : "";
            text.Append(style switch
            {
                0 => $"{F(t, "0.0")},{F(amps, "0.00")},{Join(",", k => F(v[k], "0.0000"))},{temperature}\n",
                1 => $"{at.AddSeconds(t):yyyy-MM-dd HH:mm:ss};{Comma(amps, "0.00")};{Join(";", k => Comma(1000 * v[k], "0.0"))};{Comma(degC, "0.0")}\n",
                2 => $"{F(1000 * t, "0")}\t{F(1000 * amps, "0")}\t{Join("\t", k => F(1000 * v[k], "0"))}\t{temperature}\n",
                3 => $"{F(t, "0.00")},{F(amps, "0.0")},{Join(",", k => F(v[k], "0.000"))},{temperature}\n",
                4 => Join("", k => $"{F(t, "0.0")},{k + 1},{F(v[k], "0.0000")},{F(amps, "0.00")}\n"),
                5 => $"{F(1741508043 + t, "0.0")},{F(amps, "0.00")},{Join(",", k => F(v[groups - 1 - k], "0.0000"))},{temperature}\n",
                _ => $"{at.AddSeconds(t):dd.MM.yyyy HH:mm:ss};{Comma(amps, "0.00")};{Join(";", k => Comma(v[k], "0.000"))};{Comma(degC, "0.0")}\n",
            });
        }
        File.WriteAllText(file, text.ToString());

        string Join(string between, Func<int, string> one) => string.Join(between, Enumerable.Range(0, groups).Select(one));
    }
}
