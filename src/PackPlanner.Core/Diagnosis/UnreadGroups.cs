using PackPlanner.Core.Cautions;
using static System.FormattableString;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Groups of which the log tells nothing, or nothing for a while: a channel without volts, or one that stands still while the others move.</summary>
/// <remarks>
/// A group that is not read keeps its number and gets no figures. The fit sees the mean of the others in its place, which pulls it nowhere; what it
/// really holds is not known, and every figure of the pack holds only if it is no weaker than the weakest that is read.
/// </remarks>
internal sealed class UnreadGroups
{
    private readonly List<StillChannel> unread = [], frozen = [];

    private UnreadGroups(RideLog log) => Filled = log;

    /// <summary>The log with the mean of the others in place of groups that are not read, and without readings that stand still.</summary>
    internal RideLog Filled { get; private set; }

    /// <summary>Looks for them.</summary>
    /// <param name="log">The log.</param>
    /// <param name="grainV">The smallest step between its readings, volts.</param>
    /// <param name="given">What is known of the pack; null: any charge that flows moves every group.</param>
    internal static UnreadGroups Of(RideLog log, double grainV, PackGiven? given = null)
    {
        UnreadGroups found = new(log);
        if (log.Groups < 2)
            return found;
        bool[] reads = [.. log.GroupV.Select(volts => Array.Exists(volts, double.IsFinite))];
        foreach (int k in Enumerable.Range(0, log.Groups).Where(k => !reads[k]))
            found.unread.Add(new StillChannel(k, double.NaN, 0, log.Rows - 1, 0));
        int read = reads.Count(one => one);
        if (read < 2)
            return found.Whole();
        foreach (IGrouping<int, StillChannel> own in StillChannels.Find(log, read, grainV, given).GroupBy(stand => stand.Group))
        {
            if (own.Sum(stand => stand.Last - stand.First + 1) >= log.Rows / 2)
                found.unread.Add(own.MaxBy(stand => stand.Last - stand.First));
            else
                found.frozen.AddRange(own);
        }

        return found.Whole();
    }

    private UnreadGroups Whole()
    {
        if (unread.Count > 0 || frozen.Count > 0)
            Fill();
        return this;
    }

    /// <summary>Groups of which nothing is known, from 0.</summary>
    internal IEnumerable<int> Groups => unread.Select(stand => stand.Group);

    /// <summary>Whether nothing is known of a group, from 0.</summary>
    internal bool Has(int group) => unread.Any(stand => stand.Group == group);

    /// <summary>Findings of a group: of one that is not read that alone, of one whose channel stands still for a while that first.</summary>
    /// <param name="group">From 0.</param>
    /// <param name="judged">What is found of it as it is filled in.</param>
    internal List<FindingDetail> With(int group, List<FindingDetail> judged) =>
        Has(group) ? [Finding(group)] : frozen.Any(stand => stand.Group == group) ? [Finding(group), .. judged.Where(finding => finding.Kind != FindingKind.Sensor)] : judged;

    /// <summary>The groups with one that is not read far above the others: of what limits the pack, and what a repair gives, it is no part.</summary>
    /// <param name="groups">All groups.</param>
    internal GroupEstimate[] NeverLimiting(GroupEstimate[] groups) =>
        [.. groups.Select((g, k) => Has(k) ? g with { CapacityAh = 2 * groups.Max(other => other.CapacityAh), Charge = 0.5 } : g)];

    private FindingDetail Finding(int group)
    {
        StillChannel[] own = [.. unread.Concat(frozen).Where(stand => stand.Group == group)];
        return new FindingDetail(
            FindingKind.Sensor,
            [.. own.Select(Saw), Has(group) ? "nothing else can be told of this group: neither its capacity nor its charge nor its resistance" : "those rows are left out; the others tell what is said of it"],
            Sureness.High, "Measure this group with a meter, then its sense wire, the contact and the channel of the monitor; log again once it reads.");
    }

    /// <summary>Caution 33 for each.</summary>
    internal IEnumerable<Caution> Cautions() => unread.Concat(frozen).GroupBy(stand => stand.Group)
        .Select(own => new Caution("caution-33", SignalWord.Warning, Invariant($"group {own.Key + 1}"), Saw(own.First())));

    /// <summary>An event where each begins.</summary>
    internal IEnumerable<RideEvent> Events() => unread.Concat(frozen).Select(stand => new RideEvent(
        Filled.TimeS[stand.First], "not-read", stand.Group + 1, double.IsNaN(stand.Volts) ? null : stand.Volts, null, Saw(stand)));

    /// <summary>What the pack's figures then rest on.</summary>
    internal IEnumerable<string> Notes() => unread.Count == 0 ? [] :
        [Invariant($"{(unread.Count == 1 ? "group" : "groups")} {string.Join(", ", unread.Select(stand => stand.Group + 1).Order())} {(unread.Count == 1 ? "is" : "are")} not read: the pack's figures suppose that it holds as much as the others do, and are too high where it holds less")];

    private string Saw(StillChannel stand) => double.IsNaN(stand.Volts) ? "its channel never holds the volts of a cell"
        : Invariant($"its channel shows {stand.Volts:f3} V {When(stand)}, while the middle one of the others moves by {stand.OthersMovedV:f2} V");

    private string When(StillChannel stand) => stand.First == 0 && stand.Last == Filled.Rows - 1 ? "throughout"
        : Invariant($"from {Filled.TimeS[stand.First] / 3600:f2} h to {Filled.TimeS[stand.Last] / 3600:f2} h");

    private void Fill()
    {
        double[][] volts = [.. Filled.GroupV];
        foreach (IGrouping<int, StillChannel> own in frozen.GroupBy(stand => stand.Group))
        {
            volts[own.Key] = [.. volts[own.Key]];
            foreach (StillChannel stand in own)
                Array.Fill(volts[own.Key], double.NaN, stand.First, stand.Last - stand.First + 1);
        }

        double[][] read = [.. volts.Where((_, k) => !Has(k))];
        if (unread.Count > 0 && read.Length > 0)
        {
            double[] mean = Mean(read, Filled.Rows);
            foreach (StillChannel stand in unread)
                volts[stand.Group] = mean;
        }

        Filled = Filled.WithGroupV(volts);
    }

    // Of what is read in each row; NaN where nothing is.
    private static double[] Mean(double[][] groups, int rows)
    {
        double[] mean = new double[rows];
        for (int row = 0; row < rows; row++)
        {
            double sum = 0;
            int known = 0;
            foreach (double[] group in groups)
            {
                if (!double.IsFinite(group[row]))
                    continue;
                sum += group[row];
                known++;
            }

            mean[row] = sum / known;
        }

        return mean;
    }
}
