using System.Diagnostics;
using System.Globalization;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Start;

/// <summary>The console on a real terminal whose other end goes away.</summary>
public sealed class VanishedTerminalTests
{
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    [Fact]
    public async Task A_session_whose_terminal_vanishes_ends_in_order()
    {
        using TemporaryFolder data = new();
        // Whoever runs the tests may ignore hang-ups (nohup); a terminal's shell does not.
        string pid = Path.Combine(data.Path, "pid"), checklists = StartTests.Folder("checklists");
        using Process terminal = OnTerminal($"stty rows 30 cols 100; echo $$ > {pid}; exec env --default-signal=HUP dotnet exec {typeof(CommandLine).Assembly.Location} start --keys --mute --technician Tess --data {data.Path} "
            + $"--appliance {checklists}/demo-furnace.yaml --site {checklists}/demo-site.yaml --checklist {checklists}/two-stage-natural-gas.yaml");
        using CancellationTokenSource late = new(Patience);
        using CancellationTokenRegistration gone = late.Token.Register(() => terminal.Kill(entireProcessTree: true));
        await Drawn(terminal, () => File.Exists(pid) && Directory.Exists(Path.Combine(data.Path, "jobs")));
        using Process session = Process.GetProcessById(int.Parse(await File.ReadAllTextAsync(pid), CultureInfo.InvariantCulture));

        terminal.Kill();
        await session.WaitForExitAsync(late.Token);

        // The summary is what a session writes last.
        Assert.True(File.Exists(Path.ChangeExtension(data.Job, ".txt")), string.Join('\n', Directory.GetFiles(data.Path, "*", SearchOption.AllDirectories)));
    }

    static Process OnTerminal(string command)
    {
        ProcessStartInfo start = new("script", ["-qfc", command, "/dev/null"]) { RedirectStandardInput = true, RedirectStandardOutput = true };
        start.Environment["TERM"] = "xterm-256color";
        start.Environment.Remove("DisableRealDriverIO"); // set for screens without a terminal
        return Process.Start(start) ?? throw new InvalidOperationException("The terminal did not start.");
    }

    /// <summary>Waits until a job has begun and several screens of letters have been drawn since; what they say comes in pieces.</summary>
    static async Task Drawn(Process terminal, Func<bool> hasBegun)
    {
        const int Several = 10_000;
        char[] part = new char[4096];
        for (int drawn = 0; drawn < Several;)
        {
            int read = await terminal.StandardOutput.ReadAsync(part);
            drawn += read == 0 ? throw new EndOfStreamException("The console never drew its first step.") : hasBegun() ? read : 0;
        }
    }
}
