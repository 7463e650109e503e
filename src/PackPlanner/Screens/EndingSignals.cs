using System.Diagnostics;
using System.Runtime.InteropServices;
using PackPlanner.Formats;

namespace PackPlanner.Screens;

/// <summary>Listens for the signals that end a program, while it lives.</summary>
internal sealed class EndingSignals : IDisposable
{
    private readonly PosixSignalRegistration[] heard;

    internal EndingSignals() => heard =
    [
        .. new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP, PosixSignal.SIGQUIT }
            .Select(signal => PosixSignalRegistration.Create(signal, Stop)),
    ];

    /// <summary>128 plus the signal's number; 0 while none came.</summary>
    internal int ExitCode { get; private set; }

    public void Dispose()
    {
        foreach (PosixSignalRegistration signal in heard)
            signal.Dispose();
    }

    private void Stop(PosixSignalContext context)
    {
        context.Cancel = true;
        ExitCode = context.Signal switch
        {
            PosixSignal.SIGHUP => 129,
            PosixSignal.SIGINT => ExitCodes.Stopped,
            PosixSignal.SIGQUIT => 131,
            _ => 143,
        };
        EndAnyway();
    }

    // A terminal that is gone can leave the library waiting for its answer for ever. Everything is saved at every change,
    // so a program that has been told to end, and has not within five seconds, is ended.
    private static void EndAnyway()
    {
        Thread watch = new(() =>
        {
            Thread.Sleep(TimeSpan.FromSeconds(5));
            Process.GetCurrentProcess().Kill();
        })
        {
            IsBackground = true,
        };
        watch.Start();
    }
}
