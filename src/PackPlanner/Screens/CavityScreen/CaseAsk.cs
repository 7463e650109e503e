using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>Asks the figures of one part of a case, field by field; what is typed is drawn as soon as it makes sense.</summary>
/// <param name="desk">Where it is asked.</param>
/// <param name="draft">Takes the case as typed so far, to be drawn; null when it does not make sense yet.</param>
internal sealed partial class CaseAsk(Desk desk, Action<FitCase?, string?> draft)
{
    private static readonly (string Plane, string Words, string Along)[] Planes =
    [
        ("xy", "seen from above: x y of each corner, drawn out upwards", "z"),
        ("xz", "seen from the front: x z of each corner, drawn out to the back", "y"),
        ("yz", "seen from the left: y z of each corner, drawn out to the right", "x"),
    ];

    private static readonly (string Side, string Words)[] Sides =
    [
        ("+z", "on top (x y)"), ("-z", "below (x y)"), ("-y", "at the front (x z)"), ("+y", "at the back (x z)"), ("-x", "at the left (y z)"), ("+x", "at the right (y z)"),
    ];

    /// <summary>Asks what is to be added; without a case, the space first.</summary>
    internal void Add()
    {
        if (desk.Job!.FitCase is null)
        {
            Choose("what is the space?",
                ("a box: length x width x height", () => AskInside()),
                ("an outline of corners, drawn out along one direction", () => AskOutline(CasePartKind.Space, null, AskCell)));
            return;
        }

        Choose("what is added?",
            ("a keep-out: a box that must stay free", () => AskBox(CasePartKind.KeepOut, null)),
            ("a keep-out: a tube that must stay free", () => AskTube(null)),
            ("a keep-out: an outline that must stay free", () => AskOutline(CasePartKind.KeepOut, null, null)),
            ("one more box of space", () => AskBox(CasePartKind.Space, null)),
            ("one more outline of space", () => AskOutline(CasePartKind.Space, null, null)),
            ("an opening: a way in", () => AskOpening(null)),
            ("a part that weighs: box, fuse, contactor", () => AskWeighed(null)));
    }

    /// <summary>Asks the figures of a part anew.</summary>
    internal void Change(CasePart part)
    {
        switch (part.Kind)
        {
            case CasePartKind.Space or CasePartKind.KeepOut when part.Has("prism"): AskOutline(part.Kind, part, null); break;
            case CasePartKind.Space or CasePartKind.KeepOut when part.Has("tube"): AskTube(part); break;
            case CasePartKind.Space or CasePartKind.KeepOut: AskBox(part.Kind, part); break;
            case CasePartKind.Opening: AskOpening(part); break;
            case CasePartKind.Weighed: AskWeighed(part); break;
            case CasePartKind.Cell:
                Field("cell, mm", CellHelp, By(TypedCase.CellSizes(part.Node)), [2, 3], mm => Candidate(CasePartKind.Cell, part, TypedCase.Cell(mm)), node => Take(node, "change the cell's size"));
                break;
            default:
                Field("clearances, mm", ClearanceHelp, By(TypedCase.Clearances(part.Node, IsRound)), [3], mm => Candidate(CasePartKind.Clearances, part, TypedCase.Clearance(mm, IsRound, part.Node)), node => Take(node, "change the clearances"));
                break;
        }
    }

    private const string CellHelp = "Round: diameter x length, such as 21.2 x 70.2. Flat: length x thickness x height.";
    private const string ClearanceHelp = "To the walls, at the ends or terminals, between cells, such as 2 x 3 x 0.8.";

    // Stands where the cell is not typed yet; large, so that a space is not refused for holding too many of them.
    private static readonly double[] StandIn = [60, 60];

    private bool IsRound => (TypedCase.Of(desk.Job!)?["cell"] as JsonObject)?["thicknessMm"] is null;

    private void AskInside() => Field(
        "inside, mm", "Length x width x height of the space, such as 310 x 190 x 95.", "", [3],
        mm => TypedCase.New(TypedCase.Box([0, 0, 0], mm), StandIn, [0, 0, 0], desk.Job!.Givens),
        made => AskCell((JsonObject)made["cavity"]!["parts"]![0]!),
        mm => mm.Any(one => one <= 0) ? $"{One(mm.First(one => one <= 0))} is no size: give each above 0." : null);

    private void AskCell(JsonObject space) => Field("cell, mm", CellHelp, "", [2, 3],
        mm => TypedCase.New((JsonObject)space.DeepClone(), mm, [0, 0, 0], desk.Job!.Givens),
        made => Field("clearances, mm", ClearanceHelp, "2 x 3 x 0.8", [3],
            mm =>
            {
                JsonObject whole = (JsonObject)made.DeepClone();
                whole["clearance"] = TypedCase.Clearance(mm, round: made["cell"]!["diameterMm"] is not null);
                return whole;
            },
            whole => Take(whole, "describe the space")));

