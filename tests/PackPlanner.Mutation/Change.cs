using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PackPlanner.Mutation;

/// <summary>One change of the sources.</summary>
/// <param name="Id">Number, from 1, the same in each run over the same sources.</param>
/// <param name="File">Path under src/PackPlanner.Core.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Kind">What kind of change.</param>
/// <param name="Before">What stands there.</param>
/// <param name="After">What stands there instead.</param>
/// <param name="AtStart">It lies in what is worked out once, when the program starts.</param>
internal sealed record Change(int Id, string File, int Line, string Kind, string Before, string After, bool AtStart);

/// <summary>What an expression may be turned into.</summary>
/// <param name="Kind">What kind of change.</param>
/// <param name="Text">The new expression.</param>
internal readonly record struct Instead(string Kind, string Text)
{
    internal static Instead Of(string kind, ExpressionSyntax left, string between, ExpressionSyntax right) => new(kind, $"{left} {between} {right}");
}
