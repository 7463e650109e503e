using System.Text.RegularExpressions;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.Pictures;
using PackPlanner.Formats.Sheets;

namespace PackPlanner.Tests.Formats.Pictures;

/// <summary>Jobs that the tests draw pictures of.</summary>
internal static partial class PictureCases
{
    internal static readonly DateOnly Day = new(2026, 11, 24);

    internal static readonly Lazy<SheetInput> Trike = new(() => InputOf("trike"));

    internal static readonly SheetInput Ridden = WithLog();

    internal static SheetInput InputOf(string demo) => Assert.IsType<Outcome<SheetInput>.Given>(SheetInput.Of(
        Assert.IsType<Outcome<JobHistory>.Given>(DemoJobs.Of(demo)).Value, Day, TestContext.Current.CancellationToken)).Value;

    private static SheetInput WithLog()
    {
        double[] seconds = [.. Enumerable.Range(0, 900).Select(row => (double)row)];
        double[] one = [.. seconds.Select(_ => 3.3)];
        double[] other = [.. seconds.Select(row => row < 450 ? 3.4 : 2.9)];
        one[200] = one[201] = double.NaN;
        RideLog log = new() { TimeS = seconds, CurrentA = [.. seconds.Select(_ => 10.0)], GroupV = [one, other], Source = "ride.csv" };
        GroupDiagnosis Told(int group, double milliohm, params FindingDetail[] findings) =>
            new(group, null, null, new Ranged(milliohm, milliohm * 0.9, milliohm * 1.1), null, null, null, 0, findings);
        RideDiagnosis diagnosis = new()
        {
            Groups = [Told(1, 2), Told(2, 3, new FindingDetail(FindingKind.LowCapacity, ["seen"], Sureness.High, "settle"))],
            CapacityTold = true,
            Loaded = new LoadedRecovery(10, 50, 500, 51, 52),
            Remedies = [new Remedy("Replace group 2.", 52, 520, 4, 1)],
            Events = [],
            Cautions = [],
            Notes = [],
        };
        return new SheetInput
        {
            Job = new Job { Title = "ridden", Logs = [new JobLog(new JobSource("s1", "ride.csv", new string('0', 64), SourceKind.PackLog, []), log, 0)] },
            Revision = 3,
            Date = Day,
            Diagnosis = diagnosis,
            WhyNoGroups = "the job has no cells",
        };
    }

    internal static Picture Named(string name) => PictureCatalogue.All.Single(picture => picture.Name == name);

    internal static string Svg(string name, SheetInput input) => Named(name).Charts(input).Single().Chart.Svg(name);

    internal static string[] TextsOf(string svg) => [.. Texts().Matches(svg).Select(text => System.Net.WebUtility.HtmlDecode(text.Groups[1].Value.Trim()))];

    [GeneratedRegex("<text [^>]*>([^<]*)</text>")]
    private static partial Regex Texts();
}
