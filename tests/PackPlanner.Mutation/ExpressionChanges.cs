using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace PackPlanner.Mutation;

/// <summary>Which changes each kind of expression gets.</summary>
internal static class ExpressionChanges
{
    private static readonly Dictionary<SyntaxKind, string[]> Binary = new()
    {
        [SyntaxKind.AddExpression] = ["-"],
        [SyntaxKind.SubtractExpression] = ["+"],
        [SyntaxKind.MultiplyExpression] = ["/"],
        [SyntaxKind.DivideExpression] = ["*"],
        [SyntaxKind.ModuloExpression] = ["*"],
        [SyntaxKind.LessThanExpression] = ["<=", ">="],
        [SyntaxKind.LessThanOrEqualExpression] = ["<", ">"],
        [SyntaxKind.GreaterThanExpression] = [">=", "<="],
        [SyntaxKind.GreaterThanOrEqualExpression] = [">", "<"],
        [SyntaxKind.EqualsExpression] = ["!="],
        [SyntaxKind.NotEqualsExpression] = ["=="],
        [SyntaxKind.LogicalAndExpression] = ["||"],
        [SyntaxKind.LogicalOrExpression] = ["&&"],
    };

    private static readonly Dictionary<string, string> Calls = new()
    {
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["MinBy"] = "MaxBy",
        ["MaxBy"] = "MinBy",
        ["Any"] = "All",
        ["All"] = "Any",
        ["First"] = "Last",
        ["Last"] = "First",
        ["FirstOrDefault"] = "LastOrDefault",
        ["OrderBy"] = "OrderByDescending",
        ["OrderByDescending"] = "OrderBy",
        ["ThenBy"] = "ThenByDescending",
        ["ThenByDescending"] = "ThenBy",
        ["Order"] = "OrderDescending",
        ["OrderDescending"] = "Order",
        ["Average"] = "Sum",
        ["Take"] = "Skip",
        ["Skip"] = "Take",
        ["Ceiling"] = "Floor",
        ["Floor"] = "Ceiling",
    };

    internal static IEnumerable<Instead> Of(ExpressionSyntax expression, SemanticModel model) => expression switch
    {
        BinaryExpressionSyntax binary => OfBinary(binary, model),
        PrefixUnaryExpressionSyntax unary when unary.IsKind(SyntaxKind.LogicalNotExpression) => [new("not removed", unary.Operand.ToString())],
        PrefixUnaryExpressionSyntax unary when unary.IsKind(SyntaxKind.UnaryMinusExpression) && unary.Operand is not LiteralExpressionSyntax => [new("sign", unary.Operand.ToString())],
        LiteralExpressionSyntax literal when literal.IsKind(SyntaxKind.NumericLiteralExpression) => OfNumber(literal.Token.Value),
        ConditionalExpressionSyntax choice => [new("choice", choice.WhenTrue.ToString()), new("choice", choice.WhenFalse.ToString())],
        InvocationExpressionSyntax call => OfCall(call),
        _ => [],
    };

    /// <summary>Another number: twice as large, and 1 for 0.</summary>
    internal static IEnumerable<Instead> OfNumber(object? value) => value switch
    {
        int n => [new("constant", (n + 1).ToString(CultureInfo.InvariantCulture))],
        long n => [new("constant", (n + 1).ToString(CultureInfo.InvariantCulture) + "L")],
        double d => [new("constant", d == 0 ? "1.0" : $"(2 * {d.ToString("R", CultureInfo.InvariantCulture)}d)")],
        _ => [],
    };

    private static IEnumerable<Instead> OfBinary(BinaryExpressionSyntax binary, SemanticModel model)
    {
        if (binary.IsKind(SyntaxKind.CoalesceExpression))
            return binary.Right is ThrowExpressionSyntax ? [] : [new("coalesce", binary.Right.ToString())];
        if (!Binary.TryGetValue(binary.Kind(), out string[]? others))
            return [];
        bool arithmetic = binary.Kind() is SyntaxKind.AddExpression or SyntaxKind.SubtractExpression or SyntaxKind.MultiplyExpression or SyntaxKind.DivideExpression or SyntaxKind.ModuloExpression;
        if (arithmetic && model.GetTypeInfo(binary).Type is not { } type || arithmetic && !IsNumber(model.GetTypeInfo(binary).Type!))
            return [];
        string kind = arithmetic ? "arithmetic" : binary.Kind() is SyntaxKind.LogicalAndExpression or SyntaxKind.LogicalOrExpression ? "and or" : "comparison";
        return others.Select(other => Instead.Of(kind, binary.Left, other, binary.Right));
    }

    internal static bool IsNumber(ITypeSymbol type) =>
        type.SpecialType is SpecialType.System_Double or SpecialType.System_Int32 or SpecialType.System_Int64
        || (type is INamedTypeSymbol { OriginalDefinition.SpecialType: SpecialType.System_Nullable_T } nullable && IsNumber(nullable.TypeArguments[0]));

    private static IEnumerable<Instead> OfCall(InvocationExpressionSyntax call)
    {
        if (call.Expression is not MemberAccessExpressionSyntax member)
            return [];
        string name = member.Name.Identifier.Text;
        if (name == "Abs" && call.ArgumentList.Arguments.Count == 1)
            return [new("call", call.ArgumentList.Arguments[0].ToString())];
        if (name == "Any" && call.ArgumentList.Arguments.Count == 0 || !Calls.TryGetValue(name, out string? other) || member.Name is GenericNameSyntax)
            return [];
        return [new("call", $"{member.Expression}.{other}{call.ArgumentList}")];
    }
}
