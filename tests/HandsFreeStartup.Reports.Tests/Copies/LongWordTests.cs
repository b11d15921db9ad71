using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Narrow;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Copies;

/// <summary>A word without end, as no door takes it today and a stranger's record may hold it.</summary>
public sealed class LongWordTests
{
    [Theory]
    [InlineData("office")]
    [InlineData("customer")]
    [InlineData("narrow")]
    public void Four_times_as_long_a_word_costs_about_four_times_as_much(string copy)
    {
        Allocated(copy, 1_000);
        long shorter = Allocated(copy, 30_000), longer = Allocated(copy, 120_000);

        // What is allocated stands for the work: it is the same on every machine.
        Assert.InRange((double)longer / shorter, 1, 6);
    }

    static long Allocated(string copy, int letters)
    {
        CopySource source = CopiesTests.Source(
            ScriptedJob.Plan, new ScriptedJob().Answer(AnswerWord.No).Order(CommandWord.Note).Dictate(new string('x', letters)).Events);
        long before = GC.GetAllocatedBytesForCurrentThread();
        int length = copy switch
        {
            "office" => StartupCopies.Office(source, Paper.A4, withCharts: false).Length,
            "customer" => StartupCopies.Customer(source, Paper.A4).Length,
            _ => NarrowCopy.Of(source, 32).Length,
        };
        Assert.True(length > 1000);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
