using PackPlanner.Screens.Tables;

namespace PackPlanner.Tests.Screens;

/// <summary>A cursor on lines that come and go.</summary>
public class RowCursorTests
{
    [Fact]
    public void It_stays_on_its_line_when_lines_above_come_and_go()
    {
        RowCursor cursor = new();
        cursor.GoTo(1, ["a", "b", "c"]);

        cursor.Keep(["new", "newer", "a", "b", "c"]);
        Assert.Equal(3, cursor.Row);

        cursor.Keep(["b", "c"]);
        Assert.Equal(0, cursor.Row);
    }

    [Fact]
    public void Where_its_line_is_gone_it_stands_in_its_place_and_goes_back_to_it()
    {
        RowCursor cursor = new();
        cursor.GoTo(2, ["a", "b", "c", "d"]);

        cursor.Keep(["a", "b", "d"]);
        Assert.Equal(2, cursor.Row);
        cursor.Keep(["d"]);
        Assert.Equal(0, cursor.Row);
        cursor.Keep([]);
        Assert.Equal(0, cursor.Row);

        cursor.Keep(["new", "a", "b", "c", "d"]);
        Assert.Equal(3, cursor.Row);
    }

    [Fact]
    public void A_line_whose_words_change_keeps_the_cursor()
    {
        RowCursor cursor = new();
        cursor.GoTo(1, ["series: 4", "parallel: 2", "load: 10 A"]);

        cursor.Keep(["series: 4", "parallel: 3", "load: 10 A"]);

        Assert.Equal(1, cursor.Row);
    }

    [Fact]
    public void Moved_on_it_does_not_go_back()
    {
        RowCursor cursor = new();
        cursor.GoTo(1, ["a", "b", "c"]);
        cursor.Keep(["a", "c"]);

        Assert.True(cursor.Move("Up", ["a", "c"], page: 5));
        cursor.Keep(["a", "b", "c"]);

        Assert.Equal(0, cursor.Row);
    }

    [Fact]
    public void Two_lines_of_one_name_are_told_apart()
    {
        RowCursor cursor = new();
        cursor.GoTo(2, ["no", "help", "no"]);

        cursor.Keep(["new", "no", "help", "no"]);

        Assert.Equal(3, cursor.Row);
    }

    [Fact]
    public void It_is_found_again_by_a_later_start_once_its_line_has_come()
    {
        RowCursor cursor = new();
        cursor.GoTo(3, ["a", "b", "c", "spare left"]);
        RowCursor later = new() { Place = cursor.Place };

        later.Keep(["a"]);
        later.Keep(["new", "a", "b", "c", "spare left"]);

        Assert.Equal(4, later.Row);
        Assert.Equal("4 spare left", later.Place);
    }

    [Fact]
    public void One_that_was_never_moved_stays_at_the_top()
    {
        RowCursor cursor = new();
        cursor.Keep(["part"]);

        cursor.Keep(["answer", "part"]);

        Assert.Equal(0, cursor.Row);
    }

    [Theory]
    [InlineData("PgDn", 3)]
    [InlineData("PgUp", 0)]
    [InlineData("End", 4)]
    [InlineData("Home", 0)]
    [InlineData("Down", 2)]
    [InlineData("Up", 0)]
    public void Keys_move_it_and_stop_at_the_ends(string key, int expected)
    {
        RowCursor cursor = new();
        string[] names = ["a", "b", "c", "d", "e"];
        cursor.GoTo(1, names);

        Assert.True(cursor.Move(key, names, page: 2));

        Assert.Equal(expected, cursor.Row);
        Assert.False(cursor.Move("x", names, page: 2));
    }
}
