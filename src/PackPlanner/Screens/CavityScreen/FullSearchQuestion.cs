using System.Text.Json.Nodes;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>
/// What the full search of a space depends on, and nothing else of the job: a search of seconds does not begin anew for what cannot alter
/// it. Weighed parts count into the weight of the pack, not into what its cells may weigh, and where they stand is said by keep-outs;
/// what one cell weighs and what all may weigh do limit how many are used.
/// </summary>
internal sealed record FullSearchQuestion(string Space, int? Series, int? Parallel, double? CellMassLimitKg, double? CellMassKg)
{
    private static readonly string[] Weighed = ["parts", "title", "id"];

    /// <summary>The job's question of its places, which it is asked by; asked of another job it is the same question where all else is the same.</summary>
    internal required FitQuestion Asked { get; init; }

    internal static FullSearchQuestion? Of(Job? job)
    {
        if (FitQuestion.Of(job) is not { Document: not null } question || TypedCase.Of(job!) is not { } space)
            return null;
        foreach (string field in Weighed)
            space.Remove(field);
        return Of(question, space);
    }

    public bool Equals(FullSearchQuestion? other) => other is not null
        && (Space, Series, Parallel, CellMassLimitKg, CellMassKg) == (other.Space, other.Series, other.Parallel, other.CellMassLimitKg, other.CellMassKg);

    public override int GetHashCode() => HashCode.Combine(Space, Series, Parallel);

    private static FullSearchQuestion Of(FitQuestion question, JsonObject space) => new(
        space.ToJsonString(), question.Givens.Series, question.Givens.Parallel, question.Givens.NumberOf("cellMassLimitKg"), question.Givens.NumberOf("cellMassKg"))
    {
        Asked = question,
    };
}
