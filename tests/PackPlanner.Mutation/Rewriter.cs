using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PackPlanner.Mutation;

/// <summary>Writes a switch at each place of a file that is changed: the change stands beside what was there, and a number picks one.</summary>
internal sealed class Rewriter(SemanticModel model, string file, Numbers numbers) : CSharpSyntaxRewriter
{
    private const string Switch = "global::PackPlanner.Core.Mutant.Is";

    public override SyntaxNode? Visit(SyntaxNode? node)
    {
        SyntaxNode? visited = base.Visit(node);
        if (node is null || visited is null || IsConstantPlace(node))
            return visited;
        return node switch
        {
            ExpressionSyntax expression when visited is ExpressionSyntax now => Expression(expression, now),
            ExpressionStatementSyntax statement => Statement(statement, (StatementSyntax)visited),
            _ => visited,
        };
    }

    public override SyntaxNode? VisitIfStatement(IfStatementSyntax node) =>
        Condition(node, node.Condition, (IfStatementSyntax)base.VisitIfStatement(node)!, ["true", "false"], (now, condition) => now.WithCondition(condition));

    public override SyntaxNode? VisitWhileStatement(WhileStatementSyntax node) =>
        Condition(node, node.Condition, (WhileStatementSyntax)base.VisitWhileStatement(node)!, ["false"], (now, condition) => now.WithCondition(condition));

    public override SyntaxNode? VisitReturnStatement(ReturnStatementSyntax node)
    {
        ReturnStatementSyntax now = (ReturnStatementSyntax)base.VisitReturnStatement(node)!;
        return node.Expression is { } value && now.Expression is { } then ? now.WithExpression(Returned(value, then)) : now;
    }

    public override SyntaxNode? VisitArrowExpressionClause(ArrowExpressionClauseSyntax node)
    {
        ArrowExpressionClauseSyntax now = (ArrowExpressionClauseSyntax)base.VisitArrowExpressionClause(node)!;
        return now.WithExpression(Returned(node.Expression, now.Expression));
    }

    private ExpressionSyntax Expression(ExpressionSyntax node, ExpressionSyntax now)
    {
        IEnumerable<Instead> others = node is IdentifierNameSyntax name ? OfConstant(name) : ExpressionChanges.Of(node, model);
        foreach (Instead other in others)
            now = Choose(node, now, other.Kind, other.Text);
        return now;
    }

    // A constant of the code is changed where it is read, under one number for all those places.
    private IEnumerable<Instead> OfConstant(IdentifierNameSyntax name)
    {
        if (name.Parent is MemberAccessExpressionSyntax { Name: var member } && member == name && name.Parent.Parent is null)
            return [];
        ISymbol? symbol = model.GetSymbolInfo(name).Symbol;
        object? value = symbol switch
        {
            IFieldSymbol { IsConst: true, ContainingType.TypeKind: TypeKind.Class or TypeKind.Struct } field when field.ContainingAssembly.Name == "PackPlanner.Core" => field.ConstantValue,
            ILocalSymbol { IsConst: true } local => local.ConstantValue,
            _ => null,
        };
        return name.Parent is MemberAccessExpressionSyntax ? [] : ExpressionChanges.OfNumber(value);
    }

    private ExpressionSyntax Choose(SyntaxNode node, ExpressionSyntax now, string kind, string changed)
    {
        object? symbol = node is IdentifierNameSyntax name ? model.GetSymbolInfo(name).Symbol : null;
        int id = numbers.Next(symbol, () => Describe(node, kind, changed));
        return numbers.Wanted(id) ? Parse($"({Switch}({id}) ? ({changed}\n) : ({now.ToFullString()}\n))", now) : now;
    }

    private ExpressionSyntax Returned(ExpressionSyntax value, ExpressionSyntax now)
    {
        if (model.GetTypeInfo(value).ConvertedType is not { } type)
            return now;
        if (type.SpecialType == SpecialType.System_Boolean)
            return value is BinaryExpressionSyntax or PrefixUnaryExpressionSyntax or LiteralExpressionSyntax ? now : Choose(value, now, "returned", $"!({value})");
        return ExpressionChanges.IsNumber(type) && value is not LiteralExpressionSyntax ? Choose(value, now, "returned", "0") : now;
    }

