using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Speech.Tests.Speaking;

public sealed class SpokenMessageTests
{
    static readonly ShownValue Oxygen = new("7.6", "0.3", "", "%");

    [Fact]
    public void A_value_is_said_as_the_number_that_it_is() =>
        Assert.Equal("Oxygen (low) seven point six percent. Good.", SpokenMessage.Of($"{new MessagePart.Name("Oxygen (low)")} {Oxygen}. Good."));

    [Fact]
    public void A_doubtful_value_is_said_digit_by_digit() =>
        Assert.Equal("one five degrees?", SpokenMessage.Of($"{ShownValue.Alone(15, "°F")}?", digitByDigit: true));

    [Fact]
    public void A_doubt_is_said_after_its_value()
    {
        Assert.Equal("seven point six plus or minus zero point three percent", SpokenMessage.Of($"{new MessagePart.Quantity(Oxygen, TellsDoubt: true)}"));
        Assert.Equal("twelve P P M, zero to thirty two", SpokenMessage.Of($"{new MessagePart.Quantity(new("12", "20", "32", "ppm"), TellsDoubt: true)}"));
        Assert.Equal("twenty four volts, no uncertainty stated", SpokenMessage.Of($"{new MessagePart.Quantity(new("24", "", "", "V"), TellsDoubt: true)}"));
    }

    [Fact]
    public void Limits_and_times_are_said_in_words() => Assert.Equal(
        "at most four hundred P P M. four minutes five seconds left, and minus zero point zero two inches.",
        SpokenMessage.Of($"{new DeclaredLimit("any", null, 400, "ppm", "invented", true)}. {TimeSpan.FromSeconds(245)} left, and {ShownValue.Alone(-0.02m, "in. w.c.")}."));

    [Fact]
    public void A_telephone_number_is_said_digit_by_digit() =>
        Assert.Equal("Call five five five, zero one zero zero, from outside.", SpokenMessage.Of($"Call {new MessagePart.Telephone("555-0100")}, from outside."));

    [Fact]
    public void Over_the_range_is_said_so() => Assert.Equal("over nine thousand nine hundred ninety nine P P M", SpokenMessage.Of($"{ShownValue.Alone(9999, "ppm", isOver: true)}"));
}
