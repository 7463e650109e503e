using PackPlanner.Tests.Misreading;

namespace PackPlanner.Fuzzing;

/// <summary>A long run over real tables and logs written in other ways: every answer must stay as it was.</summary>
internal static class MisreadingRun
{
    internal static int Run(int count, int first)
    {
        string folder = Directory.CreateTempSubdirectory("packplanner-misreading-").FullName;
        int faults = 0;
        for (int seed = first; seed < first + count; seed++)
        {
            if (MisreadingTrial.Of(seed, folder) is { } fault)
            {
                faults++;
                Console.WriteLine(fault);
            }

            if ((seed - first + 1) % 1000 == 0)
                Console.WriteLine($"{seed - first + 1} writings, {faults} answers differ");
        }

        Directory.Delete(folder, recursive: true);
        Console.WriteLine($"{count} writings, {faults} answers differ");
        return faults == 0 ? 0 : 1;
    }
}
