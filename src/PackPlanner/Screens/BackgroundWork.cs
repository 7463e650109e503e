using System.Globalization;

namespace PackPlanner.Screens;

/// <summary>Work that runs aside while the screen goes on answering keys.</summary>
/// <param name="doing">What it does, in words.</param>
/// <param name="started">When it was begun.</param>
internal sealed class BackgroundWork(string doing, DateTime started) : IDisposable
{
    private readonly CancellationTokenSource stop = new();

    internal CancellationToken Stopped => stop.Token;

    /// <summary>Best result so far and, if known, the proven limit.</summary>
    internal string Best { get; set; } = "";

    /// <summary>Asks it to end.</summary>
    internal void Stop() => stop.Cancel();

    /// <summary>One line: what, for how long, the best so far.</summary>
    internal string Words(DateTime now)
    {
        string seconds = Math.Max(0, (int)(now - started).TotalSeconds).ToString(CultureInfo.InvariantCulture);
        return Best.Length == 0 ? $"{doing} {seconds} s" : $"{doing} {seconds} s  {Best}";
    }

    /// <summary>Whether it has run long enough to be worth a line.</summary>
    internal bool IsWorthTelling(DateTime now) => (now - started).TotalMilliseconds > 300;

    /// <summary>Whether it has run so long that it may have left much behind.</summary>
    internal bool IsLong(DateTime now) => (now - started).TotalSeconds > 1;

    public void Dispose() => stop.Dispose();
}
