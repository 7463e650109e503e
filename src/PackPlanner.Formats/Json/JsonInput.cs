using System.Text.Json;
using PackPlanner.Core;

namespace PackPlanner.Formats.Json;

/// <summary>
/// Reads a JSON file that a user wrote: fields by name, unknown fields ignored, and every field that is wrong named
/// with its path, so that one reading shows all that must be mended.
/// </summary>
public sealed class JsonInput
{
    private readonly JsonElement element;
    private readonly JsonElement? over;
    private readonly string path;
    private readonly JsonFaults faults;
    private readonly JsonStrangers strangers;

    private JsonInput(JsonElement element, string path, JsonFaults faults, JsonStrangers strangers, JsonElement? over = null)
    {
        (this.element, this.over, this.path) = (element, over, path);
        (this.faults, this.strangers) = (faults, strangers);
    }

    /// <summary>The file, as the user named it.</summary>
    public string File => faults.File;

    /// <summary>What was wrong so far; shared by all parts of one file.</summary>
    public IReadOnlyList<Problem> Problems => faults.All;

    /// <summary>The first problem as a refusal; null when all was well.</summary>
    public Refusal? Wrong => faults.AsRefusal;

    /// <summary>Fields that were not read though their name is nearly that of one that was looked for and is missing; one sentence each.</summary>
    public IEnumerable<string> NotRead => strangers.Sentences();

    /// <summary>Opens a file whose outermost value is an object.</summary>
    /// <param name="file">Path, or - for standard input.</param>
    /// <param name="standardInput">Opens standard input.</param>
    /// <returns>The outermost object, or why there is none.</returns>
    public static Outcome<JsonInput> Open(string file, Func<Stream>? standardInput = null)
    {
        if (!JsonFile.Read(file, standardInput).Is(out JsonElement root, out Refusal? why))
            return why;
        return JsonVersion.Newer(file, root) is { } newer ? newer : Of(file, root);
    }

    /// <summary>Reads text that holds one object, for options and job files.</summary>
    /// <param name="name">What to call it in messages.</param>
    /// <param name="root">The object.</param>
    /// <returns>A reader of it.</returns>
    public static JsonInput Of(string name, JsonElement root) => new(root, "", new JsonFaults(name), new JsonStrangers());

    /// <summary>The same object with some fields typed beside the file; what was typed wins.</summary>
    /// <param name="typed">An object of the same shape that holds only these fields.</param>
    /// <returns>A reader of both.</returns>
    public JsonInput With(JsonElement typed) => new(element, path, faults, strangers, typed);

    /// <summary>Names of this object's fields, each once, in the file's order; for objects that are keyed by labels.</summary>
    public IReadOnlyList<string> Names => [.. element.EnumerateObject().Select(member => member.Name).Distinct()];

    /// <summary>True when the field is there and not null.</summary>
    /// <param name="name">Field.</param>
    /// <returns>Whether it has a value.</returns>
    public bool Has(string name) => Field(name) is not null;

    /// <summary>A number; null when it is missing or null.</summary>
    /// <param name="name">Field.</param>
    /// <param name="least">Smallest allowed; null: any.</param>
    /// <param name="most">Largest allowed; null: any.</param>
    /// <returns>The finite number.</returns>
    public double? Number(string name, double? least = null, double? most = null)
    {
        if (Field(name) is not { } field)
            return null;
        if (!JsonValues.TryFinite(field, out double number))
            return Refuse(name, $"is {JsonWords.Shown(field)}, a number was expected", "Write a number without quotes or unit.");
        if (!LargestFigure.Allows(number))
            return Refuse(name, $"is {JsonWords.Shown(field)}, larger than anything that is measured", "Correct the figure.");
        if (number < least || number > most)
            return Refuse(name, $"is {field.GetRawText()}, it must be {JsonWords.Range(least, most)}", "Correct the figure.");
        return number;
    }

    /// <summary>A number that must be there.</summary>
    /// <param name="name">Field.</param>
    /// <returns>The finite number; null, with a problem noted, when it is missing or no number.</returns>
    public double? NumberNeeded(string name)
    {
        if (!Has(name))
            Refuse(name, "is missing", "Give it as a number.");
        return Number(name);
    }

    /// <summary>A whole number; null when it is missing or null.</summary>
    /// <param name="name">Field.</param>
    /// <param name="least">Smallest allowed.</param>
    /// <returns>The number.</returns>
    public int? Whole(string name, int least = int.MinValue)
    {
        if (Number(name, least == int.MinValue ? null : least) is not { } number)
            return null;
        if (number != Math.Floor(number) || Math.Abs(number) > int.MaxValue)
        {
            Refuse(name, $"is {number}, a whole number was expected", "Correct the figure.");
            return null;
        }

        return (int)number;
    }

    /// <summary>Text; null when it is missing or null.</summary>
    /// <param name="name">Field.</param>
    /// <returns>The text.</returns>
    public string? Text(string name)
    {
        if (Field(name) is not { } field)
            return null;
        if (field.ValueKind == JsonValueKind.String)
            return field.GetString();
        Refuse(name, $"is {JsonWords.Shown(field)}, text in quotes was expected", "Put it in quotes.");
        return null;
    }

