using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis.Simulator;

/// <summary>Counts the findings of a diagnosis against the truth: what was planted and found, what was said and right, who was accused for nothing.</summary>
internal sealed class FindingTally
{
    internal int Planted { get; private set; }

    internal int Found { get; private set; }

    internal int Reported { get; private set; }

    internal int Right { get; private set; }

    internal int Sound { get; private set; }

    internal int Accused { get; private set; }

    /// <summary>Whether it was said rightly that capacities can be told, or cannot.</summary>
    internal bool TellRight { get; private set; }

    internal List<string> Mistakes { get; } = [];

    internal static FindingTally Of(SimulatedTruth truth, RideDiagnosis diagnosis)
    {
        FindingTally tally = new();
        for (int k = 0; k < truth.CapacityAh.Length; k++)
        {
            string[] said = [.. diagnosis.Groups[k].Findings.Where(f => f.Kind != FindingKind.CannotTell).Select(f => DiagnosisScore.Name(f.Kind))];
            tally.Add(truth, k, said);
        }
        tally.TellRight = truth.Capacity == "either" || (truth.Capacity == "yes") == diagnosis.CapacityTold;
        if (!tally.TellRight)
            tally.Mistakes.Add(diagnosis.CapacityTold ? "told what cannot be told" : "did not tell");
        return tally;
    }

    private void Add(SimulatedTruth truth, int k, string[] said)
    {
        foreach (string need in truth.Required[k])
        {
            // A loss that no log could show is not asked for.
            if (need == "low-capacity" && truth.Capacity != "yes" && !said.Contains(need))
                continue;
            Planted++;
            bool hit = said.Contains(need);
            Found += hit ? 1 : 0;
            if (!hit)
                Mistakes.Add($"missed {need}@{k + 1}");
        }
        foreach (string word in said)
        {
            Reported++;
            bool ok = truth.Required[k].Contains(word) || truth.Allowed[k].Contains(word);
            Right += ok ? 1 : 0;
            if (!ok)
                Mistakes.Add($"wrong {word}@{k + 1}");
        }
        if (truth.Required[k].Count == 0 && truth.Allowed[k].Count == 0)
        {
            Sound++;
            Accused += said.Length > 0 ? 1 : 0;
        }
    }
}
