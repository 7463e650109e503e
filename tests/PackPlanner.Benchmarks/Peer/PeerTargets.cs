using System.Text.Json;
using static System.FormattableString;

namespace PackPlanner.Benchmarks.Peer;

/// <summary>Packs of a second simulator, written as files, diagnosed by the command line and compared with their truth.</summary>
/// <remarks>Other curves, other physics, other loggers and other headings than the first; limits are those of docs/methods/diagnosis.md.</remarks>
internal sealed class PeerTargets
{
    private const int TableEach = 16;

    private int planted, found, reported, right, sound, accused, told, passing;
    private readonly List<double> pack = [], share = [], offset = [], ohm = [], ohmPack = [], back = [], holding = [], width = [];

    /// <summary>Diagnoses the packs of some seeds and prints a line for each that misses a limit, or for each, and the table of all so far now and then; <paramref name="only"/> keeps the kinds that begin so.</summary>
    internal static void Run(int fromSeed, int toSeed, bool keep, bool each, string? only)
    {
        PeerTargets all = new();
        string folder = Directory.CreateTempSubdirectory("packplanner-peer").FullName;
        int[] seeds = [.. Enumerable.Range(fromSeed, toSeed - fromSeed).Where(seed => only is null || PeerScenario.KindOf(seed).StartsWith(only, StringComparison.Ordinal))];
        for (int n = 0; n < seeds.Length; n++)
        {
            int seed = seeds[n];
            PeerScenario made = new(seed);
            string log = Path.Combine(folder, $"pack{seed}.csv"), given = Path.Combine(folder, $"pack{seed}.given.json");
            made.Write(log);
            File.WriteAllText(given, Invariant($"{{\"chemistry\":\"{made.Chemistry}\",\"series\":{made.Series},\"parallel\":{made.Parallel},\"ratedGroupAh\":{made.RatedAh},\"fullVoltage\":{made.FullV},\"emptyVoltage\":{made.EmptyV}}}"));
            using StringWriter answer = new(), notes = new();
            int exit = Verbs.CommandLine.Run(["diagnose", log, "--given", given, "--json"], () => Stream.Null, answer, notes, CancellationToken.None);
            using JsonDocument read = JsonDocument.Parse(answer.ToString());
            string head = Invariant($"{seed} {made.Kind} {made.Series}s {made.Logger.StepS} s {1000 * made.Logger.GrainV} mV: ");
            if (exit != 0)
                Console.WriteLine(head + read.RootElement.GetProperty("message").GetString());
            else if (all.Add(made, read.RootElement) is { } misses && (each || misses.Length > 0))
                Console.WriteLine(head + (each ? Level(made, read.RootElement) : "") + misses);
            if (!keep)
                File.Delete(log);
            if ((n + 1) % TableEach == 0 || n + 1 == seeds.Length)
                all.Print(n + 1);
        }
        if (keep)
            Console.WriteLine(folder);
        else
            Directory.Delete(folder, true);
    }

    private string Add(PeerScenario made, JsonElement answer)
    {
        List<string> misses = [];
        PeerGroup[] truth = made.Pack.Groups;
        JsonElement[] groups = [.. answer.GetProperty("groups").EnumerateArray()];
        string can = made.Told();
        bool cannot = groups.Any(g => Said(g).Contains("cannot-tell"));
        bool tell = can == "either" || (can == "yes") != cannot;
        told += tell ? 1 : 0;
        if (!tell)
            misses.Add(cannot ? "did not tell" : "told what cannot be told");
        for (int k = 0; k < truth.Length; k++)
            Findings(truth[k], [.. Said(groups[k]).Where(f => f != "cannot-tell")], k, can == "yes", misses);
        double middleAh = Median(truth.Select(g => g.CapacityAh)), middleStart = Median(truth.Select(g => g.StartCharge));
        if (can == "yes")
            Capacity(truth, groups, answer, middleAh, misses);
        double held = truth.Select((g, k) => g.CapacityAh >= Bound(groups[k], "low") && g.CapacityAh <= Bound(groups[k], "high") ? 1.0 : 0).Average();
        holding.Add(held);
        if (held < 0.75)
            misses.Add(Invariant($"ranges hold {100 * held:f0} %"));
        if (made.Chemistry != "LFP" || can == "yes")
        {
            double[] off = [.. truth.Select((g, k) => Math.Abs(Value(groups[k], "stateOfChargeOffset") - (g.StartCharge - middleStart)))];
            offset.Add(Rms(off));
            if (off.Max() > 0.035 || Rms(off) > 0.015)
                misses.Add(Invariant($"offset {100 * Rms(off):f1} points (worst {100 * off.Max():f1})"));
        }
        if (!made.Kind.EndsWith("-charge", StringComparison.Ordinal) || made.Kind == "nmc-ride-charge")
            Resistance(made, groups, misses);
        passing += misses.Count == 0 ? 1 : 0;
        return string.Join("; ", misses);
    }

