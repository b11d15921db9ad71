using System.Collections.Immutable;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>Machines of each system, with the programs that a test gives them.</summary>
public static class Machines
{
    public static readonly ImmutableArray<string> Program = ["/opt/handsfree/HandsFreeStartup"];

    public static Machine Linux(Func<string, string?> find) => new(Platform.Linux, find, Program);

    /// <summary>With programs of those names in /bin.</summary>
    public static Machine With(Platform platform, params string[] names) => new(platform, name => names.Contains(name) ? $"/bin/{name}" : null, Program);
}
