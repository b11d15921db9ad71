namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>A position in a text, both 1-based.</summary>
readonly record struct Place(int Line, int Column);

/// <summary>Collects the mistakes of one file while it is read, so that all are told at once.</summary>
/// <param name="file">Name of the file.</param>
/// <param name="isNew">Whether a job is to begin with it; a copy that a job keeps is not judged by rules that are newer than the job.</param>
sealed class Findings(string file, bool isNew = true)
{
    readonly HashSet<ChecklistFileError> _errors = [];

    /// <summary>Where the readers write down what they take; null where nobody asks.</summary>
    public FileShape? Shape { get; init; }

    public IEnumerable<ChecklistFileError> All => _errors.OrderBy(error => error.Line).ThenBy(error => error.Column);

    public void Add(Place place, string message) => _errors.Add(new ChecklistFileError(file, place.Line, place.Column, message));

    /// <summary>A mistake only of a file with which a job is to begin.</summary>
    public void AddForNew(Place place, string message)
    {
        if (isNew)
        {
            Add(place, message);
        }
    }

    public static void ThrowIfAny(params IEnumerable<Findings> files)
    {
        ChecklistFileError[] errors = [.. files.SelectMany(findings => findings.All)];
        if (errors.Length > 0)
        {
            throw new ChecklistFileException(errors);
        }
    }
}
