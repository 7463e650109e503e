using System.Globalization;
using System.Text;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.Sheets;

/// <summary>Walls and what must stay free, hatched on a drawing of places, so that the sheet can be laid into the real cavity the right way round.</summary>
internal static class PlaceWalls
{
    // On paper: how far apart the lines of the hatching are, and how finely each is looked along.
    private const double LineMm = 1.6, StepMm = 0.8;

    /// <summary>Lines across all that is not free between the lowest and the highest point of the cells drawn.</summary>
    /// <param name="fitCase">The cavity.</param>
    /// <param name="cells">The cells of this drawing.</param>
    /// <param name="part">Which stretch of the pack.</param>
    /// <param name="below">Seen from below, mirrored left to right.</param>
    /// <returns>A path in millimetres of paper from the corner of the frame; empty when all of it is free.</returns>
    internal static string Path(FitCase fitCase, IReadOnlyList<PlacedLabel> cells, PlacePart part, bool below)
    {
        if (cells.Count == 0)
            return "";
        SightLines sight = new(fitCase);
        double low = cells.Min(cell => cell.Place.Centre.Z - (cell.Place.SizeMm.Z / 2)), high = cells.Max(cell => cell.Place.Centre.Z + (cell.Place.SizeMm.Z / 2));
        (double x0, double y0, double x1, double y1) = part.Frame;
        double wide = (x1 - x0) * part.PaperPerMm, deep = (y1 - y0) * part.PaperPerMm;
        int lines = (int)(deep / LineMm), steps = (int)Math.Ceiling(wide / StepMm);
        StringBuilder path = new();
        for (int line = 0; line < lines; line++)
        {
            double down = (line + 0.5) * deep / lines;
            double y = y1 - (down / part.PaperPerMm);
            int from = -1;
            for (int step = 0; step <= steps; step++)
            {
                double across = (step + 0.5) * wide / steps;
                double x = below ? x1 - (across / part.PaperPerMm) : x0 + (across / part.PaperPerMm);
                bool free = step == steps || (sight.At(Axis.Z, x, y, low, high) is var met && met.Inside && !met.Blocked);
                if (free && from >= 0)
                    path.Append(CultureInfo.InvariantCulture, $"M{from * wide / steps:0.#} {down:0.#}H{step * wide / steps:0.#}");
                from = free ? -1 : from < 0 ? step : from;
            }
        }

        return path.ToString();
    }
}
