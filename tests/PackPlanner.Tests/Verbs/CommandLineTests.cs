using System.Text.Json;
using PackPlanner.Core.Cautions;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.Verbs;

public class CommandLineTests
{
    [Fact]
    public void A_misspelt_verb_is_answered_with_the_nearest_one()
    {
        (int exitCode, JsonElement error) = Planner.Json("explan", "caution-01");

        Assert.Equal(2, exitCode);
        Assert.Equal("packplanner/error", error.GetProperty("schema").GetString());
        Assert.Equal("unknown-verb", error.GetProperty("code").GetString());
        Assert.Contains("explain", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_misspelt_option_is_answered_with_the_nearest_one()
    {
        (int exitCode, JsonElement error) = Planner.Json("explain", "caution-01", "--asci");

        Assert.Equal(2, exitCode);
        Assert.Contains("--ascii", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, "--json=true")]
    [InlineData(true, "--json", "true")]
    [InlineData(false, "--json=false")]
    [InlineData(false, "--json", "false")]
    public void A_flag_with_its_value_counts_as_what_it_says(bool json, params string[] flag)
    {
        Assert.Equal(json, Planner.Run(["explain", "caution-01", .. flag]).Output.StartsWith('{'));
        Assert.Equal(json, Planner.Run(["explain", "caution-99", .. flag]).Output.StartsWith('{'));
    }

    [Theory]
    [InlineData("match", "--replce", "--replace")]
    [InlineData("look", "--jsn", "--json")]
    [InlineData("share", "-load", "--load")]
    public void A_misspelt_option_of_a_verb_that_takes_files_is_no_file(string verb, string typed, string meant)
    {
        (int exitCode, JsonElement error) = Planner.Json(verb, "cells.csv", typed, "A");

        Assert.Equal(2, exitCode);
        Assert.Equal("unknown-option", error.GetProperty("code").GetString());
        Assert.Contains(meant, error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_after_two_dashes_is_a_file_whatever_it_begins_with()
    {
        (int exitCode, string output, _) = Planner.Run("look", "--json", "--", "--no-such-table");

        Assert.Equal(3, exitCode);
        Assert.Contains("file-not-found", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("match", "a.csv", "--series", "three", "whole number")]
    [InlineData("energy", "a.csv", "--crr", "low", "a number")]
    [InlineData("look", "a.csv", "--units", "imperial", "metric, us")]
    [InlineData("look", "a.csv", "--json=maybe", "--json", "no value")]
    public void What_an_option_expects_is_said_in_words_of_its_own(string verb, string file, string option, string value, string says)
    {
        (int exitCode, JsonElement error) = Planner.Json(verb, file, option, value);

        Assert.Equal(2, exitCode);
        string all = error.GetProperty("message").GetString() + error.GetProperty("next").GetString();
        Assert.Contains(says, all, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", all, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bare_number_where_a_unit_matters_is_refused()
    {
        (int exitCode, JsonElement error) = Planner.Json("explain", "caution-01", "--time-limit", "30");

        Assert.Equal(2, exitCode);
        Assert.Contains("no unit", error.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_time_limit_below_nothing_is_refused_and_one_of_years_is_none()
    {
        (int exitCode, JsonElement error) = Planner.Json("explain", "caution-01", "--time-limit=-5s");

        Assert.Equal(2, exitCode);
        Assert.Equal("--time-limit", error.GetProperty("where").GetString());
        Assert.Equal(0, Planner.Run("explain", "caution-01", "--time-limit", "90000h").ExitCode);
    }

    [Fact]
    public void Every_verb_has_two_examples_that_begin_with_its_own_name()
    {
        foreach (Verb verb in VerbList.All)
        {
            Assert.True(verb.Examples.Count >= 2, $"{verb.Name} has {verb.Examples.Count} examples");
            Assert.All(verb.Examples, example => Assert.StartsWith($"packplanner {verb.Name}", example.Line, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Every_caution_can_be_explained_in_json_and_in_words()
    {
        foreach (CautionEntry entry in CautionCatalogue.All)
        {
            (int exitCode, JsonElement answer) = Planner.Json("explain", entry.Code);
            Assert.Equal(0, exitCode);
            Assert.Equal(entry.DoNow, answer.GetProperty("do").GetString());
            Assert.Contains(entry.Why, Planner.Run("explain", entry.Code).Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Plain_prints_one_fact_a_line_and_ascii_leaves_nothing_else()
    {
        (_, string output, _) = Planner.Run("explain", "caution-11", "--plain", "--ascii");

        Assert.Contains("\ncode caution-11\n", output, StringComparison.Ordinal);
        Assert.DoesNotContain(output, letter => letter > 127);
    }

    [Fact]
    public void Schema_and_version_stand_first_in_an_answer()
    {
        (_, JsonElement answer) = Planner.Json("explain", "caution-01");

        Assert.Equal(["schema", "version"], answer.EnumerateObject().Take(2).Select(property => property.Name));
    }
}
