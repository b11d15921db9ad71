using HandsFreeStartup.Doors;
using HandsFreeStartup.NewJob;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Rehearse;

/// <summary>What rehearsals have left in the data folder, and how a trainee is removed from it.</summary>
/// <param name="data">The data folder.</param>
sealed class KeptRehearsals(DataFolder data)
{
    const string Record = "*.db", Ahead = "-wal", Shared = "-shm";

    /// <summary>Removes every rehearsal of a trainee, and the lines of progress.</summary>
    /// <param name="trainee">As the table of the trainees shows it.</param>
    /// <returns>How many rehearsals and lines were removed, and what could not be reached, as parts of a sentence.</returns>
    /// <exception cref="WrongUseException">Nobody of that name has rehearsed.</exception>
    public (int Rehearsals, int Lines, IReadOnlyList<string> Left) RemoveOf(string trainee)
    {
        int rehearsals = 0;
        List<string> left = [];
        RemoveOrphans();
        foreach (string record in Files(Record))
        {
            try
            {
                if (StoredJob.Read(record).Events is [StartupBegan began, ..] && TableCell.Of(began.Job.Technician) == trainee)
                {
                    left.AddRange(Remove(record));
                    rehearsals++;
                }
            }
            catch (LogException error)
            {
                left.Add($"a rehearsal of whoever it may be: {error.Message.TrimEnd('.')}");
            }
        }

        RemoveLastName(trainee);

        // Last: an interrupted removal finds the name again by these lines.
        int lines = Progress.Remove(data, trainee);
        return rehearsals + lines == 0
            ? throw new WrongUseException($"Nobody of the name '{trainee}' has rehearsed: review --rehearsals shows the names.{string.Concat(left.Select(one => $" Out of reach: {one}."))}")
            : (rehearsals, lines, left);
    }

    /// <summary>The record itself goes after what lies beside it: as long as it is there, it is known whose all of that is.</summary>
    static IEnumerable<string> Remove(string record)
    {
        string[] left = [.. AttachmentKind.All.SelectMany(kind => PersonalFiles.RemoveFolder(kind.FolderOf(record)).Left)];
        PersonalFiles.RemoveCopies(record);
        foreach (string file in (string[])[Path.ChangeExtension(record, ".txt"), KeptHands.FileOf(record), record, $"{record}{Ahead}", $"{record}{Shared}"])
        {
            File.Delete(file);
        }

        return left;
    }

    /// <summary>A write-ahead log without its record is what an interrupted removal has left; nobody can read whose it was.</summary>
    void RemoveOrphans()
    {
        foreach (string file in new[] { Ahead, Shared }.SelectMany(ending => Files($"{Record}{ending}")).Where(file => !File.Exists(file[..^Ahead.Length])))
        {
            File.Delete(file);
        }
    }

    string[] Files(string pattern) => Directory.Exists(data.Rehearsals) ? Directory.GetFiles(data.Rehearsals, pattern) : [];

    void RemoveLastName(string trainee)
    {
        string last = new KeptFiles(data).Technician;
        if (KeptFiles.TextOf(last).Trim() == trainee)
        {
            File.Delete(last);
        }
    }
}
