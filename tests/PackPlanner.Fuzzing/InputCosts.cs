using System.Diagnostics;
using PackPlanner.Tests.Fuzz;

namespace PackPlanner.Fuzzing;

/// <summary>What each whole input costs when it has been run often enough to be compiled well.</summary>
internal static class InputCosts
{
    internal static int Run()
    {
        string folder = Directory.CreateTempSubdirectory("packplanner-fuzz-").FullName;
        double all = 0, shares = 0;
        foreach (FuzzCase one in FuzzCase.Each)
        {
            string file = Path.Combine(folder, "whole" + one.Ending);
            File.WriteAllBytes(file, one.Bytes);
            string? fault = null;
            List<double> times = [];
            long began = Stopwatch.GetTimestamp();
            for (int i = 0; i < 300 && (i < 3 || Stopwatch.GetElapsedTime(began).TotalSeconds < 1.5); i++)
            {
                long at = Stopwatch.GetTimestamp();
                fault = FuzzTry.Fault(one.Line(file), CancellationToken.None);
                times.Add(Stopwatch.GetElapsedTime(at).TotalMilliseconds);
            }

            times.Sort();
            double median = times[times.Count / 2];
            all += one.Share * median;
            shares += one.Share;
            Console.WriteLine($"{median,9:0.00} ms, share {one.Share,3}, {one.Bytes.Length,6} bytes: {one.Verb} {string.Join(' ', one.Options)} {fault}");
        }

        Directory.Delete(folder, recursive: true);
        Console.WriteLine($"{all / shares:0.00} ms an input in the mean");
        return 0;
    }
}
