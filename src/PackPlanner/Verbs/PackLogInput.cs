using System.CommandLine;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>Logs of a pack with what the owner says of it: the options that diagnose and compare share.</summary>
internal sealed class PackLogInput
{
    internal readonly Option<string?> GivenFile = new("--given") { Description = "JSON file with chemistry, series, parallel, ratedGroupAh, fullVoltage, emptyVoltage, whPerKm" };
    internal readonly Option<int?> Series = new("--series") { Description = "groups in series (default as many as the log has)" };
    internal readonly Option<int?> Parallel = new("--parallel") { Description = "cells in parallel in each group" };
    internal readonly Option<string?> RatedAh = new("--rated-ah") { Description = "capacity of one group when new, such as 17.8Ah" };
    internal readonly Option<string?> FullV = new("--full-v") { Description = "resting volts of a full group, such as 4.2V (default the chemistry's)" };
    internal readonly Option<string?> EmptyV = new("--empty-v") { Description = "resting volts of an empty group, such as 3.0V (default the chemistry's cut-off)" };
    internal readonly Option<string?> Use = new("--use") { Description = "use for each kilometre, such as 38Wh/km, for the range now and after each remedy" };

    internal IReadOnlyList<Option> All => [GivenFile, Series, Parallel, RatedAh, FullV, EmptyV, Use];

    /// <summary>One log, read and completed with what was said of the pack.</summary>
    internal sealed record Read(string File, PackLogReading Reading, PackGiven Given, IReadOnlyList<string> Understood);

    /// <summary>What was said of the pack, from the file and the options together.</summary>
    internal Outcome<GivenPackJson> Given(VerbCall call)
    {
        Chemistry? chemistry = call.Chemistry();
        double? rated = call.Quantity<ElectricCharge>(RatedAh, "a charge", "17.8Ah")?.AmpereHours;
        double? full = call.Quantity<ElectricPotential>(FullV, "a voltage", "4.2V")?.Volts;
        double? empty = call.Quantity<ElectricPotential>(EmptyV, "a voltage", "3.0V")?.Volts;
        double? use = call.Value(Use) is { } text ? UseOptions.Typed(call, text) : null;
        if (call.Value(Series) < 1)
            call.Refuse("--series", "a pack has one group at least", "Give the number of groups in series.");
        if (call.Value(Parallel) < 1)
            call.Refuse("--parallel", "a group has one cell at least", "Give the number of cells in parallel.");
        if (rated <= 0)
            call.Refuse("--rated-ah", $"{rated} Ah is no capacity", "Give the Ah of one group when new.");
        if (call.Wrong is { } wrong)
            return wrong;
        GivenPackJson typed = new(chemistry, call.Value(Series), call.Value(Parallel), rated, full, empty) { WhPerKm = use };
        if (call.Value(GivenFile) is not { } file)
            return typed;
        if (!JsonInput.Open(file, call.StandardInput).Is(out JsonInput? input, out Refusal? why))
            return why;
        return GivenPackJson.Read(input).Is(out GivenPackJson? given, out why) ? given.With(typed, file) : why;
    }

    /// <summary>Reads one log and checks it against what was said.</summary>
    internal static Outcome<Read> Open(VerbCall call, string file, GivenPackJson given)
    {
        ReadOptions options = call.ReadOptions() with
        {
            Chemistry = given.Chemistry,
            RatedAh = given.RatedGroupAh,
            Series = given.Series,
        };
        if (!PackLogs.Read(file, options).Is(out PackLogReading? reading, out Refusal? why))
            return why;
        List<string> understood = [];
        if (!given.For(reading.Log.Groups, file, understood).Is(out PackGiven? complete, out why))
            return why;
        RideLog log = reading.Log;
        if (log.CurrentA is null)
            return Refusal.Input("no-current", file, "no column is known as the pack's current", "A diagnosis counts charge: log the current too, or name its column current (A).");
        if (log.CurrentIsUnsigned)
            return Refusal.Input("unsigned-current", file, "the current has no sign in this log, so charge and discharge look alike", "Export the signed current, or log rides only and say --current-sign discharge.");
        if (log.Rows < 10)
            return Refusal.Input("too-short", file, $"{log.Rows} rows are too few for a diagnosis", "Log a ride: some minutes with steps of current at least.");
        return new Read(file, reading, complete, understood);
    }
}
