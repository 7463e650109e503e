using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Plots;

/// <summary>Which part of a curve is shown, and whether the plot has the keys.</summary>
internal sealed class PlotWindow
{
    internal double From { get; private set; }

    internal double To { get; private set; } = 1;

    internal bool HasFocus { get; set; }

    /// <summary>Whether all of it is shown.</summary>
    internal bool IsWhole => From <= 0 && To >= 1;

    /// <summary>What part is shown, in words; blank for all of it.</summary>
    internal string Words => IsWhole ? "" : $", {new Look().Figure(From * 100, 0)} to {new Look().Figure(To * 100, 0)} % of the time";

    internal bool Move(string key)
    {
        double step = (To - From) / 4;
        switch (key)
        {
            case "Left": Shift(-step); return true;
            case "Right": Shift(step); return true;
            case "Home": Shift(-1); return true;
            case "End": Shift(1); return true;
            default: return false;
        }
    }

    /// <summary>Shows more or less around the middle.</summary>
    internal void Zoom(double factor)
    {
        double half = Math.Clamp((To - From) * factor, 0.005, 1) / 2;
        double middle = Math.Clamp((From + To) / 2, half, 1 - half);
        (From, To) = (middle - half, middle + half);
    }

    private void Shift(double by)
    {
        double width = To - From;
        From = Math.Clamp(From + by, 0, 1 - width);
        To = From + width;
    }
}
