using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PackPlanner.Mutation;

/// <summary>Compiles Core with the switches of one or more rooms in it.</summary>
internal sealed class MutatedBuild
{
    private const string Chooser = """
        namespace PackPlanner.Core;
        internal static class Mutant
        {
            public static int Active = int.TryParse(global::System.Environment.GetEnvironmentVariable("PACKPLANNER_MUTANT"), out int n) ? n : 0;
            public static bool[]? Seen;
            public static bool Is(int id)
            {
                if (Seen is not null)
                    Seen[id] = true;
                return Active == id;
            }
        }
        """;

    private readonly string coreFolder;
    private readonly HashSet<string> rooms;
    private readonly CSharpCompilation original;
    private readonly HashSet<int> impossible = [];

    internal MutatedBuild(string root, string testFolder, IEnumerable<string> rooms)
    {
        coreFolder = Path.Combine(root, "src", "PackPlanner.Core");
        this.rooms = [.. rooms];
        string generated = Path.Combine(coreFolder, "obj", "Release", "net10.0");
        IEnumerable<string> files = Directory.EnumerateFiles(coreFolder, "*.cs", SearchOption.AllDirectories)
            .Where(file => !Path.GetRelativePath(coreFolder, file).StartsWith("obj", StringComparison.Ordinal) && !Path.GetRelativePath(coreFolder, file).StartsWith("bin", StringComparison.Ordinal))
            .Concat(Directory.EnumerateFiles(generated, "*.cs")).Order(StringComparer.Ordinal);
        string[] references =
        [
            .. ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Where(path => Path.GetFileName(path).StartsWith("System.", StringComparison.Ordinal) || Path.GetFileName(path) is "netstandard.dll" or "mscorlib.dll"),
            Path.Combine(testFolder, "MathNet.Numerics.dll"), Path.Combine(testFolder, "UnitsNet.dll"),
        ];
        original = CSharpCompilation.Create(
            "PackPlanner.Core", [.. files.Select(file => Parse(File.ReadAllText(file), file)), Parse(Chooser, "Mutant.cs")],
            references.Select(path => MetadataReference.CreateFromFile(path)),
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable));
    }

    /// <summary>Every change that could be written, those that would not compile among them.</summary>
    internal IReadOnlyList<Change> All() => Mutate(_ => false).Numbers.All;

    /// <summary>Of the changes that compile the first so many in an order, of each room or of all together.</summary>
    internal Change[] Chosen(IReadOnlyList<Change> order, int most, Func<Change, string> roomOf)
    {
        // Those that do not compile are left out, round by round: what one hides, the next shows. Others take their place.
        for (int round = 0; round < 100; round++)
        {
            Change[] chosen = [.. order.Where(change => !impossible.Contains(change.Id)).GroupBy(roomOf).SelectMany(room => room.Take(most == 0 ? int.MaxValue : most))];
            HashSet<int> ids = [.. chosen.Select(change => change.Id)];
            CSharpCompilation mutated = Mutate(ids.Contains).Mutated;
            List<Diagnostic> errors = [.. mutated.SyntaxTrees.Where(tree => rooms.Contains(RoomOf(tree)))
                .SelectMany(tree => mutated.GetSemanticModel(tree).GetDiagnostics()).Where(d => d.Severity == DiagnosticSeverity.Error)];
            if (errors.Count == 0)
                return [.. order.Where(change => ids.Contains(change.Id))];
            int before = impossible.Count;
            impossible.UnionWith(errors.SelectMany(Blamed));
            if (impossible.Count == before)
                throw new InvalidOperationException($"no change to blame for {errors[0]}");
        }

        throw new InvalidOperationException("the changes never compile");
    }

    /// <summary>Writes Core with these changes and no others.</summary>
    internal void Write(IReadOnlySet<int> ids, string file)
    {
        var result = Mutate(ids.Contains).Mutated.Emit(file);
        if (!result.Success)
            throw new InvalidOperationException($"the chosen changes do not compile: {result.Diagnostics.First(d => d.Severity == DiagnosticSeverity.Error)}");
    }

    private (CSharpCompilation Mutated, Numbers Numbers) Mutate(Func<int, bool> wanted)
    {
        Numbers numbers = new(wanted);
        CSharpCompilation mutated = original;
        foreach (SyntaxTree tree in original.SyntaxTrees)
        {
            if (!rooms.Contains(RoomOf(tree)))
                continue;
            SyntaxNode changed = new Rewriter(original.GetSemanticModel(tree), Path.GetRelativePath(coreFolder, tree.FilePath), numbers).Visit(tree.GetRoot())!;
            mutated = mutated.ReplaceSyntaxTree(tree, Parse(changed.ToFullString(), tree.FilePath));
        }

        return (mutated, numbers);
    }

    private string RoomOf(SyntaxTree tree) => Path.GetRelativePath(coreFolder, tree.FilePath).Split(Path.DirectorySeparatorChar)[0];

    // The nearest switch around the error; where there is none, all of the same member.
    private static IEnumerable<int> Blamed(Diagnostic error)
    {
        if (error.Location.SourceTree is not { } tree)
            return [];
        SyntaxNode node = tree.GetRoot().FindNode(error.Location.SourceSpan, getInnermostNodeForTie: true);
        foreach (SyntaxNode around in node.AncestorsAndSelf())
        {
            ExpressionSyntax? asked = around switch { ConditionalExpressionSyntax choice => choice.Condition, IfStatementSyntax one => one.Condition, _ => null };
            if (asked is InvocationExpressionSyntax call && IdOf(call) is { } id)
                return [id];
        }

        SyntaxNode member = node.AncestorsAndSelf().OfType<MemberDeclarationSyntax>().FirstOrDefault() ?? tree.GetRoot();
        return member.DescendantNodes().OfType<InvocationExpressionSyntax>().Select(IdOf).OfType<int>();
    }

    private static int? IdOf(InvocationExpressionSyntax call) =>
        call.Expression.ToString().EndsWith("Mutant.Is", StringComparison.Ordinal) && call.ArgumentList.Arguments[0].Expression is LiteralExpressionSyntax { Token.Value: int id } ? id : null;

    private static SyntaxTree Parse(string text, string path) =>
        CSharpSyntaxTree.ParseText(text, new CSharpParseOptions(LanguageVersion.Latest), path, System.Text.Encoding.UTF8);
}
