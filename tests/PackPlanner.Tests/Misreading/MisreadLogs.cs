using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Misreading;

/// <summary>Compares what two writings of one log are read as, sample by sample.</summary>
internal static class MisreadLogs
{
    /// <summary>The first difference in words; null when every sample is the same.</summary>
    internal static string? Difference(KnownTable table, KnownTable changed)
    {
        (RideLog? one, string? whyOne) = Read(table);
        (RideLog? two, string? whyTwo) = Read(changed);
        if (one is null || two is null)
            return whyOne ?? whyTwo;
        if (one.Groups != two.Groups)
            return $"{one.Groups} groups became {two.Groups}";
        if (one.CurrentIsUnsigned != two.CurrentIsUnsigned)
            return $"a current without sign: {one.CurrentIsUnsigned} became {two.CurrentIsUnsigned}";
        string? found = Column("time", one.TimeS, two.TimeS) ?? Column("current", one.CurrentA, two.CurrentA);
        for (int group = 0; group < one.Groups; group++)
            found ??= Column($"group {group + 1}", one.GroupV[group], two.GroupV[group]);
        for (int probe = 0; probe < Math.Max(one.TemperatureDegC.Length, two.TemperatureDegC.Length); probe++)
            found ??= Column($"probe {probe + 1}", one.TemperatureDegC.ElementAtOrDefault(probe), two.TemperatureDegC.ElementAtOrDefault(probe));
        return found;
    }

    internal static (RideLog? Log, string? Why) Read(KnownTable table)
    {
        byte[] bytes = table.Bytes();
        return PackLogs.Read("-", new ReadOptions { StandardInput = () => new MemoryStream(bytes) }).Is(out PackLogReading? reading, out Refusal? why)
            ? (reading.Log, null) : (null, why.ToString());
    }

    private static string? Column(string name, double[]? one, double[]? two)
    {
        if (one is null || two is null || one.Length != two.Length)
            return one is null && two is null ? null : $"{name}: {one?.Length} samples became {two?.Length}";
        for (int i = 0; i < one.Length; i++)
            if (!(Math.Abs(one[i] - two[i]) <= 1e-9 * Math.Max(1, Math.Abs(one[i]))) && !(double.IsNaN(one[i]) && double.IsNaN(two[i])))
                return $"{name}, row {i + 1}: {one[i]} became {two[i]}";
        return null;
    }
}
