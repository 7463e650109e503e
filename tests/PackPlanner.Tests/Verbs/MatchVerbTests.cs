using System.Text.Json;
using PackPlanner.Formats;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

public sealed class MatchVerbTests : IDisposable
{
    private const string Seven = "cell;capacity mAh;resistance mohm\nc1;2310;31\nc2;2255;30\nc3;2190;33\nc4;2140;32\nc5;2085;34\nc6;2030;35\nc7;1900;36\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("match").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Seven_cells_make_three_pairs_and_the_answer_adds_up()
    {
        (int exitCode, JsonElement answer) = Planner.Json("match", File("cells.csv", Seven), "--series", "3", "--parallel", "2");

        Assert.Equal(ExitCodes.Done, exitCode);
        Assert.Equal("packplanner/match", answer.GetProperty("schema").GetString());
        Assert.Equal(["c1 c6", "c2 c5", "c3 c4"], Groups(answer));
        Assert.Equal("4.34", answer.GetProperty("groups")[0].GetProperty("capacityAh").GetRawText());
        Assert.Equal("4.33", answer.GetProperty("minGroupAh").GetRawText());
        Assert.Equal("0.01", answer.GetProperty("spreadAh").GetRawText());
        Assert.Equal("4.33", answer.GetProperty("minGroupBoundAh").GetRawText());
        Assert.True(answer.GetProperty("provenOptimal").GetBoolean());
        Assert.Equal(["c7"], answer.GetProperty("leftOut").EnumerateArray().Select(cell => cell.GetString()!));
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("noiseSpreadAh").ValueKind);
        Assert.Equal(7, answer.GetProperty("rowsUsed").GetInt32());
    }

    [Fact]
    public void The_same_cells_in_another_order_notation_and_unit_give_the_same_bytes_of_groups()
    {
        const string Other = "Zelle;Kapazität Ah;Ri mOhm\nc7;1,900;36\nc3;2,190;33\nc1;2,310;31\nc6;2,030;35\nc2;2,255;30\nc5;2,085;34\nc4;2,140;32\n";

        (_, JsonElement one) = Planner.Json("match", File("a.csv", Seven), "--series", "3", "--parallel", "2");
        (_, JsonElement other) = Planner.Json("match", File("b.csv", Other), "--series", "3", "--parallel", "2");

        Assert.Equal(one.GetProperty("groups").GetRawText(), other.GetProperty("groups").GetRawText());
    }

    [Fact]
    public void Stated_repeatability_gives_the_noise_figure()
    {
        (_, JsonElement answer) = Planner.Json(
            "match", File("cells.csv", Seven), "--series", "3", "--parallel", "2", "--repeatability", "1%");

        // By hand: 2 e(3) tau with e(3) = 0.84628, tau = 1 % of 2.16833 Ah x root of 2.
        Assert.Equal(2 * 0.84628 * 0.0216833 * Math.Sqrt(2), answer.GetProperty("noiseSpreadAh").GetDouble(), tolerance: 1e-6);
        Assert.Equal(4.33, answer.GetProperty("strictMinGroupAh").GetDouble());
    }

    // Few rows of locks do not tell whether 0 is the first group or none; a whole grouping does.
    [Fact]
    public void A_lock_to_group_0_is_an_error_and_a_grouping_numbered_from_0_is_told()
    {
        string cells = File("cells.csv", Seven);

        (int exitCode, JsonElement refused) = Planner.Json("match", cells, "--series", "3", "--parallel", "2", "--lock", File("lock.csv", "cell,group\nc1,0\nc2,3\n"));
        Assert.Equal(ExitCodes.Input, exitCode);
        Assert.Contains("line 2", refused.GetProperty("where").GetString(), StringComparison.Ordinal);
        Assert.Contains("no group 0", refused.GetProperty("message").GetString(), StringComparison.Ordinal);

        (exitCode, JsonElement told) = Planner.Json(
            "match", cells, "--series", "3", "--parallel", "2", "--from", File("from.csv", "cell,group\nc1,0\nc6,0\nc2,1\nc5,1\nc3,2\nc4,2\n"));
        Assert.Equal(ExitCodes.Done, exitCode);
        Assert.Contains(told.GetProperty("understood").EnumerateArray(), line => line.GetString()!.Contains("from 0", StringComparison.Ordinal));
    }

    [Fact]
    public void Locks_and_cells_left_out_are_obeyed()
    {
        string locks = File("lock.csv", "cell,group\nc1,3\nc7,1\n");

        (int exitCode, JsonElement answer) = Planner.Json(
            "match", File("cells.csv", Seven), "--series", "3", "--parallel", "2", "--lock", locks, "--leave-out", "c3");

        Assert.Equal(ExitCodes.Done, exitCode);
        Assert.Contains("c7", Groups(answer)[0], StringComparison.Ordinal);
        Assert.Contains("c1", Groups(answer)[2], StringComparison.Ordinal);
        Assert.Equal(["c3"], answer.GetProperty("leftOut").EnumerateArray().Select(cell => cell.GetString()!));
    }

    [Theory]
    [InlineData("cell,group\nc1,4\n", "groups 1 to 3")]
    [InlineData("cell,group\nc1,1\nc2,1\nc3,1\n", "3 cells are locked")]
    [InlineData("cell,group\nc9,1\n", "no usable cell")]
    public void A_lock_that_cannot_be_kept_is_refused_plainly(string locks, string says)
    {
        (int exitCode, JsonElement error) = Planner.Json(
            "match", File("cells.csv", Seven), "--series", "3", "--parallel", "2", "--lock", File("lock.csv", locks));

        Assert.Equal(ExitCodes.Input, exitCode);
        Assert.Equal("packplanner/error", error.GetProperty("schema").GetString());
        Assert.Contains(says, error.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Too_few_cells_end_with_the_nearest_shape_at_the_same_series()
    {
        (int exitCode, JsonElement error) = Planner.Json("match", File("cells.csv", Seven), "--series", "4", "--parallel", "2");

        Assert.Equal(ExitCodes.NoAnswer, exitCode);
        Assert.StartsWith("Nearest: 4 in series with 1 in parallel", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_table_and_the_document_are_read_back_as_an_existing_grouping()
    {
        string cells = File("cells.csv", Seven);
        string[] call = ["match", cells, "--series", "3", "--parallel", "2"];
        string table = File("groups.csv", Planner.Run([.. call, "--csv"]).Output);
        string document = File("groups.json", Planner.Run([.. call, "--json"]).Output);

        foreach (string from in new[] { table, document })
        {
            (int exitCode, JsonElement answer) = Planner.Json([.. call, "--from", from, "--replace", "c1"]);

            Assert.Equal(ExitCodes.Done, exitCode);
            Assert.Equal(0, answer.GetProperty("moves").GetArrayLength());
            JsonElement spare = Assert.Single(answer.GetProperty("replacements").EnumerateArray());
            Assert.Equal("c7", spare.GetProperty("cell").GetString());
            Assert.Equal("3.93", spare.GetProperty("packAh").GetRawText());
        }
    }

    [Fact]
    public void Fewest_moves_keep_what_is_welded()
    {
        string welded = File("welded.csv", "cell,group\nc1,1\nc6,1\nc2,2\nc4,2\nc3,3\nc7,3\n");

        (_, JsonElement answer) = Planner.Json(
            "match", File("cells.csv", Seven), "--series", "3", "--parallel", "2", "--from", welded, "--fewest-moves");

        // By hand: 4090 is the smallest; c5 for c7 makes it 4275, and then c4 for c5 makes 4340, 4340, 4330: c4 and c5 go in, c7 comes out.
        Assert.Equal("4.33", answer.GetProperty("minGroupAh").GetRawText());
        Assert.Equal(["c1 c6", "c2 c5", "c3 c4"], Groups(answer));
        Assert.Equal(3, answer.GetProperty("moves").GetArrayLength());
    }

    // By hand: no two of 2.1, 2.1 and 2.5 have a smaller one above 2.1; the two of 2.1 are alike, those welded lie 0.4 apart.
    [Fact]
    public void What_is_proven_of_the_strict_order_is_not_claimed_of_a_choice_with_more_spread()
    {
        string welded = File("pair.csv", "cell,group\nc,1\na,2\n");
        string[] call = ["match", File("three.csv", "cell,capacity mAh\na,2100\nb,2100\nc,2500\n"), "--series", "2", "--parallel", "1", "--all"];

        string kept = Planner.Run([.. call, "--from", welded, "--fewest-moves"]).Output;

        Assert.Contains("nor groups closer together with it than 0.0 Ah: this choice has 0.4 Ah more.", kept, StringComparison.Ordinal);
        Assert.Contains("nor groups closer together with it.", Planner.Run(call).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cell_without_capacity_is_never_grouped_not_even_with_all()
    {
        string table = File("gaps.csv", "cell,capacity mAh\na,2000\nb,2010\nc,n/a\nd,2020\ne,1500\n");

        (_, JsonElement answer) = Planner.Json("match", table, "--series", "2", "--parallel", "2", "--all");

        Assert.DoesNotContain("c", string.Join(' ', Groups(answer)).Split(' '));
        Assert.Equal("c", Assert.Single(answer.GetProperty("notUsed").EnumerateArray()).GetProperty("cell").GetString());
    }

    [Fact]
    public void Sixteen_groups_of_five_from_too_few_retired_cells_name_three_in_parallel()
    {
        string file = Repository.Data("pulsebat", "LFP_35Ah_cells.csv");

        (int exitCode, JsonElement error) = Planner.Json("match", file, "--series", "16", "--parallel", "5");

        Assert.Equal(ExitCodes.NoAnswer, exitCode);
        Assert.Contains("16 in series with 3 in parallel", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_sixty_volts_raises_the_caution_and_strict_ends_with_five()
    {
        string table = File("many.csv", "cell,chemistry,capacity mAh,rest V\n" + string.Concat(Enumerable.Range(0, 16).Select(i => $"k{i},NMC,{2000 + i},3.6\n")));

        (int exitCode, JsonElement answer) = Planner.Json("match", table, "--series", "15", "--parallel", "1", "--strict");

        Assert.Equal(ExitCodes.Strict, exitCode);
        Assert.Contains("caution-09", answer.GetProperty("cautions").EnumerateArray().Select(caution => caution.GetProperty("code").GetString()));
    }

    [Theory]
    [InlineData("--series", "0")]
    [InlineData("--prefer", "nothing")]
    [InlineData("--fewest-moves", null)]
    public void A_wrong_option_is_exit_two(string option, string? value)
    {
        string[] call = ["match", File("cells.csv", Seven), "--parallel", "2", .. option == "--series" ? [] : (string[])["--series", "3"]];

        (int exitCode, _) = Planner.Json([.. call, option, .. value is null ? [] : (string[])[value]]);

        Assert.Equal(ExitCodes.CommandLine, exitCode);
    }

    private static string[] Groups(JsonElement answer) =>
    [
        .. answer.GetProperty("groups").EnumerateArray()
            .Select(group => string.Join(' ', group.GetProperty("cells").EnumerateArray().Select(cell => cell.GetString()))),
    ];

    private string File(string name, string text)
    {
        string path = Path.Combine(_folder, name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }
}