    private void Capacity(PeerGroup[] truth, JsonElement[] groups, JsonElement answer, double middleAh, List<string> misses)
    {
        double[] said = [.. groups.Select(g => Value(g, "capacityAh"))];
        double error = Math.Abs((Median(said) / middleAh) - 1);
        double[] apart = [.. truth.Select((g, k) => Math.Abs((said[k] / Median(said) / (g.CapacityAh / middleAh)) - 1))];
        double half = Median(groups.Select(g => (Bound(g, "high") - Bound(g, "low")) / 2 / Value(g, "capacityAh")));
        double gives = Recovery(truth, answer.GetProperty("recovery"), middleAh);
        pack.Add(error);
        share.Add(Rms(apart));
        width.Add(half);
        back.Add(gives);
        if (error > 0.08 || apart.Max() > 0.06 || Rms(apart) > 0.03 || gives > 0.08 || half > 0.12)
            misses.Add(Invariant($"capacity {100 * ((Median(said) / middleAh) - 1):+0.0;-0.0} % (relative {100 * Rms(apart):f1}, worst {100 * apart.Max():f1}), recovery {100 * gives:f1} %, half-width {100 * half:f1} %"));
    }

    private void Resistance(PeerScenario made, JsonElement[] groups, List<string> misses)
    {
        double[] ohms = [.. made.Pack.Groups.Select(g => 1000 * made.Pack.OneSecondOhm(g, made.Logger.MeanDegC))];
        double[] said = [.. groups.Select(g => Value(g, "resistanceMilliohm"))];
        double[] apart = [.. said.Select((r, k) => Math.Abs((r / Median(said) / (ohms[k] / Median(ohms))) - 1))];
        double level = Math.Abs((Median(said) / Median(ohms)) - 1);
        ohm.Add(Rms(apart));
        ohmPack.Add(level);
        if (apart.Max() > 0.15 || Rms(apart) > 0.06 || level > (made.Logger.StepS > 3 ? 0.5 : 0.15))
            misses.Add(Invariant($"resistance relative {100 * Rms(apart):f1} % (worst {100 * apart.Max():f1}), level {100 * ((Median(said) / Median(ohms)) - 1):+0;-0} %"));
    }

    /// <summary>How far off the capacity of the pack is, and how wide its range.</summary>
    private static string Level(PeerScenario made, JsonElement answer)
    {
        JsonElement[] groups = [.. answer.GetProperty("groups").EnumerateArray()];
        double off = (Median(groups.Select(g => Value(g, "capacityAh"))) / Median(made.Pack.Groups.Select(g => g.CapacityAh))) - 1;
        double half = Median(groups.Select(g => (Bound(g, "high") - Bound(g, "low")) / 2 / Value(g, "capacityAh")));
        return Invariant($"({made.Told()}, {100 * off:+0.0;-0.0} % in a range of {100 * half:f1} %) ");
    }

    private void Findings(PeerGroup truth, string[] said, int k, bool capacityTold, List<string> misses)
    {
        foreach (string[] need in truth.Required)
        {
            if (need.Contains("low-capacity") && !capacityTold && !need.Any(said.Contains))
                continue;
            planted++;
            bool hit = need.Any(said.Contains);
            found += hit ? 1 : 0;
            if (!hit)
                misses.Add($"missed {need[0]}@{k + 1}");
        }
        foreach (string name in said)
        {
            reported++;
            bool ok = truth.Allowed.Contains(name) || truth.Required.Any(set => set.Contains(name));
            right += ok ? 1 : 0;
            if (!ok)
                misses.Add($"wrong {name}@{k + 1} (truth: {string.Join(", ", truth.Required.Select(r => r[0]))})");
        }
        if (truth.Required.Count == 0)
        {
            sound++;
            accused += said.Length > 0 ? 1 : 0;
        }
    }

    private static double Recovery(PeerGroup[] truth, JsonElement said, double middleAh)
    {
        double now = truth.Min(g => g.StartCharge * g.CapacityAh) + truth.Min(g => (1 - g.StartCharge) * g.CapacityAh);
        double[] sorted = [.. truth.Select(g => g.CapacityAh).Order()];
        double Off(string key, double trueAh) => Math.Abs((said.GetProperty(key).GetDouble() / trueAh) - 1);
        return Math.Max(Off("usableAhNow", now), Math.Max(Off("usableAhAfterBalance", sorted[0]), Off("usableAhAfterReplacement", Math.Min(middleAh, sorted[1]))));
    }

    private void Print(int packs)
    {
        Console.WriteLine(Invariant($"packs {packs}; found {found} of {planted} ({100.0 * found / planted:f1} %); right {right} of {reported} ({100.0 * right / reported:f1} %); sound groups left alone {sound - accused} of {sound} ({100.0 * (sound - accused) / sound:f2} %); cannot-tell right {told}"));
        Console.WriteLine(Invariant($"pack capacity mean {100 * pack.Average():f2} % worst {100 * pack.Max():f1}; relative rms {100 * Rms(share):f2} %; offset rms {100 * Rms(offset):f2} points; resistance relative rms {100 * Rms(ohm):f2} %, level mean {100 * ohmPack.Average():f1} %"));
        Console.WriteLine(Invariant($"recovery rms {100 * Rms(back):f2} %; ranges hold {100 * holding.Average():f0} %, half-width {100 * Median(width):f1} %; single logs passing {passing} of {packs}"));
    }

    private static string[] Said(JsonElement group) => [.. group.GetProperty("findings").EnumerateArray().Select(f => f.GetString()!)];

    private static double Value(JsonElement group, string key) => group.GetProperty(key) is { ValueKind: JsonValueKind.Object } range ? range.GetProperty("value").GetDouble() : double.NaN;

    private static double Bound(JsonElement group, string end) => group.GetProperty("capacityAh").GetProperty(end).GetDouble();

    private static double Rms(IReadOnlyCollection<double> values) => values.Count == 0 ? 0 : Math.Sqrt(values.Average(v => v * v));

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
