namespace HandsFreeStartup.Doors;

/// <summary>A file that is not opened, because it is none that the program can use; the message is one sentence with place and remedy.</summary>
/// <param name="message">The sentence.</param>
public sealed class UnusableFileException(string message) : IOException(message);

/// <summary>What the errors of the file system mean to a person, and what to do.</summary>
public static class FileTrouble
{
    const int TooManyOpen = 24;
    const int NoSpace = 28;
    const int TooLarge = 27;
    const int ReadOnly = 30;
    const int TooManyLinks = 40;
    const int DeviceError = 5;
    const int Quota = 122;
    const int Stale = 116;

    /// <summary>Whether it is an error of a path, a file or a disk, and not of the program.</summary>
    public static bool Is(Exception error) => error is IOException or UnauthorizedAccessException or NotSupportedException or System.Security.SecurityException
        || error is ArgumentException { ParamName: "path" or "fileName" or "sourceFileName" or "destFileName" } || IsTooLarge(error);

    /// <summary>One sentence: what failed, why, and what to do.</summary>
    /// <param name="error">What was thrown.</param>
    /// <param name="what">What failed, as the beginning of a sentence: "The table /home/x.csv cannot be written".</param>
    /// <param name="instead">What else can be done, as a clause; used where the cause itself names no remedy.</param>
    public static string Sentence(Exception error, string what, string instead) => error is UnusableFileException
        ? error.Message
        : $"{VisibleText.Of(what)}: {Cause(error, instead)}.";

    /// <summary>The runtime tells a file that may not grow any further by an argument that nobody gave.</summary>
    static bool IsTooLarge(Exception error) =>
        error is ArgumentOutOfRangeException { ParamName: "value" } && error.Message.StartsWith("Specified file length was too large", StringComparison.Ordinal);

    static string Cause(Exception error, string instead) => error switch
    {
        _ when IsTooLarge(error) => $"it would grow larger than this disk or account allows; {instead}",
        ArgumentException when error.Message.Contains("Null character", StringComparison.Ordinal) => $"its name holds a character that no file can have; {instead}",
        ArgumentException => $"it has no name; {instead}",
        FileNotFoundException => $"there is no such file; {instead}",
        DirectoryNotFoundException => $"there is no such folder; {instead}",
        PathTooLongException => $"its name is too long; {instead}",
        UnauthorizedAccessException or System.Security.SecurityException => $"it is a folder, or you have no right to it; {instead}, or ask for the right",
        IOException { HResult: NoSpace or Quota } => $"the disk is full; free some space, or {instead}",
        IOException { HResult: TooLarge } => $"it would grow larger than this disk or account allows; {instead}",
        IOException { HResult: ReadOnly } => $"the disk is read-only; {instead}",
        IOException { HResult: TooManyLinks } => $"links lead in a circle; {instead}",
        IOException { HResult: TooManyOpen } => "too many files are open on this machine; close some programs and try again",
        IOException { HResult: DeviceError or Stale } => $"the disk does not answer as it should; look whether it is still there, or {instead}",
        _ => $"{error.Message.TrimEnd('.').ReplaceLineEndings(" ")}; {instead}",
    };
}
