using System.Globalization;
using System.Text;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.Fuzz;

/// <summary>Small whole inputs, invented, one of each kind that the program reads.</summary>
internal static class FuzzInputs
{
    internal const string Cells = """
        label,chemistry,capacity_Ah,resistance_mOhm,rest_V,slot
        T001,NMC,4.437,32.6,3.621,1
        T002,NMC,4.512,31.9,3.622,2
        T003,NMC,4.380,33.4,3.620,3
        T004,NMC,4.401,30.8,3.619,4
        T005,NMC,4.466,32.0,3.623,1
        T006,NMC,4.299,35.1,3.618,2
        """;

    internal const string GermanCells = """
        Zellen aus der Werkstatt;;;
        Nr;Kapazität [mAh];Ri [mΩ];Ruhespannung [V]
        T001;4 437,0;32,6;3,621
        T002;4 512,0;31,9;3,622
        T003;4 380,0;33,4;3,620
        T003;4 391,0;33,0;3,620
        Summe;17 720,0;;
        """;

    internal const string Groups = """
        group,capacityAh,resistanceMilliohm,stateOfCharge
        1,39.276,3.47,0.80
        2,39.270,3.42,0.79
        3,38.100,3.60,0.81
        """;

    internal const string ShareCase = """
        {"cells":[{"cell":"K01","openCircuitV":3.62,"resistanceMilliohm":31.4},{"cell":"K02","openCircuitV":3.61,"resistanceMilliohm":30.0},
        {"cell":"K03","openCircuitV":3.62,"resistanceMilliohm":33.0}],"positiveLinkMilliohm":[0.2,0.2],"negativeLinkMilliohm":[0.2,0],
        "positiveAt":1,"negativeAt":3,"loadA":40}
        """;

    internal const string SizeCase = """
        {"cell":{"chemistry":"NMC","nominalV":3.6,"fullV":4.2,"cutoffV":3.0,"capacityAh":5.0,"massG":70,"resistanceMilliohm":18,
        "continuousDischargeA":10,"peakDischargeA":20,"maxChargeA":2.5},"pack":{"series":null,"overheadFraction":0.3},
        "need":{"whPerKm":14,"speedKmh":22,"rangeKm":60,"peakPowerW":1500,"reserve":0.1},
        "electrics":{"controllerMinV":36,"controllerMaxV":60,"controllerMaxA":35,"chargerV":54.6,"chargerA":4,"linkResistanceMilliohm":8}}
        """;

    internal const string FitCase = """
        {"id":"tray","cavity":{"parts":[{"box":[0,0,0,110,70,86]}]},"keepOuts":[{"id":"tube","tube":{"from":[0,0,80],"to":[110,0,80],"diameterMm":10}}],
        "cell":{"name":"21700","shape":"cylinder","diameterMm":21.4,"lengthMm":70.6,"massG":70,"axes":["z"]},
        "clearance":{"wallMm":2,"endMm":4,"cellGapMm":0.6,"layerGapMm":8},"pack":{"series":3,"parallel":2,"linkReachMm":3},"limits":{"cellMassKg":null}}
        """;

    // One cell in a box: what is read is the same, and the search ends at once.
    internal const string OneCellCase = """
        {"id":"cup","cavity":{"parts":[{"box":[0,0,0,30,32,90]}]},"keepOuts":[],
        "cell":{"name":"21700","shape":"cylinder","diameterMm":21.4,"lengthMm":70.6,"massG":70,"axes":["z"]},
        "clearance":{"wallMm":2,"endMm":4,"cellGapMm":0.6,"layerGapMm":8},"pack":{"series":1,"parallel":1,"linkReachMm":3},"limits":{"cellMassKg":1}}
        """;

    internal static string WideLog { get; } = Log(
        "time_s,current_A,cell_1_V,cell_2_V,cell_3_V",
        (t, a, v) => $"{t},{a},{v},{v - 0.004m},{v - 0.011m}");

    internal static string LongLog { get; } = Log(
        "time_s,cell,voltage_V,current_A",
        (t, a, v) => $"{t},1,{v},{a}\n{t},2,{v - 0.004m},{a}");

    internal static string TesterLog { get; } = Log("time_s,current_A,voltage_V", (t, a, v) => $"{t},{a},{v}");

    /// <summary>A job as the program writes it, with one table in it.</summary>
    internal static string Job()
    {
        string folder = Directory.CreateTempSubdirectory("packplanner-fuzz-job-").FullName;
        try
        {
            string job = Path.Combine(folder, "whole.job.json");
            string table = Path.Combine(folder, "cells.csv");
            File.WriteAllText(table, Cells);
            Run("job", "new", job);
            Run("job", "set", job, "chemistry=NMC", "series=3", "parallel=2");
            Run("job", "add", job, table);
            return File.ReadAllText(job);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Run(params string[] line) =>
        CommandLine.Run(line, () => new MemoryStream(), TextWriter.Null, TextWriter.Null, CancellationToken.None);

    private static string Log(string header, Func<int, decimal, decimal, string> row)
    {
        StringBuilder text = new(header + "\n");
        for (int t = 0; t < 120; t++)
        {
            decimal current = t % 40 < 10 ? 0m : 10m + t % 3;
            decimal volts = 4.10m - 0.008m * t - 0.004m * current;
            text.Append(string.Create(CultureInfo.InvariantCulture, $"{row(t * 10, current, volts)}\n"));
        }

        return text.ToString();
    }
}
