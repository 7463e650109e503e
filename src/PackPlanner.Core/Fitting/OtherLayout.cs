namespace PackPlanner.Core.Fitting;

/// <summary>A layout that was passed over: places and group size pull two ways, and the user should see both.</summary>
/// <param name="Count">Its places.</param>
/// <param name="Parallel">Cells in each of its groups; null when its groups cannot be linked.</param>
/// <param name="IsFuller">True: it has more places but smaller groups than the one shown; false: fewer places but larger groups.</param>
public sealed record OtherLayout(int Count, int? Parallel, bool IsFuller);
