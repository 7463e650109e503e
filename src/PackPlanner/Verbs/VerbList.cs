namespace PackPlanner.Verbs;

/// <summary>All verbs, in the order in which help shows them.</summary>
internal static class VerbList
{
    internal static IReadOnlyList<Verb> All { get; } =
    [
        LookVerb.Definition,
        CapacityVerb.Definition,
        CellsVerb.Definition,
        MatchVerb.Definition,
        JoinVerb.Definition,
        ShareVerb.Definition,
        BalanceVerb.Definition,
        EnergyVerb.Definition,
        ConductorVerb.Definition,
        DiagnoseVerb.Definition,
        CompareVerb.Definition,
        SizeVerb.Definition,
        FitVerb.Definition,
        JobVerb.Definition,
        SheetVerb.Definition,
        PictureVerb.Definition,
        DemoVerb.Definition,
        ExplainVerb.Definition,
        CompletionVerb.Definition,
        HelpVerb.Definition,
    ];
}
