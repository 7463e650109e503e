using System.Text.Json;

namespace PackPlanner.Tests.Verbs;

/// <summary>Answers that were once given for another question than the one that was asked.</summary>
public class SaidPlainlyTests
{
    // By hand: five points of 100 Ah are 5 Ah, which 100 mA bleed in 50 h, whatever the heading calls the offset and its unit.
    [Theory]
    [InlineData("offset_percent", "-5")]
    [InlineData("charge offset (%)", "-5")]
    [InlineData("offset", "-5")]
    [InlineData("offset_Ah", "-5")]
    [InlineData("offset (mAh)", "-5000")]
    [InlineData("offset", "-5000")]
    public void An_offset_is_read_in_the_unit_that_it_has(string heading, string middle)
    {
        (int exitCode, JsonElement answer) = Planner.JsonWithInput($"group,capacityAh,{heading}\n1,100,0\n2,100,{middle}\n3,100,0\n", "balance", "-", "--bleed", "100mA");

        Assert.Equal(0, exitCode);
        Assert.Equal(50, answer.GetProperty("hours").GetDouble(), 1e-6);
    }

    [Theory]
    [InlineData("name,colour\nx,red\ny,blue\n", "unknown")]
    [InlineData("this is not a table at all\njust words\n", "unknown")]
    [InlineData("cell,group\nA1,1\nA2,2\n", "cells")]
    [InlineData("cell,condition\nA1,swollen\nA2,ok\n", "cells")]
    public void A_table_of_nothing_but_words_is_of_no_known_kind(string text, string kind)
    {
        (_, JsonElement answer) = Planner.JsonWithInput(text, "look", "-");

        Assert.Equal(kind, answer.GetProperty("files")[0].GetProperty("kind").GetString());
    }

    [Fact]
    public void Standard_input_can_be_read_once()
    {
        (int exitCode, JsonElement error) = Planner.Json("cells", "-", "-");

        Assert.Equal(2, exitCode);
        Assert.Contains("named twice", error.GetProperty("message").GetString()!, StringComparison.Ordinal);
    }

    // The file written beside the target carries the number of the process: named, it would make two runs differ.
    [Fact]
    public void A_refusal_to_write_names_what_the_user_named()
    {
        (int exitCode, JsonElement error) = Planner.JsonWithInput("cell,capacity (Ah)\nK1,2.5\nK2,2.6\n", "cells", "-", "--output", "/nonexistent-folder/x.json");

        Assert.Equal(3, exitCode);
        Assert.EndsWith("the folder /nonexistent-folder is not there", error.GetProperty("message").GetString(), StringComparison.Ordinal);
    }
}
