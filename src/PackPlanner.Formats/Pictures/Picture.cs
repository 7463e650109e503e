using PackPlanner.Formats.Sheets;

namespace PackPlanner.Formats.Pictures;

/// <summary>One kind of picture.</summary>
public sealed class Picture
{
    private readonly Func<SheetInput, IReadOnlyList<Chart>> draw;

    internal Picture(string name, string title, Func<SheetInput, string?> whyNot, Func<SheetInput, IReadOnlyList<Chart>> draw)
    {
        Name = name;
        Title = title;
        WhyNot = whyNot;
        this.draw = draw;
    }

    /// <summary>As on the command line, and the file's name.</summary>
    public string Name { get; }

    /// <summary>What it shows, for people.</summary>
    public string Title { get; }

    /// <summary>Why it cannot be drawn of a job; null when it can.</summary>
    public Func<SheetInput, string?> WhyNot { get; }

    /// <summary>The charts with the names of their files: one, or one for each layer.</summary>
    internal IEnumerable<(string Name, Chart Chart)> Charts(SheetInput input)
    {
        IReadOnlyList<Chart> charts = draw(input);
        return charts.Select((chart, i) => (charts.Count == 1 ? Name : $"{Name}-layer-{i + 1}", chart));
    }
}
