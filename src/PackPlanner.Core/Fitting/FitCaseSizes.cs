using static System.FormattableString;

namespace PackPlanner.Core.Fitting;

/// <summary>Refuses a case whose sizes are those of no vehicle, before a search begins that would not end.</summary>
/// <remarks>A size in micrometres, or one that slipped by some noughts, is met far more often than a cavity of a hundred metres.</remarks>
internal static class FitCaseSizes
{
    private const double FarthestMm = 100_000;

    // The search is made for some thousand places; ten times that still ends within minutes.
    private const double MostCells = 30_000;

    internal static void Check(FitCase fitCase, List<Problem> problems)
    {
        foreach (NamedSolid solid in fitCase.Cavity.Concat(fitCase.KeepOuts))
        {
            double farthest = Coordinates(solid.Shape).Max(Math.Abs);
            if (farthest > FarthestMm)
                problems.Add(new(solid.Name, Invariant($"a coordinate is {farthest:0.###E+0} mm, more than a hundred metres away"), "Give all sizes in mm and check for noughts too many."));
        }

        if (problems.Count > 0)
            return;
        double cavity = fitCase.Cavity.Sum(part => Volume(part.Shape));
        double cell = Volume(fitCase.Cell);
        if (cavity / cell > MostCells)
            problems.Add(new("cavity", Invariant($"its parts could hold {cavity / cell:0.###E+0} cells by volume, and no more than {MostCells:0} are searched"), "Check that cavity and cell are both in mm, or divide the cavity."));
    }

    private static IEnumerable<double> Coordinates(Solid solid) => solid switch
    {
        Solid.Box b => [b.From.X, b.From.Y, b.From.Z, b.To.X, b.To.Y, b.To.Z],
        Solid.Prism p => p.Outline.SelectMany(corner => new[] { corner.U, corner.V }).Append(p.FromMm).Append(p.ToMm),
        Solid.Tube t => [t.From.X, t.From.Y, t.From.Z, t.To.X, t.To.Y, t.To.Z, t.DiameterMm],
        _ => [0],
    };

    private static double Volume(Solid solid) => solid switch
    {
        Solid.Box b => Axes3.All.Aggregate(1.0, (volume, axis) => volume * (b.To[axis] - b.From[axis])),
        Solid.Prism p => Math.Abs(Geometry2.TwiceArea([.. p.Outline.Select(c => c.U)], [.. p.Outline.Select(c => c.V)])) / 2 * (p.ToMm - p.FromMm),
        _ => 0,
    };

    private static double Volume(CellBody cell) => cell switch
    {
        CellBody.Cylinder c => c.DiameterMm * c.DiameterMm * c.LengthMm,
        CellBody.Box b => b.LengthMm * b.ThicknessMm * b.HeightMm,
        _ => double.NaN,
    };
}
