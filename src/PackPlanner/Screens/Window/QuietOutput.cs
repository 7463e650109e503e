using System.Runtime.CompilerServices;
using System.Text;
using System.Text.RegularExpressions;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Time;
using Attribute = Terminal.Gui.Drawing.Attribute;

namespace PackPlanner.Screens.Window;

/// <summary>
/// The library's output with two things left out: codes that name a colour where none is wanted, also the terminal's own ones, and the
/// cursor's place where it stands there already, which the library sends at each turn of its loop.
/// </summary>
internal sealed partial class QuietOutput(bool colour) : AnsiOutput, IOutput
{
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
        if (colour)
        {
            base.AppendOrWriteAttribute(output, attr, redrawTextStyle);
            return;
        }

        StringBuilder own = new();
        base.AppendOrWriteAttribute(own, attr, redrawTextStyle);
        output.Append(ColourCode().Replace(own.ToString(), ""));
    }

    [GeneratedRegex(@"\u001b\[(?:3[0-9]|4[0-9]|9[0-7]|10[0-7])(?:;[0-9;]*)?m", RegexOptions.CultureInvariant)]
    private static partial Regex ColourCode();

    // The library tells an application what to write through by a constructor that it keeps to itself.
    [UnsafeAccessor(UnsafeAccessorKind.Constructor)]
    [return: UnsafeAccessorType("Terminal.Gui.App.ApplicationImpl, Terminal.Gui")]
    private static extern object WithFactory(IComponentFactory factory, ITimeProvider time);
}
