using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Tests.Listening;

public sealed class DeviceNameTests
{
    static readonly string[] Names = ["Microphone (USB Audio)", "Headset \"Höhe\"", "Headset \"Höhe\" 2", "USB"];

    static string Trouble(string wanted, params string[] names) => Assert.Throws<SoundDeviceException>(() => DeviceName.Place(wanted, names, "microphone")).Message;

    [Theory]
    [InlineData("Microphone (USB Audio)", 0)]
    [InlineData("usb audio", 0)]
    [InlineData("usb", 3)]
    [InlineData("headset \"höhe\"", 1)]
    [InlineData(" höhe\" 2 ", 2)]
    public void A_device_is_meant_by_its_name_or_by_a_part_that_only_it_has(string wanted, int place) => Assert.Equal(place, DeviceName.Place(wanted, Names, "microphone"));

    [Fact]
    public void Of_two_with_the_same_name_the_first_is_meant() => Assert.Equal(0, DeviceName.Place("USB", ["USB", "USB"], "microphone"));

    [Fact]
    public void A_name_that_is_not_there_is_answered_with_those_that_are() =>
        Assert.Equal("There is no microphone \"boom\": name one of \"A\", \"B\".", Trouble("boom", "A", "B"));

    [Fact]
    public void A_name_that_fits_more_than_one_is_asked_again() => Assert.Equal("More than one microphone is called \"mic\": name one of \"Mic 1\", \"Mic 2\".", Trouble("mic", "Mic 1", "Mic 2"));

    [Fact]
    public void No_name_at_all_means_no_device() => Assert.StartsWith("There is no microphone", Trouble(" ", "A"), StringComparison.Ordinal);

    [Fact]
    public void Without_any_device_one_is_to_be_plugged_in() => Assert.Equal("There is no microphone: plug one in and try again.", Trouble("A"));
}
