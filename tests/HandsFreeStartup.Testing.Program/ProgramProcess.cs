using System.Diagnostics;

namespace HandsFreeStartup.Tests.Support;

/// <summary>What the program left behind.</summary>
public sealed record ProgramResult(int ExitCode, string Output, string Error);

/// <summary>The built program, run as its user runs it.</summary>
public static class ProgramProcess
{
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(20);

    public static Process Start(params IEnumerable<string> arguments) => Start(arguments, _ => { });

    public static Process Start(IEnumerable<string> arguments, Action<ProcessStartInfo> change)
    {
        ProcessStartInfo start = new("dotnet", ["exec", typeof(CommandLine).Assembly.Location, .. arguments])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        change(start);
        return Process.Start(start) ?? throw new InvalidOperationException("The program did not start.");
    }

    public static Task<ProgramResult> Run(params IEnumerable<string> arguments) => RunTyping([], arguments);

    public static async Task<ProgramResult> RunTyping(IEnumerable<string> lines, params IEnumerable<string> arguments)
    {
        using Process process = Start(arguments);
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        foreach (string line in lines)
        {
            await process.StandardInput.WriteLineAsync(line);
        }

        process.StandardInput.Close();
        return await Ended(process, output, error);
    }

    public static async Task<ProgramResult> Ended(Process process, Task<string> output, Task<string> error, TimeSpan? patience = null)
    {
        using CancellationTokenSource late = new(patience ?? Patience);
        try
        {
            await process.WaitForExitAsync(late.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"The program did not end. It said: {await output} {await error}");
        }

        return new ProgramResult(process.ExitCode, await output, await error);
    }
}
