using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>conductor --json</c> prints.</summary>
/// <param name="Kind">wire, cable or bar.</param>
/// <param name="Metal">copper, nickel or steel.</param>
/// <param name="LengthM">Metres that the current goes through, both ways where asked.</param>
/// <param name="Pieces">Side by side.</param>
/// <param name="AreaMm2">Metal of all pieces; null for a cable, whose nominal size is not its metal.</param>
/// <param name="ResistanceMilliohm">At 20 °C.</param>
/// <param name="TemperatureDegC">Temperature of the metal asked for; null: none was.</param>
/// <param name="WarmMilliohm">At that temperature; null where none was asked for or no coefficient is known.</param>
/// <param name="LoadA">Amperes; null without a load.</param>
/// <param name="DropV">Volts lost at the temperature asked for, else at 20 °C; null without a load.</param>
/// <param name="HeatW">Watts that go with them.</param>
/// <param name="CurrentPerMm2A">Amperes for each square millimetre of metal.</param>
/// <param name="WarmsKelvinPerSecond">If no heat left it; null for other metals than copper and for cables.</param>
/// <param name="CopperMm2">Copper of as many ohms.</param>
/// <param name="EqualAwg">The thinnest solid wire with no more ohms; null above 4/0.</param>
/// <param name="Basis">Where each figure comes from.</param>
public sealed record ConductorAnswer(
    string Kind, string Metal, double LengthM, int Pieces, double? AreaMm2, double ResistanceMilliohm, double? TemperatureDegC, double? WarmMilliohm,
    double? LoadA, double? DropV, double? HeatW, double? CurrentPerMm2A, double? WarmsKelvinPerSecond, double CopperMm2, string? EqualAwg,
    IReadOnlyList<string> Basis) : Answer
{
    /// <inheritdoc/>
    [JsonPropertyOrder(-100)]
    public override string Schema => "packplanner/conductor";
}

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ConductorAnswer))]
public sealed partial class ConductorAnswerContext : JsonSerializerContext;
