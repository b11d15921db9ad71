using FsCheck;
using FsCheck.Xunit;
using HandsFreeStartup.Reports.Copies.Charts;

namespace HandsFreeStartup.Reports.Tests.Copies;

[Trait("Speed", "Fast")]
public sealed class ScaleLaws
{
    [Property]
    public bool Every_value_lies_on_its_axis_and_the_ticks_can_be_told_apart(NonEmptyArray<short> hundredths, short limit)
    {
        double[] values = [.. hundredths.Get.Select(value => value / 100.0)];
        Scale scale = Scale.OfValues(values, [limit / 100.0]);

        return values.All(value => scale.Part(value) is > 0 and < 1)
            && scale.Ticks.Count() is >= 2 and <= 9
            && scale.Ticks.Select(scale.Label).Distinct().Count() == scale.Ticks.Count();
    }

    [Property]
    public bool An_axis_of_time_holds_the_last_value_and_has_few_ticks(uint seconds)
    {
        Scale scale = Scale.OfTime(seconds % (30 * 86400));

        return scale.High >= seconds % (30 * 86400) && scale.Ticks.Count() is >= 2 and <= 7;
    }
}
