using System.Globalization;
using PackPlanner.Core;
using PackPlanner.Formats;

namespace PackPlanner;

/// <summary>Keeps the details of a fault of ours in a file and makes one line of it for the user.</summary>
internal static class FaultReport
{
    internal static Refusal Write(Exception fault)
    {
        string file = Path.Combine(Path.GetTempPath(), $"packplanner-fault-{Environment.ProcessId.ToString(CultureInfo.InvariantCulture)}.txt");
        string remedy;
        try
        {
            File.WriteAllText(file, fault.ToString());
            remedy = $"Nothing was changed. The details are in {file}; please send them with the input.";
        }
        catch (Exception unwritable) when (unwritable is IOException or UnauthorizedAccessException)
        {
            remedy = "Nothing was changed. The details could not be written to a file.";
        }

        return new Refusal(ExitCodes.Fault, "fault",
            new Problem("packplanner", $"a fault in the program: {fault.GetType().Name}, {fault.Message.TrimEnd('.')}", remedy));
    }
}
