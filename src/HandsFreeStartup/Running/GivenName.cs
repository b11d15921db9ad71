using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Running;

/// <summary>Names and remarks that are given on the command line or typed on a screen, and become part of a record.</summary>
static class GivenName
{
    /// <summary>A name.</summary>
    /// <param name="text">As given, or null.</param>
    /// <param name="missing">What is said where it is missing.</param>
    /// <exception cref="WrongUseException">It is missing, or too long.</exception>
    public static string Of(string? text, string missing)
    {
        string name = text?.Trim() ?? "";
        return name.Length == 0 ? throw new WrongUseException(missing) : Bounded(name, TextLength.Name, "The name");
    }

    /// <summary>A remark, which may be empty.</summary>
    /// <exception cref="WrongUseException">It is too long.</exception>
    public static string Remark(string? text) => Bounded(text?.Trim() ?? "", TextLength.Note, "The remark");

    static string Bounded(string text, int most, string what) => TextLength.Problem(text, most, what) is { } tooLong ? throw new WrongUseException(tooLong) : text;
}
