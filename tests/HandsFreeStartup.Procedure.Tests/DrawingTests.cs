using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

public sealed class DrawingTests
{
    [Fact]
    public void The_picture_of_the_phases_in_the_developers_page_is_the_one_that_the_program_draws()
    {
        DirectoryInfo? above = new(AppContext.BaseDirectory);
        while (above is not null && !File.Exists(Path.Combine(above.FullName, "DEVELOPERS.md")))
        {
            above = above.Parent;
        }

        string drawn = new StartupProcedure(Some.Plan()).DrawPhases().ReplaceLineEndings("\n").Trim();

        Assert.Contains(drawn, File.ReadAllText(Path.Combine(above!.FullName, "DEVELOPERS.md")), StringComparison.Ordinal);
    }
}
