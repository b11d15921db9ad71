using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Speaking;

/// <summary>Shell scripts stand in for the synthesizers of macOS and Windows: they write down their arguments, their variables and what they are to say.</summary>
public sealed class SynthesizerTests : IDisposable
{
    static readonly TimeSpan Long = TimeSpan.FromSeconds(30);
    static readonly Language Spanish = new("es", []) { Voice = "es-419" };
    static readonly Language French = new("fr", []);

    const string MacVoices = """
        Albert              en_US    # Hello! My name is Albert.
        Eddy (Spanish (Mexico)) es_MX    # ¡Hola! Me llamo Eddy.
        Mónica              es_ES    # ¡Hola! Me llamo Mónica.
        Samantha            en_US    # Hello! My name is Samantha.
        Thomas              fr_FR    # Bonjour # ça va ?
        """;

    const string WindowsVoices = "en-GB Microsoft Hazel Desktop\r\nen-US Microsoft Zira Desktop\r\nes-ES Microsoft Helena Desktop\r\n";

    const string Hostile = "7 \"seven\" 'six' `x` $(touch gone) %PATH%\n; exit\r\nÑandú \\";

    readonly ScriptFolder _programs = new();

    public void Dispose() => _programs.Dispose();

    Machine On(Platform platform) => new(platform, _programs.Find, [_programs.Add("itself", "cat \"$3\" >> \"$LOG\"")]);

    void AddSay() => _programs.Add("say", $"""
        echo "asked: $*" >> "$LOG"
        if [ "$2" = '?' ]; then printf '%s\n' '{MacVoices.Replace("\n", "' '", StringComparison.Ordinal)}'; exit; fi
        cat > "$6"
        """);

    void AddShell() => _programs.Add("powershell", $"""
        for script; do :; done; case "$script" in *GetInstalledVoices*) printf '%s' '{WindowsVoices}'; exit;; esac
        echo "by: $HANDSFREE_VOICE" >> "$LOG"
        cat > "$HANDSFREE_WAV"
        """);

    [Theory]
    [InlineData(Platform.Linux, "espeak-ng say powershell", typeof(EspeakSynthesizer))]
    [InlineData(Platform.Linux, "say powershell", null)]
    [InlineData(Platform.MacOS, "espeak-ng say", typeof(EspeakSynthesizer))]
    [InlineData(Platform.MacOS, "say", typeof(MacSynthesizer))]
    [InlineData(Platform.Windows, "espeak-ng powershell", typeof(EspeakSynthesizer))]
    [InlineData(Platform.Windows, "powershell", typeof(WindowsSynthesizer))]
    [InlineData(Platform.Windows, "", null)]
    public void What_is_installed_speaks_before_what_the_system_brings(Platform platform, string installed, Type? kind) =>
        Assert.Equal(kind, Synthesizer.Find(Machines.With(platform, installed.Split(' ')))?.GetType());

    [Fact]
    public void A_plain_voice_is_chosen_and_none_where_the_language_has_none()
    {
        InstalledVoice[] mac = [.. InstalledVoice.OfMac(MacVoices)], windows = [.. InstalledVoice.OfWindows(WindowsVoices)];

        Assert.Equal<IEnumerable<string?>>(["Samantha", "Mónica", "Thomas"], [InstalledVoice.Choose(mac, Language.English), InstalledVoice.Choose(mac, Spanish), InstalledVoice.Choose(mac, French)]);
        Assert.Equal<IEnumerable<string?>>(["Microsoft Zira Desktop", "Microsoft Helena Desktop", null], [InstalledVoice.Choose(windows, Language.English), InstalledVoice.Choose(windows, Spanish), InstalledVoice.Choose(windows, French)]);
        Assert.Equal("Eddy (Spanish (Mexico))", InstalledVoice.Choose(mac.Where(voice => voice.Name != "Mónica"), Spanish));
        Assert.Null(InstalledVoice.Choose(InstalledVoice.OfMac("no list\n\0 at_ALL"), Language.English));
    }

