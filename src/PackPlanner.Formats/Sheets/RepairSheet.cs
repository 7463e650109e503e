using System.Globalization;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Formats.Sheets;

/// <summary>What the latest log shows, where the group sits, and the reading that settles it.</summary>
internal static class RepairSheet
{
    private const int FindingsOnAPage = 2;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input)
    {
        RideDiagnosis diagnosis = input.Diagnosis!;
        Found[] findings = [.. Found.All(diagnosis)];
        if (findings.Length == 0)
            return [SheetPage.Of("Repair", "", "<p>The log shows nothing to mend.</p>\n", Gravest(diagnosis))];
        return
        [
            .. SheetPage.Evenly(findings, FindingsOnAPage).Select(some => new SheetPage(
                "Repair: what to settle before anything is changed",
                "<p>Groups are counted from pack minus. Before opening anything measure the volts from pack minus to the plus of the group: they tell that you have the right one.</p>\n",
                [.. some.Select(found => new SheetBlock(Block(input, found)))],
                Gravest(diagnosis))),
            .. SheetPictures.Page(input, "What the log shows", [], "volts", "drop"),
            .. SheetPictures.Page(input, "What a repair would give back", [], "losses", "remedies"),
        ];
    }

    private static string Block(SheetInput input, Found found) => Html.Table(
        [string.Create(CultureInfo.InvariantCulture, $"{found.Where} of {input.Diagnosis!.Groups.Count}: {Name(found.Finding.Kind)}, sure: {found.Finding.Sure.ToString().ToLowerInvariant()}"), "reading"],
        [
            .. Enumerable.Range(found.First, found.Last - found.First + 1).Select(group => (IReadOnlyList<string>)
                [$"<b>confirm the place:</b> pack minus to the plus of {group.ToString(CultureInfo.InvariantCulture)}, about {Html.Figure(input.LastRestV(group), 1)} V at rest", Html.Box]),
            [$"<b>settle it by:</b> {Html.Text(found.Finding.SettleBy)}", Html.Box],
            [$"<b>seen:</b> {Html.Text(string.Join("; ", found.Finding.Evidence.Take(2)))}", Html.Tick],
        ]);

    private static IReadOnlyList<string> Gravest(RideDiagnosis diagnosis) =>
        [.. Core.Cautions.Caution.InOrder(diagnosis.Cautions).Select(caution => caution.Code).Distinct().Take(2)];

    internal static string Name(FindingKind kind) => kind switch
    {
        FindingKind.LowCapacity => "low capacity",
        FindingKind.Imbalance => "out of balance",
        FindingKind.HighResistance => "high resistance",
        FindingKind.Connection => "joint or link",
        FindingKind.SelfDischarge => "loses charge",
        FindingKind.Sensor => "sense lead",
        _ => "cannot tell",
    };

    /// <summary>One thing to settle: a finding of a group, or of the wire between two groups that read wrong by opposite amounts.</summary>
    private sealed record Found(int First, int Last, FindingDetail Finding)
    {
        internal string Where => First == Last
            ? string.Create(CultureInfo.InvariantCulture, $"group {First}")
            : string.Create(CultureInfo.InvariantCulture, $"wire between groups {First} and {Last}");

        internal static IEnumerable<Found> All(RideDiagnosis diagnosis)
        {
            Found[] single =
            [
                .. diagnosis.Groups.SelectMany(group => group.Findings.Select(finding => new Found(group.Group, group.Group, finding)))
                    .Where(found => found.Finding.Kind != FindingKind.CannotTell).OrderBy(found => found.Finding.Sure).ThenBy(found => found.First),
            ];
            HashSet<int> wires = [.. single.Where(found => found.Finding.Kind == FindingKind.Sensor).Select(found => found.First)];
            HashSet<int> told = [];
            foreach (Found found in single)
            {
                bool wire = found.Finding.Kind == FindingKind.Sensor;
                if (wire && !told.Add(found.First))
                    continue;
                yield return wire && wires.Contains(found.First + 1) && told.Add(found.First + 1) ? found with { Last = found.First + 1 } : found;
            }
        }
    }
}
