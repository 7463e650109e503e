namespace PackPlanner.Screens.CavityScreen;

/// <summary>Which part of a floor is drawn: the whole of it, or nearer and moved aside.</summary>
/// <param name="Zoom">0 shows all; each step halves what is seen.</param>
/// <param name="AcrossMm">How far the middle of the view is moved to the right, millimetres.</param>
/// <param name="BackMm">How far it is moved to the back.</param>
internal readonly record struct FloorView(int Zoom, double AcrossMm, double BackMm)
{
    internal const int Nearest = 5;

    internal FloorView Nearer => this with { Zoom = Math.Min(Nearest, Zoom + 1) };

    // Far enough back to see all, nothing is moved aside any more.
    internal FloorView Farther => Zoom <= 1 ? default : this with { Zoom = Zoom - 1 };

    /// <summary>Moves the view by a share of what it shows, but not off the floor.</summary>
    internal FloorView Moved(double across, double back, double widthMm, double depthMm)
    {
        double part = Math.Pow(2, -Zoom);
        return this with
        {
            AcrossMm = Math.Clamp(AcrossMm + (across * widthMm * part), -widthMm / 2 * (1 - part), widthMm / 2 * (1 - part)),
            BackMm = Math.Clamp(BackMm + (back * depthMm * part), -depthMm / 2 * (1 - part), depthMm / 2 * (1 - part)),
        };
    }
}
