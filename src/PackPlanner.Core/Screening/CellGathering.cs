using PackPlanner.Core.Bench;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>Puts the rows of a table together into cells. Nothing here depends on the order of the rows but the order of the labels.</summary>
internal static class CellGathering
{
    // A tester's last sample can stand a little above its cut-off; more than this is a test broken off. Our choice.
    private const double AbortMarginV = 0.05;

    internal static IReadOnlyList<CellDraft> Of(IReadOnlyList<CellRow> rows, ScreeningRequest request)
    {
        double? usualEndV = UsualEndV(rows);
        double stepV = ReadingStep.Of([.. rows.SelectMany(RestVolts)]);
        return
        [
            .. rows.GroupBy(row => row.Label, StringComparer.Ordinal)
                .Select(cell => Cell(cell.Key, [.. cell], request, usualEndV, stepV)),
        ];
    }

    private static CellDraft Cell(string label, CellRow[] rows, ScreeningRequest request, double? usualEndV, double stepV)
    {
        CellRow[] tested = [.. rows.Where(row => row.CapacityAh > 0)];
        CellRow[] whole = WithoutCopies([.. tested.Where(row => !IsAborted(row, usualEndV))]);
        CellRow? aborted = tested.Where(row => IsAborted(row, usualEndV)).MaxBy(row => row.CapacityAh);
        (ResistanceKind kind, double[] milliohm) = Resistances(rows);
        string? chemistryWritten = Least(rows.Select(row => row.Chemistry));
        Chemistry? chemistry = Chemistries.Find(chemistryWritten) ?? request.Chemistry;
        string? noted = Noted(rows.Select(row => row.Condition));
        (IReadOnlyList<string> damage, bool understood) = ConditionWords.Read(noted);
        IReadOnlyList<string> remarked = ConditionWords.Read(Noted(rows.Select(row => row.Remark))).Damage;
        double[] ac = [.. rows.Select(row => row.AcResistanceMilliohm).OfType<double>().Where(value => value > 0)];
        return new CellDraft
        {
            Label = label,
            Rows = rows,
            Tests = whole,
            Aborted = whole.Length == 0 ? aborted : null,
            AbortedCutoffV = aborted?.TestCutoffV ?? usualEndV,
            CapacityAh = whole.Length > 0 ? Mean(whole.Select(row => row.CapacityAh!.Value)) : null,
            ResistanceMilliohm = milliohm.Length > 0 ? Mean(milliohm) : null,
            ResistanceKind = kind,
            ResistanceAfterS = rows.Where(row => row.ResistanceMilliohm > 0).Min(row => row.ResistanceAfterS),
            AcResistanceMilliohm = ac.Length > 0 ? Mean(ac) : null,
            ResistanceReadings = milliohm.Length,
            RestV = LatestRestV(rows),
            AllRestV = [.. rows.SelectMany(RestVolts)],
            SelfDischarge = Loss(rows, chemistry, stepV),
            Model = Least(rows.Select(row => row.Model)),
            RatedAh = rows.Min(row => row.RatedAh),
            Chemistry = chemistry,
            UnknownChemistry = Chemistries.Find(chemistryWritten) is null ? chemistryWritten : null,
            Damage = [.. damage.Concat(remarked).Distinct().Order(StringComparer.Ordinal)],
            UnreadCondition = understood ? null : noted,
            HasCondition = rows.Any(row => row.Condition is not null),
        };
    }

    private static bool IsAborted(CellRow row, double? usualEndV) =>
        BrokenOffWords.Say(row.Remark) || BrokenOffWords.Say(row.Condition)
        || (row.TestEndV is { } end && (row.TestCutoffV ?? usualEndV) is { } cutoff && end > cutoff + AbortMarginV + 1e-9);

    // Where a table tells at what voltage each test ended but not where it should have, most of the lot shows it.
    private static double? UsualEndV(IReadOnlyList<CellRow> rows)
    {
        double[] ends = [.. rows.Where(row => row.CapacityAh > 0).Select(row => row.TestEndV).OfType<double>()];
        return ends.Length >= 3 ? Robust.Median(ends) : null;
    }

