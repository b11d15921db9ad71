using HandsFreeStartup.Doors;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>What the errors of the database and the file system mean to a technician.</summary>
static class LogErrors
{
    const int Busy = 5;
    const int Locked = 6;
    const int ReadOnly = 8;
    const int InputOutput = 10;
    const int Corrupt = 11;
    const int Full = 13;
    const int CannotOpen = 14;
    const int NotADatabase = 26;
    const int Interrupted = 9;
    const int TooBig = 18;

    public static LogException OnOpening(string path, Exception error) => new(error switch
    {
        SqliteException { SqliteErrorCode: Busy or Locked } => InUse(path),
        UnusableFileException => error.Message,
        SqliteException { SqliteErrorCode: Interrupted or TooBig } => $"{path} takes more work to read than any record of this program: it is damaged or none. Keep the file as it is.",
        SqliteException { SqliteErrorCode: ReadOnly or CannotOpen } or UnauthorizedAccessException =>
            $"The record {path} cannot be written: its folder is read-only or missing. Choose another folder with --data, or make this one writable.",
        SqliteException { SqliteErrorCode: Corrupt or NotADatabase } => $"{path} is damaged or no record of this program. Keep the file as it is and run verify on it.",
        SqliteException { SqliteErrorCode: Full } => $"The disk is full; the record {path} cannot be opened for writing. Free some space and try again.",
        _ when FileTrouble.Is(error) => FileTrouble.Sentence(error, $"The record {path} cannot be opened", "look at the disk, or choose another folder with --data"),
        _ => $"The record {path} cannot be opened: {error.Message.TrimEnd('.')}. Look at the disk, or choose another folder with --data.",
    }, error);

    public static LogException OnAppending(string path, long sequence, SqliteException error)
    {
        string cause = error.SqliteErrorCode switch
        {
            Full => "the disk is full. Free some space",
            InputOutput => "the disk refuses to write. Look whether it is full, limited or removed",
            ReadOnly => "the file is read-only. Make it writable",
            Corrupt or NotADatabase => "the file is damaged. Keep it as it is, run verify on it",
            _ => $"{error.Message.TrimEnd('.')}. Put it right",
        };
        return new LogException(FormattableString.Invariant(
            $"Event {sequence} could not be recorded: {cause} and continue with start --resume. The {sequence - 1} events before it are safe in {path}."), error);
    }

    public static string InUse(string path) => $"The record {path} is in use by another running start-up. End that one first.";
}
