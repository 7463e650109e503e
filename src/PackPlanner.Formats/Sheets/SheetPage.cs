namespace PackPlanner.Formats.Sheets;

/// <summary>One printed page of a sheet, made of blocks that each say by themselves what they belong to.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Intro">Harmless HTML that stands before the first block's body: what to do with it.</param>
/// <param name="Blocks">One or more; none taller than half a page, but for drawings, which say it again at their foot.</param>
/// <param name="Cautions">Codes of the cautions that stand in it: whole in the first block, in short in each further one.</param>
public sealed record SheetPage(string Title, string Intro, IReadOnlyList<SheetBlock> Blocks, IReadOnlyList<string> Cautions)
{
    /// <summary>All that it says besides its cautions.</summary>
    public string Body => Intro + string.Concat(Blocks.Select(block => block.Body));

    /// <summary>A page of one block.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="intro">Harmless HTML before the body.</param>
    /// <param name="body">Harmless HTML.</param>
    /// <param name="cautions">Codes of the cautions that stand in it.</param>
    /// <returns>The page.</returns>
    public static SheetPage Of(string title, string intro, string body, params IReadOnlyList<string> cautions) => new(title, intro, [new SheetBlock(body)], cautions);

    /// <summary>A page of one block that may come out taller than half of it, and so says at its foot as well what it belongs to.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="body">Harmless HTML.</param>
    /// <param name="cautions">Codes of the cautions that stand in it.</param>
    /// <returns>The page.</returns>
    public static SheetPage OfTall(string title, string body, params IReadOnlyList<string> cautions) => new(title, "", [new SheetBlock(body, SaidAtTheFoot: true)], cautions);

    /// <summary>Rows of a table over as few pages as hold them, evenly, and on each page in two blocks where one would be taller than half of it.</summary>
    /// <param name="title">What they show.</param>
    /// <param name="intro">Harmless HTML before each page's first block.</param>
    /// <param name="heads">Heads of the columns, plain text.</param>
    /// <param name="rows">Harmless HTML.</param>
    /// <param name="onAPage">Rows that fit on a page of Letter.</param>
    /// <param name="cautions">Codes of the cautions that stand on each page.</param>
    /// <returns>The pages; none for no rows.</returns>
    public static IEnumerable<SheetPage> Rows(
        string title, string intro, IReadOnlyList<string> heads, IReadOnlyList<IReadOnlyList<string>> rows, int onAPage, params IReadOnlyList<string> cautions)
    {
        foreach (IReadOnlyList<string>[] page in Evenly(rows, onAPage))
            yield return new SheetPage(title, intro, [.. Evenly(page, (onAPage + 1) / 2).Select(block => new SheetBlock(Html.Table(heads, block)))], cautions);
    }

    /// <summary>Parts of nearly equal size, as few as hold at most so many each.</summary>
    /// <typeparam name="T">What is parted.</typeparam>
    /// <param name="all">In order.</param>
    /// <param name="most">In one part, at least 1.</param>
    /// <returns>The parts, in order.</returns>
    internal static IEnumerable<T[]> Evenly<T>(IReadOnlyList<T> all, int most)
    {
        int parts = (all.Count + most - 1) / most;
        for (int part = 0; part < parts; part++)
            yield return [.. all.Take(all.Count * (part + 1) / parts).Skip(all.Count * part / parts)];
    }
}