    // One figure written in several rows (a sheet with a line for each state of charge, say) is one test, not many
    // that agree wonderfully, unless slot or date says that it was tested anew.
    private static CellRow[] WithoutCopies(CellRow[] tests) =>
        [.. tests.DistinctBy(row => (row.CapacityAh, row.Slot, row.Date))];

    private static (ResistanceKind Kind, double[] Milliohm) Resistances(CellRow[] rows)
    {
        CellRow[] read = [.. rows.Where(row => row.ResistanceMilliohm > 0)];
        if (read.Length == 0)
            return (ResistanceKind.Unknown, []);
        ResistanceKind kind = read.GroupBy(row => row.ResistanceKind)
            .OrderByDescending(group => group.Count())
            .ThenBy(group => group.Key == ResistanceKind.Unknown ? 3 : (int)group.Key)
            .First().Key;
        return (kind, [.. read.Where(row => row.ResistanceKind == kind).Select(row => row.ResistanceMilliohm!.Value)]);
    }

    private static IEnumerable<double> RestVolts(CellRow row) =>
        new[] { row.RestV, row.LaterRestV }.OfType<double>();

    // Without dates nobody knows which reading is the latest; then the lowest speaks. A later reading is later than those
    // that tell no date, even where it is higher: a cell may have been charged since.
    private static double? LatestRestV(CellRow[] rows)
    {
        bool anyLater = rows.Any(row => row.LaterRestV is not null);
        (DateTime? Date, double V)[] readings =
        [
            .. rows.Where(row => row.RestV is not null && !(anyLater && row.Date is null)).Select(row => (row.Date, row.RestV!.Value)),
            .. rows.Where(row => row.LaterRestV is not null).Select(row => (row.LaterDate ?? DateTime.MaxValue, row.LaterRestV!.Value)),
        ];
        if (readings.Length == 0)
            return null;
        return readings.Any(reading => reading.Date is null) && readings.All(reading => reading.Date != DateTime.MaxValue)
            ? readings.Min(reading => reading.V)
            : readings.OrderByDescending(reading => reading.Date ?? DateTime.MinValue).ThenBy(reading => reading.V).First().V;
    }

    // A cell that was cycled between two readings did not lose that charge by itself, so readings of several rows
    // count together only when no more than one of the rows is a capacity test.
    private static SelfDischarge? Loss(CellRow[] rows, Chemistry? chemistry, double stepV)
    {
        IEnumerable<CellRow> usable = rows.Count(row => row.CapacityAh > 0) > 1
            ? rows.Where(row => row.LaterRestV is not null).OrderByDescending(row => row.LaterDate).Take(1)
            : rows;
        (DateTime Date, double V)[] readings =
        [
            .. usable.SelectMany(row => new (DateTime?, double?)[] { (row.Date, row.RestV), (row.LaterDate, row.LaterRestV) })
                .Where(reading => reading.Item1 is not null && reading.Item2 is not null)
                .Select(reading => (reading.Item1!.Value, reading.Item2!.Value))
                .Distinct()
                .OrderBy(reading => reading.Item1).ThenBy(reading => reading.Item2),
        ];
        if (readings.Length > 1 && readings[^1].Date > readings[0].Date)
        {
            double[] days = [.. readings.Select(reading => (reading.Date - readings[0].Date).TotalDays)];
            return SelfDischarge.Of(days, [.. readings.Select(reading => reading.V)], stepV, chemistry?.Curve);
        }

        double[] stated = [.. rows.Select(row => row.SelfDischargeMillivoltPerDay).OfType<double>()];
        return stated.Length == 0 ? null : SelfDischarge.Stated(Mean(stated), LatestRestV(rows), chemistry?.Curve);
    }

    // Summed in order of size, so that reordered rows give the same last digit.
    private static double Mean(IEnumerable<double> values) => values.Order().Average();

    private static string? Least(IEnumerable<string?> words) =>
        words.Where(word => !string.IsNullOrWhiteSpace(word)).Select(word => word!.Trim()).Min(StringComparer.Ordinal);

    private static string? Noted(IEnumerable<string?> words)
    {
        string[] said = [.. words.Where(word => !string.IsNullOrWhiteSpace(word)).Select(word => word!.Trim()).Distinct().Order(StringComparer.Ordinal)];
        return said.Length == 0 ? null : string.Join("; ", said);
    }
}
