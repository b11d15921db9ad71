using System.Text.Json;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Tests.Messages;

/// <summary>Sentences of the program that come back from the log as finished text: another language finds again what they were made of. What people wrote is left alone.</summary>
[Trait("Speed", "Fast")]
public sealed class RecordedTests
{
    static readonly Language Spanish = new("es", new Dictionary<string, string>
    {
        ["Wait, {0}: {1} left."] = "Espere, {0}: quedan {1}.",
        ["outside, with doors and windows open"] = "afuera, con puertas y ventanas abiertas",
        ["{0} {1} is outside of {2} ({3})"] = "{0} {1} está fuera de {2} ({3})",
        ["Flue temperature"] = "Temperatura de humos",
        ["{0} to {1}"] = "{0} a {1}",
        ["at most {0}"] = "como máximo {0}",
        ["over {0}"] = "más de {0}",
        ["rating plate"] = "placa de datos",
        ["{0} is open"] = "{0}: abierto",
        ["{0} is not open"] = "{0}: no abierto",
        ["{0} was {1}, {1} ago"] = "{0}: {1}, hace {1}",
        ["typed \"{0}\""] = "escrito \"{0}\"",
        ["Unknown key '{0}'."] = "Clave desconocida «{0}».",
        ["{0}{1} opened"] = "{0}{1} se abrió",
    });

    [Theory]
    [InlineData("Wait, outside, with doors and windows open: 0:06 left.", "Espere, afuera, con puertas y ventanas abiertas: quedan 0:06.")]
    [InlineData("Flue temperature 300 °F is outside of 320 to 500 °F (rating plate)", "Temperatura de humos 300 °F está fuera de 320 a 500 °F (placa de datos)")]
    [InlineData("Flue temperature over 2000 °F is outside of at most 500 °F (plate)", "Temperatura de humos más de 2000 °F está fuera de como máximo 500 °F (plate)")]
    [InlineData("the plug is not open", "the plug: no abierto")]
    [InlineData("It was 5, 5 ago", "It: 5, hace 5")]
    [InlineData("It was 5, 6 ago", "It was 5, 6 ago")]
    [InlineData("typed \"rating plate\"", "escrito \"rating plate\"")]
    [InlineData("Unknown key 'rating plate'.", "Clave desconocida «rating plate».")]
    [InlineData("A plug opened", "A plug opened")]
    [InlineData("left to right", "left to right")]
    [InlineData("Nothing that is known", "Nothing that is known")]
    public void A_sentence_of_the_program_is_told_in_the_language(string recorded, string shown) =>
        Assert.Equal(shown, Spanish.Shown(JsonSerializer.Deserialize<Message>(JsonSerializer.Serialize((Message)recorded))!));

    [Fact]
    public void What_somebody_dictated_stays_though_it_looks_like_one() =>
        Assert.Equal("the plug is open", Spanish.Shown(Message.Written("the plug is open")));

    [Fact]
    public void In_English_it_stays_as_it_was_recorded() =>
        Assert.Equal("the plug is open", Language.English.Shown(Message.Recorded("the plug is open")));
}
