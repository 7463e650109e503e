using System.Text;
using Terminal.Gui.App;

namespace PackPlanner.Screens.Window;

/// <summary>Puts words on the clipboard of the user's own terminal, also over ssh.</summary>
internal static class ClipboardSequence
{
    // Longer texts are dropped by many terminals.
    private const int MostBytes = 60_000;

    /// <summary>Sends the sequence that terminals understand as "copy" (OSC 52).</summary>
    /// <returns>False when the terminal is too plain for it.</returns>
    internal static bool Write(IApplication app, string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        if (app.Driver is not { } driver || bytes.Length > MostBytes || Environment.GetEnvironmentVariable("TERM") is null or "dumb" or "linux")
            return false;
        driver.WriteRaw($"\u001b]52;c;{Convert.ToBase64String(bytes)}\u0007");
        return true;
    }
}