    private void AskBox(CasePartKind kind, CasePart? old)
    {
        double[]? box = old?.Numbers("box");
        Field("corner, mm", "Its lower left front corner: x y z from the space's own corner, such as 0 0 0.", box is null ? "0 0 0" : Typed(box[..3]), [3], null, corner =>
            Field("size, mm", "Its length x width x height from there, such as 40 x 190 x 95.", box is null ? "" : By([box[3] - box[0], box[4] - box[1], box[5] - box[2]]), [3],
                size => Candidate(kind, old, TypedCase.Box(corner, size)), made => Take(made, kind, old), NoSize));
    }

    private void AskOutline(CasePartKind kind, CasePart? old, Action<JsonObject>? first)
    {
        JsonObject? before = old?.Node?["prism"] as JsonObject;
        Choose("how is the outline seen?", [.. Planes.Select(plane => (plane.Words, (Action)(() => Corners(plane.Plane, plane.Along))))]);

        void Corners(string plane, string along)
        {
            bool same = (before?["plane"]?.ToString() ?? "xz") == plane;
            string initial = same && before?["outline"] is JsonArray outline
                ? string.Join(" ", outline.Select(corner => CasePart.Numbers(corner)).OfType<double[]>().Where(corner => corner.Length == 2).Select(corner => $"{One(corner[0])},{One(corner[1])}")) : "";
            double[][] corners = [];
            desk.Show(new FieldOverlay(
                desk, "corners", $"In order around it, each {plane[0]},{plane[1]} in mm, such as 0,0 420,0 420,150 0,110", initial,
                text => TypedCase.Corners(text, out corners) is { } wrong ? Nothing(wrong) : Shown(Whole(TypedCase.Outline(plane, corners, 0, 100))),
                text =>
                {
                    TypedCase.Corners(text, out corners);
                    Field($"along {along}, mm", $"From where to where it reaches along {along}, such as 0 95.", same && before is not null ? Typed(CasePart.Number(before["from"]) ?? 0, CasePart.Number(before["to"]) ?? 0) : "", [2],
                        reach => Whole(TypedCase.Outline(plane, corners, reach[0], reach[1])),
                        made =>
                        {
                            if (first is not null)
                                first((JsonObject)made["cavity"]!["parts"]![0]!);
                            else
                                Take(made, kind, old);
                        });
                }));
        }

        JsonObject Whole(JsonObject node) => first is null
            ? Candidate(kind, old, node)
            : TypedCase.New(node, StandIn, [0, 0, 0], desk.Job!.Givens);
    }

    private void AskTube(CasePart? old)
    {
        JsonObject? before = old?.Node?["tube"] as JsonObject;
        Field("one end, mm", "The middle of the tube at one end: x y z, such as 0 134 55.", Typed(CasePart.Numbers(before?["from"])), [3], null, from =>
            Field("other end, mm", "The middle of the tube at the other end: x y z, such as 420 134 55.", Typed(CasePart.Numbers(before?["to"])), [3], null, to =>
                Field("diameter, mm", "How thick the tube is, such as 32.", CasePart.Number(before?["diameterMm"]) is { } d ? One(d) : "", [1],
                    mm => Candidate(CasePartKind.KeepOut, old, TypedCase.Tube(from, to, mm[0])), made => Take(made, CasePartKind.KeepOut, old))));
    }

    private void AskOpening(CasePart? old) => Choose("where is the opening?", [.. Sides.Select(side => (side.Words, (Action)(() =>
        Field("opening, mm", "Two opposite corners, such as 0 0 420 130.", Typed(old?.Numbers("rectangle")), [4],
            mm => Candidate(CasePartKind.Opening, old, new JsonObject { ["plane"] = side.Side, ["rectangle"] = TypedCase.Numbers(mm) }),
            made => Take(made, CasePartKind.Opening, old)))))]);

    private void AskWeighed(CasePart? old)
    {
        GivenEntry kilograms = GivenCatalogue.Find("cellMassKg")!;
        desk.Show(new FieldOverlay(desk, "what it is", "Such as box, fuse and contactor, links, cable.", old?.Node?["name"]?.ToString() ?? "", text => text.Trim().Length > 0 ? null : "A word is wanted.", name =>
            desk.Show(new FieldOverlay(
                desk, "it weighs (kg)", "A bare number is kg; 2.4lb is read too.", CasePart.Number(old?.Node?["kg"]) is { } known ? One(known) : "",
                text => Kg(text) is null ? TypedGiven.Read(kilograms, text, percentBeside: false, out _) ?? "A weight is wanted." : null,
                typed => Field("its middle, mm", "x y z of its centre of mass, such as 155 95 20; empty when not known.", Typed(old?.Numbers("at")), [0, 3],
                    mm => Candidate(CasePartKind.Weighed, old, Node(name, Kg(typed)!.Value, mm)), made => Take(made, CasePartKind.Weighed, old))))));

        double? Kg(string text) => TypedGiven.Read(kilograms, text.Replace(',', '.'), percentBeside: false, out JobValue? value) is null && value is JobValue.Number number ? number.Value : null;

        static JsonObject Node(string name, double kg, double[] at)
        {
            JsonObject node = new() { ["name"] = name.Trim(), ["kg"] = kg };
            if (at.Length == 3)
                node["at"] = TypedCase.Numbers(at);
            return node;
        }
    }

