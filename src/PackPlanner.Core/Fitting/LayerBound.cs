namespace PackPlanner.Core.Fitting;

/// <summary>How many round cells of one direction a part can hold in all its layers: never fewer than the truth.</summary>
/// <remarks>
/// Where bare bodies may begin is cut into stretches no longer than a pitch. Cells that begin in one stretch stand beside one another, so
/// one layer's bound holds for them; keep-outs count that none of them can pass above or below.
/// </remarks>
internal static class LayerBound
{
    /// <summary>The sum over the stretches; one of them is shorter than a pitch, and whichever choice of it gives least counts.</summary>
    /// <param name="scene">The case.</param>
    /// <param name="axis">The axis of the cells.</param>
    /// <param name="cell">The cell.</param>
    /// <param name="low">Where the part begins along the axis, millimetres.</param>
    /// <param name="high">Where it ends.</param>
    /// <param name="oneLayer">The bound of one layer under keep-outs.</param>
    internal static int Of(Scene scene, Axis axis, CellBody.Cylinder cell, double low, double high, Func<IReadOnlyList<Blocked2>, int> oneLayer)
    {
        Clearances c = scene.Case.Clearances;
        double pitch = cell.LengthMm + c.LayerGapMm, first = low + c.EndMm, last = high - c.EndMm - cell.LengthMm;
        int layers = Math.Max(0, (int)Math.Floor(((high - low - (2 * c.EndMm) + c.LayerGapMm) / pitch) + 1e-9));
        if (layers == 0 || scene.Case.KeepOuts.Count == 0)
            return layers == 0 ? 0 : layers * oneLayer([]);
        Dictionary<string, int> known = [];
        int least = int.MaxValue;
        // Of very many layers the outermost choices are enough.
        for (int shortest = 0; shortest < layers; shortest += Math.Max(1, (layers - 1) / 8))
            least = Math.Min(least, Enumerable.Range(0, layers).Sum(layer => Layer(shortest, layer)));
        return least;

        int Layer(int shortest, int layer)
        {
            double from = layer <= shortest ? first + (layer * pitch) : last - ((layers - layer) * pitch);
            double to = layer < shortest ? first + ((layer + 1) * pitch) : last - ((layers - 1 - layer) * pitch);
            IReadOnlyList<Blocked2> blocked = Blocked2.Of(scene, axis, to - c.EndMm, from + cell.LengthMm + c.EndMm);
            string key = string.Join('|', blocked.Select(b => string.Join(',', b.U.Concat(b.V))));
            return known.TryGetValue(key, out int told) ? told : known[key] = oneLayer(blocked);
        }
    }
}
