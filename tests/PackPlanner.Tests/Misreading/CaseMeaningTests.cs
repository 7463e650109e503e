using System.Text;
using System.Text.Json.Nodes;
using PackPlanner.Tests.Fuzz;

namespace PackPlanner.Tests.Misreading;

/// <summary>JSON cases written in another way give the same answer; figures in another unit than their key says do not pass unseen.</summary>
public sealed class CaseMeaningTests : IDisposable
{
    private static readonly (string Verb, string[] Options, string Text)[] Cases =
        [("share", [], FuzzInputs.ShareCase), ("size", [], FuzzInputs.SizeCase), ("fit", ["--quick"], FuzzInputs.OneCellCase)];

    private readonly string folder = Directory.CreateTempSubdirectory("packplanner-misreading-").FullName;

    [Fact]
    public void The_order_of_keys_blanks_a_byte_order_mark_and_keys_that_nobody_knows_change_nothing()
    {
        foreach ((string verb, string[] options, string text) in Cases)
        {
            AnswerFacts whole = Read(Encoding.UTF8.GetBytes(text), verb, options);
            Assert.Equal(0, whole.ExitCode);
            JsonNode node = JsonNode.Parse(text)!;
            foreach (byte[] bytes in new[]
            {
                Encoding.UTF8.GetBytes(Turned(node).ToJsonString()),
                [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(node.ToJsonString(new() { WriteIndented = true }))],
                Encoding.UTF8.GetBytes(text.Insert(1, "\"nobodyKnows\":[1,{\"a\":null}],")),
            })
                Assert.Null(whole.Difference(Read(bytes, verb, options)));
        }
    }

    [Theory]
    [InlineData("share", "\"openCircuitV\":3.62,\"resistanceMilliohm\":31.4", "\"openCircuitV\":3620,\"resistanceMilliohm\":31.4", "openCircuitV|3620")]
    [InlineData("share", "\"resistanceMilliohm\":31.4", "\"resistanceOhm\":0.0314", "resistanceMilliohm")]
    [InlineData("share", "\"positiveLinkMilliohm\"", "\"positiveLinkOhm\"", "positiveLinkMilliohm")]
    [InlineData("share", "\"loadA\":40", "\"load\":40", "current is drawn")]
    [InlineData("size", "\"capacityAh\":5.0", "\"capacityMah\":5000", "capacityAh")]
    [InlineData("size", "\"capacityAh\":5.0", "\"capacityAh\":5000", "capacityAh|5000")]
    [InlineData("size", "\"nominalV\":3.6", "\"nominalV\":3600", "nominalV|3600")]
    [InlineData("size", "\"resistanceMilliohm\":18", "\"resistanceMilliohm\":0.018", "resistance|0.018")]
    [InlineData("size", "\"reserve\":0.1", "\"reserve\":10", "reserve")]
    [InlineData("size", "\"whPerKm\":14", "\"kwhPerKm\":0.014", "whPerKm")]
    [InlineData("fit", "\"diameterMm\":21.4", "\"diameterMm\":0.0214", "diameterMm|0.0214|cells by volume")]
    [InlineData("fit", "\"diameterMm\":21.4", "\"diameterCm\":2.14", "diameterMm")]
    [InlineData("fit", "[0,0,0,30,32,90]", "[0,0,0,30000,32000,90000]", "cells by volume")]
    [InlineData("fit", "\"wallMm\":2", "\"wallCm\":0.2", "wallMm")]
    public void A_figure_in_another_unit_than_its_key_says_is_refused_or_named(string verb, string was, string becomes, string told)
    {
        (_, string[] options, string text) = Array.Find(Cases, one => one.Verb == verb);
        Assert.Contains(was, text, StringComparison.Ordinal);
        AnswerFacts whole = Read(Encoding.UTF8.GetBytes(text), verb, options);
        AnswerFacts damaged = Read(Encoding.UTF8.GetBytes(text.Replace(was, becomes, StringComparison.Ordinal)), verb, options);

        Assert.True(
            whole.Difference(damaged) is null || damaged.Said.Except(whole.Said).Any(said => told.Split('|').Any(word => said.Contains(word, StringComparison.OrdinalIgnoreCase))),
            $"{whole.Difference(damaged)}; said: {string.Join(" | ", damaged.Said.Except(whole.Said))}");
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(folder, recursive: true);

    private AnswerFacts Read(byte[] bytes, string verb, string[] options) => Reading.Of(bytes, Path.Combine(folder, "case.json"), verb, options);

    private static JsonNode Turned(JsonNode node) => node switch
    {
        JsonObject fields => new JsonObject(fields.Reverse().Select(field => KeyValuePair.Create(field.Key, field.Value is null ? null : Turned(field.Value)))),
        JsonArray list => new JsonArray([.. list.Select(one => one is null ? null : Turned(one))]),
        _ => node.DeepClone(),
    };
}
