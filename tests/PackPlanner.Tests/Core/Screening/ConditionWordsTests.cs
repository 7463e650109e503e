using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Screening;

public class ConditionWordsTests
{
    [Theory]
    [InlineData("rusty and dented", "dented,rust")]
    [InlineData("Puffed!", "swollen")]
    [InlineData("ausgelaufen", "leaking")]
    [InlineData("odeur", "smell")]
    [InlineData("wrap torn (pierced?)", "torn wrap")]
    [InlineData("beschädigt", "damage")]
    [InlineData("gets HOT", "warm")]
    [InlineData("càldo", "warm")]
    [InlineData("", "")]
    public void Each_kind_is_found_wherever_it_stands(string noted, string kinds)
    {
        (IReadOnlyList<string> damage, bool understood) = ConditionWords.Read(noted);

        Assert.Equal(kinds, string.Join(',', damage));
        Assert.True(understood);
    }

    // A no reaches over one word, not over two, and no further than praise or a full stop: whoever writes more is taken at the damage that he names.
    [Theory]
    [InlineData("no dents", "")]
    [InlineData("no visible dents", "")]
    [InlineData("nicht gebeult, keine Beulen", "")]
    [InlineData("no scratches but some dents", "dented")]
    [InlineData("swollen, no dents", "swollen")]
    [InlineData("no good: swollen", "swollen")]
    [InlineData("not ok, leaking", "leaking")]
    [InlineData("not good leaking", "leaking")]
    [InlineData("pas bon, gonflé", "swollen")]
    [InlineData("no dents but leaking", "leaking")]
    [InlineData("no dents, leaking", "leaking")]
    [InlineData("no dents or swelling", "")]
    [InlineData("no dents, swelling or leaks", "")]
    [InlineData("no dents/swelling", "")]
    [InlineData("no visible sign of swelling", "")]
    [InlineData("no dents no leaks", "")]
    [InlineData("no dents; rusty", "rust")]
    public void A_denied_damage_is_none_and_the_words_were_understood(string noted, string kinds)
    {
        (IReadOnlyList<string> damage, bool understood) = ConditionWords.Read(noted);

        Assert.Equal(kinds, string.Join(',', damage));
        Assert.True(understood);
    }

    [Theory]
    [InlineData("fine, ok", true)]
    [InlineData("Gut", true)]
    [InlineData("blue", false)]
    [InlineData("fine, blue", false)]
    [InlineData("new heat shrink", false)]
    [InlineData("not tested", false)]
    public void Words_that_nobody_knows_were_not_understood(string noted, bool understood)
    {
        Assert.Equal(understood, ConditionWords.Read(noted).Understood);
        Assert.Empty(ConditionWords.Read(noted).Damage);
        Assert.False(ConditionWords.NameDamage(noted));
    }
}
