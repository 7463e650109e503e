namespace PackPlanner.Screens.Tables;

/// <summary>Which rows of a table are marked; by name, so that a mark stays with its row when the order changes.</summary>
internal sealed class RowMarks
{
    private readonly HashSet<string> names = [];

    internal int Count => names.Count;

    internal IEnumerable<string> InOrder => names.Order(StringComparer.Ordinal);

    internal bool Has(string name) => names.Contains(name);

    /// <summary>Marks what was not marked, and the other way round.</summary>
    internal void Turn(string name)
    {
        if (!names.Remove(name))
            names.Add(name);
    }

    /// <summary>Marks all of these; takes the marks away where all have one.</summary>
    internal void TurnAll(IReadOnlyCollection<string> shown)
    {
        if (shown.All(names.Contains))
            names.ExceptWith(shown);
        else
            names.UnionWith(shown);
    }

    /// <summary>Forgets the marks of rows that are gone.</summary>
    internal void KeepOnly(IEnumerable<string> present) => names.IntersectWith(present);
}