    /// <summary>True or false; null when it is missing or null.</summary>
    /// <param name="name">Field.</param>
    /// <returns>The flag.</returns>
    public bool? Flag(string name)
    {
        if (Field(name) is not { } field)
            return null;
        if (field.ValueKind is JsonValueKind.True or JsonValueKind.False)
            return field.GetBoolean();
        Refuse(name, $"is {JsonWords.Shown(field)}, true or false was expected", "Write true or false without quotes.");
        return null;
    }

    /// <summary>An object; null when it is missing or null.</summary>
    /// <param name="name">Field.</param>
    /// <returns>A reader of it.</returns>
    public JsonInput? Part(string name)
    {
        if (Field(name) is not { } field)
            return null;
        if (field.ValueKind == JsonValueKind.Object)
            return new JsonInput(field, Path(name), faults, strangers, Typed(name));
        Refuse(name, $"is {JsonWords.Kind(field)}, an object {{…}} was expected", "Put its fields into braces.");
        return null;
    }

    /// <summary>An object that must be there.</summary>
    /// <param name="name">Field.</param>
    /// <param name="remedy">What to give, when it is missing.</param>
    /// <returns>A reader of it; null, with a problem noted, when it is missing or no object.</returns>
    public JsonInput? PartNeeded(string name, string remedy)
    {
        if (!Has(name))
            Refuse(name, "is missing", remedy);
        return Part(name);
    }

    /// <summary>A list of objects; empty when it is missing or null.</summary>
    /// <param name="name">Field.</param>
    /// <returns>A reader of each.</returns>
    public IReadOnlyList<JsonInput> Parts(string name)
    {
        List<JsonInput> parts = [];
        foreach ((JsonElement item, string at) in Items(name))
        {
            if (item.ValueKind == JsonValueKind.Object)
                parts.Add(new JsonInput(item, at, faults, strangers));
            else
                faults.Add(at, $"is {JsonWords.Kind(item)}, an object {{…}} was expected", "Put its fields into braces.");
        }

        return parts;
    }

    /// <summary>A list of numbers; null when it is missing or null.</summary>
    /// <param name="name">Field.</param>
    /// <param name="count">How many are wanted; null: any.</param>
    /// <returns>The numbers.</returns>
    public double[]? Numbers(string name, int? count = null)
    {
        if (!Has(name))
            return null;
        double[] numbers = Each<double>(name, JsonValues.TryMeasured, "a number", "Write a number without quotes or unit.");
        if (count is { } wanted && numbers.Length != wanted)
            Refuse(name, $"has {numbers.Length} numbers, {wanted} were expected", "Give all of them.");
        return numbers;
    }

    /// <summary>A list of texts; null when it is missing or null.</summary>
    /// <param name="name">Field.</param>
    /// <returns>The texts.</returns>
    public string[]? Texts(string name) =>
        Has(name) ? Each<string>(name, JsonValues.TryText, "text in quotes", "Put it in quotes.") : null;

    /// <summary>The raw value of a field, for shapes that this class has no word for.</summary>
    /// <param name="name">Field.</param>
    /// <returns>The value; null when it is missing or null.</returns>
    public JsonElement? Raw(string name) => Field(name);

    /// <summary>Remembers that a field is wrong.</summary>
    /// <param name="name">Field of this object.</param>
    /// <param name="why">What was found and what was expected.</param>
    /// <param name="remedy">What to do.</param>
    /// <returns>Null, so that a reader can return it.</returns>
    public double? Refuse(string name, string why, string remedy)
    {
        faults.Add(Path(name), why, remedy);
        return null;
    }

    private JsonElement? Typed(string name) => over is { } typed && typed.TryGetProperty(name, out JsonElement field) ? field : null;

    private JsonElement? Field(string name) =>
        Typed(name) is { } typed && (typed.ValueKind != JsonValueKind.Object || Own(name) is null) ? typed : Own(name);

    private JsonElement? Own(string name)
    {
        strangers.Ask(path, element, name);
        return element.TryGetProperty(name, out JsonElement field) && field.ValueKind is not (JsonValueKind.Null or JsonValueKind.Undefined) ? field : null;
    }

    private T[] Each<T>(string name, JsonValues.TryRead<T> tryRead, string expected, string remedy)
    {
        List<T> values = [];
        foreach ((JsonElement item, string at) in Items(name))
        {
            if (tryRead(item, out T value))
                values.Add(value);
            else
                faults.Add(at, $"is {JsonWords.Shown(item)}, {expected} was expected", remedy);
        }

        return [.. values];
    }

    private IEnumerable<(JsonElement Item, string At)> Items(string name)
    {
        if (Field(name) is not { } field)
            return [];
        if (field.ValueKind == JsonValueKind.Array)
            return field.EnumerateArray().Select((item, i) => (item, $"{Path(name)}[{i}]"));
        Refuse(name, $"is {JsonWords.Kind(field)}, a list […] was expected", "Put it into square brackets.");
        return [];
    }

    private string Path(string name) => path.Length == 0 ? name : $"{path}.{name}";
}
