using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using PackPlanner.Formats;
using PackPlanner.Screens;
using PackPlanner.Verbs;

namespace PackPlanner;

/// <summary>The program: streams, signals and the last catch.</summary>
internal static class Program
{
    private static int Main(string[] args)
    {
        // The runtime's own setting makes every place alike, but an environment variable outranks it: sentences too must keep their decimal point.
        (CultureInfo.DefaultThreadCurrentCulture, CultureInfo.CurrentCulture) = (CultureInfo.InvariantCulture, CultureInfo.InvariantCulture);
        using StreamWriter output = Utf8(Console.OpenStandardOutput());
        using StreamWriter notes = Utf8(Console.OpenStandardError());
        using CancellationTokenSource stop = new();
        void Stop(PosixSignalContext signal)
        {
            // The second one ends the program at once; so does work that hears nothing for a while, as a pipe that nobody writes.
            signal.Cancel = !stop.IsCancellationRequested;
            stop.Cancel();
            _ = Task.Delay(Patience, CancellationToken.None).ContinueWith(_ => Environment.Exit(ExitCodes.Stopped), TaskScheduler.Default);
        }

        using PosixSignalRegistration interrupted = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        using PosixSignalRegistration terminated = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        try
        {
            return Start(args, output, notes, stop.Token);
        }
        catch (OperationCanceledException)
        {
            notes.WriteLine("packplanner: stopped; nothing was written.");
            return ExitCodes.Stopped;
        }
        catch (IOException broken) when (broken.HResult == BrokenPipe)
        {
            return ExitCodes.Done;
        }
        // The one place that catches everything: the user gets one line, the details go to a file.
        catch (Exception fault)
        {
            bool json = args.Contains("--json");
            return CommandLine.Print(FaultReport.Write(fault), json, output, notes);
        }
    }

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    // EPIPE: whoever read our output has gone, as head does.
    private const int BrokenPipe = 32;

    private static int Start(string[] args, TextWriter output, TextWriter notes, CancellationToken stopped)
    {
        if (args is ["--version", ..])
        {
            output.WriteLine($"packplanner {typeof(Program).Assembly.GetName().Version!.ToString(3)}");
            return ExitCodes.Done;
        }

        if (args is ["--help" or "-h" or "-?", ..])
        {
            output.Write(HelpText.OfProgram());
            return ExitCodes.Done;
        }

        if (ScreenStart.IsAsked(args) && ScreenStart.HasTerminal)
            return ScreenStart.Run(args);
        if (ScreenStart.JobAsked(args) is { } job)
            return CommandLine.Print(ScreenStart.NoTerminal(job), json: false, output, notes);
        if (args.Length > 0)
            return CommandLine.Run(args, Console.OpenStandardInput, output, notes, stopped);
        notes.Write(HelpText.OfProgram());
        return ExitCodes.CommandLine;
    }

    private static StreamWriter Utf8(Stream stream) =>
        new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true, NewLine = "\n" };
}
