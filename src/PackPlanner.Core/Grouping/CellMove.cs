namespace PackPlanner.Core.Grouping;

/// <summary>One cell that goes somewhere else than in the existing grouping.</summary>
/// <param name="Cell">Its label.</param>
/// <param name="FromGroup">Number from 1; null when it comes from the spares.</param>
/// <param name="ToGroup">Number from 1; null when it is taken out.</param>
public sealed record CellMove(string Cell, int? FromGroup, int? ToGroup)
{
    /// <summary>How many come in, go out and change groups, in words.</summary>
    /// <param name="moves">Group before and after of each cell; null for none.</param>
    /// <returns>Such as "1 in, 1 out"; empty where nothing moves.</returns>
    public static string Told(IEnumerable<(int? From, int? To)> moves)
    {
        (int? From, int? To)[] all = [.. moves];
        (int Count, string Does)[] parts =
        [
            (all.Count(move => move.From is null), "in"),
            (all.Count(move => move.To is null), "out"),
            (all.Count(move => move.From is not null && move.To is not null), "to another group"),
        ];
        return string.Join(", ", parts.Where(part => part.Count > 0).Select(part => $"{part.Count} {part.Does}"));
    }
}
