using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens;

/// <summary>Something laid over a step until Esc: a list, a field, a question.</summary>
internal interface IOverlay
{
    /// <summary>Rows that it wants of <paramref name="most"/>; the step shows above it in the rest.</summary>
    public int Rows(int most);

    /// <summary>Words for the first hint line while it is open.</summary>
    public string Hint { get; }

    /// <summary>Draws itself.</summary>
    public void Paint(Area area);

    /// <summary>Takes a key; Esc never arrives, it closes.</summary>
    /// <returns>False when the key has no use in it.</returns>
    public bool Press(string key);

    /// <summary>Takes pasted text.</summary>
    public void Paste(string text);

    /// <summary>Whether it only tells and asks nothing, so that keys of every screen work and close it.</summary>
    public bool OnlyTells => false;
}
