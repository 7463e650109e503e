namespace PackPlanner.Core.Grouping;

/// <summary>What comes first.</summary>
public enum GroupingPreference
{
    /// <summary>The largest smallest group, then the least spread, then like resistances of groups.</summary>
    EqualAh,

    /// <summary>Like resistances within each group, so that the cells share the first current evenly; then capacity.</summary>
    EvenCurrents,
}
