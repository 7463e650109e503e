using System.Text;

namespace PackPlanner.Formats.Tables;

/// <summary>How a role is called in an answer: camel case, as JSON keys are.</summary>
internal static class RoleNames
{
    internal static string Of(ColumnRole role) => role switch
    {
        ColumnRole.Unknown => "not used",
        ColumnRole.Label => "cell",
        ColumnRole.Current => "current",
        _ => Camel(role.ToString()),
    };

    private static string Camel(string name) => new StringBuilder(name) { [0] = char.ToLowerInvariant(name[0]) }.ToString();
}
