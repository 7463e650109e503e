using System.Collections.Immutable;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Formats.JobFiles;

/// <summary>A job in which nothing is empty, and a folder to write it in.</summary>
internal static class Jobs
{
    internal static readonly Origin You = Origin.You(new DateOnly(2026, 11, 2));

    internal static JobHistory Full()
    {
        JobHistory job = JobHistory.Of(new Job { Title = "tray", IsDemo = true });
        foreach (JobChange change in Changes())
            job = job.Do(change);
        return job.Undo();
    }

    private static IEnumerable<JobChange> Changes()
    {
        yield return JobChanges.Set("chemistry", new Given(new JobValue.Word("NMC"), You));
        yield return JobChanges.Set("series", new Given(new JobValue.Number(13), new Origin("data sheet", Standing.DataSheet)));
        yield return JobChanges.Set("fuse", new Given(new JobValue.YesNo(false), You));
        yield return JobChanges.AddTable(new JobTable(Source("s1", "cells.csv", SourceKind.Cells), [Row(), Row() with { Label = "Zelle ü \"2\"" }], 2));
        yield return JobChanges.AddRow(new CellRow { Label = "T200", RestV = 3.61 });
        yield return JobChanges.Edit(new CellKey("T042", 1, CellField.CapacityAh), new CellEdit(new JobValue.Number(4.5), You));
        yield return JobChanges.Edit(new CellKey("T042", 1, CellField.LaterDate), new CellEdit(new JobValue.Moment(new DateTime(2026, 11, 9, 8, 30, 0)), You));
        yield return JobChanges.Edit(new CellKey("T200", 1, CellField.Tray), new CellEdit(null, You));
        yield return JobChanges.SetVerdict("T042", new VerdictOverride(Verdict.Reject, "smells", You));
        yield return JobChanges.Lock("T200", 2);
        yield return JobChanges.AddGrouping(new JobGrouping([["T042"], ["T200"]], new Origin("groups.json", Standing.Measured), Source("s2", "groups.json", SourceKind.Groups)));
        yield return JobChanges.AddDocument(new JobDocument(Source("s3", "case.json", SourceKind.FitCase), "{\"a\": 1.50, \"future\": null}"));
        yield return JobChanges.AddDocument(new JobDocument(Source("s4", "fit.json", SourceKind.FitAnswer), "{}"));
        yield return JobChanges.AddDocument(new JobDocument(Source("s5", "need.json", SourceKind.SizeNeed), "{}"));
        yield return JobChanges.Prefer(GroupsFavour.EvenCurrents);
        yield return JobChanges.SetPlacement("turn group 3 over", new JobPlacement
        {
            Turned = [3],
            EndsSwapped = true,
            Exchanged = ImmutableSortedDictionary<int, int>.Empty.Add(1, 2).Add(2, 1),
        });
        yield return JobChanges.AddLog(new JobLog(Source("s6", "ride.csv", SourceKind.PackLog), Log(), 14));
        yield return JobChanges.ReadTap(3, new TapReading(10.87, You));
        yield return JobChanges.MarkCautions("caution-07 group 2", ["caution-07 group 2"], true);
        yield return JobChanges.TickSheet("taps", true);
        yield return JobChanges.Set("parallel", new Given(new JobValue.Number(9), You));
    }

    internal static RideLog Log() => new()
    {
        TimeS = [0, 1, 2.5],
        CurrentA = [0, 41.2, double.NaN],
        GroupV = [[3.341, 3.290, double.NaN], [1.0 / 3, Math.PI, -0.001]],
        TemperatureDegC = [[21.5, 21.5, 22]],
        PackV = [53.4, 52.9, 52.8],
        ShownStateOfCharge = [0.99, 0.98, 0.98],
        CurrentIsUnsigned = true,
        RowsAreAverages = true,
        UsualStepS = 1.25,
        Start = new DateTime(2026, 10, 3, 14, 2, 10, 500),
        Source = "ride.csv",
        Line = [2, 3, 5],
    };

    internal static CellRow Row() => new()
    {
        Label = "T042",
        File = "cells.csv",
        Line = 43,
        CapacityAh = 4.437,
        CapacityStepAh = 0.0001,
        TestCurrentA = 1,
        TestCutoffV = 3,
        TestEndV = 2.999,
        RatedAh = 5,
        ResistanceMilliohm = 32.6,
        ResistanceKind = ResistanceKind.Dc,
        ResistanceAfterS = 1,
        AcResistanceMilliohm = 18.2,
        RestV = 3.625,
        Date = new DateTime(2026, 10, 12, 9, 0, 0),
        SelfDischargeMillivoltPerDay = 0.1,
        LaterRestV = 3.624,
        LaterDate = new DateTime(2026, 10, 22),
        TemperatureDegC = 22.5,
        MassG = 69.8,
        Slot = "2",
        Tray = "A3",
        Model = "21700 G",
        Batch = "garden",
        Chemistry = "NMC",
        Condition = "torn wrap",
        Remark = "n/a",
        Group = 4,
        StateOfChargeFraction = 0.5,
        ChargeOffsetAh = -0.8,
    };

    private static JobSource Source(string id, string file, SourceKind kind) =>
        new(id, file, new string('a', 64), kind, ["comma is the decimal mark"]);
}
