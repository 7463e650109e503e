using PackPlanner.Core.Diagnosis;
using PackPlanner.Tests.Core.Diagnosis.Simulator;

namespace PackPlanner.Benchmarks;

/// <summary>The table of docs/methods/diagnosis.md: simulated packs from one seed up to another, each diagnosed and compared with its truth.</summary>
internal static class DiagnosisTargets
{
    private const int TableEach = 35;

    /// <summary>Prints a line for each pack that misses a limit, and the table of all so far now and then, so that a run which is stopped leaves one.</summary>
    internal static void Run(int fromSeed, int toSeed)
    {
        List<DiagnosisScore> scores = [];
        for (int seed = fromSeed; seed < toSeed; seed++)
        {
            SimulatedLog log = SimulatedScenario.Make(seed);
            RideDiagnosis diagnosis = RideDiagnoser.Diagnose(DiagnosisScore.Ride(log.Columns), DiagnosisScore.Given(log));
            DiagnosisScore score = DiagnosisScore.Of(log.Kind, log.Truth, diagnosis, log.Columns.UsualStepS, log.Pack.Family == CurveFamily.Lfp);
            scores.Add(score);
            if (!score.Passes)
                Console.WriteLine($"{seed} {score.Line()}");
            if (scores.Count % TableEach != 0 && seed + 1 < toSeed)
                continue;
            foreach (string line in DiagnosisScore.Table(scores))
                Console.WriteLine(line);
        }
    }
}