    private SyntaxNode Condition<T>(SyntaxNode node, ExpressionSyntax condition, T now, string[] fixedTo, Func<T, ExpressionSyntax, T> with)
        where T : StatementSyntax
    {
        ExpressionSyntax then = now switch { IfStatementSyntax one => one.Condition, WhileStatementSyntax loop => loop.Condition, _ => throw new InvalidOperationException() };
        foreach (string value in fixedTo)
            then = Choose(condition, then, "condition", value);
        return with(now, then);
    }

    private StatementSyntax Statement(ExpressionStatementSyntax node, StatementSyntax now)
    {
        if (node.Expression is not (AssignmentExpressionSyntax or InvocationExpressionSyntax or PostfixUnaryExpressionSyntax or PrefixUnaryExpressionSyntax))
            return now;
        string? other = node.Expression switch
        {
            AssignmentExpressionSyntax { RawKind: (int)SyntaxKind.AddAssignmentExpression } add => $"{add.Left} -= {add.Right};",
            AssignmentExpressionSyntax { RawKind: (int)SyntaxKind.SubtractAssignmentExpression } subtract => $"{subtract.Left} += {subtract.Right};",
            AssignmentExpressionSyntax { RawKind: (int)SyntaxKind.MultiplyAssignmentExpression } multiply => $"{multiply.Left} /= {multiply.Right};",
            _ => null,
        };
        foreach ((string kind, string then) in other is null ? [("statement removed", "")] : new[] { ("statement removed", ""), ("arithmetic", other) })
        {
            int id = numbers.Next(null, () => Describe(node, kind, then));
            if (numbers.Wanted(id))
                now = SyntaxFactory.ParseStatement($"{{ if ({Switch}({id})) {{ {then} }} else {{ {now.ToFullString()}\n }} }}\n");
        }

        return now;
    }

    private static ExpressionSyntax Parse(string text, ExpressionSyntax now) =>
        SyntaxFactory.ParseExpression(text).WithLeadingTrivia(now.GetLeadingTrivia()).WithTrailingTrivia(now.GetTrailingTrivia());

    private Change Describe(SyntaxNode node, string kind, string after) => new(
        0, file, node.GetLocation().GetLineSpan().StartLinePosition.Line + 1, kind, OneLine(node.ToString()), OneLine(after),
        node.Ancestors().Any(a => a is FieldDeclarationSyntax field && field.Modifiers.Any(SyntaxKind.StaticKeyword)
            || a is EqualsValueClauseSyntax { Parent: PropertyDeclarationSyntax property } && property.Modifiers.Any(SyntaxKind.StaticKeyword)
            || a is ConstructorDeclarationSyntax constructor && constructor.Modifiers.Any(SyntaxKind.StaticKeyword)));

    private static string OneLine(string text)
    {
        string line = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= 110 ? line : line[..107] + "...";
    }

    // Where the language wants a constant, a pattern or a name, no switch can stand.
    private static bool IsConstantPlace(SyntaxNode node) => node.AncestorsAndSelf().Any(a => a
        is AttributeSyntax or PatternSyntax or CaseSwitchLabelSyntax or EnumMemberDeclarationSyntax or TypeSyntax { Parent: not (ExpressionSyntax or ArgumentSyntax or StatementSyntax or EqualsValueClauseSyntax or ArrowExpressionClauseSyntax or InitializerExpressionSyntax or ElementAccessExpressionSyntax or BracketedArgumentListSyntax or InterpolationSyntax or ExpressionElementSyntax) }
        || a is EqualsValueClauseSyntax { Parent: ParameterSyntax }
        || a is FieldDeclarationSyntax field && field.Modifiers.Any(SyntaxKind.ConstKeyword)
        || a is LocalDeclarationStatementSyntax { IsConst: true }
        || a is InvocationExpressionSyntax { Expression: IdentifierNameSyntax { Identifier.Text: "nameof" } });
}
