using System.Runtime.CompilerServices;
using System.Text;
using System.Text.RegularExpressions;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Time;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace PackPlanner.Screens.Window;

/// <summary>
/// The library's output with its codes of colour left out, also the terminal's own ones; where colour is wanted the one accent is written
/// instead. Left out too is the cursor's place where it stands there already, which the library sends at each turn of its loop.
/// </summary>
internal sealed partial class QuietOutput(bool colour) : AnsiOutput, IOutput
{
    // Terminals agree on the colours above 16; the library would give the nearest of the first 16, which each terminal paints as it likes.
    private static readonly string AccentCode = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"\u001b[38;5;{InkColours.Accent256}m");

    private Cursor? standing;

    /// <summary>An application that writes through it; the library's own one where that cannot be made.</summary>
    /// <param name="colour">Whether colour is wanted.</param>
    /// <param name="time">Its clock; tests give their own.</param>
    internal static IApplication NewApplication(bool colour, ITimeProvider? time = null)
    {
        if (!OperatingSystem.IsWindows())
        {
            QuietOutput quiet = new(colour);
            try
            {
                return (IApplication)WithFactory(new AnsiComponentFactory(null, quiet, null), time ?? new SystemTimeProvider());
            }
            catch (Exception fault) when (fault is MissingMethodException or TypeLoadException or InvalidCastException)
            {
                // Another version of the library, made otherwise: the screens are the same, a few bytes more.
                quiet.Dispose();
            }
        }

        return Application.Create(time);
    }

    /// <inheritdoc/>
    void IOutput.SetCursor(Cursor cursor)
    {
        if (standing is { } same && same.Position == cursor.Position && same.Style == cursor.Style)
            return;
        SetCursor(cursor);
        standing = cursor;
    }

    // Before anything is written the library goes to its place.
    /// <inheritdoc/>
    protected override bool SetCursorPositionImpl(int col, int row)
    {
        standing = null;
        return base.SetCursorPositionImpl(col, row);
    }

    /// <inheritdoc/>
    protected override void AppendOrWriteAttribute(StringBuilder output, Attribute attr, Terminal.Gui.Drawing.TextStyle redrawTextStyle)
    {
        StringBuilder own = new();
        base.AppendOrWriteAttribute(own, attr, redrawTextStyle);
        if (colour)
            output.Append(attr.Foreground == InkColours.Accent ? AccentCode : "\u001b[39m");
        output.Append(ColourCode().Replace(own.ToString(), ""));
    }

    [GeneratedRegex(@"\u001b\[(?:3[0-9]|4[0-9]|9[0-7]|10[0-7])(?:;[0-9;]*)?m", RegexOptions.CultureInvariant)]
    private static partial Regex ColourCode();

    // The library tells an application what to write through by a constructor that it keeps to itself.
    [UnsafeAccessor(UnsafeAccessorKind.Constructor)]
    [return: UnsafeAccessorType("Terminal.Gui.App.ApplicationImpl, Terminal.Gui")]
    private static extern object WithFactory(IComponentFactory factory, ITimeProvider time);
}
