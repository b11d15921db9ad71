using System.Diagnostics;
using System.Globalization;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Another process that appends events to a job until it is killed.</summary>
public sealed class AppendingProcess : IDisposable
{
    readonly Process _process;

    AppendingProcess(ProcessStartInfo start)
    {
        start.RedirectStandardOutput = true;
        start.RedirectStandardError = true;
        _process = Process.Start(start)!;
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
    }

    /// <summary>Number of the last event that it said was recorded.</summary>
    public int LastAcknowledged { get; private set; }

    /// <summary>What it said when the log failed.</summary>
    public string Failure { get; private set; } = "";

    public int ExitCode
    {
        get
        {
            _process.WaitForExit();
            return _process.ExitCode;
        }
    }

    public static AppendingProcess On(string job) => new(new ProcessStartInfo("dotnet", ["exec", Assembly, "append", job]));

    /// <summary>The same, in decisions of so many events, under a limit of the size of every file, in units of 1024 bytes; writing beyond fails as on a full disk.</summary>
    public static AppendingProcess OnLimited(string job, int kibibytes, int decision = 1)
    {
        ProcessStartInfo start = new("bash", ["-c", $"trap '' XFSZ; ulimit -f {kibibytes}; exec dotnet exec '{Assembly}' append '{job}' {decision}"]);
        // The runtime maps its code through a large file, which the limit would forbid.
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        return new AppendingProcess(start);
    }

    /// <summary>The same without the superuser's right to write where nobody may; without effect for anybody else.</summary>
    public static AppendingProcess OnWithoutPrivilege(string job) => new(Environment.IsPrivilegedProcess
        ? new ProcessStartInfo("setpriv", ["--bounding-set", "-dac_override,-dac_read_search", "dotnet", "exec", Assembly, "append", job])
        : new ProcessStartInfo("dotnet", ["exec", Assembly, "append", job]));

    /// <summary>Reads until that many more events are acknowledged, or until it ends.</summary>
    public void Await(int events)
    {
        for (int i = 0; i < events && _process.StandardOutput.ReadLine() is { } line; i++)
        {
            Take(line);
        }
    }

    /// <summary>Ends it as a power switch would, and takes in what it had still acknowledged.</summary>
    public void Kill()
    {
        _process.Kill();
        AwaitEnd();
    }

    public void AwaitEnd()
    {
        while (_process.StandardOutput.ReadLine() is { } line)
        {
            Take(line);
        }
        _process.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }
        _process.Dispose();
    }

    static string Assembly => typeof(AppendingProcess).Assembly.Location;

    void Take(string line)
    {
        // A line may be cut by the kill; only whole numbers that go on from the last one count as acknowledged.
        if (int.TryParse(line, CultureInfo.InvariantCulture, out int number) && (number == LastAcknowledged + 1 || LastAcknowledged == 0))
        {
            LastAcknowledged = number;
        }
        else if (line.StartsWith("failed: ", StringComparison.Ordinal))
        {
            Failure = line["failed: ".Length..];
        }
    }
}
