using System.Globalization;
using PackPlanner.Core.Bench;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>What logs of a cell or a string hold, for people.</summary>
public static class CapacityWords
{
    /// <summary>charge, discharge or rest.</summary>
    public static string Name(CurrentDirection direction) => direction switch
    {
        CurrentDirection.Charge => "charge",
        CurrentDirection.Discharge => "discharge",
        _ => "rest",
    };

    /// <summary>cut-off, current-taper, aborted or unknown.</summary>
    public static string Name(StepEnd end) => end switch
    {
        StepEnd.CutOff => "cut-off",
        StepEnd.CurrentTaper => "current-taper",
        StepEnd.Aborted => "aborted",
        _ => "unknown",
    };

    /// <summary>The steps and the resistances.</summary>
    /// <param name="answer">The same as scripts read it.</param>
    /// <returns>Lines.</returns>
    public static IReadOnlyList<string> Lines(CapacityAnswer answer)
    {
        List<string> lines = [Sum(answer), ""];
        lines.Add("  step            from s       to s        Ah        Wh  to cut-off   mean A  start V    end V  ended by");
        foreach (CapacityTestStepJson test in answer.Tests)
            lines.Add($"  {test.Step,-10} {Text(test.FromTimeS, "0"),11} {Text(test.ToTimeS, "0"),10} {Text(test.ChargeAh, "0.0000"),9} {Text(test.EnergyWh, "0.000"),9}"
                + $" {Text(test.ChargeToCutOffAh, "0.0000"),11} {Text(test.MeanCurrentA, "0.000"),8} {Text(test.StartV, "0.000"),8} {Text(test.EndV, "0.000"),8}  {test.EndedBy}"
                + (test.EndedBy == "aborted" ? ": no capacity, repeat it" : "")
                + (test.CounterAh is { } counter ? $"; tester counts {Text(counter, "0.00##")} Ah ({Text(test.CounterDifferencePercent, "+0.000;-0.000;0.000")} %)" : ""));
        if (answer.Pulses.Count > 0)
        {
            lines.Add("");
            lines.Add("  resistance      at s  after s   step A      mΩ  switched");
        }

        foreach (PulseJson pulse in answer.Pulses)
            lines.Add($"             {Text(pulse.AtTimeS, "0.0"),9} {Text(pulse.AfterS, "0.##"),8} {Text(pulse.StepA, "0.00"),8} {Text(pulse.ResistanceMilliohm, "0.000"),7}  {pulse.Edge}{(pulse.WithLeads ? ", leads included" : "")}");
        foreach (RestJson rest in answer.Rests)
            lines.Add($"  rest {Text(rest.FromTimeS / 86400, "0.0")} to {Text(rest.ToTimeS / 86400, "0.0")} days: {Text(rest.MillivoltPerDay, "0.00")} mV/day over its second half, {(rest.PercentPerMonth is { } percent ? $"{Text(percent, "0.0#")} % a month" : rest.Answer)}");
        return lines;
    }

    /// <summary>Sentences on each file: its offset at rest and leads in its volts.</summary>
    /// <param name="file">The file.</param>
    /// <returns>Sentences.</returns>
    public static IEnumerable<string> Understood(CurveFileJson file)
    {
        if (file.RestOffsetA is { } offset && Math.Abs(offset) >= 0.0005)
            yield return $"{file.File}: at rest the sensor shows {Text(offset, "0.0000")} A; {(file.OffsetCorrected ? "that was taken off every reading" : "it stands in the figures, --correct-offset takes it off")}.";
        if (file.Leads is { } leads)
            yield return $"{file.File}: {Saw(leads)}.";
    }

    /// <summary>Sentences on holes in a log for which no charge was counted.</summary>
    /// <param name="reading">What the log holds.</param>
    /// <returns>A sentence for each charge or discharge that has some.</returns>
    public static IEnumerable<string> Holes(CurveReading reading) => reading.Steps.Where(step => step.NotCountedS > 0).Select(step =>
        $"{reading.Source}: {Text(step.NotCountedS, "0")} s without rows in the {Name(step.Direction)} that begins at {Text(step.FromTimeS, "0")} s are not counted, since nothing shows that the current went on;"
        + $" had it, it would be {Text(step.NotCountedS * step.UsualCurrentA / 3600, "0.000")} Ah more. Test anew where it matters.");

    /// <summary>What was seen of leads.</summary>
    /// <param name="leads">The finding.</param>
    /// <returns>A clause.</returns>
    public static string Saw(LeadsJson leads) =>
        $"the volts jump alike at switching on ({Text(leads.SwitchOnMilliohm, "0.0")} mΩ) and off ({Text(leads.SwitchOffMilliohm, "0.0")} mΩ), {Text(leads.TimesUsual, "0.#")} times the most that a cell of this capacity has:"
        + $" leads or a contact are in the voltage reading, which is {Text(leads.DropV, "0.00")} V off under current; neither the resistance nor the cut-off is the cell's";

    /// <summary>One row a charge or discharge.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(CapacityAnswer answer) => new(
        ["file", "step", "fromTimeS", "toTimeS", "chargeAh", "energyWh", "chargeToCutOffAh", "cutOffV", "meanCurrentA", "startV", "endV", "endedBy", "meanTemperatureDegC", "counterAh", "counterWh"],
        [.. answer.Tests.Select(test => new object?[]
        {
            test.File, test.Step, test.FromTimeS, test.ToTimeS, test.ChargeAh, test.EnergyWh, test.ChargeToCutOffAh, test.CutOffV,
            test.MeanCurrentA, test.StartV, test.EndV, test.EndedBy, test.MeanTemperatureDegC, test.CounterAh, test.CounterWh,
        })]);

    private static string Sum(CapacityAnswer answer)
    {
        // The last part of a discharge in parts ends at the cut-off too, but it did not begin full.
        CapacityTestStepJson[] whole =
        [
            .. answer.Tests.Where((test, i) => test is { Step: "discharge", EndedBy: "cut-off" or "current-taper" }
                && (i == 0 || answer.Tests[i - 1].Step != "discharge" || answer.Tests[i - 1].File != test.File)),
        ];
        string found = $"{answer.Tests.Count(test => test.Step == "discharge")} discharges, {answer.Tests.Count(test => test.Step == "charge")} charges, {answer.Pulses.Select(pulse => (pulse.File, pulse.AtTimeS)).Distinct().Count()} steps of the current.";
        return whole.Length == 0
            ? $"{found} None of them is known to be a whole discharge, so none is told as a capacity."
            : $"{found} Whole discharges gave {string.Join(", ", whole.Take(8).Select(test => Text(test.ChargeAh, "0.000")))}{(whole.Length > 8 ? " …" : "")} Ah.";
    }

    private static string Text(double? figure, string format) => figure?.ToString(format, CultureInfo.InvariantCulture) ?? "-";
}
