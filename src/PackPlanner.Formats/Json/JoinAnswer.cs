using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>join --json</c> prints.</summary>
/// <param name="Groups">Each cell against the others of its group.</param>
/// <param name="Order">Labels in the order of joining, group after group; cells that are not to be joined are left out.</param>
/// <param name="WorstPairs">The two cells of each group that would drive most between them alone.</param>
public sealed record JoinAnswer(
    IReadOnlyList<JoinCellJson> Groups, IReadOnlyList<string> Order, IReadOnlyList<JoinPairJson> WorstPairs) : Answer
{
    /// <inheritdoc/>
    [JsonPropertyOrder(-100)]
    public override string Schema => "packplanner/join";
}

/// <summary>One cell.</summary>
/// <param name="Group">Number of the group, from 1.</param>
/// <param name="Cell">Its label.</param>
/// <param name="RestV">Resting volts; null when not measured.</param>
/// <param name="InrushA">Amperes when it is joined to all the others, already in parallel; null when unknown.</param>
/// <param name="Direction">receives or gives; null when unknown or level.</param>
/// <param name="LimitA">What the ratings allow; null when unknown.</param>
/// <param name="InOrderA">Amperes when joined in the stated order; null for the first and where unknown.</param>
/// <param name="BringToV">Volts to bring it to alone before joining; null where it is not to be charged.</param>
/// <param name="WithinV">Resting volts between which it may be joined; null when unknown.</param>
/// <param name="ResistorOhm">Resistor that holds the current to the limit; 0 where none is needed; null when unknown.</param>
/// <param name="Hours">Hours through that resistor; null where the curve does not tell.</param>
/// <param name="Order">Its place in the order, from 1; null where it is not to be joined.</param>
/// <param name="Reason">not-to-be-charged or no-resting-volts; null where it has a place.</param>
public sealed record JoinCellJson(
    int Group,
    string Cell,
    double? RestV,
    double? InrushA,
    string? Direction,
    double? LimitA,
    double? InOrderA,
    double? BringToV,
    RangeJson? WithinV,
    double? ResistorOhm,
    double? Hours,
    int? Order,
    string? Reason);

/// <summary>Two cells joined alone.</summary>
/// <param name="Group">Number of the group, from 1.</param>
/// <param name="Giver">The fuller one.</param>
/// <param name="Receiver">The emptier one.</param>
/// <param name="InrushA">Amperes at the first instant.</param>
public sealed record JoinPairJson(int Group, string Giver, string Receiver, double InrushA);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(JoinAnswer))]
public sealed partial class JoinAnswerContext : JsonSerializerContext;
