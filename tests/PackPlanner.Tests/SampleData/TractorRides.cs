using System.Globalization;
using System.Text;
using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.SampleData;

/// <summary>Makes the two invented logs of the orchard tractor: 16 LFP cells of 105 Ah, in May and on 3 October.</summary>
/// <remarks>
/// Each cell is an open-circuit curve behind a resistance with one slow part. The faults of October are planted: cell 11
/// holds 71 Ah, the joint at cell 4 has 1.1 milliohm more, the sense wire between 8 and 9 is loose.
/// </remarks>
internal static class TractorRides
{
    private const int Cells = 16;
    private const double StepS = 2;
    private const double SlowS = 25;

    private static readonly double[] MayAh = [96.4, 95.8, 97.0, 96.1, 95.5, 96.9, 95.9, 96.3, 96.0, 95.2, 95.6, 96.6, 95.7, 96.8, 96.2, 95.9];

    internal static string May() => Ride(20260509, october: false);

    internal static string October() => Ride(20261003, october: true);

    private static string Ride(int seed, bool october)
    {
        Random random = new(seed);
        OpenCircuitCurve curve = Chemistries.LithiumIronPhosphate.Curve;
        (double[] ah, double[] instantMilliohm, double[] slowMilliohm) = Pack(random, october);
        StringBuilder text = new();
        text.Append("t,I_bat,").AppendJoin(',', Enumerable.Range(1, 24).Select(i => $"Cell{i:00}")).Append('\n');
        double[] slowV = new double[Cells];
        double drawnAh = 0;
        double loadA = 0;
        double until = 60;
        double looseV = 0.21;
        for (int step = 0; ; step++)
        {
            double t = step * StepS;
            if (t >= until)
            {
                (loadA, until) = Next(random, t);
                looseV = 0.21 * (random.NextDouble() < 0.5 ? 1 : -1);
            }

            double loggedA = Math.Round(loadA + (loadA > 0 ? 1.5 * (random.NextDouble() - 0.5) : 0), 1);
            double[] volts = new double[Cells];
            for (int cell = 0; cell < Cells; cell++)
            {
                slowV[cell] += ((loggedA * slowMilliohm[cell] / 1000) - slowV[cell]) * (1 - Math.Exp(-StepS / SlowS));
                double charge = Math.Clamp(0.995 - (drawnAh / ah[cell]), 0, 1);
                volts[cell] = curve.VoltsAt(charge) - slowV[cell] - (loggedA * instantMilliohm[cell] / 1000) + (0.001 * (random.NextDouble() - 0.5));
            }

            drawnAh += loggedA * StepS / 3600;
            bool ended = volts.Min() < 2.5;
            if (october && t > 900)
            {
                volts[7] -= looseV;
                volts[8] += looseV;
            }

            if (!(october && t is >= 2400 and < 2430))
                text.Append(Row(t, loggedA, volts, october, step));
            if (ended)
                return text.ToString();
        }
    }

    private static (double[] Ah, double[] InstantMilliohm, double[] SlowMilliohm) Pack(Random random, bool october)
    {
        double[] ah = [.. MayAh];
        double[] instantMilliohm = [.. Enumerable.Range(0, Cells).Select(_ => 0.46 + (0.01 * random.NextDouble()))];
        double[] slowMilliohm = [.. Enumerable.Range(0, Cells).Select(_ => 0.24 + (0.01 * random.NextDouble()))];
        if (october)
        {
            ah[10] = 71;
            instantMilliohm[10] += 0.20;
            slowMilliohm[10] += 0.08;
            instantMilliohm[3] += 1.10;
        }

        return (ah, instantMilliohm, slowMilliohm);
    }

    // Driving in an orchard: rows of work at 40 to 70 A, turns at 15 to 30 A, halts.
    private static (double LoadA, double Until) Next(Random random, double t)
    {
        double kind = random.NextDouble();
        return kind < 0.10 ? (0, t + 40 + (40 * random.NextDouble()))
            : kind < 0.35 ? (15 + (15 * random.NextDouble()), t + 20 + (20 * random.NextDouble()))
            : (45 + (25 * random.NextDouble()), t + 60 + (90 * random.NextDouble()));
    }

    private static string Row(double t, double loadA, double[] volts, bool october, int step)
    {
        int[] millivolt = [.. volts.Select(v => (int)Math.Round(v * 1000)), .. new int[8]];
        if (october && step < 9)
            Array.Fill(millivolt, 6000, 0, Cells);
        if (october && step is >= 700 and < 705)
            Array.Fill(millivolt, 0);
        if (october && step is 320 or 1111 or 1500)
            millivolt[4] = 65535;
        return string.Create(CultureInfo.InvariantCulture, $"{t:0},{loadA:0.0},{string.Join(',', millivolt)}\n");
    }
}
