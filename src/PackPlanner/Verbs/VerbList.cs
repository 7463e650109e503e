namespace PackPlanner.Verbs;

/// <summary>All verbs, in the order in which help shows them.</summary>
internal static class VerbList
{
    internal static IReadOnlyList<Verb> All { get; } =
    [
        ExplainVerb.Definition,
        HelpVerb.Definition,
        SizeVerb.Definition,
    ];
}
