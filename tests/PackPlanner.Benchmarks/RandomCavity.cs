using System.Text.Json.Nodes;

namespace PackPlanner.Benchmarks;

/// <summary>
/// One invented case from a seed: parts that are boxes or outlines with inward corners in any plane, keep-outs, slanting tubes, round cells
/// along any axes or boxes in any poses.
/// </summary>
internal sealed class RandomCavity
{
    private readonly Random random;

    private RandomCavity(int seed) => random = new Random(seed);

    internal static JsonObject Of(int seed) => new RandomCavity(seed).Draw();

    private JsonObject Draw()
    {
        bool round = random.Next(2) == 0;
        double size = round ? 200 : 260;
        JsonArray parts = [Part(size)];
        if (random.Next(3) == 0)
            parts.Add(Part(size));
        JsonArray keepOuts = [];
        for (int k = random.Next(4); k > 0; k--)
            keepOuts.Add(KeepOut(size));
        JsonObject pack = new() { ["series"] = Whole(2, 16), ["linkReachMm"] = Half(0, 6), ["jumpersAllowed"] = random.Next(3) };
        if (random.Next(3) == 0)
            pack["parallel"] = Whole(1, 5);
        if (random.Next(12) == 0)
            pack.Remove("series");
        JsonObject drawn = new()
        {
            ["cavity"] = new JsonObject { ["parts"] = parts },
            ["keepOuts"] = keepOuts,
            ["cell"] = round ? Round() : Box(),
            ["clearance"] = Clearance(),
            ["pack"] = pack,
        };
        if (random.Next(5) == 0)
            drawn["limits"] = new JsonObject { ["cellMassKg"] = Half(1, 20) };
        if (random.Next(4) == 0)
            drawn["parts"] = new JsonArray(new JsonObject { ["name"] = "fuse", ["kg"] = Half(0, 4), ["at"] = new JsonArray(Half(0, 400), Half(0, 200), Half(0, 200)) });
        if (random.Next(4) == 0)
            drawn["openings"] = new JsonArray(new JsonObject { ["id"] = "lid", ["plane"] = Any("+x", "-y", "+z"), ["rectangle"] = new JsonArray(0, 0, Whole(20, 300), Whole(20, 300)) });
        return drawn;
    }

    private JsonObject Part(double size)
    {
        if (random.Next(3) == 0)
            return new JsonObject { ["box"] = new JsonArray(0, 0, 0, Half(size / 2, size), Half(size / 3, size), Half(75, size * 0.7)) };
        return new JsonObject { ["prism"] = Outline(size * 0.55, size * 0.55, size * 0.55, Half(75, size * 0.7)) };
    }

    private JsonObject KeepOut(double size)
    {
        double x = Half(0, size), y = Half(0, size), z = Half(0, size / 2);
        return random.Next(3) switch
        {
            0 => new JsonObject { ["box"] = new JsonArray(x, y, z, x + Half(5, 60), y + Half(5, 60), z + Half(5, 120)) },
            1 => new JsonObject { ["prism"] = Outline(x, y, Half(15, 50), Half(20, size)) },
            _ => new JsonObject
            {
                ["tube"] = new JsonObject
                {
                    ["from"] = new JsonArray(Half(-20, size), Half(-20, size), Half(-20, size)),
                    ["to"] = new JsonArray(Half(-20, size), Half(-20, size), Half(-20, size)),
                    ["diameterMm"] = Half(10, 45),
                },
            },
        };
    }

    /// <summary>Corners at rising angles round a middle, at very different distances: simple, and seldom convex.</summary>
    private JsonObject Outline(double u, double v, double reach, double deep)
    {
        int corners = Whole(3, 11);
        JsonArray outline = [];
        for (int k = 0; k < corners; k++)
        {
            double angle = 2 * Math.PI * (k + (0.8 * random.NextDouble())) / corners, far = reach * (0.45 + (0.55 * random.NextDouble()));
            outline.Add(new JsonArray(Math.Round(u + (far * Math.Cos(angle)), 1), Math.Round(v + (far * Math.Sin(angle)), 1)));
        }

        return new JsonObject { ["plane"] = Any("xz", "xy", "yz"), ["outline"] = outline, ["from"] = 0, ["to"] = deep };
    }

    private JsonObject Round()
    {
        (double diameter, double length, double grams) = random.Next(4) switch { 0 => (18.6, 65.3, 47), 1 => (21.4, 70.6, 70), 2 => (32.6, 70.8, 142), _ => (46.2, 80.0, 350) };
        return new JsonObject { ["shape"] = "cylinder", ["diameterMm"] = diameter, ["lengthMm"] = length, ["massG"] = grams, ["axes"] = Some("x", "y", "z") };
    }

    private JsonObject Box() => new()
    {
        ["shape"] = "box",
        ["lengthMm"] = Half(40, 130),
        ["thicknessMm"] = Half(10, 40),
        ["heightMm"] = Half(40, 110),
        ["massG"] = Whole(300, 3000),
        ["poses"] = Some("upright", "inverted", "onEdge", "onFace"),
    };

    private JsonObject Clearance() => new()
    {
        ["wallMm"] = Half(0, 4),
        ["endMm"] = Half(0, 8),
        ["plateMm"] = Half(0, 6),
        ["terminalMm"] = Half(0, 20),
        ["cellGapMm"] = Half(0, 3),
        ["spacerMm"] = Half(0, 3),
        ["layerGapMm"] = Half(0, 8),
    };

    private JsonArray Some(params string[] words)
    {
        string[] kept = [.. words.Where(_ => random.Next(2) == 0)];
        return [.. kept.Length == 0 ? [words[^1]] : kept];
    }

    private string Any(params string[] words) => words[random.Next(words.Length)];

    private int Whole(int from, int below) => random.Next(from, below);

    /// <summary>Halves of a millimetre, so that sizes often meet exactly.</summary>
    private double Half(double from, double to) => Math.Round(2 * (from + (random.NextDouble() * (to - from)))) / 2;
}
