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
        string pid = Path.Combine(data.Path, "pid"), checklists = StartTests.Folder("checklists");
        using Process terminal = OnTerminal($"stty rows 30 cols 100; echo $$ > {pid}; exec dotnet exec {typeof(CommandLine).Assembly.Location} start --keys --mute --technician Tess --data {data.Path} "
            + $"--appliance {checklists}/demo-furnace.yaml --site {checklists}/demo-site.yaml --checklist {checklists}/two-stage-natural-gas.yaml");
        Task shown = Shown(terminal, "rating plate");
        Assert.True(await Task.WhenAny(shown, Task.Delay(Patience)) == shown, "The console never showed its first step.");
        await shown;
        using Process session = Process.GetProcessById(int.Parse(await File.ReadAllTextAsync(pid), CultureInfo.InvariantCulture));

        terminal.Kill();
        using CancellationTokenSource late = new(Patience);
        await session.WaitForExitAsync(late.Token);

        // The summary is what a session writes last.
        Assert.True(File.Exists(Path.ChangeExtension(data.Job, ".txt")), string.Join('\n', Directory.GetFiles(data.Path, "*", SearchOption.AllDirectories)));
    }

    static Process OnTerminal(string command)
    {
        ProcessStartInfo start = new("script", ["-qfc", command, "/dev/null"]) { RedirectStandardInput = true, RedirectStandardOutput = true };
        start.Environment["TERM"] = "xterm-256color";
        return Process.Start(start) ?? throw new InvalidOperationException("The terminal did not start.");
    }

    static async Task Shown(Process terminal, string text)
    {
        char[] part = new char[4096];
        for (string all = ""; !all.Contains(text, StringComparison.OrdinalIgnoreCase);)
        {
            int read = await terminal.StandardOutput.ReadAsync(part);
            all = read > 0 ? all + new string(part, 0, read) : throw new EndOfStreamException($"The terminal ended: {all}");
        }
    }
}
