using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Speaking;

/// <summary>What a voice of another language is given: its words, and numbers as digits whose sign and point are words.</summary>
public sealed class SpanishVoiceTests
{
    static readonly Language Spanish = new("es", new Dictionary<string, string>
    {
        ["Oxygen"] = "Oxígeno",
        ["percent"] = "por ciento",
        ["inches"] = "pulgadas",
        ["degrees"] = "grados",
        ["point"] = "punto",
        ["minus"] = "menos",
        ["minute"] = "minuto",
        ["seconds"] = "segundos",
        ["plus or minus"] = "más o menos",
        ["at most {0}"] = "como máximo {0}",
        ["{0}: {1} left."] = "{0}: quedan {1}.",
    })
    {
        Voice = "es-419",
    };

    [Fact]
    public void Each_decimal_is_said_by_itself_and_the_point_is_a_word() =>
        Assert.Equal("Oxígeno 7 punto 6 5 por ciento", SpokenMessage.Of($"{new MessagePart.Name("Oxygen")} {new ShownValue("7.65", "", "", "%")}", language: Spanish));

    [Fact]
    public void A_doubtful_value_is_said_digit_by_digit() =>
        Assert.Equal("menos 1 5 grados?", SpokenMessage.Of($"{ShownValue.Alone(-15, "°F")}?", digitByDigit: true, Spanish));

    [Fact]
    public void Doubt_limit_and_time_are_said_in_its_words()
    {
        Assert.Equal("7 punto 6 más o menos 0 punto 3 por ciento", SpokenMessage.Of($"{new MessagePart.Quantity(new ShownValue("7.6", "0.3", "", "%"), TellsDoubt: true)}", language: Spanish));
        Assert.Equal("como máximo 3 punto 6 5 pulgadas", SpokenMessage.Of($"{new MessagePart.Limit("", "3.65", "in. w.c.")}", language: Spanish));
        Assert.Equal("Oxígeno: quedan 1 minuto 5 segundos.", SpokenMessage.Of($"{new MessagePart.Name("Oxygen")}: {TimeSpan.FromSeconds(65)} left.", language: Spanish));
    }

    [Fact]
    public async Task The_voice_is_asked_for_by_the_name_that_its_file_states()
    {
        EspeakSynthesizer espeak = new("/bin/true");

        Assert.Equal("es-419", await espeak.VoiceFor(Spanish, default));
        Assert.Equal(["-v", "es-419"], espeak.ToFile("es-419", "file").Arguments.Take(2));
    }

    [Fact]
    public async Task A_voice_that_a_machine_lacks_is_found_out_before_anything_is_said()
    {
        Assert.True(await SynthesizedVoice.Speaks(Language.English, TimeProvider.System));
        Assert.True(await SynthesizedVoice.Speaks(Spanish, TimeProvider.System, Machines.Linux(_ => null)));
        Assert.False(await SynthesizedVoice.Speaks(Spanish, TimeProvider.System, Machines.Linux(_ => "/bin/false")));
        Assert.True(await SynthesizedVoice.Speaks(Spanish, TimeProvider.System, Machines.Linux(_ => "/bin/true")));
    }
}
