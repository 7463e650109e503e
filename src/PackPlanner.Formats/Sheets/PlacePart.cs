using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.Sheets;

/// <summary>A part of the pack as drawn on paper: which stretch of it, and how large.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Count">How many parts there are.</param>
/// <param name="Frame">Left, front, right and back edge, mm of the pack.</param>
/// <param name="PaperPerMm">Millimetres on paper for one of the pack.</param>
internal sealed record PlacePart(int Number, int Count, (double X0, double Y0, double X1, double Y1) Frame, double PaperPerMm)
{
    /// <summary>Height of numbers on paper: 14 points in mm.</summary>
    internal const double TypeMm = 14 * 25.4 / 72;

    /// <summary>Room round the frame for the edge's figures and the arrow, mm on paper.</summary>
    internal const double EdgeMm = 13;

    private const double PageWidthMm = 185;
    private const double AloneMm = 150;
    private const double OfTwoMm = 82;

    // Of bold letters as most type faces have them, in their height: the sign, a figure, and how tall a figure stands.
    private const double SignEm = 0.59, FigureEm = 0.57, TallEm = 0.74;
    private const double RingMm = 0.8;

    /// <summary>How long a cell's number is in the type face reckoned with, mm on paper.</summary>
    /// <param name="signs">Signs in it.</param>
    /// <param name="figures">Figures in it.</param>
    internal static double LengthMm(int signs, int figures) => ((signs * SignEm) + (figures * FigureEm)) * TypeMm;

    internal double WidthMm => ((Frame.X1 - Frame.X0) * PaperPerMm) + (2 * EdgeMm);

    internal double HeightMm => ((Frame.Y1 - Frame.Y0) * PaperPerMm) + (2 * EdgeMm);

    internal bool Holds(PlacedLabel place) =>
        place.Place.Centre.X >= Frame.X0 && place.Place.Centre.X < Frame.X1 && place.Place.Centre.Y >= Frame.Y0 && place.Place.Centre.Y < Frame.Y1;

    /// <summary>The pack in as few parts as let every cell hold its number in type of 14 points.</summary>
    /// <param name="places">All places, of all layers.</param>
    /// <returns>The parts from left to right and front to back, and how many go on a page.</returns>
    internal static (IReadOnlyList<PlacePart> Parts, int OnAPage) Of(IReadOnlyList<PlacedLabel> places)
    {
        double least = LeastScale(places);
        IReadOnlyList<PlacePart> alone = Fewest(places, least, AloneMm);
        IReadOnlyList<PlacePart> two = Fewest(places, least, OfTwoMm);
        return alone.Count > 1 && (two.Count + 1) / 2 < alone.Count ? (two, 2) : (alone, 1);
    }

    /// <summary>The whole pack at once, as large as its numbers need, for a file that is looked at on a screen.</summary>
    internal static PlacePart Whole(IReadOnlyList<PlacedLabel> places)
    {
        (double x0, double y0, double x1, double y1) = Around(places);
        double fitting = Math.Min((PageWidthMm - (2 * EdgeMm)) / (x1 - x0), (AloneMm - (2 * EdgeMm)) / (y1 - y0));
        return new PlacePart(1, 1, (x0, y0, x1, y1), Math.Max(fitting, LeastScale(places)));
    }

    private static IReadOnlyList<PlacePart> Fewest(IReadOnlyList<PlacedLabel> places, double least, double heightMm)
    {
        (double x0, double y0, double x1, double y1) = Around(places);
        double wide = (PageWidthMm - (2 * EdgeMm)) / least, deep = (heightMm - (2 * EdgeMm)) / least;
        // A frame reaches past its cells, so that a part may come out too long by less than a cell: then one part more.
        for (int more = 0; ; more++)
        {
            int across = (int)Math.Ceiling((x1 - x0) / wide) + (more + 1) / 2;
            int along = (int)Math.Ceiling((y1 - y0) / deep) + more / 2;
            List<(double X0, double Y0, double X1, double Y1)> frames = [];
            for (int row = 0; row < along; row++)
            {
                for (int column = 0; column < across; column++)
                {
                    PlacedLabel[] some =
                    [
                        .. places.Where(place => Part(place.Place.Centre.X, x0, x1, across) == column && Part(place.Place.Centre.Y, y0, y1, along) == row),
                    ];
                    if (some.Length > 0)
                        frames.Add(Around(some));
                }
            }

            double scale = frames.Min(frame => Math.Min((PageWidthMm - (2 * EdgeMm)) / (frame.X1 - frame.X0), (heightMm - (2 * EdgeMm)) / (frame.Y1 - frame.Y0)));
            if (scale >= least || frames.Count >= places.Count)
                return [.. frames.Select((frame, i) => new PlacePart(i + 1, frames.Count, frame, scale))];
        }
    }

    private static int Part(double at, double from, double to, int parts) => Math.Clamp((int)((at - from) / (to - from) * parts), 0, parts - 1);

    private static (double X0, double Y0, double X1, double Y1) Around(IReadOnlyList<PlacedLabel> places) => (
        places.Min(place => place.Place.Centre.X - (place.Place.SizeMm.X / 2)) - 2,
        places.Min(place => place.Place.Centre.Y - (place.Place.SizeMm.Y / 2)) - 2,
        places.Max(place => place.Place.Centre.X + (place.Place.SizeMm.X / 2)) + 2,
        places.Max(place => place.Place.Centre.Y + (place.Place.SizeMm.Y / 2)) + 2);

    // A circle must hold the corners of the number inside the ring of a plus end; a box its length along the longer side.
    private static double LeastScale(IReadOnlyList<PlacedLabel> places)
    {
        int figures = places.Max(place => place.Position ?? 1) switch { < 10 => 1, < 100 => 2, _ => 3 };
        double length = (SignEm + (figures * FigureEm)) * TypeMm, tall = TallEm * TypeMm;
        return places.Where(place => place.Position is not null).Select(place => place.Place.RoundAlong == Core.Fitting.Axis.Z
            ? 2 * (Math.Sqrt(((length * length) + (tall * tall)) / 4) + RingMm) / place.Place.SizeMm.X
            : Math.Max((length + (place.PlusToward is null ? 1 : (2.2 * TypeMm) + 1)) / Math.Max(place.Place.SizeMm.X, place.Place.SizeMm.Y), (tall + 1) / Math.Min(place.Place.SizeMm.X, place.Place.SizeMm.Y)))
            .DefaultIfEmpty(0.2).Max();
    }
}
