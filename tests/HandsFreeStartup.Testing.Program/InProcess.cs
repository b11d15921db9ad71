namespace HandsFreeStartup.Tests.Support;

/// <summary>A command run in the test's own process: quicker than a program of its own, and what it throws is seen.</summary>
public static class InProcess
{
    public static async Task<ProgramResult> Run(params string[] arguments)
    {
        using StringWriter output = new(), error = new();
        int code = await CommandLine.Run(arguments, output, error);
        return new ProgramResult(code, output.ToString(), error.ToString());
    }
}
