namespace PackPlanner.Core.Fitting;

/// <summary>A look over a layout after bodies were moved: every one inside, out of keep-outs, and apart from every other.</summary>
internal static class LayoutCheck
{
    /// <summary>Indexes of cells that break a rule; empty when all hold to within rounding.</summary>
    internal static List<int> Broken(Scene scene, IReadOnlyList<Body> bodies)
    {
        List<int> broken = [];
        if (bodies.Count == 0)
            return broken;
        BodyGrid grid = new(bodies, BodyGrid.Reach([.. bodies.Select(b => b.Attitude).Distinct()], 0));
        for (int i = 0; i < bodies.Count; i++)
        {
            Body body = bodies[i];
            bool apart = grid.Near(body.Centre)
                .All(j => j == i || PairRules.Apart(body, bodies[j], scene.Case.Clearances, Geometry2.RoundingMm));
            if (!apart || !IsClear(scene, body))
                broken.Add(i);
        }

        return broken;
    }

    internal static bool IsClear(Scene scene, in Body body)
    {
        Box3 skin = body.Attitude.Skin(body.Centre);
        if (body.Attitude.RoundAlong is not Axis axis)
            return scene.BoxIsClear(skin);
        (Axis first, Axis second) = Axes3.Others(axis);
        return scene.CylinderIsClear(
            axis, skin.Low(axis), skin.High(axis), body.Centre[first], body.Centre[second], skin.Size(first) / 2);
    }
}
