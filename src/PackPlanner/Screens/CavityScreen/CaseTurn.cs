using System.Text.Json.Nodes;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>Chooses which way the cells of a case may stand or lie.</summary>
internal static class CaseTurn
{
    private static readonly (string Words, string[] Ways)[] Round =
    [
        ("upright", ["z"]), ("lying, along x: left to right", ["x"]), ("lying, along y: front to back", ["y"]), ("whichever holds most", ["z", "x", "y"]),
    ];

    private static readonly (string Words, string[] Ways)[] Flat =
    [
        ("upright, terminals on top", ["upright"]), ("on its edge", ["onEdge"]), ("on its large face", ["onFace"]), ("whichever holds most, terminals never below", ["upright", "onEdge", "onFace"]),
    ];

    internal static void Ask(Desk desk)
    {
        JsonObject? cell = TypedCase.Of(desk.Job!)?["cell"] as JsonObject;
        bool flat = cell?.ContainsKey("thicknessMm") == true;
        HashSet<string> now = [.. ((cell?[flat ? "poses" : "axes"] as JsonArray)?.Select(way => way?.ToString() ?? "") ?? [flat ? "upright" : "z"])];
        desk.Show(new ListOverlay(desk, "which way may the cells stand?", () =>
        [
            .. (flat ? Flat : Round).Select(way => new ListItem(way.Words, "", () => Turn(desk, flat ? "poses" : "axes", way)) { IsNow = now.SetEquals(way.Ways) }),
        ]));
    }

    private static void Turn(Desk desk, string key, (string Words, string[] Ways) way)
    {
        JsonObject known = TypedCase.Of(desk.Job!)!;
        if (known["cell"] is not JsonObject cell)
            return;
        cell[key] = new JsonArray([.. way.Ways.Select(word => (JsonNode)word)]);
        desk.Do(TypedCase.Change(desk.Job!, known, $"cells {way.Words}"));
    }
}
