using PackPlanner.Screens;
using PackPlanner.Screens.Window;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Time;

namespace PackPlanner.Benchmarks;

/// <summary>The program's window in the library's driver without a terminal.</summary>
internal sealed class ShownDesk : IDisposable
{
    private readonly IApplication app;
    private readonly PlannerWindow window;

    internal ShownDesk(Desk desk, int width, int height)
    {
        app = Application.Create(new VirtualTimeProvider());
        app.Init(DriverRegistry.Names.ANSI);
        app.Driver!.SetScreenSize(width, height);
        window = new PlannerWindow(desk, colour: true);
        app.Begin(window);
        app.LayoutAndDraw(true);
    }

    internal void Press(Key key)
    {
        app.InjectKey(key);
        app.LayoutAndDraw();
    }

    internal void Resize(int width, int height)
    {
        app.Driver!.SetScreenSize(width, height);
        app.LayoutAndDraw(true);
    }

    public void Dispose()
    {
        window.Dispose();
        app.Dispose();
    }
}
