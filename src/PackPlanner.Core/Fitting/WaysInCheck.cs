namespace PackPlanner.Core.Fitting;

/// <summary>Whether the pack, or its cells one by one, pass through the openings, and in which order.</summary>
internal static class WaysInCheck
{
    internal static IReadOnlyList<WayIn> Of(Scene scene, IReadOnlyList<Body> bodies)
    {
        return bodies.Count == 0 ? [] : [.. (scene.Case.Openings ?? []).Select(o => Through(scene, bodies, o))];
    }

    private static WayIn Through(Scene scene, IReadOnlyList<Body> bodies, Opening opening)
    {
        (Axis first, Axis second) = Axes3.Others(opening.Across);
        double wide = Math.Abs(opening.To.U - opening.From.U), high = Math.Abs(opening.To.V - opening.From.V);
        double packWide = Span(bodies, first), packHigh = Span(bodies, second);
        // A block keeps its way up; turning it a quarter about the way in is still possible.
        double asIs = Math.Max(packWide - wide, packHigh - high), turned = Math.Max(packWide - high, packHigh - wide);
        double lacking = Math.Min(asIs, turned);
        double[] cell = [.. Axes3.All.Select(bodies[0].Attitude.Size).Order()];
        bool cellPasses = cell[0] <= Math.Min(wide, high) && cell[1] <= Math.Max(wide, high);
        bool positive = opening.Positive ?? true;
        IReadOnlyList<int> order = cellPasses ? InOrder(bodies, opening.Across, positive) : [];
        double room = Room(scene, bodies, opening.Across, positive);
        string text = FormattableString.Invariant(
            $"{opening.Name}: {wide:0.#} x {high:0.#} mm; the block of {bodies.Count} cells is {packWide:0.#} x {packHigh:0.#} mm: ")
            + (lacking <= 0 ? "it passes whole"
                : FormattableString.Invariant($"{lacking:0.#} mm too large; ") + (cellPasses ? "put the cells in one by one, the furthest first, and link them inside" : "a single cell does not pass either"));
        return new WayIn(opening.Name, lacking <= 0, cellPasses, lacking <= 0 ? null : lacking, order, room, text);
    }

    private static double Span(IReadOnlyList<Body> bodies, Axis axis) => bodies.Max(b => b.Box.High(axis)) - bodies.Min(b => b.Box.Low(axis));

    /// <summary>Furthest from the opening first; the numbers are those of the answer, which sorts the same way as it numbers.</summary>
    private static int[] InOrder(IReadOnlyList<Body> bodies, Axis across, bool positive) =>
        [.. Enumerable.Range(0, bodies.Count).OrderBy(i => positive ? bodies[i].Centre[across] : -bodies[i].Centre[across]).ThenBy(i => i).Select(i => i + 1)];

    // The least over the cells, each against the wall above it: the highest part of the cavity that holds its place.
    private static double Room(Scene scene, IReadOnlyList<Body> bodies, Axis across, bool positive) => bodies.Min(body => RoomOf(scene, body, across, positive));

    private static double RoomOf(Scene scene, Body body, Axis across, bool positive)
    {
        (Axis first, Axis second) = Axes3.Others(across);
        (double Low, double High)[] above =
        [
            .. scene.Parts.Where(part => Holds(part.Extent(first), body.Centre[first]) && Holds(part.Extent(second), body.Centre[second])).Select(part => part.Extent(across)),
        ];
        return above.Length == 0 ? 0
            : positive ? above.Max(extent => extent.High) - body.Box.High(across)
            : body.Box.Low(across) - above.Min(extent => extent.Low);
    }

    private static bool Holds((double Low, double High) extent, double at) => at >= extent.Low && at <= extent.High;
}
