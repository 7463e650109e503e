namespace PackPlanner.Verbs;

/// <summary>All verbs, in the order in which help shows them.</summary>
internal static class VerbList
{
    internal static IReadOnlyList<Verb> All { get; } =
    [
        CapacityVerb.Definition,
        CellsVerb.Definition,
        MatchVerb.Definition,
        EnergyVerb.Definition,
        JoinVerb.Definition,
        BalanceVerb.Definition,
        DiagnoseVerb.Definition,
        CompareVerb.Definition,
        ShareVerb.Definition,
        SheetVerb.Definition,
        PictureVerb.Definition,
        FitVerb.Definition,
        DemoVerb.Definition,
        LookVerb.Definition,
        ExplainVerb.Definition,
        CompletionVerb.Definition,
        HelpVerb.Definition,
        JobVerb.Definition,
        SizeVerb.Definition,
    ];
}