    private JsonObject Candidate(CasePartKind kind, CasePart? old, JsonObject node)
    {
        if (old?.Node?["id"] is { } id)
            node["id"] = id.DeepClone();
        return CasePart.With(TypedCase.Of(desk.Job!)!, kind, old?.Index, node);
    }

    // Fields of figures alone.
    private void Field(string what, string tells, string initial, int[] counts, Func<double[], JsonObject>? make, Action<double[]> then, Func<double[], string?>? unfit = null) => desk.Show(new FieldOverlay(
        desk, what, desk.Look.UsUnits ? tells + " In inches with in at the end." : tells, initial,
        text => (TypedCase.Sizes(text, counts, out double[] mm, mayBeNegative: true, ExampleIn(tells)) ?? unfit?.Invoke(mm)) is { } wrong ? Nothing(wrong) : make is null ? null : Shown(make(mm)),
        text =>
        {
            TypedCase.Sizes(text, counts, out double[] mm, mayBeNegative: true);
            then(mm);
        }));

    // The example that the field itself gives, so that its errors do not ask for another spelling.
    private static string? ExampleIn(string tells) => Example().Match(tells) is { Success: true } found ? found.Groups[1].Value : null;

    [GeneratedRegex("such as ([0-9. x]*[0-9])")]
    private static partial Regex Example();

    // Fields whose figures make a whole case.
    private void Field(string what, string tells, string initial, int[] counts, Func<double[], JsonObject> make, Action<JsonObject> then, Func<double[], string?>? unfit = null) =>
        Field(what, tells, initial, counts, make, (double[] mm) => then(make(mm)), unfit);

    // A size is measured from the corner to the right, to the back and up: who typed less than nothing means another corner.
    private static string? NoSize(double[] mm) => mm.Any(one => one <= 0)
        ? $"{One(mm.First(one => one <= 0))} is no size: give each above 0, and as the corner the one at the left, in front and below." : null;

    private string Nothing(string wrong)
    {
        draft(null, null);
        return wrong;
    }

    // What a file with these figures would be refused for, the field refuses too.
    private string? Shown(JsonObject made)
    {
        if (!TypedCase.Read(desk.Job!, made).Is(out FitCase? fitCase, out Refusal? why))
            return Nothing($"{why.Problem.Why}. {why.Problem.Remedy}");
        // A stand-in for the cell gives no count worth telling.
        bool isCellKnown = desk.Job!.FitCase is not null || CasePart.Number((made["cell"] as JsonObject)?["diameterMm"]) != StandIn[0];
        draft(fitCase, isCellKnown ? made.ToJsonString() : null);
        return null;
    }

    private void Take(JsonObject made, CasePartKind kind, CasePart? old)
    {
        Take(made, Name(kind, old));
        if (kind == CasePartKind.KeepOut && JobFit.Case(desk.Job!).Is(out FitCase? taken, out _) && KeepOutsOutside.Of(taken).Contains(old?.Index ?? taken.KeepOuts.Count - 1))
            desk.Says = "This keep-out lies wholly outside the space: it changes nothing. Check the tape measure, and the corner it was measured from.";
    }

    private void Take(JsonObject made, string name) => desk.Do(TypedCase.Change(desk.Job!, made, name));

    private void Choose(string title, params (string Words, Action Run)[] choices) =>
        desk.Show(new ListOverlay(desk, title, () => [.. choices.Select(choice => new ListItem(choice.Words, "", choice.Run))]));

    private static string Name(CasePartKind kind, CasePart? old)
    {
        string what = kind switch { CasePartKind.Space => "space", CasePartKind.KeepOut => "keep-out", CasePartKind.Opening => "opening", _ => "weighed part" };
        return old is null ? $"add a{(kind == CasePartKind.Opening ? "n" : "")} {what}" : $"change a{(kind == CasePartKind.Opening ? "n" : "")} {what}";
    }

    private static string Typed(params double[]? mm) => mm is null ? "" : string.Join(" ", mm.Select(One));

    private static string By(double[]? mm) => mm is null ? "" : string.Join(" x ", mm.Select(One));

    private static string One(double mm) => mm.ToString("0.###", CultureInfo.InvariantCulture);
}
