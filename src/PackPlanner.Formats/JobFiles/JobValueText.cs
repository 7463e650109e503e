using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Values, origins and moments in a job file.</summary>
internal static class JobValueText
{
    /// <summary>Puts a value under "value"; a moment under "moment", so that it is not taken for words.</summary>
    internal static void Write(JsonObject target, JobValue? value)
    {
        switch (value)
        {
            case null:
                break;
            case JobValue.Number number:
                target["value"] = number.Value;
                break;
            case JobValue.Word word:
                target["value"] = word.Value;
                break;
            case JobValue.YesNo tick:
                target["value"] = tick.Value;
                break;
            case JobValue.Moment moment:
                target["moment"] = moment.Value.ToString(CellRowText.MomentFormat, CultureInfo.InvariantCulture);
                break;
            default:
                throw new UnreachableException();
        }
    }

    internal static JobValue? Read(JsonInput input)
    {
        if (ReadMoment(input, "moment") is { } moment)
            return new JobValue.Moment(moment);
        return input.Raw("value")?.ValueKind switch
        {
            null => null,
            JsonValueKind.String => input.Text("value") is { Length: > 0 } word ? new JobValue.Word(word) : null,
            JsonValueKind.True or JsonValueKind.False => new JobValue.YesNo(input.Flag("value")!.Value),
            _ => input.Number("value") is { } number ? new JobValue.Number(number) : null,
        };
    }

    internal static void Write(JsonObject target, Origin origin)
    {
        target["from"] = origin.From;
        target["standing"] = origin.Standing switch
        {
            Standing.Measured => "measured",
            Standing.DataSheet => "data-sheet",
            Standing.Assumed => "assumed",
            _ => throw new UnreachableException(),
        };
        if (origin.On is { } day)
            target["on"] = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
    }

    internal static Origin ReadOrigin(JsonInput input)
    {
        Standing standing = input.Text("standing") switch
        {
            "data-sheet" => Standing.DataSheet,
            "assumed" => Standing.Assumed,
            _ => Standing.Measured,
        };
        DateTime? on = ReadMoment(input, "on");
        return new Origin(input.Text("from") ?? "unknown", standing, on is { } day ? DateOnly.FromDateTime(day) : null);
    }

    internal static DateTime? ReadMoment(JsonInput input, string name)
    {
        if (input.Text(name) is not { } text)
            return null;
        if (DateTime.TryParseExact(text, [CellRowText.MomentFormat, "yyyy-MM-dd"], CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime moment))
            return moment;
        input.Refuse(name, $"is \"{text}\", a day such as 2026-11-02 was expected", "Write year, month and day with hyphens.");
        return null;
    }
}
