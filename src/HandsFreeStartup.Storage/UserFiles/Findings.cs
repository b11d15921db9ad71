namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>A position in a text, both 1-based.</summary>
readonly record struct Place(int Line, int Column);

/// <summary>Collects the mistakes of one file while it is read, so that all are told at once.</summary>
sealed class Findings(string file)
{
    readonly HashSet<ChecklistFileError> _errors = [];

    public IEnumerable<ChecklistFileError> All => _errors.OrderBy(error => error.Line).ThenBy(error => error.Column);

    public void Add(Place place, string message) => _errors.Add(new ChecklistFileError(file, place.Line, place.Column, message));

    public static void ThrowIfAny(params IEnumerable<Findings> files)
    {
        ChecklistFileError[] errors = [.. files.SelectMany(findings => findings.All)];
        if (errors.Length > 0)
        {
            throw new ChecklistFileException(errors);
        }
    }
}
