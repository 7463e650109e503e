using System.Text.Json;
using PackPlanner.Formats.Words;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

/// <summary>Sentences of one answer do not contradict one another.</summary>
public class ToldRightlyTests
{
    [Fact]
    public void Remarks_that_name_damage_and_a_column_that_is_missing_are_told_apart()
    {
        JsonElement answer = OfTable("cells", "label,capacity_Ah,Remarks\nA,2.5,\nB,2.4,dented\nC,2.45,\n");

        string[] damage = [.. Cautions(answer, "caution-05")];
        Assert.Equal(2, damage.Length);
        Assert.Contains("noted: dented", damage[0], StringComparison.Ordinal);
        Assert.StartsWith("not checked where no remark stands", damage[1], StringComparison.Ordinal);
        Assert.StartsWith("not checked: the table notes no condition", Cautions(OfTable("cells", "label,capacity_Ah\nA,2.5\nB,2.4\n"), "caution-05").Single(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_cell_without_milliohm_is_named_with_its_group_and_with_what_stands_in_for_it()
    {
        JsonElement answer = OfTable("energy", "cell,group,Ah,mohm\nK1,1,5,30\nK2,1,5,30\nK3,2,5,30\nK4,2,5,\n", "--load", "5A");

        Assert.Equal(JsonValueKind.Null, answer.GetProperty("shortCircuitA").ValueKind);
        Assert.Contains(answer.GetProperty("startingPoints").GetProperty("basis").EnumerateArray(), row => row.GetProperty("from").GetString()!.StartsWith("group 2: K4 has no milliohm, taken at 30.0, the median of the others: about 280 A", StringComparison.Ordinal));
        Assert.Contains(answer.GetProperty("understood").EnumerateArray(), said => said.GetString() == "Group 2: K4 has no milliohm, taken at 30.0, the median of the others.");
        Assert.Contains(answer.GetProperty("notChecked").EnumerateArray(), open => open.GetProperty("code").GetString() == "caution-21");
    }

    [Fact]
    public void A_job_in_place_of_a_table_is_told_from_other_documents()
    {
        using Folder folder = new();
        string job = folder.File("a.job.json"), other = folder.File("b.json");
        Assert.Equal(0, Planner.Run("job", "new", job, "series=3").ExitCode);
        File.WriteAllText(other, "{\"cells\":[]}");

        JsonElement ofJob = Planner.Json("cells", job).Document, ofOther = Planner.Json("cells", other).Document;

        Assert.Contains("this is a job, not a table", ofJob.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Contains("packplanner job export", ofJob.GetProperty("next").GetString(), StringComparison.Ordinal);
        Assert.Contains("this is JSON", ofOther.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    // Three of 3.6 V and one of 3.3 V: each passes its limit against the others, but only the last is charged alone.
    [Fact]
    public void Who_lies_where_it_should_is_not_told_to_be_brought_there()
    {
        string[] says = [.. OfTable("join", "label,capacity_Ah,resistance_mohm,rest_V\nA,5,20,3.6\nB,5,20,3.6\nC,5,20,3.6\nD,5,20,3.3\n").GetProperty("cautions").EnumerateArray()
            .Where(caution => caution.GetProperty("code").GetString() == "caution-07").Select(caution => $"{caution.GetProperty("where").GetString()}: {caution.GetProperty("do").GetString()}")];

        Assert.Equal(4, says.Length);
        Assert.Contains(says, line => line.StartsWith("cell D: Bring it to 3.600 V alone first", StringComparison.Ordinal));
        Assert.Contains(says, line => line.StartsWith("cell A: It lies where it should", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0.0, "0.00")]
    [InlineData(3e-14, "0.00")]
    [InlineData(-2e-9, "0.00")]
    [InlineData(0.0000123, "0.0000123")]
    [InlineData(0.0123, "0.0123")]
    [InlineData(123.4, "123")]
    public void What_is_left_over_of_a_sum_is_nought(double figure, string text) => Assert.Equal(text, Figures.Digits(figure, 3).TrimStart('-'));

    private static JsonElement OfTable(string verb, string table, params string[] options)
    {
        using Folder folder = new();
        File.WriteAllText(folder.File("cells.csv"), table);
        return Planner.Json([verb, folder.File("cells.csv"), "--chemistry", "NMC", "--rated-ah", "5", .. options]).Document;
    }

    private static IEnumerable<string> Cautions(JsonElement answer, string code) => answer.GetProperty("cautions").EnumerateArray()
        .Where(caution => caution.GetProperty("code").GetString() == code).Select(caution => caution.GetProperty("saw").GetString()!);
}
