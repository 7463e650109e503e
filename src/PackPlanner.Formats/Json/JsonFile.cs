using System.Text.Json;
using System.Text.Unicode;
using PackPlanner.Formats.Files;

namespace PackPlanner.Formats.Json;

/// <summary>The outermost object of a JSON file.</summary>
internal static class JsonFile
{
    /// <param name="file">Path, or - for standard input.</param>
    /// <param name="standardInput">Opens standard input.</param>
    /// <returns>The object, or why there is none.</returns>
    internal static Outcome<JsonElement> Read(string file, Func<Stream>? standardInput)
    {
        if (!InputBytes.Read(file, standardInput).Is(out byte[]? bytes, out Refusal? why))
            return why;
        if (!Utf8.IsValid(bytes))
            return Refusal.Input("not-utf8", file, "it holds bytes that are not UTF-8 text", "Save it as UTF-8.");
        try
        {
            ReadOnlyMemory<byte> text = bytes.AsSpan() is [0xEF, 0xBB, 0xBF, ..] ? bytes.AsMemory(3) : bytes;
            using JsonDocument document = JsonDocument.Parse(
                text, new JsonDocumentOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
            JsonElement root = document.RootElement.Clone();
            return root.ValueKind == JsonValueKind.Object
                ? root
                : Refusal.Input("not-an-object", file, $"its outermost value is {JsonWords.Kind(root)}, an object {{…}} was expected", "Put the fields into one object.");
        }
        catch (JsonException fault)
        {
            return Refusal.Input("not-json", $"{file}, line {fault.LineNumber + 1}", "this is not JSON: " + JsonWords.Cause(fault),
                "Mend the file there; docs/files.md lists the fields of a case, and packplanner demo --into DIR writes whole ones.");
        }
    }
}
