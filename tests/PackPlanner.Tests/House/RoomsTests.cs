using System.Reflection;
using NetArchTest.Rules;
using PackPlanner.Core;

namespace PackPlanner.Tests.House;

/// <summary>Which room of Core may use which. The compiler keeps the projects apart; this keeps the rooms.</summary>
public class RoomsTests
{
    private static readonly Assembly Core = typeof(Problem).Assembly;

    private static readonly string[] CommonRooms = ["Cells", "Packs", "Cautions"];

    // Each further arrow, and why it is there. A common room uses no capability, except by a line here.
    private static readonly (string From, string To, string Why)[] Arrows =
    [
        ("Sizing", "UsableEnergy", "the road load says what a kilometre costs"),
        ("Cells", "Diagnosis", "a doc link only: CellRow says why logs are columns"),
        ("Screening", "Bench", "a verdict rests on what dated resting volts tell"),
    ];

    private static readonly string[] Rooms =
    [
        .. Core.GetTypes()
            .Select(type => type.Namespace ?? "")
            .Where(space => space.StartsWith("PackPlanner.Core.", StringComparison.Ordinal))
            .Select(space => space.Split('.')[2])
            .Distinct()
            .Order(StringComparer.Ordinal),
    ];

    [Fact]
    public void No_room_uses_another_without_an_arrow()
    {
        List<string> planted = [];
        foreach (string room in Rooms)
        {
            string[] allowed =
            [
                room, .. CommonRooms,
                .. Arrows.Where(arrow => arrow.From == room).Select(arrow => arrow.To),
                .. room == "Jobs" ? Rooms : [],
            ];
            foreach (string other in Rooms.Where(other => !allowed.Contains(other)))
            {
                NetArchTest.Rules.TestResult result = Types.InAssembly(Core)
                    .That().ResideInNamespaceMatching($@"^PackPlanner\.Core\.{room}(\.|$)")
                    .ShouldNot().HaveDependencyOnAny($"PackPlanner.Core.{other}")
                    .GetResult();
                if (!result.IsSuccessful)
                    planted.AddRange(result.FailingTypes.Select(type => $"{type.FullName} uses {other}"));
            }
        }

        Assert.Empty(planted);
    }

    [Fact]
    public void No_room_is_named_after_a_quantity()
    {
        string[] quantities = [.. UnitsNet.Quantity.Infos.Select(info => info.Name)];

        Assert.DoesNotContain(Rooms, room => quantities.Contains(room));
    }
}
