using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Running;

/// <summary>Options with a number, read as every typed number is.</summary>
static class NumberOption
{
    /// <summary>A number from <paramref name="lowest"/> to <paramref name="highest"/>, both allowed.</summary>
    public static Option<double?> Of(string name, double lowest, double highest) => new(name)
    {
        CustomParser = given => TypedNumber.ReadDouble(Text(given), out string reason) is not { } number ? Refuse<double>(given, name, reason)
            : number < lowest || number > highest ? Refuse<double>(given, name, string.Create(CultureInfo.InvariantCulture, $"{number} is out of range; give {lowest} to {highest}"))
            : number,
    };

    /// <summary>A whole number from <paramref name="lowest"/> to <paramref name="highest"/>, both allowed.</summary>
    public static Option<int?> Whole(string name, int lowest, int highest) => new(name)
    {
        CustomParser = given => TypedNumber.ReadWhole(Text(given), lowest, highest, out string reason) is { } number ? number : Refuse<int>(given, name, reason),
    };

    static string Text(ArgumentResult given) => given.Tokens is [var token] ? token.Value : "";

    static T? Refuse<T>(ArgumentResult given, string name, string reason)
        where T : struct
    {
        given.AddError($"{name}: {reason}.");
        return null;
    }
}
