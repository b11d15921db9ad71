using System.Diagnostics;

namespace HandsFreeStartup.Fleet.Tests.Support;

/// <summary>A disk of eight megabytes in memory, that the server can be sent to; only root can mount one.</summary>
static class SmallDisk
{
    public static string? Make(PostgresServer server)
    {
        string folder = Directory.CreateDirectory(Path.Combine(server.Folder, "small")).FullName;
        if (Run("mount", "-t", "tmpfs", "-o", "size=8m", "tmpfs", folder) != 0)
        {
            return null;
        }

        Directory.CreateDirectory(Path.Combine(folder, "space"));
        PostgresServer.Give(folder);
        return folder;
    }

    public static void Remove(string folder) => Run("umount", "-l", folder);

    static int Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        process.WaitForExit();
        return process.ExitCode;
    }
}
