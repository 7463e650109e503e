using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Outside;

/// <summary>Logs of real strings, which have no truth beside them: what their rows show must be said, and no more.</summary>
public class DiagnosisRealLogsTests
{
    private static RideDiagnosis Diagnose(string folder, string file, PackGiven given, Range groups)
    {
        Assert.True(PackLogs.Read(Repository.Data(folder, file), new ReadOptions()).Is(out PackLogReading? reading, out Refusal? why), why?.ToString());
        RideLog log = reading.Log;
        RideLog part = new()
        {
            TimeS = log.TimeS,
            CurrentA = log.CurrentA,
            GroupV = log.GroupV[groups],
            TemperatureDegC = log.TemperatureDegC,
            RowsAreAverages = log.RowsAreAverages,
            UsualStepS = log.UsualStepS,
            Source = file,
        };
        return RideDiagnoser.Diagnose(part, given, TestContext.Current.CancellationToken);
    }

    private static int[] Accused(RideDiagnosis diagnosis) =>
        [.. diagnosis.Groups.Where(g => g.Findings.Any(f => f.Kind != FindingKind.CannotTell)).Select(g => g.Group)];

    // Source: [Nie2025]. Cell 82 reads 79 mV below the middle cell, its neighbours 81 and 83 1 and 12 mV: it alone stands out.
    // Groups 65 to 88 of 88, so that the test is quick; the rated charge is assumed, for the authors do not give it.
    [Fact]
    public void In_the_second_car_cell_82_alone_is_accused()
    {
        RideDiagnosis diagnosis = Diagnose("ev-field", "car2_rows7500-9999.csv.gz", new PackGiven(Chemistries.Find("NMC")!, 24, 1, 150, 4.2, 3.0), 64..88);

        Assert.Equal([18], Accused(diagnosis));
        Assert.DoesNotContain(diagnosis.Groups[17].Findings, f => f.Kind == FindingKind.Sensor);
    }

    // Source: [Nie2025]. An uneven pack (23 mV standard deviation) seen through 4 % of its charge. Groups 1 to 24 of 96.
    [Fact]
    public void In_the_first_car_an_uneven_pack_accuses_no_cell_and_tells_no_capacity()
    {
        RideDiagnosis diagnosis = Diagnose("ev-field", "car1_rows16665-18664.csv.gz", new PackGiven(Chemistries.Find("NMC")!, 24, 1, 150, 4.2, 3.0), 0..24);

        Assert.False(diagnosis.CapacityTold);
        Assert.Empty(Accused(diagnosis));
    }

    // Source: [NissanLeaf2013]. Group A1 meets the cut-off first and A4 is second lowest; A1 has the lowest resistance of the six. One
    // discharge does not tell less charge from less capacity except by its curve, and that must be said.
    [Fact]
    public void In_the_2013_string_group_1_empties_first_has_the_least_resistance_and_the_doubt_is_said()
    {
        RideDiagnosis diagnosis = Diagnose("cell-2013", "module123-irdischarge-65ah-1_0c.csv.gz", new PackGiven(Chemistries.Find("NMC")!, 6, 2, 65, 4.2, 3.0), 0..6);

        Assert.Equal([1, 4], diagnosis.Groups.OrderBy(g => g.CapacityAh!.Value.Value * g.StateOfCharge).Take(2).Select(g => g.Group));
        Assert.Equal(1, diagnosis.Groups.MinBy(g => g.ResistanceMilliohm!.Value.Value)!.Group);
        Assert.Contains(diagnosis.Notes, n => n.StartsWith("group 1 empties first", StringComparison.Ordinal) && n.Contains("log a full charge too", StringComparison.Ordinal));
    }
}
