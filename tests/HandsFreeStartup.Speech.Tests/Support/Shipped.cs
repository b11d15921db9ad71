namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>Files of the repository that tests use where they lie.</summary>
public static class Shipped
{
    static readonly string Root = Above(AppContext.BaseDirectory);

    public static string Model(string name) => Path.Combine(Root, "models", name);

    public static string DetectorModel => Model("ggml-silero-v6.2.3.bin");

    public static string Recording(string name) => Path.Combine(Root, "tests", "HandsFreeStartup.Speech.Tests", "Recordings", name + ".wav");

    static string Above(string folder) =>
        File.Exists(Path.Combine(folder, "HandsFreeStartup.sln")) ? folder
        : Path.GetDirectoryName(folder) is { } parent ? Above(parent)
        : throw new DirectoryNotFoundException("The tests run from a folder inside the repository; HandsFreeStartup.sln was not found above it.");
}
