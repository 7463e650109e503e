using System.Collections.Concurrent;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.Json.Nodes;
using PackPlanner.Tests.Formats.JobFiles;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

/// <summary>The files that the examples of the verbs name, invented or out of the invented scenes.</summary>
internal static class ExampleFiles
{
    private static readonly ConcurrentDictionary<string, Lazy<string>> answers = new();
    private static readonly Lazy<Dictionary<string, byte[]>> trike = new(Demo);

    /// <summary>Writes one.</summary>
    /// <param name="name">As the example names it.</param>
    /// <param name="before">The words before it, from the verb on: one name stands for other files with other verbs.</param>
    /// <param name="folder">Where.</param>
    internal static void Write(string name, string[] before, Folder folder)
    {
        string path = folder.File(name);
        switch (name, before)
        {
            case ("cells.csv", ["match", ..]): File.WriteAllText(path, Lot()); break;
            case ("cells.csv", ["join" or "share", ..]): File.WriteAllText(path, Group()); break;
            case ("cells.csv", _): File.Copy(Sample("trike", "cells.csv"), path); break;
            case ("groups.csv", ["match", ..]): File.WriteAllText(path, Built()); break;
            case ("groups.csv", _): File.WriteAllText(path, "group,capacityAh,resistanceMilliohm,stateOfCharge\n1,39.7,3.5,0.52\n2,39.5,3.4,0.50\n3,38.8,3.6,0.55\n"); break;
            case ("groups.json", ["energy", ..]): Answer(path, "match", LotFile(folder), "--series", "13", "--parallel", "4"); break;
            case ("groups.json", _): Answer(path, "match", Sample("trike", "cells.csv"), "--rated-ah", "5Ah", "--chemistry", "NMC", "--series", "13", "--parallel", "9"); break;
            case ("tray.json", _): File.Copy(Sample("trike", "tray.json"), path); break;
            case ("fit.json", _): Answer(path, "fit", Sample("trike", "tray.json"), "--work", "30"); break;
            case ("trike.job.json", _): Job(folder); break;
            case ("group7.json", _): File.WriteAllText(path, """
                {"cells":[{"cell":"K01","openCircuitV":3.62,"resistanceMilliohm":31.4},{"cell":"K02","openCircuitV":3.61,"resistanceMilliohm":30.0}],
                 "positiveLinkMilliohm":[0.2],"negativeLinkMilliohm":[0.2],"positiveAt":1,"negativeAt":2,"loadA":9}
                """); break;
            case ("discharge.csv" or "pulses.csv", _): File.WriteAllText(path, Discharge()); break;
            case ("pack.json", _): File.WriteAllText(path, WithoutUse()); break;
            case ("may.csv", _): File.Copy(Sample("tractor", "ride-may.csv"), path); break;
            case ("october.csv" or "ride.csv", _): File.Copy(Sample("tractor", "ride-october.csv"), path); break;
            case ("ride.csv.gz", _): Pack(Sample("tractor", "ride-october.csv"), path); break;
            case ("diagnosis.json", _): Answer(path, "diagnose", Sample("tractor", "ride-october.csv"), "--given", Sample("tractor", "given.json")); break;
            default: throw new ArgumentException($"No example has had a file {name} until now: write here what is in it.");
        }
    }

    private static string Sample(string scene, string name) => Path.Combine(Repository.Root, "sample-data", scene, name);

    // The same line answers the same: what one example has made, the next takes.
    private static void Answer(string path, params string[] line) => File.WriteAllText(path, answers.GetOrAdd(string.Join(' ', line), _ => new(() =>
    {
        (int exitCode, string output, string notes) = Planner.Run([.. line, "--json"]);
        Assert.True(exitCode == 0, output + notes);
        return output;
    })).Value);

    // A job and the files that it is made of, as the trike's demo writes them.
    private static void Job(Folder folder)
    {
        string place = folder.File("scene");
        if (!Directory.Exists(place))
            foreach ((string name, byte[] content) in trike.Value)
            {
                Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(place, name))!);
                File.WriteAllBytes(Path.Combine(place, name), content);
            }

        File.Copy(Path.Combine(place, "trike.job.json"), folder.File("trike.job.json"));
        Planner.Run("job", "set", folder.File("trike.job.json"), "reserve=12%");
    }

    private static Dictionary<string, byte[]> Demo()
    {
        using Folder made = new();
        string place = made.File("scene");
        Planner.Run("demo", "trike", "--into", place);
        return Directory.EnumerateFiles(place, "*", SearchOption.AllDirectories).ToDictionary(file => Path.GetRelativePath(place, file), File.ReadAllBytes);
    }

    // The examples say the use themselves.
    private static string WithoutUse()
    {
        JsonNode given = JsonNode.Parse(File.ReadAllText(Sample("tractor", "given.json")))!;
        Assert.True(given.AsObject().Remove("whPerKm"));
        return given.ToJsonString();
    }

    private static string LotFile(Folder folder)
    {
        File.WriteAllText(folder.File("lot.csv"), Lot());
        return folder.File("lot.csv");
    }

    private static string Lot() => "cell,capacity Ah,resistance mOhm\n" + string.Concat(
        Enumerable.Range(1, 60).Select(i => string.Create(CultureInfo.InvariantCulture, $"K{i:00},{2.4 + ((i * 37) % 101) / 1000.0:0.000},{30 + i % 7}\n")));

    private static string Built() => "cell,group\n" + string.Concat(
        Enumerable.Range(0, 52).Select(i => string.Create(CultureInfo.InvariantCulture, $"K{i + 1:00},{1 + i / 4}\n")));

    private static string Group() => "cell,capacity Ah,resistance mOhm,rest V\n" + string.Concat(
        Enumerable.Range(1, 8).Select(i => string.Create(CultureInfo.InvariantCulture, $"K{i:00},2.5,{30 + i % 4},{3.6 + i % 3 / 100.0:0.00}\n")));

    private static string Discharge()
    {
        StringBuilder rows = new("time s,current A,voltage V\n");
        for (int second = 0; second <= 7200; second += 10)
        {
            bool loaded = second is > 60 and <= 7000;
            double volts = 4.15 - 1.6 * Math.Max(0, Math.Min(second, 7000) - 60) / 6940 - (loaded ? 0.06 : 0);
            rows.Append(CultureInfo.InvariantCulture, $"{second},{(loaded ? 1.25 : 0)},{volts:0.0000}\n");
        }

        return rows.ToString();
    }

    private static void Pack(string from, string to)
    {
        using FileStream input = File.OpenRead(from);
        using GZipStream packed = new(File.Create(to), CompressionLevel.Fastest);
        input.CopyTo(packed);
    }
}
