using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>A program that speaks the text on its standard input. No text is ever an argument: what somebody said or wrote could be one.</summary>
/// <param name="Program">Full path.</param>
public abstract record Synthesizer(string Program)
{
    /// <summary>The one that a machine has: espeak-ng wherever it is installed, else what the system brings; null where there is none.</summary>
    /// <param name="machine">What is installed.</param>
    public static Synthesizer? Find(Machine machine) =>
        machine.Find("espeak-ng") is { } espeak ? new EspeakSynthesizer(espeak)
        : machine.Platform == Platform.MacOS && machine.Find("say") is { } say ? new MacSynthesizer(say)
        : machine.Platform == Platform.Windows && machine.Find("powershell") is { } shell ? new WindowsSynthesizer(shell)
        : null;

    /// <summary>The name of its voice for a language; null where it has none.</summary>
    /// <param name="language">That is to be spoken.</param>
    /// <param name="stop">Ends the search.</param>
    /// <exception cref="IOException">It failed.</exception>
    public abstract Task<string?> VoiceFor(Language language, CancellationToken stop);

    /// <summary>Speaks into a file.</summary>
    /// <param name="voice">As <see cref="VoiceFor"/> names it.</param>
    /// <param name="file">A WAV file that is not there yet.</param>
    public abstract ProgramRun ToFile(string voice, string file);

    /// <summary>Speaks aloud, where it can do that without a player; else null.</summary>
    /// <param name="voice">As <see cref="VoiceFor"/> names it.</param>
    public virtual ProgramRun? Aloud(string voice) => null;

    /// <summary>The text as it is given to the program: what stands in two brackets is an order to it or the sounds of a word.</summary>
    /// <param name="text">In words.</param>
    public static string Plain(string text) => text.Replace("[[", "[ [", StringComparison.Ordinal);
}

/// <summary>espeak-ng, at the usual rate of 165 words a minute.</summary>
/// <param name="Program">Full path.</param>
public sealed record EspeakSynthesizer(string Program) : Synthesizer(Program)
{
    /// <inheritdoc/>
    public override async Task<string?> VoiceFor(Language language, CancellationToken stop)
    {
        if (language.IsEnglish)
        {
            return language.Voice;
        }

        try
        {
            await new ProgramRun(Program, ["-q", .. Manner(language.Voice), "--stdin"]).Finish("a", stop);
            return language.Voice;
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    /// <remarks>On Windows it cannot open a path with letters of another script, and the folder has the user's name in it.</remarks>
    public override ProgramRun ToFile(string voice, string file) =>
        new(Program, [.. Manner(voice), "--stdin", "-w", Path.GetFileName(file)]) { Folder = Path.GetDirectoryName(file) ?? "" };

    /// <inheritdoc/>
    public override ProgramRun Aloud(string voice) => new(Program, [.. Manner(voice), "--stdin"]);

    /// <summary>The arguments of that voice.</summary>
    internal static string[] Manner(string voice) => ["-v", voice, "-s", "165"];
}

/// <summary>What macOS brings, at the same rate.</summary>
/// <param name="Program">Full path of <c>say</c>.</param>
public sealed record MacSynthesizer(string Program) : Synthesizer(Program)
{
    /// <inheritdoc/>
    public override async Task<string?> VoiceFor(Language language, CancellationToken stop) =>
        InstalledVoice.Choose(InstalledVoice.OfMac(await new ProgramRun(Program, ["-v", "?"]).Finish("", stop)), language);

    /// <inheritdoc/>
    public override ProgramRun ToFile(string voice, string file) =>
        new(Program, ["-v", voice, "-r", "165", "-o", file, "--file-format=WAVE", "--data-format=LEI16@22050", "-f", "-"]);
}

/// <summary>What Windows brings: System.Speech, which its own shell can call.</summary>
/// <param name="Program">Full path of <c>powershell</c>.</param>
public sealed record WindowsSynthesizer(string Program) : Synthesizer(Program)
{
    // No double quotes: they could be lost on the way to the shell. Names come as variables: as arguments the shell would read them as commands.
    const string Begin = "$ErrorActionPreference = 'Stop'; $utf8 = New-Object Text.UTF8Encoding $false; try { Add-Type -AssemblyName System.Speech; "
        + "$speech = New-Object System.Speech.Synthesis.SpeechSynthesizer; ";

    const string List = "[Console]::OutputEncoding = $utf8; "
        + "$speech.GetInstalledVoices() | Where-Object { $_.Enabled } | ForEach-Object { $_.VoiceInfo.Culture.Name + ' ' + $_.VoiceInfo.Name }";

    const string Speak = "$speech.SelectVoice($env:HANDSFREE_VOICE); $speech.SetOutputToWaveFile($env:HANDSFREE_WAV); "
        + "$speech.Speak((New-Object IO.StreamReader([Console]::OpenStandardInput(), $utf8)).ReadToEnd()); $speech.Dispose()";

    // The shell's own error report has many lines.
    const string End = " } catch { [Console]::Error.WriteLine($_.Exception.Message); exit 1 }";

    /// <inheritdoc/>
    public override async Task<string?> VoiceFor(Language language, CancellationToken stop) =>
        InstalledVoice.Choose(InstalledVoice.OfWindows(await Shell(List).Finish("", stop)), language);

    /// <inheritdoc/>
    public override ProgramRun ToFile(string voice, string file) => Shell(Speak) with { Variables = [("HANDSFREE_VOICE", voice), ("HANDSFREE_WAV", file)] };

    /// <summary>By itself the shell would read the input as well, and take a part of the text.</summary>
    ProgramRun Shell(string script) => new(Program, ["-NoProfile", "-NonInteractive", "-InputFormat", "None", "-Command", Begin + script + End]);
}
