using System.Text.Json.Nodes;
using CsCheck;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Tests.Outside;

public class MergePatchTests
{
    // Source: [RFC7396], sections 1 and 3, and the cases of appendix A whose target and patch are objects.
    [Theory]
    [InlineData("""{"a":"b","c":{"d":"e","f":"g"}}""", """{"a":"z","c":{"f":null}}""", """{"a":"z","c":{"d":"e"}}""")]
    [InlineData(
        """{"title":"Goodbye!","author":{"givenName":"John","familyName":"Doe"},"tags":["example","sample"],"content":"This will be unchanged"}""",
        """{"title":"Hello!","phoneNumber":"+01-123-456-7890","author":{"familyName":null},"tags":["example"]}""",
        """{"title":"Hello!","author":{"givenName":"John"},"tags":["example"],"content":"This will be unchanged","phoneNumber":"+01-123-456-7890"}""")]
    [InlineData("""{"a":"b"}""", """{"a":"c"}""", """{"a":"c"}""")]
    [InlineData("""{"a":"b"}""", """{"b":"c"}""", """{"a":"b","b":"c"}""")]
    [InlineData("""{"a":"b"}""", """{"a":null}""", "{}")]
    [InlineData("""{"a":"b","b":"c"}""", """{"a":null}""", """{"b":"c"}""")]
    [InlineData("""{"a":["b"]}""", """{"a":"c"}""", """{"a":"c"}""")]
    [InlineData("""{"a":"c"}""", """{"a":["b"]}""", """{"a":["b"]}""")]
    [InlineData("""{"a":{"b":"c"}}""", """{"a":{"b":"d","c":null}}""", """{"a":{"b":"d"}}""")]
    [InlineData("""{"a":[{"b":"c"}]}""", """{"a":[1]}""", """{"a":[1]}""")]
    [InlineData("{}", """{"a":{"bb":{"ccc":null}}}""", """{"a":{"bb":{}}}""")]
    public void A_patch_does_what_the_standard_says(string target, string patch, string expected)
    {
        JsonObject changed = JsonNode.Parse(target)!.AsObject();

        MergePatch.Apply(changed, JsonNode.Parse(patch)!.AsObject());

        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(expected), changed), changed.ToJsonString());
    }

    [Fact]
    public void The_patch_between_two_objects_makes_one_into_the_other()
    {
        Gen<JsonObject> leafs = Tree(Gen.OneOf(Gen.Int[0, 2].Select(i => (JsonNode)i), Gen.Int[0, 2].Select(i => (JsonNode)new JsonArray(i, i))));
        Gen<JsonObject> trees = Tree(Gen.OneOf(leafs.Select(tree => (JsonNode)tree), Gen.Int[0, 2].Select(i => (JsonNode)i)));
        Gen.Select(trees, trees).Sample(
            (before, after) =>
            {
                JsonObject changed = before.DeepClone().AsObject();
                MergePatch.Apply(changed, MergePatch.Between(before, after));
                return JsonNode.DeepEquals(changed, after);
            },
            seed: "0000KNxWiV5f",
            iter: 500);
    }

    private static Gen<JsonObject> Tree(Gen<JsonNode> value) =>
        Gen.Select(Gen.Int[0, 3].Select(i => "abcd"[i].ToString()), value).Array[0, 4].Select(pairs =>
        {
            JsonObject tree = [];
            foreach ((string name, JsonNode node) in pairs)
                tree[name] = node.DeepClone();
            return tree;
        });
}
