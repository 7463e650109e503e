using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Overlays;

/// <summary>One value to be typed. What is wrong with it is said as it is typed; Enter takes it, Esc leaves things as they were.</summary>
/// <param name="desk">Where it lies.</param>
/// <param name="what">What is asked for.</param>
/// <param name="tells">One line of help: what it is for, an example.</param>
/// <param name="initial">What stands there at first.</param>
/// <param name="check">What is wrong with the text; null when nothing is.</param>
/// <param name="accept">Takes the text.</param>
internal sealed class FieldOverlay(
    Desk desk, string what, string tells, string initial, Func<string, string?> check, Action<string> accept) : IOverlay
{
    private readonly TypedLine line = new(initial);
    private bool tried;
    private bool asksOn;

    public string Hint => "Enter take it";

    /// <summary>What is in the field.</summary>
    internal string Text => line.Text;

    public int Rows(int most) => Math.Min(4, most);

    public void Paint(Area area)
    {
        area.Rule(0);
        int x = area.Write(1, 1, what, Ink.Bold) + 2;
        line.Paint(area, x, 1, Math.Max(8, Math.Min(60, area.Width - x - 1)));
        string? wrong = tried || line.Text.Length > 0 ? check(line.Text) : null;
        // Two rows are all there is: what goes beyond them is cut with a mark.
        IReadOnlyList<string> said = TextWidth.Wrap(area.Look.Of(wrong ?? tells), area.Width - 2, 2);
        for (int i = 0; i < said.Count && 2 + i < area.Height; i++)
            area.Write(1, 2 + i, said[i], wrong is null ? Ink.Plain : Ink.Bold);
    }

    public bool Press(string key)
    {
        asksOn = false;
        if (key != "Enter")
        {
            bool used = line.Press(key);
            // What is typed may be drawn above the field, which is painted before it.
            check(line.Text);
            return used;
        }

        tried = true;
        if (check(line.Text) is { } wrong)
        {
            desk.Says = wrong;
            return true;
        }

        accept(line.Text);
        // Where the next field lies on this one, Esc there comes back here: nothing that was typed is lost.
        if (desk.Overlay is FieldOverlay && desk.Overlay != this)
        {
            asksOn = true;
            return true;
        }

        desk.TakeAway(overlay => overlay == this || overlay is FieldOverlay { asksOn: true });
        return true;
    }

    public void Paste(string text) => line.Insert(text);
}
