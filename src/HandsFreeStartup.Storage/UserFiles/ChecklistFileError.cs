using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>A mistake in a file of the user.</summary>
/// <param name="File">File name.</param>
/// <param name="Line">1-based line, or 0 when the file as a whole is meant.</param>
/// <param name="Column">1-based column, or 0.</param>
/// <param name="Message">What is wrong, what was expected and what to write instead.</param>
public sealed record ChecklistFileError(string File, int Line, int Column, string Message)
{
    /// <summary>As shown: <c>file:line:column: message</c>.</summary>
    public override string ToString() =>
        VisibleText.Of(Line == 0 ? $"{File}: {Message}" : FormattableString.Invariant($"{File}:{Line}:{Column}: {Message}"));
}

/// <summary>Files of the user that cannot be used, with every mistake found in them.</summary>
public sealed class ChecklistFileException : Exception
{
    /// <summary>Who has made more of them has one in common to all.</summary>
    const int MostTold = 100;

    /// <summary>Carries the mistakes; there is at least one.</summary>
    public ChecklistFileException(IReadOnlyList<ChecklistFileError> errors)
        : base(string.Join('\n', errors.Take(MostTold).Select(error => error.ToString()).Concat(errors.Count > MostTold ? [FormattableString.Invariant($"There are {errors.Count - MostTold} mistakes more.")] : []))) => Errors = errors;

    /// <summary>Every mistake, in the order of the files and their lines.</summary>
    public IReadOnlyList<ChecklistFileError> Errors { get; }
}
