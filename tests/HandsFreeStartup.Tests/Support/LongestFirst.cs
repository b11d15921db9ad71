using HandsFreeStartup.Tests.Rehearse;
using HandsFreeStartup.Tests.Support;
using Xunit.Abstractions;

[assembly: TestCollectionOrderer(LongestFirst.Name, "HandsFreeStartup.Tests")]

namespace HandsFreeStartup.Tests.Support;

/// <summary>Who talks for ten minutes begins first: begun last, as chance has it, the whole run would wait for him alone.</summary>
public sealed class LongestFirst : ITestCollectionOrderer
{
    /// <summary>Full name of this class, as the runner wants it.</summary>
    public const string Name = "HandsFreeStartup.Tests.Support.LongestFirst";

    static readonly string[] Longest = [typeof(ClosedLoopTests).FullName!, typeof(EmergencyByVoiceTests).FullName!, typeof(RadioTests).FullName!, typeof(Start.DemonstrationTests).FullName!, typeof(NewJob.NewJobByVoiceTests).FullName!, typeof(Tour.TourByVoiceTests).FullName!];

    /// <inheritdoc/>
    public IEnumerable<ITestCollection> OrderTestCollections(IEnumerable<ITestCollection> testCollections) =>
        testCollections.OrderBy(collection => Array.FindIndex(Longest, name => collection.DisplayName.EndsWith(name, StringComparison.Ordinal)) is >= 0 and var place ? place : Longest.Length);
}
