using System.Globalization;
using System.IO.Compression;
using System.Text;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Fuzz;

/// <summary>One whole input and the verb that reads it.</summary>
/// <param name="Verb">The verb.</param>
/// <param name="Options">Its options.</param>
/// <param name="Bytes">The whole input.</param>
/// <param name="Share">How often it is drawn, beside the others: dear ones seldom, so that a long run spends its time evenly.</param>
internal sealed record FuzzCase(string Verb, string[] Options, byte[] Bytes, int Share)
{
    // A quick look keeps a search on a spoiled case short without touching what is read.
    private static readonly FuzzCase[] All =
    [
        Of("look", FuzzInputs.Cells, 240),
        Of("look", FuzzInputs.GermanCells, 240),
        Of("look", FuzzInputs.WideLog, 240),
        Of("look", FuzzInputs.LongLog, 240),
        Of("look", Real("ev-field/car1_rows16665-18664.csv.gz", 12), 80),
        Of("look", Real("ev-field/car2_rows7500-9999.csv.gz", 12), 80),
        Of("look", Real("sample-logs/sample03.csv", 40), 160),
        Of("look", Real("sample-logs/sample04.csv", 40), 160),
        Of("look", Real("sample-logs/sample05.csv", 40), 160),
        Of("look", Real("sample-logs/sample06.csv", 120), 160),
        Of("cells", FuzzInputs.Cells, 400),
        Of("cells", FuzzInputs.GermanCells, 400, "--rated-ah", "5"),
        Of("cells", Real("pulsebat/LFP_35Ah_cells.csv", 25), 160),
        Of("cells", Real("pulsebat/NMC_2.1Ah_cells.csv", 25), 160, "--repeatability", "2%"),
        Of("cells", Real("pulsebat/LMO_10Ah_cells.csv", 25), 160, "--series", "4", "--parallel", "5"),
        Of("capacity", FuzzInputs.TesterLog, 240),
        Of("capacity", Real("lfp-nmc-slow/LFP_25degC_1C.csv.gz", 60), 80),
        Of("capacity", Real("cell-2013/cell-discharge-bitrode-1c.csv.gz", 60), 80),
        Of("capacity", Real("cell-2013/module123-irdischarge-65ah-1_0c.csv.gz", 60), 80),
        Of("capacity", Real("nca-slow/discharge_1.5A_step4_all_rows.csv.gz", 60), 80),
        Of("capacity", Real("pulsebat/steps_LMO_101.csv", 12), 80),
        Of("share", FuzzInputs.Cells, 240, "--load", "10A", "--link", "0.2mohm"),
        Of("share", FuzzInputs.ShareCase, 240),
        Of("join", FuzzInputs.Cells, 240, "--link", "0.2mohm"),
        Of("balance", FuzzInputs.Groups, 240, "--bleed", "60mA", "--chemistry", "NMC"),
        Of("job", FuzzInputs.Job(), 240, "show"),
        Of("match", FuzzInputs.Cells, 80, "--series", "2", "--parallel", "2", "--all"),
        Of("match", Real("pulsebat/NMC_2.1Ah_cells.csv", 13), 16, "--series", "3", "--parallel", "2"),
        Of("energy", FuzzInputs.Groups, 16, "--load", "10A", "--chemistry", "NMC"),
        Of("diagnose", FuzzInputs.WideLog, 2, "--chemistry", "NMC", "--series", "3", "--parallel", "2", "--rated-ah", "10"),
        Of("diagnose", FuzzInputs.LongLog, 2, "--chemistry", "NMC", "--series", "2", "--parallel", "2", "--rated-ah", "10"),
        Of("compare", FuzzInputs.WideLog, 1, "--chemistry", "NMC", "--series", "3", "--parallel", "2", "--rated-ah", "10"),
        Of("size", FuzzInputs.SizeCase, 160),
        Of("fit", FuzzInputs.FitCase, 2, "--quick"),
        Of("fit", FuzzInputs.OneCellCase, 40, "--quick"),
    ];

    private static readonly int Shares = All.Sum(one => one.Share);

    /// <summary>Every case, once.</summary>
    internal static IReadOnlyList<FuzzCase> Each => All;

    /// <summary>How the file must be called.</summary>
    internal string Ending => Verb == "job" ? ".job.json" : ".csv";

    /// <summary>The case that a seed draws.</summary>
    internal static FuzzCase Drawn(int seed)
    {
        // A multiplication mixes neighbouring seeds; the remainder alone would tie each case to one digit of the seed.
        int place = (int)((uint)seed * 2654435761u % (uint)Shares);
        return All.First(one => (place -= one.Share) < 0);
    }

    /// <summary>The command line that reads a file as this case does.</summary>
    internal string[] Line(string file) => Verb switch
    {
        "job" => [Verb, .. Options, file, "--json"],
        "compare" => [Verb, file, file, .. Options, "--json"],
        _ => [Verb, file, .. Options, "--json"],
    };

    private static FuzzCase Of(string verb, string text, int share, params string[] options) => new(verb, options, Encoding.UTF8.GetBytes(text), share);

    private static string Real(string name, int lines)
    {
        using Stream file = File.OpenRead(Repository.Data(name.Split('/')));
        using Stream plain = name.EndsWith(".gz", StringComparison.Ordinal) ? new GZipStream(file, CompressionMode.Decompress) : file;
        using StreamReader reader = new(plain);
        StringBuilder text = new();
        for (int line = 0; line < lines && reader.ReadLine() is { } one; line++)
            text.Append(CultureInfo.InvariantCulture, $"{one}\n");
        return text.ToString();
    }
}
