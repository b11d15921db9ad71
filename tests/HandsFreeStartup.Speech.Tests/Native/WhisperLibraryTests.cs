using HandsFreeStartup.Speech.Native;

namespace HandsFreeStartup.Speech.Tests.Native;

public sealed class WhisperLibraryTests
{
    [Fact]
    public void The_shipped_native_library_loads_and_is_the_one_the_declarations_were_written_for() => Assert.Null(WhisperLibrary.Check());

    [Theory]
    [InlineData("libgomp.so.1: cannot open shared object file", "libgomp1")]
    [InlineData("libstdc++.so.6: cannot open shared object file", "libstdc++6")]
    [InlineData("libgcc_s.so.1: cannot open shared object file", "libgcc-s1")]
    [InlineData("version `GLIBC_2.32' not found", "glibc 2.32")]
    [InlineData("no such file", "/somewhere")]
    public void A_library_that_cannot_load_names_what_is_missing(string loader, string remedy) =>
        Assert.Contains(remedy, WhisperLibrary.Explain(loader, "/somewhere"), StringComparison.Ordinal);
}
