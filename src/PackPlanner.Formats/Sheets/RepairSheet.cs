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
        (int Group, FindingDetail Finding)[] findings =
        [
            .. diagnosis.Groups.SelectMany(group => group.Findings.Select(finding => (group.Group, finding)))
                .Where(pair => pair.finding.Kind != FindingKind.CannotTell).OrderBy(pair => pair.finding.Sure).ThenBy(pair => pair.Group),
        ];
        if (findings.Length == 0)
            return [SheetPage.Of("Repair", "", "<p>The log shows nothing to mend.</p>\n", Gravest(diagnosis))];
        return
        [
            .. SheetPage.Evenly(findings, FindingsOnAPage).Select(some => new SheetPage(
                "Repair: what to settle before anything is changed",
                "<p>Groups are counted from pack minus. Before opening anything measure the volts from pack minus to the plus of the group: they tell that you have the right one.</p>\n",
                [.. some.Select(pair => new SheetBlock(Block(input, pair.Group, pair.Finding)))],
                Gravest(diagnosis))),
            .. SheetPictures.Page(input, "What the log shows", [], "volts", "drop"),
            .. SheetPictures.Page(input, "What a repair would give back", [], "losses", "remedies"),
        ];
    }

    private static string Block(SheetInput input, int group, FindingDetail finding) => Html.Table(
        [string.Create(CultureInfo.InvariantCulture, $"group {group} of {input.Diagnosis!.Groups.Count}: {Name(finding.Kind)}, sure: {finding.Sure.ToString().ToLowerInvariant()}"), "reading"],
        [
            [$"<b>confirm the place:</b> pack minus to its plus, about {Html.Figure(input.LastRestV(group), 1)} V at rest", Html.Box],
            [$"<b>settle it by:</b> {Html.Text(finding.SettleBy)}", Html.Box],
            [$"<b>seen:</b> {Html.Text(string.Join("; ", finding.Evidence.Take(2)))}", Html.Tick],
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
}
