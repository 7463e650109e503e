using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace PackPlanner.Screens.Window;

/// <summary>Keys of the terminal by the names that the screens know.</summary>
internal static class KeyNames
{
    // Leaving, and those that lines of text have in a shell.
    private static readonly char[] WithControl = ['C', 'A', 'B', 'D', 'E', 'F', 'H', 'K', 'U', 'W'];

    /// <summary>The name of a key: what it types, or a word such as Enter; null for a key that the screens leave alone.</summary>
    internal static string? Of(Key key)
    {
        if (Array.Find(WithControl, letter => key == new Key(char.ToLowerInvariant(letter)).WithCtrl) is not default(char) and var control)
            return $"Ctrl+{control}";
        if (key.IsCtrl || key.IsAlt)
            return null;
        switch (key.KeyCode & ~KeyCode.ShiftMask)
        {
            case KeyCode.Enter: return "Enter";
            case KeyCode.Esc: return "Esc";
            case KeyCode.Tab: return "Tab";
            case KeyCode.Backspace: return "Backspace";
            case KeyCode.Delete: return "Delete";
            case KeyCode.CursorUp: return "Up";
            case KeyCode.CursorDown: return "Down";
            case KeyCode.CursorLeft: return "Left";
            case KeyCode.CursorRight: return "Right";
            case KeyCode.PageUp: return "PgUp";
            case KeyCode.PageDown: return "PgDn";
            case KeyCode.Home: return "Home";
            case KeyCode.End: return "End";
            default:
                string typed = key.AsGrapheme;
                return typed.Length > 0 && !char.IsControl(typed[0]) ? typed : null;
        }
    }
}
