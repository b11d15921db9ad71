using System.Diagnostics;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>Ends sub-processes for sure.</summary>
static class EndedProcess
{
    /// <summary>Ends a process that this program started, with its children; one that has already ended is left alone.</summary>
    public static void Kill(Process process)
    {
        try
        {
            process.Kill(entireProcessTree: true);
        }
        catch (Exception e) when (e is InvalidOperationException or System.ComponentModel.Win32Exception or AggregateException)
        {
            // It ended by itself in the meantime.
        }
    }
}
