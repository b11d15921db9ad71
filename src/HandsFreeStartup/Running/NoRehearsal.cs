using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Running;

/// <summary>A rehearsal is no job: nothing that speaks for a furnace takes its record.</summary>
public static class NoRehearsal
{
    /// <summary>Refuses the record of a rehearsal; one that cannot be read is left to whoever reads it.</summary>
    /// <exception cref="WrongUseException">It is one.</exception>
    public static void Check(string path)
    {
        if (IsOne(path))
        {
            throw new WrongUseException(Refusal(path));
        }
    }

    /// <summary>Whether it is the record of a rehearsal, as far as it can be read.</summary>
    public static bool IsOne(string path)
    {
        try
        {
            return StoredJob.Read(path).Events is [StartupBegan { Job.Rehearsal: not null }, ..];
        }
        catch (LogException)
        {
            // Its own command tells what is wrong with it.
            return false;
        }
    }

    /// <summary>The path of a record that is none of a rehearsal.</summary>
    /// <exception cref="WrongUseException">It is one.</exception>
    public static string Checked(string path)
    {
        Check(path);
        return path;
    }

    /// <summary>One sentence.</summary>
    public static string Refusal(string path) => $"{path} is the record of a rehearsal on a simulated furnace, and never one of a start-up. See how trainees get on with review --rehearsals.";
}
