namespace PackPlanner.Core.Fitting;

/// <summary>A cell in its place.</summary>
/// <param name="Centre">Centre of the bare body.</param>
/// <param name="Attitude">How it stands.</param>
internal readonly record struct Body(PointMm Centre, Attitude Attitude)
{
    internal Box3 Box => Attitude.Body(Centre);
}