    [Theory]
    [InlineData(Platform.MacOS)]
    [InlineData(Platform.Windows)]
    public async Task A_language_is_spoken_where_the_system_has_a_voice_for_it(Platform platform)
    {
        AddSay();
        AddShell();

        Assert.True(await SynthesizedVoice.Speaks(Spanish, TimeProvider.System, On(platform)));
        Assert.False(await SynthesizedVoice.Speaks(new Language("de", []), TimeProvider.System, On(platform)));
    }

    [Fact]
    public async Task On_macOS_the_text_is_read_from_the_input_whatever_it_holds()
    {
        AddSay();
        _programs.Add("afplay", "cat \"$1\" >> \"$LOG\"");
        await using IVoice voice = SynthesizedVoice.Find(TimeProvider.System, _ => { }, machine: On(Platform.MacOS), language: Spanish);

        await voice.Say(Hostile, default).AsTask().WaitAsync(Long);

        Assert.Empty(((SynthesizedVoice)voice).Trouble);
        Assert.StartsWith("asked: -v ?\nasked: -v Mónica -r 165 -o ", _programs.LogText, StringComparison.Ordinal);
        Assert.EndsWith($"--file-format=WAVE --data-format=LEI16@22050 -f -\n{Hostile}", _programs.LogText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task On_Windows_the_text_is_read_from_the_input_and_names_are_variables()
    {
        AddShell();
        await using IVoice voice = SynthesizedVoice.Find(TimeProvider.System, _ => { }, machine: On(Platform.Windows));

        await voice.Say(Hostile, default).AsTask().WaitAsync(Long);

        Assert.Empty(((SynthesizedVoice)voice).Trouble);
        Assert.Equal($"by: Microsoft Zira Desktop\n{Hostile}", _programs.LogText);
    }

    [Fact]
    public void What_the_shell_of_Windows_is_told_is_the_same_for_all_texts_and_has_no_double_quote()
    {
        ProgramRun run = new WindowsSynthesizer("powershell").ToFile("A \"voice\"", @"C:\O'Neil\1.wav");

        Assert.DoesNotContain(run.Arguments, argument => argument.Contains('"') || argument.Contains("voice\"", StringComparison.Ordinal) || argument.Contains("Neil", StringComparison.Ordinal));
        Assert.Equal([("HANDSFREE_VOICE", "A \"voice\""), ("HANDSFREE_WAV", @"C:\O'Neil\1.wav")], run.Variables.ToArray());
    }

    [Fact]
    public void Espeak_is_given_no_folder_whose_letters_it_cannot_read()
    {
        ProgramRun run = new EspeakSynthesizer("espeak-ng").ToFile("en-us", "/home/Ωμέγα/1.wav");

        Assert.Equal(("/home/Ωμέγα", "1.wav"), (run.Folder, run.Arguments[^1]));
    }

    [Theory]
    [InlineData("exit 0", "The voice could not speak (powershell has no voice for \"en\": install one, or espeak-ng): check the speaker; messages are still shown.")]
    [InlineData("echo 'is disabled' >&2; exit 1", "The voice could not speak (powershell ended with \"is disabled\"): check the speaker; messages are still shown.")]
    public async Task A_synthesizer_that_cannot_speak_says_why_and_is_silent(string script, string trouble)
    {
        _programs.Add("powershell", script);
        await using IVoice voice = SynthesizedVoice.Find(TimeProvider.System, _ => { }, machine: On(Platform.Windows));

        await voice.Say("oxygen", default).AsTask().WaitAsync(Long);

        Assert.Equal(trouble, ((SynthesizedVoice)voice).Trouble);
        Assert.Empty(_programs.LogText);
    }

    /// <summary>macOS takes what stands in two brackets for an order, espeak-ng for the sounds of a word.</summary>
    [Fact]
    public void Text_gives_no_orders_to_the_voice() => Assert.Equal("[ [volm 0]] quiet", Synthesizer.Plain("[[volm 0]] quiet"));
}
