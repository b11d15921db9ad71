using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Tests.Understanding;

public sealed class SoundsAlikeTests
{
    [Theory]
    [InlineData("meter 130", "meter 113")]
    [InlineData("meter 113", "meter 130")]
    [InlineData("Meter one thirty", "Meter one thirteen")]
    [InlineData("supply temperature one hundred nineteen degrees", "supply temperature one hundred ninety degrees")]
    [InlineData("manifold 3.15 inches", "manifold 3.50 inches")]
    [InlineData("oxygen 7.6", null)]
    [InlineData("meter 120", null)]
    [InlineData("meter 1300", null)]
    public void A_teen_is_taken_for_a_ty_and_back(string heard, string? twin) => Assert.Equal(twin, SoundsAlike.TwinOf(heard));

    [Theory]
    [InlineData(113, 130, true)]
    [InlineData(419, 490, true)]
    [InlineData(112, 120, true)]
    [InlineData(113, 115, false)]
    [InlineData(128, 130, false)]
    [InlineData(13, 130, false)]
    public void Twins_differ_in_one_teen_for_a_ty_only(int one, int other, bool are)
    {
        Field meter = Fields.Find("meter_time")!;
        Assert.Equal(are, SoundsAlike.AreTwins(new Meaning.Reading(meter, one), new Meaning.Reading(meter, other)));
        Assert.Equal(are, SoundsAlike.AreTwins(new Meaning.Reading(meter, other), new Meaning.Reading(meter, one)));
    }
}
