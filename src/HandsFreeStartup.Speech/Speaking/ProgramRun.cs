using System.Collections.Immutable;
using System.Diagnostics;
using System.Text;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>One run of a program that takes text on its standard input.</summary>
/// <param name="Program">Full path.</param>
/// <param name="Arguments">Its arguments.</param>
public sealed record ProgramRun(string Program, ImmutableArray<string> Arguments)
{
    /// <summary>The console of Windows has another encoding, and a mark at the beginning would be read aloud.</summary>
    static readonly Encoding Utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Variables of its environment, beside those of this program.</summary>
    public ImmutableArray<(string Name, string Value)> Variables { get; init; } = [];

    /// <summary>The folder it runs in; empty for that of this program.</summary>
    public string Folder { get; init; } = "";

    /// <summary>Runs it to its end.</summary>
    /// <param name="input">The text, UTF-8.</param>
    /// <param name="stop">Ends it before.</param>
    /// <returns>What it wrote to its standard output.</returns>
    /// <exception cref="IOException">It failed; the message holds its last words.</exception>
    /// <exception cref="System.ComponentModel.Win32Exception">It did not start.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public async Task<string> Finish(string input, CancellationToken stop)
    {
        using Process process = Start();
        try
        {
            Task<string> complaint = process.StandardError.ReadToEndAsync(stop);
            Task<string> output = process.StandardOutput.ReadToEndAsync(stop);
            try
            {
                await process.StandardInput.WriteAsync(input.AsMemory(), stop);
                process.StandardInput.Close();
            }
            catch (IOException)
            {
                // It ended before it had read everything: its exit code and what it complained about say why, a broken pipe does not.
            }

            await Task.WhenAll(process.WaitForExitAsync(stop), complaint, output);
            return process.ExitCode == 0 ? await output : throw new IOException($"{Path.GetFileName(Program)} ended with \"{(await complaint).Trim().Split('\n')[^1].TrimEnd('.')}\"");
        }
        finally
        {
            EndedProcess.Kill(process);
        }
    }

    Process Start()
    {
        ProcessStartInfo start = new(Program, Arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = Utf8,
            StandardOutputEncoding = Utf8,
            StandardErrorEncoding = Utf8,
            CreateNoWindow = true,
            WorkingDirectory = Folder,
        };
        foreach ((string name, string value) in Variables)
        {
            start.Environment[name] = value;
        }

        return Process.Start(start) ?? throw new InvalidOperationException($"{Program} did not start");
    }
}
