using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Tests.Messages;

/// <summary>A message in another language: the same parts in other words, or all of it in English.</summary>
[Trait("Speed", "Fast")]
public sealed class LanguageTests
{
    static readonly Language Spanish = new("es", new Dictionary<string, string>
    {
        ["{0}: {1} left."] = "Quedan {1} de {0}.",
        ["Oxygen"] = "Oxígeno",
        ["low"] = "bajo",
        ["Say done."] = "Diga done.",
        ["at most {0}"] = "como máximo {0}",
        ["over {0}"] = "más de {0}",
        ["{0} to {1}"] = "{0} a {1}",
        ["no uncertainty stated"] = "incertidumbre no indicada",
        ["the gas is open."] = "el gas está abierto.",
        ["CO in the {room}. Say monoxide."] = "CO en: {room}. Diga monoxide.",
        ["{0} of {1}"] = "{0} de",
        ["Turn {0}."] = "Gire {0}.",
        ["Say {0}."] = "Diga {0}.",
        ["Open 80,000 Btu/h."] = "Abra 80,000 Btu/h.",
    });

    [Fact]
    public void Parts_change_their_places_with_the_words_and_stay_what_they_are()
    {
        Message told = Spanish.In($"{new MessagePart.Name("Oxygen (low)")}: {TimeSpan.FromSeconds(65)} left.");

        Assert.Equal("Quedan 1:05 de Oxígeno (bajo).", told.Shown);
        Assert.Contains(told.Parts, part => part is MessagePart.Duration);
    }

    [Fact]
    public void What_is_missing_is_English_as_a_whole() =>
        Assert.Equal("Oxygen was measured twice.", Spanish.Shown($"{new MessagePart.Name("Oxygen")} was measured twice."));

    [Fact]
    public void A_translation_without_one_of_the_holes_does_not_count() => Assert.Equal("1 of 2", Spanish.Shown($"{1} of {2}"));

    [Fact]
    public void What_can_be_said_stays_as_it_is_heard() => Assert.Equal("Diga oxygen.", Spanish.Shown($"Say {new MessagePart.Form("oxygen")}."));

    [Fact]
    public void A_message_within_a_message_is_found_by_itself_with_its_blanks()
    {
        Message first = $"{new MessagePart.Name("Oxygen")}: {TimeSpan.FromSeconds(1)} left.";

        Assert.Equal("Quedan 0:01 de Oxígeno. Diga done.", Spanish.Shown($"{first}{" Say done."}"));
    }

    [Fact]
    public void Capital_and_stop_are_changed_after_the_words_are() =>
        Assert.Equal("El gas está abierto", Spanish.Shown(Message.FromString("the gas is open.").WithoutStop().Capitalised()));

    [Fact]
    public void A_room_that_somebody_has_named_stays() =>
        Assert.Equal("CO en: Bedroom 2. Diga monoxide.", Spanish.Shown(Message.Written("CO in the {room}. Say monoxide.").With("{room}", "Bedroom 2")));

    [Fact]
    public void What_somebody_wrote_keeps_its_figures()
    {
        Message told = Spanish.In(Message.Written("Open 80,000 Btu/h."));

        Assert.Equal("Abra 80,000 Btu/h.", told.Shown);
        Assert.Contains(told.Parts, part => part is MessagePart.Figure { Number: "80000", UnitSymbol: "Btu/h" });
    }

    [Fact]
    public void Numbers_keep_their_decimal_point_and_units_their_symbol()
    {
        Assert.Equal("como máximo 3.65 in. w.c.", Spanish.Limit(new MessagePart.Limit("", "3.65", "in. w.c.")));
        Assert.Equal("7.6 ± 0.3 %", Spanish.Value(new ShownValue("7.6", "0.3", "", "%"), tellsDoubt: true));
        Assert.Equal("12 ppm (0 a 45)", Spanish.Value(new ShownValue("12", "33", "45", "ppm"), tellsDoubt: true));
        Assert.Equal("24 V, incertidumbre no indicada", Spanish.Value(new ShownValue("24", "", "", "V"), tellsDoubt: true));
        Assert.Equal("más de 2000 ppm", Spanish.Value(ShownValue.Alone(2000, "ppm", isOver: true)));
    }

    [Fact]
    public void English_is_the_message_itself()
    {
        Message told = $"{Fields.All[0]}: {1.5m}";

        Assert.Same(told, Language.English.In(told));
    }

    [Fact]
    public void What_is_missing_is_told_to_whoever_asks()
    {
        List<string> missing = [];
        Language asking = new("es", []) { Missing = missing.Add };

        asking.In($"{new MessagePart.Name("Oxygen")} has {2} holes.");

        Assert.Equal(["{0} has {1} holes."], missing);
    }
}
