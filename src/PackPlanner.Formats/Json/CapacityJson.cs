using PackPlanner.Core.Bench;
using PackPlanner.Core.Cautions;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Json;

/// <summary>What logs of a cell or a string hold, as scripts read it.</summary>
public static class CapacityJson
{
    /// <summary>The answer, without the account of rows.</summary>
    /// <param name="read">Each file's findings and how it was read.</param>
    /// <param name="offsetCorrected">True where the offset at rest was taken off.</param>
    /// <returns>The answer.</returns>
    public static CapacityAnswer From(IReadOnlyList<(CurveReading Reading, TesterLogReading Log)> read, bool offsetCorrected)
    {
        CurveFileJson[] files = [.. read.Select(each => File(each.Reading, each.Log, offsetCorrected))];
        return new CapacityAnswer
        {
            Tests = [.. read.SelectMany(each => each.Reading.Steps.Select(step => Test(each.Reading.Source, step)))],
            Pulses = [.. read.SelectMany(each => each.Reading.Pulses.Select(pulse => Pulse(each.Reading, pulse)))],
            Rests = [.. read.SelectMany(each => each.Reading.Rests.Select(rest => Rest(each.Reading.Source, rest)))],
            Files = files,
            Cautions = CautionJson.From(files.Where(file => file.Leads is not null)
                .Select(file => new Caution("caution-30", SignalWord.Notice, file.File, CapacityWords.Saw(file.Leads!)))),
        };
    }

    private static CapacityTestStepJson Test(string file, TestStep step) => new()
    {
        File = file,
        Step = CapacityWords.Name(step.Direction),
        FromTimeS = step.FromTimeS,
        ToTimeS = step.ToTimeS,
        ChargeAh = step.ChargeAh,
        EnergyWh = step.EnergyWh,
        ChargeToCutOffAh = step.ChargeToCutOffAh,
        CutOffV = step.CutOffV,
        MeanCurrentA = JsonFigures.Known(step.MeanCurrentA),
        StartV = step.StartV,
        EndV = step.EndV,
        EndedBy = CapacityWords.Name(step.EndedBy),
        MeanTemperatureDegC = JsonFigures.Known(step.MeanTemperatureDegC),
        CounterAh = JsonFigures.Known(step.CounterAh),
        CounterDifferencePercent = JsonFigures.Known(100 * (step.ChargeAh / step.CounterAh - 1)),
        CounterWh = JsonFigures.Known(step.CounterWh),
        LongestGapS = step.LongestGapS,
        NotCountedS = step.NotCountedS,
    };

    private static PulseJson Pulse(CurveReading reading, PulseReading pulse) => new(
        pulse.AtTimeS, pulse.ResistanceMilliohm, pulse.AfterS, pulse.StepA, pulse.SwitchedOn ? "on" : "off", pulse.HeldS,
        pulse.DischargedAh, reading.Source, reading.Leads is not null);

    private static RestJson Rest(string file, RestReading rest) => new(
        file, rest.FromTimeS, rest.ToTimeS, rest.StartV, rest.EndV, rest.Loss.MillivoltPerDay,
        JsonFigures.Known(rest.Loss.PercentPerMonth), VerdictWords.Name(rest.Loss.Answer));

    private static CurveFileJson File(CurveReading reading, TesterLogReading log, bool offsetCorrected) => new(
        reading.Source, JsonFigures.Known(reading.RestOffsetA), offsetCorrected && reading.RestOffsetA is not null, log.SeriesGroups,
        reading.Leads is { } leads
            ? new LeadsJson(leads.ResistanceMilliohm, leads.SwitchOnMilliohm, leads.SwitchOffMilliohm, leads.DropV, leads.TimesUsual)
            : null);
}
