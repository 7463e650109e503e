using PackPlanner.Screens.Keys;

namespace PackPlanner.Screens;

/// <summary>Finds what a key does here: the step's own meaning, then the cursor, then the keys of every screen.</summary>
internal static class KeyPress
{
    internal static void Take(Desk desk, string key)
    {
        if (key is [>= '1' and <= '8'])
        {
            desk.GoTo(key[0] - '1');
            return;
        }

        string named = key == " " ? "Space" : key;
        KeyAction? action = desk.Step.Keys.Concat(desk.GeneralKeys).FirstOrDefault(known => known.Entry.Key == named);
        if (action is not null)
            desk.Press(action);
        else if (!desk.Step.Move(key))
            desk.Says = NoUse(named, desk.IsWorking);
    }

    /// <summary>A key that what is laid over has no use for: keys of every screen work over what only tells, and close it; what asks is answered or left first.</summary>
    internal static void Beside(Desk desk, string key)
    {
        bool isGeneral = key is [>= '1' and <= '8'] || desk.GeneralKeys.Any(known => known.Entry.Key == key);
        if (desk.Overlay is { OnlyTells: true } && isGeneral)
        {
            desk.CloseAll();
            Take(desk, key);
        }
        else
        {
            desk.Says = $"{(key == " " ? "Space" : key)} has no use here; Esc goes back.";
        }
    }

    private static string NoUse(string key, bool busy)
    {
        KeyEntry? entry = KeyBook.All.FirstOrDefault(known => known.Key == key);
        return entry is null
            ? $"{key} has no use here; ? shows the keys that have."
            : busy ? $"{key} ({entry.Meaning}) has no use here while work runs; ? shows the keys that have."
            : $"{key} ({entry.Meaning}) has no use here; ? shows the keys that have.";
    }
}
