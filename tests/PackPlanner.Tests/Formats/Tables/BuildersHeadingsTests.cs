using System.Text.Json;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Formats.Tables;

/// <summary>Headings as builders write them into their own spreadsheets, in German, French, Spanish, Polish and English.</summary>
public class BuildersHeadingsTests
{
    [Theory]
    [InlineData("restVoltage", "3.6", "U Ruhe|Uruhe|U_ruhe (V)|Spannung ohne Last|Leerlauf (V)|Ruhespg.|tension au repos|U à vide|V sans charge|V sin carga|voltaje sin carga|tensión en vacío|napięcie w spoczynku|U bez obciążenia|U jałowe|V idle|no-load V|settled voltage")]
    [InlineData("capacity", "2310", "Kap.|capa mesurée|capac.|poj.|poj. (mAh)")]
    [InlineData("resistance", "31.4", "Innenwid.|Innenwiderst.|R innen|R interne|R interna|rez. wewn.|R wewn.|Widerst.")]
    [InlineData("date", "2026-03-0", "gemessen am|geprüft am|mesuré le|medido el|zmierzono|dzień|día|tested on")]
    [InlineData("temperature", "2", "Tempér.|Raumtemp.|temp. otoczenia")]
    [InlineData("remark", "ok", "Hinweis|Anmerk.|Bemerk.|notatki|komentarz|anotaciones|Sonstiges")]
    public void A_heading_is_known(string readAs, string value, string headings) =>
        Assert.All(headings.Split('|'), heading => Assert.Equal((heading, readAs), (heading, ReadAs(heading, value, readAs == "capacity"))));

    // A loaded voltage taken for a resting one would hold or pass the wrong cells, and volts taken for charge would reject them all.
    [Theory]
    [InlineData("U Last")]
    [InlineData("Spannung unter Last")]
    [InlineData("Lastspannung (V)")]
    [InlineData("tension en charge")]
    [InlineData("V en charge")]
    [InlineData("U charge")]
    [InlineData("V con carga")]
    [InlineData("tensión bajo carga")]
    [InlineData("napięcie pod obciążeniem")]
    [InlineData("loaded voltage")]
    [InlineData("V under load")]
    [InlineData("Ladespannung")]
    public void Volts_under_load_are_neither_resting_volts_nor_a_charge(string heading) =>
        Assert.Equal("not used", ReadAs(heading, "3.4", alone: false));

    [Fact]
    public void The_last_voltage_in_English_is_a_voltage() =>
        Assert.Equal("voltage", ReadAs("last voltage", "3.6", alone: false));

    private static string ReadAs(string heading, string value, bool alone)
    {
        string rows = string.Concat(Enumerable.Range(1, 5).Select(i => $"A{i};{value}{(value == "ok" ? "" : i)}{(alone ? "" : $";{2300 + (11 * i)}")}\n"));
        (int exitCode, string output, string notes) = Planner.RunWithInput($"cell;{heading}{(alone ? "" : ";capacity (mAh)")}\n{rows}", "look", "-", "--json");

        Assert.True(exitCode == 0, notes + output);
        using JsonDocument document = JsonDocument.Parse(output);
        return document.RootElement.GetProperty("files")[0].GetProperty("columns")[1].GetProperty("readAs").GetString()!;
    }
}
