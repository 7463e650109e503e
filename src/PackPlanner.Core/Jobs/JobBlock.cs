using PackPlanner.Core.Fitting;

namespace PackPlanner.Core.Jobs;

/// <summary>Where the cells of a job without a cavity stand: a plain block of rows and columns, so that a sorter gets places too.</summary>
public static class JobBlock
{
    // Cells that stand at the stated gap are neighbours; a millimetre more is still a link.
    private const double LinkReachMm = 1;

    // Beyond this S and P were mistyped; a place for each would take the memory of the machine.
    private const int MostCells = 100_000;

    /// <summary>Whether a block can be placed: series, parallel and the size of a cell are known, and no more than 100,000 cells are meant.</summary>
    /// <param name="givens">What the job was told.</param>
    /// <returns>True when <see cref="Of"/> has an answer.</returns>
    public static bool IsKnown(JobGivens givens)
    {
        ArgumentNullException.ThrowIfNull(givens);
        return givens is { Series: { } series, Parallel: { } parallel } && (long)series * parallel <= MostCells && Body(givens) is not null;
    }

    /// <summary>Places the job's groups side by side.</summary>
    /// <param name="givens">What the job was told.</param>
    /// <returns>The block as a case with its places; null while series, parallel or the size of a cell is unknown.</returns>
    public static (FitCase Case, FitAnswer Answer)? Of(JobGivens givens)
    {
        ArgumentNullException.ThrowIfNull(givens);
        if (!IsKnown(givens) || givens is not { Series: { } series, Parallel: { } parallel } || Body(givens) is not { } body)
            return null;
        double gap = givens.NumberOf("cellGapMm") ?? 0;
        FitCase model = new(
            [], [], givens.WordOf("cellModel") ?? "cell", body, givens.NumberOf("cellMassKg") * 1000, new Clearances(CellGapMm: gap, SpacerMm: gap),
            LinkReachMm: LinkReachMm, NominalV: givens.NominalV, FullV: givens.FullV);
        return PlainBlock.Place(series, parallel, model, (int?)givens.NumberOf("blockColumns"));
    }

    // Thickness or height make a cell flat; without them diameter and length make it round.
    private static CellBody? Body(JobGivens givens)
    {
        double? Size(string key) => givens.NumberOf(key) is { } mm && mm > 0 ? mm : null;
        if (Size("cellLengthMm") is not { } length)
            return null;
        if (Size("cellThicknessMm") is { } thickness && Size("cellHeightMm") is { } height)
            return new CellBody.Box(length, thickness, height, [BoxPose.Upright]);
        return Size("cellDiameterMm") is { } diameter ? new CellBody.Cylinder(diameter, length, [Axis.Z]) : null;
    }
}
